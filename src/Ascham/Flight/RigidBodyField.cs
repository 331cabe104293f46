namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>How the air acts on a rigid arrow, per mass and per inertia: dynamic pressure is half the density times the square of the speed, and the half and the density are in here.</summary>
readonly struct RigidBodyLoads
{
    /// <summary>Side acceleration per speed and cross speed (1/m), and per speed and rate of the axis (1).</summary>
    internal required double Lift0 { get; init; }

    internal required double Lift1 { get; init; }

    /// <summary>Turning acceleration per speed and cross speed (1/m²), and its damping per speed and rate of the axis (1/m).</summary>
    internal required double Turn1 { get; init; }

    internal required double Turn2 { get; init; }

    /// <summary>Crossflow: acceleration and turning acceleration per square of the cross speed (1/m, 1/m²) at its arm (m).</summary>
    internal required double Across { get; init; }

    internal required double AcrossTurn { get; init; }

    internal required double AcrossArm { get; init; }

    /// <summary>Roll: spin gained per square of the speed (1/m²), lost per speed and spin (1/m).</summary>
    internal required double RollTurning { get; init; }

    internal required double RollDamping { get; init; }

    /// <summary>Axial inertia over transverse inertia.</summary>
    internal required double Gyro { get; init; }
}

/// <summary>The equations of motion of a rigid arrow with the distance to the face as the independent variable.</summary>
/// <remarks>
/// Axes: x along the normal of the face, y in the vertical plane, z to the right. With u the velocity through the air, V = |u|,
/// n the axis, e = dn/dt and c = u - (u n) n the cross speed, a part of lift S at arm l behind the balance point moves sideways
/// at c - l e and is pushed by -(rho/2) V S (c - l e): every part sees its own angle, in the force and in the moment.
/// The axial force keeps to the axis, so the drag rises with the angle by itself. The moments give
///     de/dt = (rho V/2I) (S1 c - S2 e) + crossflow - (Ix/I) spin e x n - |e|² n.
/// </remarks>
readonly struct RigidBodyField(in RigidBodyLoads loads, double drag, in AngleSwitch angleSwitch, Vec gravity, Vec wind)
    : IRates<RigidBodyState>
{
    // Longest step, as a fraction of the distance over which the path itself bends by its own size; as for the point mass.
    const double PathFraction = 0.18;

    // Longest step over the distance of fastest decay: well inside what the method can take (about 5).
    const double DecayFraction = 2;

    readonly RigidBodyLoads loads = loads;
    readonly double drag = drag;
    readonly AngleSwitch angleSwitch = angleSwitch;
    readonly Vec gravity = gravity, wind = wind;
    readonly bool acrossFlow = loads.Across != 0, switches = angleSwitch.IsOn;

    public void At(double x, in RigidBodyState y, out RigidBodyState rates)
    {
        Vec u = y.Velocity - wind, n = y.Axis, e = y.AxisRate;
        double square = u.Dot(u), speed = Math.Sqrt(square);
        Vec c = u - u.Dot(n) * n;
        Vec push = speed * (loads.Lift0 * c - loads.Lift1 * e), turn = speed * (loads.Turn1 * c - loads.Turn2 * e);
        if (acrossFlow)
        {
            Vec across = c - loads.AcrossArm * e;
            double size = Math.Sqrt(across.Dot(across) + 1e-60); // a root that has a derivative at zero
            push += loads.Across * size * across;
            turn += loads.AcrossTurn * size * across;
        }

        double k = drag;
        if (switches)
        {
            k = angleSwitch.At(k, c.Dot(c) / square);
        }

        Vec acceleration = gravity - k * square * n - push;
        Vec turning = turn - loads.Gyro * y.Spin * e.Cross(n) - e.Dot(e) * n;
        double spinning = speed * (loads.RollTurning * speed - loads.RollDamping * y.Spin);
        double perMetre = 1 / y.Velocity.X;
        rates.Velocity = perMetre * acceleration;
        rates.Axis = perMetre * e;
        rates.AxisRate = perMetre * turning;
        rates.Spin = perMetre * spinning;
        rates.Time = perMetre;
        rates.Up = perMetre * y.Velocity.Y;
        rates.Right = perMetre * y.Velocity.Z;
        rates.Spare = default;
    }

    /// <summary>Square of the sine of the angle of attack.</summary>
    internal double SineSquared(in RigidBodyState y)
    {
        Vec u = y.Velocity - wind, c = u - u.Dot(y.Axis) * y.Axis;
        return c.Dot(c) / u.Dot(u);
    }

    /// <summary>Length of the next step from here, in metres along the normal of the face.</summary>
    /// <param name="y">The state.</param>
    /// <param name="wavelengths">Longest step, in wavelengths of the oscillation.</param>
    internal double StepFrom(in RigidBodyState y, double wavelengths)
    {
        Vec u = y.Velocity - wind, c = u - u.Dot(y.Axis) * y.Axis;
        double speed = Math.Sqrt(u.Dot(u)), toward = y.Velocity.X;
        double turn = Math.Abs(loads.Turn1), gyro = 0.5 * Math.Abs(loads.Gyro * y.Spin / speed);
        double amplitude = Math.Sqrt(c.Dot(c) + y.AxisRate.Dot(y.AxisRate) / turn) / speed;
        double perMetre = Math.Sqrt(turn + Math.Abs(loads.AcrossTurn) * amplitude + gyro * gyro) + gyro; // radians of the oscillation
        double step = wavelengths * 2 * Math.PI / perMetre;
        if (acrossFlow)
        {
            Vec across = (1 / speed) * (gravity - gravity.Dot(y.Axis) * y.Axis);
            var swing = new CrossflowSwing(c, y.AxisRate, across, loads.Turn2 / loads.Turn1, loads.AcrossArm, perMetre);
            step = Math.Min(step, swing.Step(speed));
        }

        double decay = Math.Max(Math.Abs(loads.Turn2) + Math.Abs(loads.Lift0), Math.Abs(loads.RollDamping));
        step = Math.Min(step, DecayFraction / decay);

        double slowing = drag * speed + Math.Abs(gravity.X) / speed, bending = Math.Abs(gravity.Y) / speed;
        double path = PathFraction / ((2 * slowing + 0.5 * bending) / toward);
        return Math.Min(step * toward / speed, path * toward / speed);
    }
}

/// <summary>Another drag above an angle of attack, where the layer of air along the shaft is taken to turn turbulent.</summary>
/// <remarks>The change is spread over a tenth of the square of the angle, so that the equations stay smooth.</remarks>
readonly struct AngleSwitch(double above, double sineSquared)
{
    const double Width = 0.1;

    readonly double above = above;
    readonly double sineSquared = sineSquared;

    internal bool IsOn => sineSquared > 0;

    internal double At(double below, double sine2)
    {
        double z = 1 / (Width * sineSquared) * (sine2 - sineSquared);
        double share = 0.5 * (1 + z / Math.Sqrt(1 + z * z));
        return below + share * (above - below);
    }
}
