namespace Ascham.Flight;

using UnitsNet;

/// <summary>An arrow at one moment of its flight: when, where, and how fast over the ground.</summary>
/// <remarks>World axes: x level downrange, y up, z to the archer's right.</remarks>
public readonly record struct FlightState
{
    internal FlightState(in StateSi si) => Si = si;

    /// <summary>Time since the launch.</summary>
    public Duration Time => Duration.FromSeconds(Si.Time);

    /// <summary>Level distance from the origin.</summary>
    public Length Downrange => Length.FromMeters(Si.X);

    /// <summary>Height above the origin.</summary>
    public Length Up => Length.FromMeters(Si.Y);

    /// <summary>Offset to the archer's right.</summary>
    public Length Right => Length.FromMeters(Si.Z);

    /// <summary>Speed over the ground.</summary>
    public Speed Speed => Speed.FromMetersPerSecond(Si.Speed);

    /// <summary>Downrange component of the velocity.</summary>
    public Speed SpeedDownrange => Speed.FromMetersPerSecond(Si.Vx);

    /// <summary>Upward component of the velocity.</summary>
    public Speed SpeedUp => Speed.FromMetersPerSecond(Si.Vy);

    /// <summary>Component of the velocity to the archer's right.</summary>
    public Speed SpeedRight => Speed.FromMetersPerSecond(Si.Vz);

    /// <summary>Angle of the path above the horizontal; negative when falling.</summary>
    public Angle Elevation => Angle.FromRadians(Math.Atan2(Si.Vy, Math.Sqrt(Si.Vx * Si.Vx + Si.Vz * Si.Vz)));

    /// <summary>The state in SI units.</summary>
    internal StateSi Si { get; }

    /// <summary>Height above a line of sight from the origin, measured at right angles to it: where the arrow strikes a face that stands square to the line.</summary>
    /// <param name="inclination">Of the line of sight; positive uphill.</param>
    /// <returns>Positive above the line.</returns>
    public Length AboveLine(Angle inclination) => Length.FromMeters(Si.Above(inclination.Radians));
}

/// <summary>State in SI units: seconds, metres, metres per second.</summary>
readonly record struct StateSi(double Time, double X, double Y, double Z, double Vx, double Vy, double Vz)
{
    internal double Speed => Math.Sqrt(Vx * Vx + Vy * Vy + Vz * Vz);

    /// <summary>Height above a line from the origin at this inclination (radians), at right angles to it.</summary>
    internal double Above(double inclination)
    {
        (double sin, double cos) = Math.SinCos(inclination);
        return Y * cos - X * sin;
    }
}
