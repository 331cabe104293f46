namespace Ascham.Flight;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How an arrow leaves: how fast, in which direction, and from where.</summary>
/// <remarks>World axes: downrange, up, to the archer's right. All distances to a target are measured from their origin, which the caller places (the eye, the nock).</remarks>
public sealed record Launch
{
    /// <summary>Speed over the ground; above 0, up to 300 m/s.</summary>
    public required Speed Speed
    {
        get;
        init
        {
            Require.Positive(value.MetersPerSecond, "m/s", nameof(Speed));
            Require.InRange(value.MetersPerSecond, 0, 300, "m/s", nameof(Speed));
            field = value;
        }
    }

    /// <summary>Angle above the horizontal; negative downwards; -89° to +89°.</summary>
    public required Angle Elevation
    {
        get;
        init
        {
            Require.InRange(value.Degrees, -89, 89, "degrees", nameof(Elevation));
            field = value;
        }
    }

    /// <summary>Angle to the right of downrange; negative to the left; -89° to +89°. Straight downrange when not given.</summary>
    public Angle Azimuth
    {
        get;
        init
        {
            Require.InRange(value.Degrees, -89, 89, "degrees", nameof(Azimuth));
            field = value;
        }
    }

    /// <summary>Where the flight starts, downrange of the origin. The origin when not given.</summary>
    public Length Forward { get; init => field = Finite(value, nameof(Forward)); }

    /// <summary>Where the flight starts, above the origin.</summary>
    public Length Up { get; init => field = Finite(value, nameof(Up)); }

    /// <summary>Where the flight starts, to the right of the origin.</summary>
    public Length Right { get; init => field = Finite(value, nameof(Right)); }

    internal LaunchSi Si => new(Speed.MetersPerSecond, Elevation.Radians, Azimuth.Radians, Forward.Meters, Up.Meters, Right.Meters);

    static Length Finite(Length value, string name)
    {
        Require.Finite(value.Meters, "m", name);
        return value;
    }
}

/// <summary>A launch in SI units: m/s, radians, metres.</summary>
readonly record struct LaunchSi(double Speed, double Elevation, double Azimuth = 0, double X = 0, double Y = 0, double Z = 0)
{
    /// <summary>Where the flight starts.</summary>
    internal Triple<Real> From => new(new(X), new(Y), new(Z));
}
