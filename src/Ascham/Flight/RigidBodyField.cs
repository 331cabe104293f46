namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>How the air acts on a rigid arrow, per mass and per inertia: dynamic pressure is half the density times the square of the speed, and the half and the density are in here.</summary>
readonly struct RigidBodyLoads<T>
    where T : unmanaged, IReal<T>
{
    /// <summary>Side acceleration per speed and cross speed (1/m), and per speed and rate of the axis (1).</summary>
    internal required T Lift0 { get; init; }

    internal required T Lift1 { get; init; }

    /// <summary>Turning acceleration per speed and cross speed (1/m²), and its damping per speed and rate of the axis (1/m).</summary>
    internal required T Turn1 { get; init; }

    internal required T Turn2 { get; init; }

    /// <summary>Crossflow: acceleration and turning acceleration per square of the cross speed (1/m, 1/m²) at its arm (m).</summary>
    internal required T Across { get; init; }

    internal required T AcrossTurn { get; init; }

    internal required T AcrossArm { get; init; }

    /// <summary>Roll: spin gained per square of the speed (1/m²), lost per speed and spin (1/m).</summary>
    internal required T RollTurning { get; init; }

    internal required T RollDamping { get; init; }

    /// <summary>Axial inertia over transverse inertia.</summary>
    internal required T Gyro { get; init; }
}

/// <summary>The equations of motion of a rigid arrow with the distance to the face as the independent variable.</summary>
/// <remarks>
/// Axes: x along the normal of the face, y in the vertical plane, z to the right. With u the velocity through the air, V = |u|,
/// n the axis, e = dn/dt and c = u - (u n) n the cross speed, a part of lift S at arm l behind the balance point moves sideways
/// at c - l e and is pushed by -(rho/2) V S (c - l e): every part sees its own angle, in the force and in the moment.
/// The axial force keeps to the axis, so the drag rises with the angle by itself. The moments give
///     de/dt = (rho V/2I) (S1 c - S2 e) + crossflow - (Ix/I) spin e x n - |e|² n.
/// </remarks>
readonly struct RigidBodyField<T, TDrag>(in RigidBodyLoads<T> loads, TDrag drag, in AngleSwitch<T, TDrag> angleSwitch, Triple<T> gravity, Triple<T> wind)
    : IRates<RigidBodyState<T>>
    where T : unmanaged, IReal<T>
    where TDrag : struct, IDragLaw<T>
{
    // Longest step, as a fraction of the distance over which the path itself bends by its own size; as for the point mass.
    const double PathFraction = 0.18;

    // Longest step over the distance of fastest decay: well inside what the method can take (about 5).
    const double DecayFraction = 2;

    readonly RigidBodyLoads<T> loads = loads;
    readonly TDrag drag = drag;
    readonly AngleSwitch<T, TDrag> angleSwitch = angleSwitch;
    readonly Triple<T> gravity = gravity, wind = wind;
    readonly bool acrossFlow = loads.Across.Value != 0, switches = angleSwitch.IsOn;

    public void At(double x, in RigidBodyState<T> y, out RigidBodyState<T> rates)
    {
        Triple<T> u = y.Velocity - wind, n = y.Axis, e = y.AxisRate;
        T square = u.Dot(u), speed = T.SquareRoot(square);
        Triple<T> c = u - u.Dot(n) * n;
        Triple<T> push = speed * (loads.Lift0 * c - loads.Lift1 * e), turn = speed * (loads.Turn1 * c - loads.Turn2 * e);
        if (acrossFlow)
        {
            Triple<T> across = c - loads.AcrossArm * e;
            T size = T.SquareRoot(across.Dot(across) + T.Of(1e-60)); // a root that has a derivative at zero
            push += loads.Across * size * across;
            turn += loads.AcrossTurn * size * across;
        }

        T k = drag.At(speed);
        if (switches)
        {
            k = angleSwitch.At(k, speed, c.Dot(c) / square);
        }

        Triple<T> acceleration = gravity - k * square * n - push;
        Triple<T> turning = turn - loads.Gyro * y.Spin * e.Cross(n) - e.Dot(e) * n;
        T spinning = speed * (loads.RollTurning * speed - loads.RollDamping * y.Spin);
        T perMetre = T.Of(1) / y.Velocity.X;
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
    internal double SineSquared(in RigidBodyState<T> y)
    {
        Triple<T> u = y.Velocity - wind, c = u - u.Dot(y.Axis) * y.Axis;
        return c.Dot(c).Value / u.Dot(u).Value;
    }

    /// <summary>Length of the next step from here, in metres along the normal of the face.</summary>
    /// <param name="y">The state.</param>
    /// <param name="wavelengths">Longest step, in wavelengths of the oscillation.</param>
    internal double StepFrom(in RigidBodyState<T> y, double wavelengths)
    {
        Triple<T> u = y.Velocity - wind, c = u - u.Dot(y.Axis) * y.Axis;
        double speed = Math.Sqrt(u.Dot(u).Value), toward = y.Velocity.X.Value;
        double turn = Math.Abs(loads.Turn1.Value), gyro = 0.5 * Math.Abs(loads.Gyro.Value * y.Spin.Value / speed);
        double amplitude = Math.Sqrt(c.Dot(c).Value + y.AxisRate.Dot(y.AxisRate).Value / turn) / speed;
        double perMetre = Math.Sqrt(turn + Math.Abs(loads.AcrossTurn.Value) * amplitude + gyro * gyro) + gyro; // radians of the oscillation
        double step = wavelengths * 2 * Math.PI / perMetre;
        if (acrossFlow)
        {
            Vec axis = Plain(y.Axis), down = Plain(gravity), across = (1 / speed) * (down - down.Dot(axis) * axis);
            var swing = new CrossflowSwing(Plain(c), Plain(y.AxisRate), across, loads.Turn2.Value / loads.Turn1.Value, loads.AcrossArm.Value, perMetre);
            step = Math.Min(step, swing.Step(speed));
        }

        double decay = Math.Max(Math.Abs(loads.Turn2.Value) + Math.Abs(loads.Lift0.Value), Math.Abs(loads.RollDamping.Value));
        step = Math.Min(step, DecayFraction / decay);

        double k = drag.At(T.Of(speed)).Value;
        double slowing = k * speed + Math.Abs(gravity.X.Value) / speed, bending = Math.Abs(gravity.Y.Value) / speed;
        double path = PathFraction / ((2 * slowing + 0.5 * bending) / toward);
        return Math.Min(step * toward / speed, path * toward / speed);
    }

    static Vec Plain(in Triple<T> a) => new(a.X.Value, a.Y.Value, a.Z.Value);
}

/// <summary>Another drag above an angle of attack, where the layer of air along the shaft is taken to turn turbulent.</summary>
/// <remarks>The change is spread over a tenth of the square of the angle, so that the equations stay smooth.</remarks>
readonly struct AngleSwitch<T, TDrag>(TDrag above, double sineSquared)
    where T : unmanaged, IReal<T>
    where TDrag : struct, IDragLaw<T>
{
    const double Width = 0.1;

    readonly TDrag above = above;
    readonly double sineSquared = sineSquared;

    internal bool IsOn => sineSquared > 0;

    internal T At(T below, T airSpeed, T sine2)
    {
        T z = 1 / (Width * sineSquared) * (sine2 - T.Of(sineSquared));
        T share = 0.5 * (T.Of(1) + z / T.SquareRoot(T.Of(1) + z * z));
        return below + share * (above.At(airSpeed) - below);
    }
}
