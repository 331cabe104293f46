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
    /// Over a stroke s to the speed v: 2 s/v under a constant force, (π/2) s/v under one that falls evenly to nothing; between them, even. For 0.53 m and 85 m/s: 11.1 ms with a standard error of 0.8 ms.
    /// </remarks>
    /// <param name="powerStroke">Draw length less 1.75 in less brace height; 0.1 m to 1 m.</param>
    /// <param name="launchSpeed">About; 20 to 150 m/s.</param>
    /// <returns>The delay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay OverTheStroke(Length powerStroke, Speed launchSpeed)
    {
        double unit = Unit(powerStroke, launchSpeed);
        return new(unit * (2 + Math.PI / 2) / 2, unit * (2 - Math.PI / 2) / Math.Sqrt(12), "the whole power stroke, between constant and evenly falling force");
    }

    /// <summary>The sound is somewhere from the letting go to the exit, one as likely as the other: for a recording in which the two cannot be told apart.</summary>
    /// <param name="powerStroke">Draw length less 1.75 in less brace height; 0.1 m to 1 m.</param>
    /// <param name="launchSpeed">About; 20 to 150 m/s.</param>
    /// <returns>The delay: s/v, with the standard error of an even spread from 0 to 2 s/v.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ExitDelay Anywhere(Length powerStroke, Speed launchSpeed)
    {
        double unit = Unit(powerStroke, launchSpeed);
        return new(unit, 2 * unit / Math.Sqrt(12), "anywhere within the power stroke");
    }

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

    static double Unit(Length stroke, Speed speed)
        => Require.InRange(stroke.Meters, 0.1, 1, "m", nameof(stroke)) / Require.InRange(speed.MetersPerSecond, 20, 150, "m/s", nameof(speed));
}
