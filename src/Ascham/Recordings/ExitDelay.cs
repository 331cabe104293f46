namespace Ascham.Recordings;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How long after the sound that is taken for the release the arrow leaves the string.</summary>
/// <remarks>
/// A bow is heard twice: faintly as the string is let go, with the arrow sliding along, and loudly a hundredth of a second later, as string and limbs come to rest and the arrow
/// is off. <see cref="Listening"/> times the loud one. No measurement of either against the exit was found: the numbers are stated, wide, and yours to replace.
/// </remarks>
public sealed record ExitDelay
{
    ExitDelay(double delay, double error, string because) => (DelaySi, ErrorSi, Because) = (delay, error, because);

    /// <summary>From the sound to the exit; negative when the sound comes after the exit.</summary>
    public Duration Delay => Duration.FromSeconds(DelaySi);

    /// <summary>Its standard error; shared by all shots with this bow.</summary>
    public Duration Error => Duration.FromSeconds(ErrorSi);

    /// <summary>Where the numbers come from.</summary>
    public string Because { get; }

    /// <summary>The loud sound is that of string and limbs coming to rest, about as the arrow leaves: 0 ms with a standard error of 2 ms.</summary>
    public static ExitDelay AtTheBlow { get; } = new(0, 0.002, "the loud sound comes as the arrow leaves, give or take 2 ms (common practice, no source)"); // common practice, no source

    internal double DelaySi { get; }

    internal double ErrorSi { get; }

    /// <summary>The sound is the very letting go, and the arrow leaves after the whole power stroke.</summary>
    /// <remarks>
    /// Over a stroke s to the speed v: 2 s/v under a constant force, (π/2) s/v under one that falls evenly to nothing, as of a recurve or longbow; but a bow with let-off
    /// starts the arrow slowly and takes up to 2.9 s/v. Not knowing the let-off, anything between is taken as alike likely. For 0.53 m and 85 m/s: 13.9 ms with a standard error of 2.4 ms.
    /// The moving mass is taken as constant, and the force as that of the slow draw.
    /// </remarks>
    /// <param name="powerStroke">Draw length less 1.75 in less brace height; 0.1 m to 1 m.</param>
    /// <param name="launchSpeed">About; 20 to 150 m/s.</param>
    /// <returns>The delay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay OverTheStroke(Length powerStroke, Speed launchSpeed)
        => Between(Math.PI / 2, Longest, Unit(powerStroke, launchSpeed), "the whole power stroke, let-off not known");

    /// <summary>The sound is the very letting go, and the arrow leaves after the whole power stroke of a bow whose let-off is known.</summary>
    /// <remarks>
    /// Without let-off between (π/2) s/v and 2 s/v, even. With it the force is taken to rise from (1 − let-off) of the peak over 10 to 35 % of the stroke, to stay, and to fall to nothing over
    /// the last fifth: worked out by integration. 80 %: 2.3 to 2.8 s/v. Same limits as without: constant moving mass, force of the slow draw.
    /// </remarks>
    /// <param name="powerStroke">Draw length less 1.75 in less brace height; 0.1 m to 1 m.</param>
    /// <param name="launchSpeed">About; 20 to 150 m/s.</param>
    /// <param name="letOff">(Peak − holding)/peak; 0 to 90 %.</param>
    /// <returns>The delay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay OverTheStroke(Length powerStroke, Speed launchSpeed, Ratio letOff)
    {
        double off = Require.InRange(letOff.DecimalFractions, 0, 0.9, "", nameof(letOff)), unit = Unit(powerStroke, launchSpeed);
        return off == 0
            ? Between(Math.PI / 2, 2, unit, "the whole power stroke, between constant and evenly falling force")
            : Between(StrokeTime(off, 0.10), StrokeTime(off, 0.35), unit, "the whole power stroke, from the let-off");
    }

    /// <summary>The sound is somewhere from the letting go to the exit, one as likely as the other: for a recording in which the two cannot be told apart.</summary>
    /// <param name="powerStroke">Draw length less 1.75 in less brace height; 0.1 m to 1 m.</param>
    /// <param name="launchSpeed">About; 20 to 150 m/s.</param>
    /// <returns>The delay: 1.45 s/v, with the standard error of an even spread from nothing to all of the longest stroke, 2.9 s/v; without let-off that is wider than need be.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay Anywhere(Length powerStroke, Speed launchSpeed)
        => Between(0, Longest, Unit(powerStroke, launchSpeed), "anywhere within the power stroke");

    /// <summary>As you measured it.</summary>
    /// <param name="delay">From the sound to the exit; -50 ms to 50 ms.</param>
    /// <param name="error">Its standard error; zero or more.</param>
    /// <param name="because">How you know.</param>
    /// <returns>The delay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay Measured(Duration delay, Duration error, string because)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(because);
        return new(Require.InRange(delay.Seconds, -0.05, 0.05, "s", nameof(delay)), Require.NotNegative(error.Seconds, "s", nameof(error)), because);
    }

    const double Longest = 2.9; // s/v: let-off 85 %, regained over a third of the stroke

    static ExitDelay Between(double least, double most, double unit, string because) => new(unit * (least + most) / 2, unit * (most - least) / Math.Sqrt(12), because);

    /// <summary>Time over the stroke by s/v, of a force that rises over a share of the stroke, stays, and falls over the last fifth.</summary>
    internal static double StrokeTime(double letOff, double rise)
    {
        const double Fall = 0.2;
        const int Steps = 2000;
        double Work(double x) => x < rise ? (1 - letOff) * x + letOff * x * x / (2 * rise)
            : x < 1 - Fall ? x - letOff * rise / 2
            : 1 - Fall / 2 - letOff * rise / 2 - (1 - x) * (1 - x) / (2 * Fall);
        double whole = Work(1), time = 0;
        for (int i = 0; i < Steps; i++)
        {
            double root = (i + 0.5) / Steps; // x = root² takes the start, where the speed is nothing, out of the integral
            time += 2 * root / Math.Sqrt(Work(root * root) / whole) / Steps;
        }

        return time;
    }

    static double Unit(Length stroke, Speed speed)
        => Require.InRange(stroke.Meters, 0.1, 1, "m", nameof(stroke)) / Require.InRange(speed.MetersPerSecond, 20, 150, "m/s", nameof(speed));
}
