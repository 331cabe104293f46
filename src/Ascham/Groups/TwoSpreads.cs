namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Which of two spreads is wider, and how surely.</summary>
/// <param name="Ratio">First sigma over second; exact F interval for normal impacts. The value is the ratio of the corrected sigmas.</param>
/// <param name="Probability">How often two equal spreads would give samples at least this unlike, either way.</param>
/// <remarks>
/// <para><b>Limits.</b> Very sensitive to flyers and to long tails, which pass for spread (docs/validation/groups-comparison.md). Two groups of six show a spread twice the other about half the time, and one a quarter wider
/// one time in ten: see <see cref="ChanceToShow"/>. Sigmas of both axes need round groups.</para>
/// <para><b>Source.</b> NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.9.</para>
/// </remarks>
public sealed record TwoSpreads(Estimate<double> Ratio, double Probability)
{
    /// <summary>Whether the first is wider than the second: yes or no when the interval lies on one side of one, each wrongly at most (1 − level)/2 of the time.</summary>
    public Verdict FirstIsWider => Ratio.Low > 1 ? Verdict.Yes : Ratio.High < 1 ? Verdict.No : Verdict.CannotTell;

    /// <summary>Compares two spreads at one distance; of groups, pooled groups, or single axes.</summary>
    /// <param name="first">The one.</param>
    /// <param name="second">The other, from other arrows.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="level"/> is not between 0 and 1.</exception>
    public static TwoSpreads Compare(Sigma<Length> first, Sigma<Length> second, double level)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Compare(first.Sample.Meters, first.DegreesOfFreedom, second.Sample.Meters, second.DegreesOfFreedom, level, first.Estimate.Count + second.Estimate.Count);
    }

    /// <summary>Compares two spreads as angles, each from any distances.</summary>
    /// <inheritdoc cref="Compare(Sigma{Length}, Sigma{Length}, double)"/>
    public static TwoSpreads Compare(Sigma<Angle> first, Sigma<Angle> second, double level)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Compare(first.Sample.Radians, first.DegreesOfFreedom, second.Sample.Radians, second.DegreesOfFreedom, level, first.Estimate.Count + second.Estimate.Count);
    }

    /// <summary>Whether the two are alike, as near as matters.</summary>
    /// <param name="ratio">Largest ratio of the wider to the narrower that does not matter; more than 1. Choose it before shooting.</param>
    /// <returns>Yes when the whole interval lies within it, no when wholly outside, else cannot tell.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ratio"/> is not more than 1.</exception>
    public Verdict AlikeWithin(double ratio)
    {
        RequireMoreThanOne(ratio);
        return Ratio.High < ratio && Ratio.Low > 1 / ratio ? Verdict.Yes : Ratio.Low > ratio || Ratio.High < 1 / ratio ? Verdict.No : Verdict.CannotTell;
    }

    /// <summary>Chance that two round groups of equal size show that one spread is wider.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="ratio">True ratio of wider to narrower; 1 or more.</param>
    /// <param name="significance">Probability of a false finding, between 0 and 1; 0.05 is usual.</param>
    /// <param name="eitherWay">True to test for a difference in either direction, false when only the one expected counts.</param>
    /// <returns>Probability, both axes pooled.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ChanceToShow(int arrows, double ratio, double significance, bool eitherWay)
    {
        Require.InRange(arrows, 2, LeastArrows.Most, "");
        return Chance(2.0 * (arrows - 1), ratio, significance, eitherWay);
    }

    /// <summary>Arrows in each of two round groups that make it likely enough that one spread is shown to be wider.</summary>
    /// <param name="ratio">True ratio of wider to narrower; 1.001 or more.</param>
    /// <param name="chance">Chance wanted, between 0 and 1; 0.8 is usual.</param>
    /// <param name="significance">Probability of a false finding, between 0 and 1.</param>
    /// <param name="eitherWay">True to test for a difference in either direction.</param>
    /// <returns>The least number, at least 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="CannotTellException">More than ten million arrows would be needed.</exception>
    public static int ArrowsNeeded(double ratio, double chance, double significance, bool eitherWay)
    {
        Require.InRange(ratio, 1.001, 1e6, "");
        Require.Level(chance);
        return LeastArrows.Reaching(chance, 2, n => ChanceToShow(n, ratio, significance, eitherWay));
    }

    internal static double Chance(double degrees, double ratio, double significance, bool eitherWay)
    {
        Require.InRange(ratio, 1, 1e6, "");
        Require.Level(significance);
        double critical = Fisher.Quantile(eitherWay ? significance / 2 : significance, degrees, degrees), square = ratio * ratio;
        double wrongWay = eitherWay ? Fisher.Cdf(1 / critical / square, degrees, degrees) : 0;
        return Fisher.Survival(critical / square, degrees, degrees) + wrongWay;
    }

    internal static TwoSpreads Compare(double s1, double nu1, double s2, double nu2, double level, int count)
    {
        double tail = (1 - Require.Level(level)) / 2, ratio = s1 / s2, f = ratio * ratio;
        double value = ratio * Quantiles.C4(nu2) / Quantiles.C4(nu1);
        double low = ratio / Math.Sqrt(Fisher.Quantile(tail, nu1, nu2)), high = ratio * Math.Sqrt(Fisher.Quantile(tail, nu2, nu1));
        // Spread of ln s is 1/(2 nu) to first order.
        double error = value * Math.Sqrt((1 / (2 * nu1)) + (1 / (2 * nu2)));
        double probability = Math.Min(1, 2 * Math.Min(Fisher.Survival(f, nu1, nu2), Fisher.Cdf(f, nu1, nu2)));
        return new(new(value, error, low, high, level, count, "ratio of sigmas, F interval, normal impacts"), probability);
    }

    internal static void RequireMoreThanOne(double ratio) => Require.InRange(ratio, Math.BitIncrement(1.0), double.MaxValue, "");
}
