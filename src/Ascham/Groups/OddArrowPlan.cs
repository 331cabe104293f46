namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>How many shots of numbered arrows it takes to name an odd one, both axes taken together.</summary>
/// <remarks>
/// <b>Model.</b> Every arrow shot equally often about one centre; one arrow off by D sigmas; its probability multiplied by the number of arrows. Noncentral F with
/// noncentrality n D²(1 − 1/k). With ends that keep their own centres a few more shots are needed.
/// </remarks>
public static class OddArrowPlan
{
    /// <summary>Most shots of each arrow considered.</summary>
    public const int MostShots = 1000;

    /// <summary>Probability of naming an odd arrow.</summary>
    /// <param name="arrows">Number of arrows; 3 or more.</param>
    /// <param name="shotsEach">Shots of each; 2 or more.</param>
    /// <param name="offset">Its distance from the others over the archer's sigma; zero or more.</param>
    /// <param name="falseAlarm">How often any arrow at all may be named when all are alike, between 0 and 1.</param>
    /// <returns>The power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Power(int arrows, int shotsEach, double offset, double falseAlarm)
    {
        Require.InRange(arrows, 3, 10_000, "");
        Require.InRange(shotsEach, 2, MostShots, "");
        Require.NotNegative(offset, "");
        return Power(arrows, 2, shotsEach, offset, Require.Level(falseAlarm));
    }

    /// <summary>Fewest shots of each arrow that name an odd one with a power.</summary>
    /// <param name="arrows">Number of arrows; 3 or more.</param>
    /// <param name="offset">Its distance from the others over the archer's sigma; positive.</param>
    /// <param name="falseAlarm">How often any arrow at all may be named when all are alike, between 0 and 1.</param>
    /// <param name="power">Probability of naming it, between 0 and 1.</param>
    /// <returns>Shots of each arrow; null above <see cref="MostShots"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static int? ShotsEach(int arrows, double offset, double falseAlarm, double power)
    {
        Require.InRange(arrows, 3, 10_000, "");
        Require.Positive(offset, "");
        return Needed(arrows, 2, offset, Require.Level(falseAlarm), Require.Level(power));
    }

    /// <summary>Probability of noticing that arrows differ at all, without saying which.</summary>
    /// <param name="arrows">Number of arrows; 3 or more.</param>
    /// <param name="shotsEach">Shots of each; 2 or more.</param>
    /// <param name="tau">Sigma of the arrows' own offsets over the archer's sigma; zero or more.</param>
    /// <param name="falseAlarm">How often a difference may be claimed when there is none, between 0 and 1.</param>
    /// <returns>The power of the F test between arrows.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double PowerOfDifference(int arrows, int shotsEach, double tau, double falseAlarm)
    {
        Require.InRange(arrows, 3, 10_000, "");
        Require.InRange(shotsEach, 2, MostShots, "");
        Require.NotNegative(tau, "");
        double between = 2 * (arrows - 1.0), within = 2 * arrows * (shotsEach - 1.0);
        return NoncentralF.Survival(NoncentralF.UpperQuantile(Require.Level(falseAlarm), between, within) / (1 + (shotsEach * tau * tau)), between, within);
    }

    internal static int? Needed(int arrows, int axes, double offset, double falseAlarm, double power) =>
        Fewest.From(2, MostShots, n => Power(arrows, axes, n, offset, falseAlarm) >= power);

    static double Power(int arrows, int axes, int shotsEach, double offset, double falseAlarm)
    {
        double within = axes * arrows * (shotsEach - 1.0);
        return NoncentralF.Survival(NoncentralF.UpperQuantile(falseAlarm / arrows, axes, within), axes, within, shotsEach * offset * offset * (1 - (1.0 / arrows)));
    }
}
