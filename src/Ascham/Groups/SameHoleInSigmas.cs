namespace Ascham.Groups;

using System.Globalization;
using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>Whether two round groups of one spread have one centre, when what matters is measured in sigmas of the groups themselves.</summary>
/// <param name="Verdict">The answer.</param>
/// <param name="Distance">Distance of the centres over sigma, with its exact interval; null when the arrows tell nothing of it.</param>
/// <param name="Within">The radius that matters, in sigmas.</param>
/// <param name="Reason">The answer in a sentence.</param>
/// <remarks>
/// <para><b>Rule.</b> Yes when the upper end of the noncentral-F interval lies below the radius, no when the lower end lies above, else cannot tell; each false at exactly (1 − level)/2 at the edge.</para>
/// <para><b>Limits.</b> Needs fewer arrows than <see cref="SameHole"/>, but widens what counts as one hole with the archer's spread: for a hole of a given size in inches use that one.
/// A lucky pair of close means can earn a yes from few arrows, as often as the level allows.</para>
/// <para><b>Source.</b> S. Wellek, <i>Testing Statistical Hypotheses of Equivalence and Noninferiority</i> (2010); S.-L. Jan, G. Shieh (2019).</para>
/// </remarks>
public sealed record SameHoleInSigmas(Verdict Verdict, Estimate<double>? Distance, double Within, string Reason)
{
    /// <summary>Asks whether two groups have one centre within so many sigmas.</summary>
    /// <param name="first">One group.</param>
    /// <param name="second">The other; same distance, where both are given.</param>
    /// <param name="within">The radius that matters over sigma; positive. Choose it before shooting.</param>
    /// <param name="level">Level of the interval, between 0 and 1; 0.90 for 5 % false answers each way.</param>
    /// <returns>The answer; <see cref="Verdict.CannotTell"/> with the reason when there are too few arrows, no spread recorded, or an arrow missed.</returns>
    /// <exception cref="ArgumentException">The groups were shot at different distances.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="within"/> is not positive, or <paramref name="level"/> not between 0 and 1.</exception>
    public static SameHoleInSigmas Judge(Group first, Group second, double within, double level)
    {
        Require.Positive(within, "sigma");
        if (!CentreShift.TryBetween(first, second, SpreadModel.Round, level, out var shift, out string? whyNot))
        {
            return new(Verdict.CannotTell, null, within, whyNot);
        }

        Estimate<double> distance = shift.InSigmas!;
        Verdict verdict = distance.High < within ? Verdict.Yes : distance.Low > within ? Verdict.No : Verdict.CannotTell;
        string reason = string.Create(CultureInfo.InvariantCulture, $"Within {within:0.###} sigma: {verdict.Text()}. The centres are {distance} sigma apart.");
        return new(verdict, distance, within, reason);
    }

    /// <summary>Chance of a yes for groups of equal size.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="within">Radius that matters over sigma; positive.</param>
    /// <param name="apart">True distance of the centres over sigma; not negative.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Probability; exactly (1 − level)/2 at <paramref name="apart"/> = <paramref name="within"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ChanceOfYes(int arrows, double within, double apart, double level)
    {
        Require.InRange(arrows, 2, 10_000_000, "");
        Require.Positive(within, "sigma");
        Require.NotNegative(apart, "sigma");
        return NoncentralFisher.Cdf(Critical(arrows, within, level), 2, 4.0 * (arrows - 1), apart * apart * arrows / 2);
    }

    /// <summary>Arrows in each group that make a yes likely enough.</summary>
    /// <param name="within">Radius that matters over sigma; 0.01 to 100.</param>
    /// <param name="apart">True distance of the centres over sigma; less than <paramref name="within"/>.</param>
    /// <param name="chance">Chance of a yes wanted, between 0 and 1.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The least number, at least 2.</returns>
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

    /// <summary>The F below which the answer is yes.</summary>
    internal static double Critical(int arrows, double within, double level) =>
        NoncentralFisher.Quantile((1 - Require.Level(level)) / 2, 2, 4.0 * (arrows - 1), within * within * arrows / 2);
}
