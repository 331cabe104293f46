namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Flight of an arrow as a point mass in three dimensions: quadratic drag, gravity, wind.</summary>
/// <remarks>
/// <para>The arrow is taken to point along its path through the air at every moment. Left out, with their size at 60 yd:
/// the angle of attack after release (not sized by this model), lift, spin, the change of the air over the path,
/// buoyancy (about 2 mm) and the earth's rotation (about 2 mm sideways).</para>
/// <para>The march goes by distance toward the face, so faces are met exactly. Accuracy of the integration: better than 1e-6 m
/// for speeds 40 to 120 m/s, k to 0.004 1/m, lines of sight within 60° of level, 5 to 120 m, winds to 10 m/s and paths that meet
/// the face within 70° of its normal; the same with drag that follows the speed and with wind that varies.</para>
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

    /// <summary>Velocity of the air: steady, in stretches along the line of sight, or growing with height.</summary>
    public required WindField Wind { get; init => field = NotNull(value, nameof(Wind)); }

    /// <summary>The same flight in SI units.</summary>
    internal PointMassSi Si => PointMassSi.Of(Drag, Air, Gravity.Si).In(Wind);

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
    /// <returns><see langword="false"/> when the face is behind the launch point, the launch points away from it, the arrow does not get there, or its drag is not known at a speed of the flight.</returns>
    public bool TryAt(Launch launch, Length downrange, out FlightState state) => TryAtSlant(launch, downrange, Angle.Zero, out state);

    /// <summary>Where and how the arrow meets a face that stands square to an inclined line of sight.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <returns>The state on that face; <see cref="FlightState.AboveLine"/> gives the height of the strike above the line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, the launch points away from it, or the inclination is outside its range.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    /// <exception cref="DragUnknownException">A drag that follows the speed is not known at a speed of this flight.</exception>
    public FlightState AtSlant(Launch launch, Length slantDistance, Angle inclination)
    {
        LaunchSi from = Checked(launch, slantDistance, inclination);
        Outcome outcome = Si.Fly(from, slantDistance.Meters, inclination.Radians, out StateSi state, out double reach);
        ThrowUnlessMet(outcome, from, slantDistance, inclination, reach);
        return new(state);
    }

    /// <summary>As <see cref="AtSlant"/>, telling by the result whether the arrow gets there.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <param name="state">The state on that face when it gets there.</param>
    /// <returns><see langword="false"/> when the face is behind the launch point, the launch points away from it, the arrow does not get there, or its drag is not known at a speed of the flight.</returns>
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

    /// <summary>The impact with the least, the likely and the most drag; for an arrow whose drag was not measured.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <param name="bound">The drags; this flight's own is left aside.</param>
    /// <returns>The three impacts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, the launch points away from it, or the inclination is outside its range.</exception>
    /// <exception cref="OutOfReachException">With one of the drags the arrow does not get there.</exception>
    /// <exception cref="DragUnknownException">One of the drags is not known at a speed of this flight.</exception>
    public FlightBound AtBounds(Launch launch, Length slantDistance, Angle inclination, DragBound bound)
    {
        ArgumentNullException.ThrowIfNull(bound);
        FlightState With(Drag drag) => (this with { Drag = drag }).AtSlant(launch, slantDistance, inclination);
        return new(With(bound.Low), With(bound.Likely), With(bound.High), inclination, bound.HowObtained);
    }

    /// <summary>How the impact moves with every input of the flight, from one pass.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <returns>The impact and its derivatives; for any drag and any wind.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, the launch points away from it, or the inclination is outside its range.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    /// <exception cref="DragUnknownException">A drag that follows the speed is not known at a speed of this flight.</exception>
    public ImpactSensitivities SensitivitiesAt(Launch launch, Length slantDistance, Angle inclination)
    {
        LaunchSi from = Checked(launch, slantDistance, inclination);
        PointMassSi mass = Si;
        Outcome outcome = Sensitivity.Fly(mass, from, Face.Square(slantDistance.Meters, inclination.Radians), 0, out Sensitivity s, out double reach);
        ThrowUnlessMet(outcome, from, slantDistance, inclination, reach);

        double toProportion = mass.Curve is null ? mass.K : 1; // from per 1/m to per 1, where drag is one constant
        return new()
        {
            Impact = new(s.State),
            LaunchSpeed = s.By<Speed>(Sensitivity.Speed),
            Elevation = s.By<Angle>(Sensitivity.Elevation),
            Azimuth = s.By<Angle>(Sensitivity.Azimuth),
            DragConstant = mass.Curve is null ? s.By<ReciprocalLength>(Sensitivity.Drag) : null,
            Drag = s.By<Ratio>(Sensitivity.Drag, toProportion),
            Mass = s.By<Ratio>(Sensitivity.Drag, -toProportion),
            Density = mass.Curve is null ? s.By<Ratio>(Sensitivity.Drag, toProportion) : s.By<Ratio>(Sensitivity.Density),
            TailWind = s.By<Speed>(Sensitivity.Tail),
            WindFromLeft = s.By<Speed>(Sensitivity.Across),
            Updraught = s.By<Speed>(Sensitivity.Up),
            Range = s.ByRange,
        };
    }

    void ThrowUnlessMet(Outcome outcome, in LaunchSi from, Length distance, Angle inclination, double reach)
    {
        switch (outcome)
        {
            case Outcome.Met:
                return;
            case Outcome.TooFar:
                throw new OutOfReachException(distance, Length.FromMeters(reach), inclination);
            case Outcome.Uncovered:
                throw Uncovered(reach);
            default:
                throw Away(from, distance.Meters, inclination);
        }
    }

    static LaunchSi Checked(Launch launch, Length distance, Angle inclination)
    {
        ArgumentNullException.ThrowIfNull(launch);
        Require.Finite(distance.Meters, "m", nameof(distance));
        Require.InRange(inclination.Degrees, -80, 80, "degrees", nameof(inclination));
        return launch.Si;
    }

    DragUnknownException Uncovered(double reach)
    {
        (double low, double high) = Drag.Curve!.Speeds(Air);
        return new(Speed.FromMetersPerSecond(low), Speed.FromMetersPerSecond(high), Length.FromMeters(reach));
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
