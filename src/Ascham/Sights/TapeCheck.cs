namespace Ascham.Sights;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A printed tape held against station means: how far it is out, in what pattern, and how sure.</summary>
/// <remarks>
/// <para><b>Model.</b> Each station gives the setting that would have centred its group: the setting used, less the travel that the
/// flight model needs to move the impact from the aim point to the group's centre. What is left against the printed scale is fitted
/// by generalised least squares with slide, scale and, in a second fit, bend; errors of distance and of setting that a station's arrows share are in
/// the covariance (see <see cref="TapeStation"/>).</para>
/// <para><b>Verdict.</b> In this order: bent, when the bend differs from zero (p &lt; 0.02, four distances or more) or the stations depart from slide
/// and scale together (p &lt; 0.01); agrees, when at every mark of the tape, those beyond the distances shot included, the one-sided bound of the
/// error on the target, at the level asked, stays inside the margin; cannot tell, when slide and scale together do not differ from zero
/// (p ≥ 0.05) or neither does beyond the other; scaled, when the scale does; else slid. A tape that is slid and scaled is called
/// scaled, since sliding alone cannot mend it; <see cref="Reason"/> says both. Fewer than three distances are "cannot tell".</para>
/// <para><b>Limits.</b> Level shots; one tape, one arrow; the wind's vertical part and misjudged cant are not in it. The significance
/// levels were chosen by simulation; their error rates are in docs/validation.md.</para>
/// </remarks>
public sealed record TapeCheck
{
    const double BendLevel = 0.02, MisfitLevel = 0.01, DifferenceLevel = 0.05;

    /// <summary>What the shots say.</summary>
    public required TapeVerdict Verdict { get; init; }

    /// <summary>The verdict in a sentence, with its figures.</summary>
    public required string Reason { get; init; }

    /// <summary>Travel to add to every printed mark, at the shortest mark; positive towards larger numbers on the scale.</summary>
    public required Estimate<Length> Slide { get; init; }

    /// <summary>How much farther apart the marks should be, about the shortest one.</summary>
    public required Estimate<Ratio> Scale { get; init; }

    /// <summary>Travel that slide and scale leave at mid-tape; <see langword="null"/> with fewer than three distances.</summary>
    public required Estimate<Length>? Bend { get; init; }

    /// <summary>Each mark of the tape.</summary>
    public required IReadOnlyList<TapeError> Marks { get; init; }

    /// <summary>Each station.</summary>
    public required IReadOnlyList<StationError> Stations { get; init; }

    /// <summary>Half the diameter that matters: an error on the target beyond this is not agreement.</summary>
    public required Length Margin { get; init; }

    /// <summary>
    /// The farthest mark up to which, from the shortest one on, the centre stays within the margin at the level asked; <see langword="null"/> when it does not at the shortest, or the tape bends.
    /// </summary>
    public required Length? SoundTo { get; init; }

    /// <summary>The mark, between the distances shot, whose error on the target is largest.</summary>
    public TapeError Worst => Marks.Where(m => !m.Extrapolated).DefaultIfEmpty(Marks[0]).MaxBy(m => Math.Abs(m.OnTarget.Value.Meters))!;

    /// <summary>Checks a tape.</summary>
    /// <param name="tape">The printed tape.</param>
    /// <param name="stations">At least two distances, each on the tape.</param>
    /// <param name="model">The bow: gives the travel per height on the target. A speed wrong by 5 % changes that by less than 0.1 %.</param>
    /// <param name="target">Diameter that matters; positive. Agreement means that the centre stays inside it.</param>
    /// <param name="confidence">Level of all intervals and of the claim of agreement, 0.501 to 0.9999, such as 0.90.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">Fewer than two distances were shot, or a station lies off the tape.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The target or the level is out of range.</exception>
    public static TapeCheck Run(Tape tape, IReadOnlyList<TapeStation> stations, SightModel model, Length target, double confidence)
    {
        ArgumentNullException.ThrowIfNull(tape);
        ArgumentNullException.ThrowIfNull(stations);
        ArgumentNullException.ThrowIfNull(model);
        Require.Positive(target.Meters, "m");
        Require.InRange(confidence, 0.501, 0.9999, "");
        var evidence = TapeEvidence.Of(tape, stations, model);
        var line = evidence.Fit(2);
        var curve = evidence.Distances >= 3 ? evidence.Fit(3) : null;
        var margin = target / 2;

        bool bent = evidence.Distances >= 3 && IsBent(evidence, line, curve!);
        var pattern = bent ? evidence.Fit(3, admitMisfit: true) : line;
        TapeError[] marks = [.. tape.Marks.Select(m => evidence.ErrorAt(m, pattern, confidence))];
        var verdict = bent ? TapeVerdict.Bent : Judge(evidence, line, marks, margin, confidence);
        var check = new TapeCheck
        {
            Verdict = verdict,
            Reason = "",
            SoundTo = bent ? null : FarthestSound(evidence, line, marks, margin, confidence),
            Slide = evidence.Length(line.Term(0), confidence, "slide, from slide and scale together"),
            Scale = evidence.Estimate(line.Term(1), confidence, "scale about the shortest mark, from slide and scale together", v => Ratio.FromDecimalFractions(v)),
            Bend = curve is null ? null : evidence.Length(curve.Term(2), confidence, "bend at mid-tape beyond slide and scale"),
            Marks = marks,
            Stations = evidence.StationErrors(confidence),
            Margin = margin,
        };
        return check with { Reason = TapeReason.Of(check, line, evidence.Distances) };
    }

    static Length? FarthestSound(TapeEvidence evidence, TapePattern line, TapeError[] marks, Length margin, double confidence)
    {
        TapeError[] sound = [.. marks.TakeWhile(m => evidence.Bound(m, line, confidence) < margin.Meters)];
        return sound.Length > 0 ? sound[^1].Distance : null;
    }

    static bool IsBent(TapeEvidence evidence, TapePattern line, TapePattern curve)
    {
        bool bends = evidence.Distances >= 4 && curve.Significance(2) < BendLevel;
        return bends || evidence.MisfitProbability(line) < MisfitLevel;
    }

    static TapeVerdict Judge(TapeEvidence evidence, TapePattern line, TapeError[] marks, Length margin, double confidence)
    {
        if (evidence.Distances < 3)
        {
            return TapeVerdict.CannotTell;
        }

        if (marks.All(m => evidence.Bound(m, line, confidence) < margin.Meters))
        {
            return TapeVerdict.Agrees;
        }

        bool differs = evidence.DifferenceProbability(line) < DifferenceLevel;
        bool slid = line.Significance(0) < DifferenceLevel, scaled = line.Significance(1) < DifferenceLevel;
        return !differs ? TapeVerdict.CannotTell : scaled ? TapeVerdict.Scaled : slid ? TapeVerdict.Slid : TapeVerdict.CannotTell;
    }
}
