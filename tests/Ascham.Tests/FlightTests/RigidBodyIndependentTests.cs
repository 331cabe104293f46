namespace Ascham.Tests.FlightTests;

using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Tests.ArrowsTests;
using Ascham.Tests.Checks;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Xunit;
using static Ascham.Tests.FlightTests.RigidExample;

/// <summary>Against MathNet's Runge-Kutta on the textbook form: axes that roll with the arrow, a quaternion, Euler's equations, every part summed by itself.</summary>
public class RigidBodyIndependentTests
{
    internal static readonly (RigidBodySi Body, RigidLaunchSi Launch, double Distance)[] Cases =
    [
        (Whole, new(new(85, 0)), 91.44),
        (Whole, new(new(85, 0), PitchRate: 1, Spin: 50), 60),
        (Whole with { Point = new(0.002, G, -4, 0.5, 5) }, new(new(75, 0), Pitch: 0.02, Yaw: -0.03, PitchRate: -0.8, YawRate: 1.1), 70),
        (Whole with { Axial = 5e-6, DragAbove = 0.002, SwitchAngle = 0.03 }, new(new(95, 0), Yaw: 0.06, YawRate: -1, Spin: 800), 45), // a heavy top, to see the gyroscopic terms
    ];

    public static TheoryData<int> CaseNumbers => [0, 1, 2, 3];

    [Theory, MemberData(nameof(CaseNumbers))]
    public void Rolling_axes_and_a_quaternion_arrive_at_the_same_place_and_attitude(int i)
    {
        var (body, launch, distance) = Cases[i];
        RigidStateSi s = Fly(body, launch, distance, 1.0 / 200);
        double[] other = RollingAxes(body, launch, distance, 12000); // axes that roll at 40 turns a second need that many
        Assert.Equal(other[1], s.Point.Y, 6e-8);
        Assert.Equal(other[2], s.Point.Z, 6e-8);
        Assert.Equal(other[0], s.Point.Time, 1e-9);
        Assert.Equal(other[3], s.Point.Vx, 1e-6);
        Assert.Equal(other[4], s.Point.Vy, 1e-6);
        Assert.Equal(other[5], s.Point.Vz, 1e-6);
        Vec axis = Ahead(other);
        Assert.Equal(axis.Y, s.Axis.Y, 1e-8);
        Assert.Equal(axis.Z, s.Axis.Z, 1e-8);
        Assert.Equal(other[10], s.Spin, 1e-4);
    }

    [Fact]
    public void Order_of_convergence_is_eight()
    {
        // Without crossflow, which is not smooth, in wind that is not along the range.
        RigidBodySi body = Whole with { Stability = Whole.Stability with { Across = 0 }, Point = new(0.002, G, -4, 0.5, 5) };
        var launch = new RigidLaunchSi(new(75, 0.02), Pitch: 0.02, Yaw: -0.03, PitchRate: -0.8, YawRate: 1.1);
        RigidStateSi At(int steps)
        {
            RigidFlight flight = body.Start(launch, 0.1);
            Assert.Equal(RigidOutcome.Met, flight.To(60, steps));
            return flight.Here;
        }

        RigidStateSi exact = At(512);
        double Error(int steps)
        {
            RigidStateSi s = At(steps);
            return Math.Max((s.Axis - exact.Axis).Length, Math.Max(Math.Abs(s.Point.Y - exact.Point.Y), Math.Abs(s.Point.Z - exact.Point.Z)));
        }

        Assert.All(Order.Observed(Error, 20, 2), o => Assert.InRange(o, 7.4, 8.8));
    }

    [Theory]
    [InlineData(0.5, 1.1, 0, 1e-6)]
    [InlineData(1, 1.1, 0, 1e-6)]
    [InlineData(3, 1.1, 0, 1e-6)]
    [InlineData(5, 1.1, 0, 1e-6)]
    [InlineData(8, 1.1, 0, 5e-6)]
    [InlineData(8, 0, 0, 5e-6)]
    [InlineData(3, 1.1, 1, 5e-5)]
    public void The_default_step_is_as_good_as_it_says(double degrees, double crossflow, double switchDegrees, double allowed)
    {
        // Half of the releases in one plane, where the crossflow passes through zero; 20 to 100 yd.
        RigidBodySi body = Whole with
        {
            Stability = Whole.Stability with { Across = crossflow / 1.1 * Whole.Stability.Across }, DragAbove = 1.5 * K, SwitchAngle = switchDegrees * Degree,
        };
        var random = new Random(11);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        for (int i = 0; i < 40; i++)
        {
            double angle = degrees * Degree / Math.Sqrt(2), plane = i % 2 == 0 ? 0 : 1, toRate = 85 * 0.31;
            (double phase, double other) = (Between(0, 2 * Math.PI), Between(0, 2 * Math.PI));
            var launch = new RigidLaunchSi(
                new(85, 0.03), angle * Math.Cos(phase), plane * angle * Math.Cos(other), angle * toRate * Math.Sin(phase), plane * angle * toRate * Math.Sin(other));
            double distance = Between(18, 92);
            RigidStateSi s = Fly(body, launch, distance), fine = Fly(body, launch, distance, switchDegrees > 0 ? 1.0 / 300 : 1.0 / 60);
            Assert.Equal(fine.Point.Y, s.Point.Y, allowed);
            Assert.Equal(fine.Point.Z, s.Point.Z, allowed);
        }
    }

    /// <summary>State by distance: time, up, right, velocity (3), quaternion (4), spin and the two turning rates about axes of the arrow (up, right).</summary>
    internal static double[] RollingAxes(RigidBodySi body, RigidLaunchSi launch, double distance, int steps)
    {
        // The attitude at a level launch: the shortest turn from straight ahead to the axis, and the rates in the arrow's own axes.
        var axis = new Vec(Math.Cos(launch.Pitch) * Math.Cos(launch.Yaw), Math.Sin(launch.Pitch), Math.Cos(launch.Pitch) * Math.Sin(launch.Yaw));
        double norm = Math.Sqrt((1 + axis.X) * (1 + axis.X) + axis.Y * axis.Y + axis.Z * axis.Z);
        double[] y = [0, 0, 0, launch.Launch.Speed, 0, 0, (1 + axis.X) / norm, 0, -axis.Z / norm, axis.Y / norm, launch.Spin, 0, 0];
        var rising = new Vec(-Math.Sin(launch.Pitch) * Math.Cos(launch.Yaw), Math.Cos(launch.Pitch), -Math.Sin(launch.Pitch) * Math.Sin(launch.Yaw));
        Vec rate = launch.PitchRate * rising + launch.YawRate * new Vec(-Math.Sin(launch.Yaw), 0, Math.Cos(launch.Yaw));
        (_, Vec up, Vec right) = Axes(y);
        (y[11], y[12]) = (-rate.Dot(right), rate.Dot(up)); // turning about "up" moves the nose to the left, about "right" raises it

        Vector<double> start = Vector<double>.Build.Dense(y);
        return RungeKutta.FourthOrder(start, 0, distance, steps + 1, (_, s) => Vector<double>.Build.Dense(Rates(body, s.AsArray() ?? s.ToArray())))[^1].ToArray();
    }

    static double[] Rates(RigidBodySi b, double[] y)
    {
        (Vec n, Vec j, Vec k) = Axes(y);
        var v = new Vec(y[3], y[4], y[5]);
        Vec u = v - new Vec(b.Point.WindX, b.Point.WindY, b.Point.WindZ);
        double speed = u.Length, uy = u.Dot(j), uz = u.Dot(k), p = y[10], q = y[11], r = y[12];

        double fy = 0, fz = 0, my = 0, mz = 0, half = 0.5 * b.Density;
        void Push(double arm, double perCross, double wy, double wz)
        {
            fy -= perCross * wy;
            fz -= perCross * wz;
            my -= arm * perCross * wz;
            mz += arm * perCross * wy;
        }

        foreach (LiftingPart part in ExampleArrow.Stability.Parts)
        {
            double arm = part.Position.Meters - ExampleArrow.Stability.BalancePoint.Meters;
            Push(arm, half * speed * part.LiftPerRadian.SquareMeters, uy - arm * r, uz + arm * q);
        }

        double middle = 0.5 * ExampleArrow.Stability.TotalLength.Meters - ExampleArrow.Stability.BalancePoint.Meters;
        double wy = uy - middle * r, wz = uz + middle * q;
        Push(middle, half * 1.1 * ExampleArrow.Diameter * 0.72 * Math.Sqrt(wy * wy + wz * wz), wy, wz);

        double drag = b.Point.K;
        if (b.SwitchAngle > 0)
        {
            double limit = Math.Pow(Math.Sin(b.SwitchAngle), 2), z = ((uy * uy + uz * uz) / (speed * speed) - limit) / (0.1 * limit);
            drag += (b.DragAbove - b.Point.K) * 0.5 * (1 + z / Math.Sqrt(1 + z * z));
        }

        Vec a = (-drag * speed * speed) * n + (fy / b.Mass) * j + (fz / b.Mass) * k - new Vec(0, b.Point.Gravity, 0);
        double ix = b.Axial, it = b.Transverse;
        double dp = half * speed * (b.Stability.RollTurning * speed - b.Stability.RollDamping * p) / ix;
        double dq = (my + (it - ix) * r * p) / it, dr = (mz - (it - ix) * p * q) / it;
        double[] rates =
        [
            1, v.Y, v.Z, a.X, a.Y, a.Z,
            0.5 * (-y[7] * p - y[8] * q - y[9] * r), 0.5 * (y[6] * p + y[8] * r - y[9] * q),
            0.5 * (y[6] * q + y[9] * p - y[7] * r), 0.5 * (y[6] * r + y[7] * q - y[8] * p), dp, dq, dr,
        ];
        return [.. rates.Select(x => x / v.X)];
    }

    static Vec Ahead(double[] y) => Axes(y).Ahead;

    static (Vec Ahead, Vec Up, Vec Right) Axes(double[] y)
    {
        double w = y[6], a = y[7], b = y[8], c = y[9];
        return (
            new(1 - 2 * (b * b + c * c), 2 * (a * b + w * c), 2 * (a * c - w * b)),
            new(2 * (a * b - w * c), 1 - 2 * (a * a + c * c), 2 * (b * c + w * a)),
            new(2 * (a * c + w * b), 2 * (b * c - w * a), 1 - 2 * (a * a + b * b)));
    }
}
