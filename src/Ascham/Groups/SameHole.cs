namespace Ascham.Groups;

using System.Globalization;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Whether two groups have one centre, as near as matters: a claim that must be earned.</summary>
/// <remarks>
/// <para><b>Rule.</b> Yes when the whole interval of the distance lies inside the radius that matters, no when it lies wholly outside, else cannot tell. Each answer, when wrong, is given at most
/// (1 − level)/2 of the time: level 0.90 for 5 % each.</para>
/// <para><b>Why not "no difference shown".</b> Six arrows a group, one sigma apart, show no difference seven times in ten; that is a lack of arrows, not one hole.</para>
/// <para><b>Limits.</b> As those of the <see cref="SpreadModel"/>. The radius must be chosen before shooting. The yes is cautious: at the edge of the radius it is given less often than allowed.</para>
/// <para><b>Source.</b> R. L. Berger, J. C. Hsu (1996), Statist. Sci. 11, 283-319 (intersection-union); A. Munk, R. Pflüger (1999), J. Am. Statist. Assoc. 94, 1311-1319.</para>
/// </remarks>
public sealed record SameHole
{
    /// <summary>The answer.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The answer in a sentence, with its figures.</summary>
    public required string Reason { get; init; }

    /// <summary>Distance between the centres; null when the arrows tell nothing of it.</summary>
    public required Estimate<Length>? Distance { get; init; }

    /// <summary>The radius that matters.</summary>
    public required Length Within { get; init; }

    /// <summary>
    /// Arrows in each group that would earn a yes four times in five if the groups are round, the centres truly coincide and the spread is as estimated now; null when the answer is given, or the spread is not known.
    /// A spread from few arrows is itself uncertain, and so is this number.
    /// </summary>
    public required int? ArrowsToDecide { get; init; }

    /// <summary>Asks whether two groups have one centre within a radius.</summary>
    /// <param name="first">One group.</param>
    /// <param name="second">The other; same distance, where both are given.</param>
    /// <param name="within">The radius that matters; positive. Choose it before shooting.</param>
    /// <param name="model">What is assumed of the spread.</param>
    /// <param name="level">Level of the interval, between 0 and 1; 0.90 for at most 5 % false answers each way.</param>
    /// <returns>The answer; <see cref="Verdict.CannotTell"/> with the reason when there are too few arrows for the model, no spread recorded, or an arrow missed.</returns>
    /// <exception cref="ArgumentException">The groups were shot at different distances.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="within"/> is not positive, or <paramref name="level"/> not between 0 and 1.</exception>
    public static SameHole Judge(Group first, Group second, Length within, SpreadModel model, double level)
    {
        Require.Positive(within.Meters, "m");
        return CentreShift.TryBetween(first, second, model, level, out var shift, out string? whyNot)
            ? Judge(shift, within, () => Arrows(first, second, within, level))
            : new() { Verdict = Verdict.CannotTell, Reason = whyNot, Distance = null, Within = within, ArrowsToDecide = null };
    }

    /// <summary>Chance of a yes for round groups of one spread and equal size.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="within">Radius that matters over sigma; positive.</param>
    /// <param name="apart">True distance of the centres over sigma; not negative.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Probability, under <see cref="SpreadModel.Round"/>; at <paramref name="apart"/> = <paramref name="within"/> it is the chance of a false yes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ChanceOfYes(int arrows, double within, double apart, double level)
    {
        Require.InRange(arrows, 2, 10_000_000, "");
        Require.Positive(within, "");
        Require.NotNegative(apart, "");
        double nu = 4.0 * (arrows - 1), error = Math.Sqrt(2.0 / arrows), t = Quantiles.StudentT(nu, Require.Level(level));
        double Given(double spread)
        {
            double room = (within - (t * spread * error)) / error;
            return room > 0 ? NoncentralFisher.ChiSquareCdf(room * room, 2, apart * apart / error / error) : 0;
        }

        return ScaledChi.Mean(Given, nu, within / (t * error));
    }

    /// <summary>Arrows in each group that make a yes likely enough.</summary>
    /// <param name="within">Radius that matters over sigma; 0.01 to 100.</param>
    /// <param name="apart">True distance of the centres over sigma; less than <paramref name="within"/>. Zero is the best case; a third of the radius is prudent.</param>
    /// <param name="chance">Chance of a yes wanted, between 0 and 1; 0.8 is usual.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The least number, at least 2, under <see cref="SpreadModel.Round"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="CannotTellException">More than ten million arrows would be needed.</exception>
    public static int ArrowsNeeded(double within, double apart, double chance, double level)
    {
        Require.InRange(within, 0.01, 100, "sigma");
        Require.InRange(apart, 0, 0.99 * within, "sigma");
        Require.Level(chance);
        Require.Level(level);
        return LeastArrows.Reaching(chance, 2, n => ChanceOfYes(n, within, apart, level));
    }

    static SameHole Judge(CentreShift shift, Length within, Func<int?> arrows)
    {
        Estimate<Length> distance = shift.Distance;
        Verdict verdict = distance.High < within ? Verdict.Yes : distance.Low > within ? Verdict.No : Verdict.CannotTell;
        int? needed = verdict == Verdict.CannotTell ? arrows() : null;
        string figures = string.Create(
            CultureInfo.InvariantCulture, $"the centres are between {Text(distance.Low, within)} and {Text(distance.High, within)} apart ({100 * distance.Level:0.#} %)");
        string reason = verdict switch
        {
            Verdict.Yes => $"Same hole within {Text(within, within)}: {figures}.",
            Verdict.No => $"Not the same hole within {Text(within, within)}: {figures}.",
            _ => $"These arrows cannot tell whether the centres lie within {Text(within, within)}: {figures}."
                + (needed is { } n ? $" If they truly coincide, about {n} arrows in each group would show it four times in five." : ""),
        };
        return new() { Verdict = verdict, Reason = reason, Distance = distance, Within = within, ArrowsToDecide = needed };
    }

    static int? Arrows(Group first, Group second, Length within, double level)
    {
        double sigma = Groups.Dispersion.Pooled([first, second], level).BothAxes.Estimate.Value.Meters, ratio = within.Meters / sigma;
        return ratio is >= 0.01 and <= 100 ? ArrowsNeeded(ratio, 0, 0.8, level) : null;
    }

    static string Text(Length length, Length like) => length.ToUnit(like.Unit).ToString("0.###", CultureInfo.InvariantCulture);
}
