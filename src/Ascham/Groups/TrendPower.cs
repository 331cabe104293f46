namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.RootFinding;

/// <summary>How much drift along a string a number of arrows can show.</summary>
/// <remarks>
/// <b>Model.</b> Strings of equal length, each with its own level, one slope along one axis, normal, same sigma: the two-sided test of
/// <see cref="Trend{T}.Probability"/>, noncentral F with 1 and N − strings − 1 degrees of freedom.
/// </remarks>
public static class TrendPower
{
    /// <summary>Probability of showing a drift.</summary>
    /// <param name="strings">Number of strings; 1 or more.</param>
    /// <param name="arrows">Arrows in each string; 3 or more.</param>
    /// <param name="drift">Drift from first to last arrow of a string over sigma; zero or more.</param>
    /// <param name="falseAlarm">Probability of being told of a drift when there is none, between 0 and 1.</param>
    /// <returns>The power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Of(int strings, int arrows, double drift, double falseAlarm)
    {
        Require.InRange(strings, 1, 10_000, "");
        Require.InRange(arrows, 3, 10_000, "");
        Require.NotNegative(drift, "");
        Require.Level(falseAlarm);
        double nu = (strings * (arrows - 1.0)) - 1, slope = drift / (arrows - 1), places = arrows * ((arrows * (double)arrows) - 1) / 12;
        return NoncentralF.Survival(NoncentralF.UpperQuantile(falseAlarm, 1, nu), 1, nu, strings * slope * slope * places);
    }

    /// <summary>Smallest drift shown with a power.</summary>
    /// <param name="strings">Number of strings; 1 or more.</param>
    /// <param name="arrows">Arrows in each string; 3 or more.</param>
    /// <param name="falseAlarm">Probability of being told of a drift when there is none, between 0 and 1.</param>
    /// <param name="power">Probability of being told of the drift when it is there, above <paramref name="falseAlarm"/> and below 1.</param>
    /// <returns>The drift from first to last arrow of a string, over sigma.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Detectable(int strings, int arrows, double falseAlarm, double power)
    {
        Require.InRange(power, Require.Level(falseAlarm), 1 - 1e-9, "");
        double high = 1;
        while (Of(strings, arrows, high, falseAlarm) < power)
        {
            high *= 2;
        }

        return Brent.FindRoot(drift => Of(strings, arrows, drift, falseAlarm) - power, 0, high, 1e-11, 200);
    }
}
