namespace Ascham.Benchmarks;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using UnitsNet;

/// <summary>A rigid arrow that pitches, yaws and spins: the library's flights, and the same equations by MathNet's Runge-Kutta of order 4.</summary>
static class RigidPeer
{
    public const int Arrows = 64;
    const double Distance = 60;

    static readonly Random Draw = new(3);

    static readonly Stability Invented = new()
    {
        ShaftDiameter = Length.FromMillimeters(6.2),
        TotalLength = Length.FromMillimeters(720),
        BalancePoint = Length.FromMillimeters(293.6),
        Point = LiftingPart.ConePoint(Length.FromMillimeters(20), Length.FromMillimeters(6.2)),
        Fletching = new()
        {
            Count = 3,
            RootChord = Length.FromMillimeters(50),
            TipChord = Length.FromMillimeters(30),
            Height = Length.FromMillimeters(12),
            Sweep = Length.FromMillimeters(20),
            FromTip = Length.FromMillimeters(640),
            Effectiveness = Ratio.FromPercent(100),
            Offset = Angle.FromDegrees(2),
        },
        CarryOver = CarryOver.OntoVanes,
        CrossflowConstant = 1.1,
    };

    static readonly RigidBodySi Body = new(Invented.Si, 0.026, 1.7e-3, 2.5e-7, 1.225, new(Cases.K, Cases.Gravity, 0, 0, 3));

    static readonly RigidLaunchSi[] Launches = [.. Enumerable.Range(0, Arrows).Select(_ => new RigidLaunchSi(new(85, 0.03), Small(), Small(), 0, 20 * Small()))];
    static readonly RigidStateSi[] Ends = new RigidStateSi[Arrows];

    static readonly RigidBody Whole = new()
    {
        Stability = Invented,
        Mass = Mass.FromGrams(26),
        TransverseInertia = MassMomentOfInertia.FromKilogramSquareMeters(1.7e-3),
        AxialInertia = MassMomentOfInertia.FromKilogramSquareMeters(2.5e-7),
        Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(Cases.K)),
        Air = Air.StandardAt(Length.Zero),
        Gravity = Gravity.Standard,
        Wind = Wind.Of(Speed.Zero, Speed.FromMetersPerSecond(3)),
    };

    static readonly RigidLaunch[] Releases = [.. Launches.Select(l => new RigidLaunch
    {
        Launch = new() { Speed = Speed.FromMetersPerSecond(l.Launch.Speed), Elevation = Angle.FromRadians(l.Launch.Elevation) },
        Pitch = Angle.FromRadians(l.Pitch), Yaw = Angle.FromRadians(l.Yaw), YawRate = RotationalSpeed.FromRadiansPerSecond(l.YawRate),
    })];

    static double Small() => 0.035 * (2 * Draw.NextDouble() - 1); // to 2 degrees

    public static void One()
    {
        for (int i = 0; i < Arrows; i++)
        {
            RigidFlight flight = Body.Start(Launches[i], 0);
            flight.To(Distance);
            Ends[i] = flight.Here;
        }
    }

    /// <summary>The same on all cores, through the public door.</summary>
    public static void All() => Whole.AtAll(Releases, Length.FromMeters(Distance));

    public static void MathNet(int arrows, int steps)
    {
        for (int i = 0; i < arrows; i++)
        {
            Fly(i, steps);
        }
    }

    /// <summary>Worst error on the face, m, and the fewest steps with which MathNet stays below 1e-6 m.</summary>
    public static (double Error, int Steps) Accuracy()
    {
        const int Sample = 16, Fine = 4000;
        var exact = Enumerable.Range(0, Sample).Select(i => Fly(i, Fine)).ToArray();
        double Worst(Func<int, (double Up, double Right)> of)
            => Enumerable.Range(0, Sample).Max(i => Math.Max(Math.Abs(of(i).Up - exact[i][11]), Math.Abs(of(i).Right - exact[i][12])));

        One();
        double one = Worst(i => (Ends[i].Point.Y, Ends[i].Point.Z));
        int steps = 50;
        while (Worst(i => (Fly(i, steps)[11], Fly(i, steps)[12])) > 1e-6)
        {
            steps += 10;
        }

        return (one, steps);
    }

    // Velocity, axis, its rate, spin, time, up, right.
    static Vector<double> Fly(int i, int steps)
    {
        var (_, axis, rate) = Start(Launches[i]);
        LaunchSi launch = Launches[i].Launch;
        var start = Vector<double>.Build.Dense(
            [launch.Speed * Math.Cos(launch.Elevation), launch.Speed * Math.Sin(launch.Elevation), 0, axis.X, axis.Y, axis.Z, rate.X, rate.Y, rate.Z, 0, 0, 0, 0]);
        return RungeKutta.FourthOrder(start, 0, Distance, steps + 1, (_, s) => Rates(s))[^1];
    }

    static (Vec Velocity, Vec Axis, Vec Rate) Start(in RigidLaunchSi launch)
    {
        var state = launch.State;
        return (state.Velocity, state.Axis, state.AxisRate);
    }

    static Vector<double> Rates(Vector<double> s)
    {
        StabilitySi b = Body.Stability;
        var v = new Vec(s[0], s[1], s[2]);
        Vec n = new(s[3], s[4], s[5]), e = new(s[6], s[7], s[8]), u = v - new Vec(0, 0, Body.Point.WindZ);
        double speed = u.Length, half = 0.5 * Body.Density, spin = s[9];
        Vec c = u - u.Dot(n) * n, w = c - b.AcrossArm * e;
        double across = half * b.Across * w.Length;
        Vec a = (-Body.Point.K * speed * speed) * n - (half * speed / Body.Mass) * (b.Sum0 * c - b.Sum1 * e) - (across / Body.Mass) * w - new Vec(0, Body.Point.Gravity, 0);
        Vec turning = (half * speed / Body.Transverse) * (b.Sum1 * c - b.Sum2 * e) + (across * b.AcrossArm / Body.Transverse) * w
            - (Body.Axial / Body.Transverse * spin) * e.Cross(n) - e.Dot(e) * n;
        double spinning = half * speed / Body.Axial * (b.RollTurning * speed - b.RollDamping * spin), per = 1 / v.X;
        return Vector<double>.Build.Dense(
            [per * a.X, per * a.Y, per * a.Z, per * e.X, per * e.Y, per * e.Z, per * turning.X, per * turning.Y, per * turning.Z, per * spinning, per, per * v.Y, per * v.Z]);
    }
}
