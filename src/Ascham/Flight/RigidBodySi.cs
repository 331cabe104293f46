namespace Ascham.Flight;

using Ascham.Arrows;

/// <summary>A rigid arrow in SI units: no quantities, nothing allocated.</summary>
/// <param name="Stability">Lift, moments and damping.</param>
/// <param name="Mass">kg.</param>
/// <param name="Transverse">Moment of inertia across the shaft about the balance point, kg m².</param>
/// <param name="Axial">Moment of inertia about the axis, kg m²; 0 to leave spin as it is.</param>
/// <param name="Density">Of the air, kg/m³.</param>
/// <param name="Point">Drag along the axis, gravity and wind, as for the point mass.</param>
/// <param name="DragAbove">Drag constant above the angle of the switch, 1/m.</param>
/// <param name="SwitchAngle">Angle of attack above which that drag holds, radians; 0 for none.</param>
readonly record struct RigidBodySi(
    StabilitySi Stability, double Mass, double Transverse, double Axial, double Density, PointMassSi Point, double DragAbove = 0, double SwitchAngle = 0)
{
    // Longest step of a march in wavelengths of the oscillation, found by trial on releases of 0.3° to 8°, 20 to 100 yd: for 1e-6 m
    // to 5°, and with the drag switched at an angle, which is sharp, for 1e-4 m.
    const double Smooth = 1.0 / 5, Switched = 1.0 / 48;

    /// <summary>An arrow at the launch, ready to fly toward faces square to a line from the origin.</summary>
    /// <param name="launch">The launch.</param>
    /// <param name="inclination">Of the line, radians; 0 for upright faces.</param>
    /// <param name="wavelengths">Longest step in wavelengths; 0 for the built-in rule.</param>
    internal RigidFlight Start(in RigidLaunchSi launch, double inclination, double wavelengths = 0)
    {
        (double, double) line = inclination == 0 ? (0, 1) : Math.SinCos(inclination);
        double sine = Math.Sin(SwitchAngle);
        RigidBodyState state = launch.State;
        state.Velocity = state.Velocity.ToLine(line);
        state.Axis = state.Axis.ToLine(line);
        state.AxisRate = state.AxisRate.ToLine(line);
        var place = new Vec(launch.Launch.X, launch.Launch.Y, launch.Launch.Z).ToLine(line);
        (state.Up, state.Right) = (place.Y, place.Z);

        Vec wind = new(Point.WindX, Point.WindY, Point.WindZ);
        var field = new RigidBodyField(
            Loads(), Point.K, new(DragAbove, sine * sine), new Vec(0, -Point.Gravity, 0).ToLine(line), wind.ToLine(line));
        return new(new(field, state, place.X, wavelengths > 0 ? wavelengths : LongestStep), line, wind);
    }

    double LongestStep => SwitchAngle > 0 ? Switched : Smooth;

    RigidBodyLoads Loads()
    {
        double perMass = 0.5 * Density / Mass, perTurn = 0.5 * Density / Transverse, perRoll = Axial > 0 ? 0.5 * Density / Axial : 0;
        return new()
        {
            Lift0 = perMass * Stability.Sum0,
            Lift1 = perMass * Stability.Sum1,
            Turn1 = perTurn * Stability.Sum1,
            Turn2 = perTurn * Stability.Sum2,
            Across = perMass * Stability.Across,
            AcrossTurn = perTurn * Stability.Across * Stability.AcrossArm,
            AcrossArm = Stability.AcrossArm,
            RollTurning = perRoll * Stability.RollTurning,
            RollDamping = perRoll * Stability.RollDamping,
            Gyro = Axial / Transverse,
        };
    }
}

/// <summary>A rigid arrow on its way through one wind toward faces square to one line; a mutable value on the stack.</summary>
struct RigidFlight(in RigidBodyMarch march, (double Sine, double Cosine) line, Vec wind)
{
    RigidBodyMarch march = march;

    /// <summary>Distance along the line from the origin.</summary>
    internal readonly double Reach => march.Reach;

    /// <summary>Angle of attack here, radians.</summary>
    internal readonly double Attack => Math.Asin(Math.Sqrt(march.SineSquared));

    /// <summary>Largest angle of attack so far, at the launch and at the ends of the steps, radians.</summary>
    internal readonly double LargestAttack => Math.Asin(Math.Sqrt(march.LargestSineSquared));

    /// <summary>The state, in axes along the line.</summary>
    internal readonly RigidBodyState State => march.State;

    /// <summary>Where and how it stands, in world axes.</summary>
    internal readonly RigidStateSi Here
    {
        get
        {
            RigidBodyState s = march.State;
            Vec place = new Vec(march.Reach, s.Up, s.Right).FromLine(line), v = s.Velocity.FromLine(line);
            Vec axis = s.Axis.FromLine(line), rate = s.AxisRate.FromLine(line), u = v - wind;
            return new(new(s.Time, place.X, place.Y, place.Z, v.X, v.Y, v.Z), u, (1 / axis.Length) * axis, rate, s.Spin);
        }
    }

    /// <summary>Goes on until it stands exactly on a face.</summary>
    /// <param name="distance">From the origin along the line.</param>
    /// <param name="steps">0 for steps by the built-in rule; otherwise this many equal steps.</param>
    internal RigidOutcome To(double distance, int steps = 0) => march.To(distance, steps);
}

/// <summary>A rigid arrow at one moment, in world axes and SI units.</summary>
readonly struct RigidStateSi(StateSi point, Vec air, Vec axis, Vec rate, double spin)
{
    internal readonly StateSi Point = point;
    internal readonly Vec Air = air, Axis = axis, Rate = rate;
    internal readonly double Spin = spin;

    /// <summary>A direction as angles above and to the right of the path through the air.</summary>
    internal (double Up, double Right) FromPath(Vec direction)
    {
        Vec ahead = (1 / Air.Length) * Air, above = new Vec(0, 1, 0) - ahead.Y * ahead;
        above = (1 / above.Length) * above;
        double forward = direction.Dot(ahead);
        return (Math.Atan2(direction.Dot(above), forward), Math.Atan2(direction.Dot(ahead.Cross(above)), forward));
    }
}
