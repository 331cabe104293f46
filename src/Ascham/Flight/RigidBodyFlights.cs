namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

public sealed partial record RigidBody
{
    /// <summary>Where, how and pointing where the arrow passes a distance downrange.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="downrange">Level distance from the origin to an upright face; not behind the launch point.</param>
    /// <returns>The state on that face, of the balance point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, or the launch points away from it.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    /// <exception cref="TumbledException">The angle of attack passes 30° on the way.</exception>
    public RigidState At(RigidLaunch launch, Length downrange) => AtSlant(launch, downrange, Angle.Zero);

    /// <summary>As <see cref="At"/>, telling by the result whether the arrow gets there.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="downrange">Level distance from the origin to an upright face.</param>
    /// <param name="state">The state on that face when it gets there.</param>
    /// <returns><see langword="false"/> when it does not get there, or tumbles on the way.</returns>
    public bool TryAt(RigidLaunch launch, Length downrange, out RigidState state) => TryAtSlant(launch, downrange, Angle.Zero, out state);

    /// <summary>Where, how and pointing where the arrow meets a face that stands square to an inclined line of sight.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <returns>The state on that face, of the balance point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The face is behind the launch point, the launch points away from it, or the inclination is outside its range.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    /// <exception cref="TumbledException">The angle of attack passes 30° on the way.</exception>
    public RigidState AtSlant(RigidLaunch launch, Length slantDistance, Angle inclination)
    {
        RigidFlight flight = Start(launch, slantDistance, inclination);
        Fly(ref flight, launch, slantDistance, inclination);
        return new(flight.Here);
    }

    /// <summary>As <see cref="AtSlant"/>, telling by the result whether the arrow gets there.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="slantDistance">Along the line, from the origin to the face.</param>
    /// <param name="inclination">Of the line; positive uphill; -80° to +80°.</param>
    /// <param name="state">The state on that face when it gets there.</param>
    /// <returns><see langword="false"/> when it does not get there, or tumbles on the way.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number, or the inclination is outside its range.</exception>
    public bool TryAtSlant(RigidLaunch launch, Length slantDistance, Angle inclination, out RigidState state)
    {
        RigidFlight flight = Start(launch, slantDistance, inclination);
        bool met = flight.To(slantDistance.Meters) == RigidOutcome.Met;
        state = met ? new(flight.Here) : default;
        return met;
    }

    /// <summary>Where, how and pointing where each of many launches passes a distance downrange, on all cores.</summary>
    /// <param name="launches">The launches.</param>
    /// <param name="downrange">Level distance from the origin to an upright face; not behind a launch point.</param>
    /// <param name="threads">Most threads at work; all cores when <see langword="null"/>.</param>
    /// <returns>One state per launch, in their order; the same as <see cref="At"/> to the last bit.</returns>
    /// <exception cref="AggregateException">Some launch does not get there: holds the exceptions of <see cref="At"/>.</exception>
    public IReadOnlyList<RigidState> AtAll(IReadOnlyList<RigidLaunch> launches, Length downrange, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(launches);
        BatchOptions.CheckThreads(threads);
        RigidBodySi si = Si; // worked out once
        var states = new RigidState[launches.Count];
        Parallel.For(0, states.Length, new() { MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount }, i =>
        {
            RigidFlight flight = si.Start(launches[i].Si, 0);
            states[i] = flight.To(downrange.Meters) == RigidOutcome.Met ? new(flight.Here) : At(launches[i], downrange); // the latter says why not
        });
        return states;
    }

    /// <summary>The angle of attack and the rest along the way, at the distances given.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="downrange">Level distances from the origin to upright faces, in rising order.</param>
    /// <returns>One state per distance, and what to beware of.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A distance is behind the launch point or the one before it, or the launch points away from downrange.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get to one of them.</exception>
    /// <exception cref="TumbledException">The angle of attack passes 30° on the way.</exception>
    public AttackHistory History(RigidLaunch launch, IEnumerable<Length> downrange)
    {
        ArgumentNullException.ThrowIfNull(downrange);
        RigidFlight flight = Start(launch, Length.Zero, Angle.Zero);
        var states = new List<RigidState>();
        foreach (Length distance in downrange)
        {
            Require.InRange(distance.Meters, flight.Reach, double.MaxValue, "m", nameof(downrange));
            Fly(ref flight, launch, distance, Angle.Zero);
            states.Add(new(flight.Here));
        }

        return new(states, Angle.FromRadians(flight.LargestAttack), Stability);
    }

    /// <summary>How far the arrow strikes from where the same arrow as a point mass does.</summary>
    /// <param name="launch">The launch with its attitude.</param>
    /// <param name="slantDistance">Along a line of sight, from the origin to a face square to it.</param>
    /// <param name="inclination">Of the line; 0 for an upright face; -80° to +80°.</param>
    /// <returns>The shift on the face, seen by the archer.</returns>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="AtSlant"/>.</exception>
    /// <exception cref="OutOfReachException">The arrow does not get there.</exception>
    /// <exception cref="TumbledException">The angle of attack passes 30° on the way.</exception>
    public ShiftFromPointMass Shift(RigidLaunch launch, Length slantDistance, Angle inclination)
    {
        FlightState rigid = AtSlant(launch, slantDistance, inclination).Flight, point = AsPointMass.AtSlant(launch.Launch, slantDistance, inclination);
        return new(rigid.AboveLine(inclination) - point.AboveLine(inclination), rigid.Right - point.Right);
    }

    RigidFlight Start(RigidLaunch launch, Length distance, Angle inclination)
    {
        ArgumentNullException.ThrowIfNull(launch);
        Require.Finite(distance.Meters, "m", nameof(distance));
        Require.InRange(inclination.Degrees, -80, 80, "degrees", nameof(inclination));
        return Si.Start(launch.Si, inclination.Radians);
    }

    void Fly(ref RigidFlight flight, RigidLaunch launch, Length distance, Angle inclination)
    {
        switch (flight.To(distance.Meters))
        {
            case RigidOutcome.Met:
                return;
            case RigidOutcome.TooFar:
                throw new OutOfReachException(distance, Length.FromMeters(flight.Reach), inclination);
            case RigidOutcome.Tumbled:
                throw new TumbledException(Length.FromMeters(flight.Reach), Angle.FromRadians(flight.Attack), Stability.Margin);
            default:
                throw new ArgumentOutOfRangeException(nameof(distance), distance.Meters, FormattableString.Invariant(
                    $"The face at {distance.Meters:0.###} m stands behind the launch point, at {flight.Reach:0.###} m along the line, or the launch, {launch.Launch.Elevation.Degrees:0.#}° above the horizontal and {launch.Launch.Azimuth.Degrees:0.#}° to the right, points away from a face square to a line at {inclination.Degrees:0.#}°."));
        }
    }
}
