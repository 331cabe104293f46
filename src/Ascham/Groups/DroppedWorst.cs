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
        return dropped == 1 ? OneOut[shot - 3] : TwoOut[shot - 4];
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

    // Mean of s/c of the rest over sigma; simulated, standard error 0.0005 and below (docs/validation/groups-comparison.md). From 3 arrows shot.
    static readonly double[] OneOut =
    [
        0.5882, 0.7182, 0.7745, 0.8080, 0.8308, 0.8485, 0.8620, 0.8734, 0.8821, 0.8898,
        0.8964, 0.9022, 0.9075, 0.9115, 0.9152, 0.9191, 0.9222, 0.9252, 0.9281, 0.9305,
        0.9327, 0.9349, 0.9370, 0.9387, 0.9401, 0.9420, 0.9435, 0.9453,
    ];

    // From 4 arrows shot.
    static readonly double[] TwoOut =
    [
        0.6139, 0.6571, 0.6936, 0.7231, 0.7482, 0.7677, 0.7850, 0.7989, 0.8111, 0.8217,
        0.8312, 0.8397, 0.8468, 0.8531, 0.8594, 0.8647, 0.8698, 0.8745, 0.8786, 0.8824,
        0.8860, 0.8896, 0.8926, 0.8953, 0.8984, 0.9009, 0.9037,
    ];
}
