namespace Ascham.Sights;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A printed tape held against station means: how far it is out, in what pattern, and how sure.</summary>
/// <remarks>
/// <para><b>Model.</b> Each station gives the setting that would have centred its group: the setting used, less the travel that the
/// flight model needs to move the impact from the aim point to the group's centre. What is left against the printed scale is fitted
/// by generalised least squares with slide, scale and, in a second fit, bend; errors of distance and of setting that a station's arrows share are in
/// the covariance (see <see cref="TapeStation"/>).</para>
/// <para><b>Verdict.</b> The errors bend when the bend differs from zero (p &lt; 0.02, four distances or more) or the stations depart from slide
/// and scale together (p &lt; 0.01). In this order: agrees, when at every mark of the tape, those beyond the distances shot included, the one-sided
/// bound of the error on the target, at the level asked, stays inside the margin, under slide and scale, or under the bend when they bend; bent,
/// when they bend; cannot tell, when slide and scale together do not differ from zero
/// (p ≥ 0.05) or neither does beyond the other; scaled, when the scale does; else slid. A tape that is slid and scaled is called
/// scaled, since sliding alone cannot mend it; <see cref="Reason"/> says both. Fewer than three distances are "cannot tell"; one distance gives
/// the slide there and nothing else.</para>
/// <para><b>Limits.</b> Level shots; one tape, one arrow; the wind's vertical part and misjudged cant are not in it. The significance
/// levels were chosen by simulation; their error rates are in docs/validation/tape-check.md.</para>
/// </remarks>
public sealed record TapeCheck
{
    const double BendLevel = 0.02, MisfitLevel = 0.01, DifferenceLevel = 0.05;

    /// <summary>What the shots say.</summary>
    public required TapeVerdict Verdict { get; init; }

    /// <summary>The verdict in a sentence, with its figures.</summary>
    public string Reason => TapeReason.Of(this);

    /// <summary>
    /// Travel to add to the printed marks at the shortest one, positive towards larger numbers on the scale, from slide and scale together
    /// (at one distance, there).
    /// </summary>
    public required Estimate<Length> Slide { get; init; }

    /// <summary>
    /// The same if the whole tape has slid and nothing else is wrong: narrower, and what marks and <see cref="Reason"/> rest on when the verdict is slid.
    /// Over all verdicts it holds a planted slide less often than its level, since the verdict chose it (docs/validation/tape-check.md).
    /// </summary>
    public required Estimate<Length> SlideAlone { get; init; }

    /// <summary>How much farther apart the marks should be, about the shortest one; <see langword="null"/> when one distance was shot.</summary>
    public required Estimate<Ratio>? Scale { get; init; }

    /// <summary>What that scale moves at the longest mark, positive towards larger numbers; <see langword="null"/> when one distance was shot.</summary>
    public required Estimate<Length>? ScaleAtLongest { get; init; }

    /// <summary>Travel that slide and scale leave at mid-tape; <see langword="null"/> with fewer than three distances.</summary>
    public required Estimate<Length>? Bend { get; init; }

    /// <summary>Each mark of the tape of which the shots say something: all of them, or the one shot at when one distance was shot.</summary>
    public required IReadOnlyList<TapeError> Marks { get; init; }

    /// <summary>Each station.</summary>
    public required IReadOnlyList<StationError> Stations { get; init; }

    /// <summary>Half the diameter that matters: an error on the target beyond this is not agreement.</summary>
    public required Length Margin { get; init; }

    /// <summary>
    /// The farthest mark up to which, from the shortest one on, the centre stays within the margin at the level asked; <see langword="null"/> when it does not at the shortest, or the tape bends.
    /// </summary>
    public required Length? SoundTo { get; init; }

    /// <summary>The mark, between the distances shot, whose error on the target is largest; <see langword="null"/> when none lies there.</summary>
    public TapeError? Worst => Marks.Where(m => !m.Extrapolated).MaxBy(m => Math.Abs(m.OnTarget.Value.Meters));

    /// <summary>Whether the bend, or the departure from slide and scale, is beyond chance.</summary>
    internal bool Bends { get; init; }

    internal bool BothDiffer { get; init; }

    internal int Distances { get; init; }

    internal ScaleDirection Increases { get; init; }

    /// <summary>Checks a tape.</summary>
    /// <param name="tape">The printed tape.</param>
    /// <param name="stations">At least one, each on the tape; three distances or more for a verdict.</param>
    /// <param name="model">The bow: gives the travel per height on the target. A speed wrong by 5 % changes that by a few parts in a thousand.</param>
    /// <param name="target">Diameter that matters; positive. Agreement means that the centre stays inside it.</param>
    /// <param name="confidence">Level of all intervals and of the claim of agreement, 0.501 to 0.9999, such as 0.90.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">There is no station, or one lies off the tape.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The target or the level is out of range.</exception>
    public static TapeCheck Run(Tape tape, IReadOnlyList<TapeStation> stations, SightModel model, Length target, double confidence)
    {
        ArgumentNullException.ThrowIfNull(tape);
        ArgumentNullException.ThrowIfNull(stations);
        ArgumentNullException.ThrowIfNull(model);
        Require.Positive(target.Meters, "m");
        Require.InRange(confidence, 0.501, 0.9999, "");
        var evidence = TapeEvidence.Of(tape, stations, model);
        var margin = target / 2;
        return evidence.Distances == 1 ? AtOneDistance(evidence, tape, margin, confidence) : AtSeveral(evidence, tape, margin, confidence);
    }

    static TapeCheck AtSeveral(TapeEvidence evidence, Tape tape, Length margin, double confidence)
    {
        var line = evidence.Fit(2);
        var curve = evidence.Distances >= 3 ? evidence.Fit(3) : null;
        bool bends = curve is not null && AreBent(evidence, line, curve);
        var judged = bends ? evidence.Fit(3, admitMisfit: true) : line;
        bool sound = evidence.Distances >= 3 && tape.Marks.All(m => evidence.Bound(m, judged, confidence) < margin.Meters);
        var verdict = sound ? TapeVerdict.Agrees : bends ? TapeVerdict.Bent : Judge(evidence, line);
        var slide = evidence.Fit(1);
        var pattern = verdict == TapeVerdict.Slid ? slide : judged;
        return new TapeCheck
        {
            Verdict = verdict,
            Slide = evidence.Length(line.Term(0), confidence, "slide, from slide and scale together"),
            SlideAlone = evidence.Length(slide.Term(0), confidence, "slide alone"),
            Scale = evidence.Estimate(line.Term(1), confidence, "scale about the shortest mark, from slide and scale together", v => Ratio.FromDecimalFractions(v)),
            ScaleAtLongest = evidence.Length(line.ScaleAtLongest(), confidence, "what the scale moves at the longest mark"),
            Bend = curve is null ? null : evidence.Length(curve.Term(2), confidence, "bend at mid-tape beyond slide and scale"),
            Marks = [.. tape.Marks.Select(m => evidence.ErrorAt(m, pattern, confidence))],
            Stations = evidence.StationErrors(confidence),
            Margin = margin,
            SoundTo = bends ? null : FarthestSound(evidence, line, tape, margin, confidence),
            Bends = bends,
            BothDiffer = Differs(line, 0) && Differs(line, 1),
            Distances = evidence.Distances,
            Increases = evidence.Increases,
        };
    }

    static TapeCheck AtOneDistance(TapeEvidence evidence, Tape tape, Length margin, double confidence)
    {
        var slide = evidence.Fit(1);
        return new TapeCheck
        {
            Verdict = TapeVerdict.CannotTell,
            Slide = evidence.Length(slide.Term(0), confidence, "at the one distance shot"),
            SlideAlone = evidence.Length(slide.Term(0), confidence, "at the one distance shot"),
            Scale = null,
            ScaleAtLongest = null,
            Bend = null,
            Marks = [.. tape.Marks.Select(m => evidence.ErrorAt(m, slide, confidence)).Where(m => !m.Extrapolated)],
            Stations = evidence.StationErrors(confidence),
            Margin = margin,
            SoundTo = null,
            Distances = 1,
            Increases = evidence.Increases,
        };
    }

    static bool AreBent(TapeEvidence evidence, TapePattern line, TapePattern curve) =>
        (evidence.Distances >= 4 && curve.Significance(2) < BendLevel) || evidence.MisfitProbability(line) < MisfitLevel;

    static bool Differs(TapePattern line, int term) => line.Significance(term) < DifferenceLevel;

    static TapeVerdict Judge(TapeEvidence evidence, TapePattern line)
    {
        bool differs = evidence.Distances >= 3 && evidence.DifferenceProbability(line) < DifferenceLevel;
        return !differs ? TapeVerdict.CannotTell : Differs(line, 1) ? TapeVerdict.Scaled : Differs(line, 0) ? TapeVerdict.Slid : TapeVerdict.CannotTell;
    }

    static Length? FarthestSound(TapeEvidence evidence, TapePattern line, Tape tape, Length margin, double confidence)
    {
        Mark[] sound = [.. tape.Marks.TakeWhile(m => evidence.Bound(m, line, confidence) < margin.Meters)];
        return sound.Length > 0 ? sound[^1].Distance : null;
    }
}
