namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>How two groups of equal size are compared.</summary>
public enum ShiftTest
{
    /// <summary>Both axes, one sigma: F with 2 and 4n − 4 degrees of freedom. The default for round groups.</summary>
    RoundGroups,

    /// <summary>Both axes, any shape: Hotelling's T², F with 2 and 2n − 3 degrees of freedom.</summary>
    AnyShape,

    /// <summary>One axis, say heights, its variance pooled over both axes of round groups: F with 1 and 4n − 4 degrees of freedom.</summary>
    OneAxis,
}

/// <summary>How many arrows it takes to show that the centre has moved.</summary>
/// <remarks>
/// <para><b>Model.</b> Two groups of n arrows each, normal, same sigma; the shift d between them; noncentral F with noncentrality n(d/sigma)²/2.</para>
/// <para><b>Limits.</b> Sigma is taken as known when planning. A baseline known better than n arrows tell it needs fewer; an archer who wanders from day to day more.</para>
/// </remarks>
public static class ShiftPower
{
    /// <summary>Largest group considered.</summary>
    public const int MostArrows = 100_000;

    /// <summary>Probability that a test shows a shift.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="shift">The shift over sigma of one axis; zero or more.</param>
    /// <param name="test">How the groups are compared.</param>
    /// <param name="falseAlarm">Probability of being told of a shift when there is none, between 0 and 1.</param>
    /// <returns>The power; <paramref name="falseAlarm"/> when there is no shift.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Of(int arrows, double shift, ShiftTest test, double falseAlarm)
    {
        Require.InRange(arrows, 2, MostArrows, "");
        Require.NotNegative(shift, "");
        Require.Level(falseAlarm);
        var (nu1, nu2) = Freedom(arrows, test);
        return NoncentralF.Survival(NoncentralF.UpperQuantile(falseAlarm, nu1, nu2), nu1, nu2, arrows * shift * shift / 2);
    }

    /// <summary>Fewest arrows in each group that show a shift with a power.</summary>
    /// <param name="shift">The shift over sigma of one axis; positive.</param>
    /// <param name="test">How the groups are compared.</param>
    /// <param name="falseAlarm">Probability of being told of a shift when there is none, between 0 and 1.</param>
    /// <param name="power">Probability of being told of the shift when it is there, above <paramref name="falseAlarm"/> and below 1.</param>
    /// <returns>The number of arrows in each group; null above <see cref="MostArrows"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static int? Arrows(double shift, ShiftTest test, double falseAlarm, double power)
    {
        Require.Positive(shift, "");
        CheckPower(falseAlarm, power);
        return Fewest.From(2, MostArrows, n => Of(n, shift, test, falseAlarm) >= power);
    }

    /// <summary>Smallest shift that a number of arrows shows with a power.</summary>
    /// <param name="arrows">Arrows in each group; 2 or more.</param>
    /// <param name="test">How the groups are compared.</param>
    /// <param name="falseAlarm">Probability of being told of a shift when there is none, between 0 and 1.</param>
    /// <param name="power">Probability of being told of the shift when it is there, above <paramref name="falseAlarm"/> and below 1.</param>
    /// <returns>The shift over sigma of one axis.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Detectable(int arrows, ShiftTest test, double falseAlarm, double power)
    {
        Require.InRange(arrows, 2, MostArrows, "");
        CheckPower(falseAlarm, power);
        double high = 1;
        while (Of(arrows, high, test, falseAlarm) < power)
        {
            high *= 2;
        }

        return MathNet.Numerics.RootFinding.Brent.FindRoot(shift => Of(arrows, shift, test, falseAlarm) - power, 0, high, 1e-11, 200);
    }

    static void CheckPower(double falseAlarm, double power)
    {
        Require.Level(falseAlarm);
        Require.Level(power);
        if (power <= falseAlarm)
        {
            throw new ArgumentOutOfRangeException(nameof(power), power, FormattableString.Invariant(
                $"power must be above falseAlarm, {falseAlarm}; it was {power}. 0.8 or 0.9 is usual."));
        }
    }

    static (double Nu1, double Nu2) Freedom(int n, ShiftTest test) => test switch
    {
        ShiftTest.RoundGroups => (2, (4 * n) - 4),
        ShiftTest.AnyShape => (2, (2 * n) - 3),
        ShiftTest.OneAxis => (1, (4 * n) - 4),
        _ => throw new ArgumentOutOfRangeException(nameof(test), test, "test must be one of the named ones."),
    };
}
