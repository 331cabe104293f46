namespace Ascham.Air;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A steady, uniform wind as a vector: where the air goes, not where it comes from.</summary>
/// <remarks>Seen by the archer facing downrange. Real wind is neither steady nor uniform; a hand meter is good to about 0.5 m/s (common practice, no source).</remarks>
public sealed record Wind : WindField
{
    Wind(double along, double up, double across) => (AlongSi, UpSi, AcrossSi) = (along, up, across);

    /// <summary>No wind.</summary>
    public static Wind Calm { get; } = new(0, 0, 0);

    /// <summary>Along the range: a tail wind is positive, a head wind negative.</summary>
    public Speed Tail => Speed.FromMetersPerSecond(AlongSi);

    /// <summary>Straight up positive.</summary>
    public Speed Up => Speed.FromMetersPerSecond(UpSi);

    /// <summary>Across the range: blowing from left to right is positive.</summary>
    public Speed FromLeft => Speed.FromMetersPerSecond(AcrossSi);

    internal double AlongSi { get; }

    internal double UpSi { get; }

    internal double AcrossSi { get; }

    /// <summary>A wind by its components; each between -60 and +60 m/s.</summary>
    /// <param name="tail">Tail wind positive, head wind negative.</param>
    /// <param name="fromLeft">From left to right positive.</param>
    /// <param name="up">Updraught positive.</param>
    /// <returns>The wind.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A component is not a number or outside its range.</exception>
    public static Wind Of(Speed tail, Speed fromLeft, Speed up) => new(
        Require.InRange(tail.MetersPerSecond, -60, 60, "m/s", nameof(tail)),
        Require.InRange(up.MetersPerSecond, -60, 60, "m/s", nameof(up)),
        Require.InRange(fromLeft.MetersPerSecond, -60, 60, "m/s", nameof(fromLeft)));

    /// <summary>A level wind by its components; each between -60 and +60 m/s.</summary>
    /// <param name="tail">Tail wind positive, head wind negative.</param>
    /// <param name="fromLeft">From left to right positive.</param>
    /// <returns>The wind.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A component is not a number or outside its range.</exception>
    public static Wind Of(Speed tail, Speed fromLeft) => Of(tail, fromLeft, Speed.Zero);

    /// <summary>A level wind by the clock face: where it comes from, the target standing at 12.</summary>
    /// <param name="speed">Zero or more, up to 60 m/s.</param>
    /// <param name="oClock">12 is a head wind, 3 from the right, 6 a tail wind, 9 from the left; 0 to 12.</param>
    /// <returns>The wind.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Wind FromClock(Speed speed, double oClock)
    {
        double v = Require.InRange(speed.MetersPerSecond, 0, 60, "m/s", nameof(speed));
        double angle = Require.InRange(oClock, 0, 12, "o'clock") * Math.PI / 6;
        return new(-v * Math.Cos(angle), 0, -v * Math.Sin(angle));
    }
}
