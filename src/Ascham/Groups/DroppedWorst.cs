namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

/// <summary>What leaving out the worst arrow, or the worst groups, does to the spread reported.</summary>
/// <remarks>
/// <para><b>Model.</b> Round normal groups with nothing wrong. The worst arrow is the one farthest from the mean of all; the rest is reported as if it were a complete group.</para>
/// <para><b>Source.</b> Computed for this table, see docs/validation/groups-comparison.md.</para>
/// </remarks>
public static class DroppedWorst
{
    /// <summary>Sigma reported over true sigma, on average, when the worst arrows of each group are left out.</summary>
    /// <param name="shot">Arrows shot, 3 to 30.</param>
    /// <param name="dropped">Arrows left out: 1 or 2, leaving at least two.</param>
    /// <returns>For example 0.775 for the best four of five: the group looks 22 % tighter than it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double SigmaRatio(int shot, int dropped)
    {
        Require.InRange(dropped, 1, 2, "");
        Require.InRange(shot, 2 + dropped, 30, "");
        return (dropped == 1 ? OneOut : TwoOut)[shot - 3];
    }

    /// <summary>Sigma reported over true sigma, on average, when only the tightest of several groups is shown.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="groups">Groups shot; 1 or more.</param>
    /// <returns>For example 0.600 for the best of five three-arrow groups.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double BestGroupRatio(int arrows, int groups)
    {
        Require.InRange(arrows, 2, 1000, "");
        Require.InRange(groups, 1, 1000, "");
        double nu = 2.0 * (arrows - 1), high = 1 + (9 / Math.Sqrt(2 * nu)) + (9 / nu);
        // Mean of the smallest of several is the integral of the chance that all are larger.
        double Larger(double x) => Math.Pow(SpecialFunctions.GammaUpperRegularized(nu / 2, nu * x * x / 2), groups);
        return GaussLegendreRule.Integrate(Larger, 0, high, 128) / Quantiles.C4(nu);
    }

    // Mean of s/c of the rest over sigma, 3 arrows shot and up; simulated, standard error 0.0003 and below.
    static readonly double[] OneOut = new double[28];

    static readonly double[] TwoOut = new double[28];
}
