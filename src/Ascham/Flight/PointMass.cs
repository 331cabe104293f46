namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Flight of an arrow as a point mass in three dimensions: quadratic drag, gravity, a steady uniform wind.</summary>
/// <remarks>
/// <para>The arrow is taken to point along its path through the air at every moment. Left out, with their size at 60 yd:
/// the angle of attack after release (not sized by this model), lift, spin, the change of the air over the path,
/// buoyancy (about 2 mm) and the earth's rotation (about 2 mm sideways).</para>
/// <para>The march goes by distance toward the face, so faces are met exactly. Accuracy of the integration: better than 1e-6 m
/// for speeds 40 to 120 m/s, k to 0.004 1/m, lines of sight within 60° of level, 5 to 120 m, winds to 10 m/s and paths that meet
/// the face within 70° of its normal.</para>
/// <para>Equations and checks: docs/models/flight.md.</para>
/// </remarks>
public sealed record PointMass
{
    /// <summary>How the air holds the arrow back.</summary>
    public required Drag Drag { get; init => field = NotNull(value, nameof(Drag)); }

    /// <summary>The air flown through.</summary>
    public required Air Air { get; init => field = NotNull(value, nameof(Air)); }

    /// <summary>Gravity at the place.</summary>
    public required Gravity Gravity
    {
        get;
        init
        {
            Require.Positive(value.Si, "m/s²", nameof(Gravity)); // a Gravity never built is zero
            field = value;
        }
    }

    /// <summary>Velocity of the air.</summary>
    public required Wind Wind { get; init => field = NotNull(value, nameof(Wind)); }

    /// <summary>The same flight in SI units.</summary>
    internal PointMassSi Si => new(Drag.PerMetreIn(Air), Gravity.Si, Wind.AlongSi, Wind.UpSi, Wind.AcrossSi);

    /// <summary>Where and how the arrow passes a distance downrange.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="downrange">Level distance from the origin to an upright face; not behind the launch point.</param>
    /// <returns>The state on that face.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, or the launch points away from it.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    public FlightState At(Launch launch, Length downrange) => AtSlant(launch, downrange, Angle.Zero);

    /// <summary>As <see cref="At"/>, telling by the result whether the arrow gets there.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="downrange">Level distance from the origin to an upright face.</param>
    /// <param name="state">The state on that face when it gets there.</param>
    /// <returns><see langword="false"/> when the face is behind the launch point, the launch points away from it, or the arrow does not get there.</returns>
    public bool TryAt(Launch launch, Length downrange, out FlightState state) => TryAtSlant(launch, downrange, Angle.Zero, out state);

    /// <summary>Where and how the arrow meets a face that stands square to an inclined line of sight.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <returns>The state on that face; <see cref="FlightState.AboveLine"/> gives the height of the strike above the line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, the launch points away from it, or the inclination is outside its range.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    public FlightState AtSlant(Launch launch, Length slantDistance, Angle inclination)
    {
        LaunchSi from = Checked(launch, slantDistance, inclination);
        Outcome outcome = Si.Fly(from, slantDistance.Meters, inclination.Radians, out StateSi state, out double reach);
        return outcome switch
        {
            Outcome.Met => new(state),
            Outcome.TooFar => throw new OutOfReachException(slantDistance, Length.FromMeters(reach), inclination),
            _ => throw Away(from, slantDistance.Meters, inclination),
        };
    }

    /// <summary>As <see cref="AtSlant"/>, telling by the result whether the arrow gets there.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <param name="state">The state on that face when it gets there.</param>
    /// <returns><see langword="false"/> when the face is behind the launch point, the launch points away from it, or the arrow does not get there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number, or the inclination is outside its range.</exception>
    public bool TryAtSlant(Launch launch, Length slantDistance, Angle inclination, out FlightState state)
    {
        LaunchSi from = Checked(launch, slantDistance, inclination);
        bool met = Si.Fly(from, slantDistance.Meters, inclination.Radians, out StateSi end, out _) == Outcome.Met;
        state = met ? new(end) : default;
        return met;
    }

    /// <summary>The states at several distances downrange.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="downrange">Level distances from the origin, in any order.</param>
    /// <returns>One state per distance, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A distance is behind the launch point, or the launch points away from downrange.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get to one of them.</exception>
    public IReadOnlyList<FlightState> Path(Launch launch, IEnumerable<Length> downrange)
    {
        ArgumentNullException.ThrowIfNull(downrange);
        return [.. downrange.Select(distance => At(launch, distance))];
    }

    static LaunchSi Checked(Launch launch, Length distance, Angle inclination)
    {
        ArgumentNullException.ThrowIfNull(launch);
        Require.Finite(distance.Meters, "m", nameof(distance));
        Require.InRange(inclination.Degrees, -80, 80, "degrees", nameof(inclination));
        return launch.Si;
    }

    static ArgumentOutOfRangeException Away(in LaunchSi launch, double distance, Angle inclination)
    {
        (double sin, double cos) = Math.SinCos(inclination.Radians);
        double start = launch.X * cos + launch.Y * sin;
        string text = distance < start
            ? FormattableString.Invariant($"The face at {distance:0.###} m stands behind the launch point, which is at {start:0.###} m along the line; give a distance beyond it.")
            : FormattableString.Invariant($"The launch, {launch.Elevation * 180 / Math.PI:0.#}° above the horizontal and {launch.Azimuth * 180 / Math.PI:0.#}° to the right, points away from a face square to a line at {inclination.Degrees:0.#}°; it must stand within 88° of the line.");
        return new(nameof(distance), distance, text);
    }

    static T NotNull<T>(T value, string name)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value;
    }
}
