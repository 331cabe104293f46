namespace Ascham.Tests.FlightTests;

using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Tests.ArrowsTests;
using CsCheck;
using Xunit;
using static Ascham.Tests.FlightTests.RigidExample;

public class RigidBodyRelationTests
{
    static readonly Gen<RigidLaunchSi> Release = Gen.Select(
        Gen.Double[60, 110], Gen.Double[-0.05, 0.1], Gen.Double[-0.06, 0.06], Gen.Double[-0.06, 0.06], Gen.Double[-1.5, 1.5], Gen.Double[-1.5, 1.5],
        (speed, elevation, pitch, yaw, pitchRate, yawRate) => new RigidLaunchSi(new(speed, elevation), pitch, yaw, pitchRate, yawRate));

    static readonly Gen<(double X, double Y, double Z)> Wind = Gen.Select(Gen.Double[-6, 6], Gen.Double[-1, 1], Gen.Double[-4, 4]);

    [Fact]
    public void Everything_mirrored_flies_as_in_a_mirror() => Gen.Select(Release, Wind).Sample((launch, wind) =>
    {
        RigidBodySi body = Blown(Whole, wind), mirrored = Blown(Whole with { Stability = Whole.Stability with { RollTurning = -Whole.Stability.RollTurning } }, (wind.X, wind.Y, -wind.Z));
        RigidStateSi a = Fly(body, launch, 50), b = Fly(mirrored, launch with { Yaw = -launch.Yaw, YawRate = -launch.YawRate }, 50);
        (double up, double right) = a.FromPath(a.Axis);
        (double otherUp, double otherRight) = b.FromPath(b.Axis);
        return a.Point.Y == b.Point.Y && a.Point.Z == -b.Point.Z && a.Spin == -b.Spin && Near(up, otherUp, 1e-14) && Near(right, -otherRight, 1e-14);
    });

    [Fact]
    public void Without_gravity_up_is_as_good_as_right() => Gen.Select(Gen.Double[-0.05, 0.05], Gen.Double[-1.5, 1.5]).Sample((angle, rate) =>
    {
        RigidBodySi body = Whole with { Point = Whole.Point with { Gravity = 0 }, Stability = Whole.Stability with { RollTurning = 0 } };
        RigidStateSi up = Fly(body, new(new(85, 0), Pitch: angle, PitchRate: rate), 60), right = Fly(body, new(new(85, 0), Yaw: angle, YawRate: rate), 60);
        return Near(up.Point.Y, right.Point.Z, 1e-12) && Near(up.Axis.Y, right.Axis.Z, 1e-12) && up.Point.Z == 0;
    });

    [Fact]
    public void Flying_in_a_moving_frame_is_flying_in_wind() => Release.Sample(launch =>
    {
        // A tail wind: the same as still air seen by one who moves with it. At time t both must agree.
        const double Tail = 5;
        RigidStateSi ground = Fly(Blown(Whole, (Tail, 0, 0)), launch, 50);
        double ux = launch.Launch.Speed * Math.Cos(launch.Launch.Elevation) - Tail, uy = launch.Launch.Speed * Math.Sin(launch.Launch.Elevation), turn = Math.Atan2(uy, ux) - launch.Launch.Elevation;
        RigidLaunchSi asSeen = launch with { Launch = new(Math.Sqrt(ux * ux + uy * uy), launch.Launch.Elevation + turn), Yaw = 0, YawRate = 0, Pitch = launch.Pitch - turn };
        RigidLaunchSi planar = launch with { Yaw = 0, YawRate = 0 };
        ground = Fly(Blown(Whole, (Tail, 0, 0)), planar, 50);
        RigidStateSi air = Fly(Whole, asSeen, 50 - Tail * ground.Point.Time);
        return Near(air.Point.Time, ground.Point.Time, 1e-8) && Near(air.Point.Y, ground.Point.Y, 2e-6) && Near(air.Axis.Y, ground.Axis.Y, 1e-6);
    });

    [Fact]
    public void An_inclined_face_is_met_by_the_same_flight() => Gen.Select(Release, Wind, Gen.Double[-0.5, 0.5]).Sample((launch, wind, line) =>
    {
        RigidBodySi body = Blown(Whole, wind);
        RigidStateSi slant = Fly(body, launch, 40, 1.0 / 12, line), upright = Fly(body, launch, slant.Point.X, 1.0 / 12);
        return Near(slant.Point.X * Math.Cos(line) + slant.Point.Y * Math.Sin(line), 40, 1e-9)
            && Near(slant.Point.Y, upright.Point.Y, 1e-6) && Near(slant.Point.Z, upright.Point.Z, 1e-6) && Near(slant.Axis.Y, upright.Axis.Y, 1e-6);
    });

    [Fact]
    public void Stops_on_the_way_change_nothing() => Release.Sample(launch =>
    {
        RigidFlight flight = Whole.Start(launch, 0, 1.0 / 12);
        foreach (double x in (double[])[0, 3, 11.5, 12, 30, 50])
        {
            Assert.Equal(RigidOutcome.Met, flight.To(x));
        }

        RigidStateSi once = Fly(Whole, launch, 50, 1.0 / 12), stops = flight.Here;
        return Near(once.Point.Y, stops.Point.Y, 1e-6) && Near(once.Point.Z, stops.Point.Z, 1e-6) && Near(once.Axis.Y, stops.Axis.Y, 1e-6);
    });

    [Fact]
    public void The_axis_stays_a_direction_and_its_rate_square_to_it() => Release.Sample(launch =>
    {
        RigidFlight flight = Whole.Start(launch, 0, 1.0 / 12);
        Assert.Equal(RigidOutcome.Met, flight.To(60));
        Vec axis = new(flight.State.Axis), rate = new(flight.State.AxisRate);
        return Near(axis.Length, 1, 1e-7) && Near(axis.Dot(rate), 0, 1e-6);
    });

    [Fact]
    public void Energy_falls_by_the_work_of_the_air_on_every_part_and_by_no_more() => Release.Sample(launch =>
    {
        // Kinetic energy of motion and of turning, and height: in still air they change only by force times speed of the
        // place it acts on. For a lifting part that is -(rho/2) V S |w|², w its own cross speed: lift never adds energy.
        RigidBodySi body = Whole with { Axial = 0 };
        const int Pieces = 600;
        const double Distance = 60;
        RigidFlight flight = body.Start(launch, 0, 1.0 / 24);
        double work = 0, before = Energy(flight.Here);
        for (int i = 0; i <= Pieces; i++)
        {
            Assert.Equal(RigidOutcome.Met, flight.To(i * Distance / Pieces));
            double simpson = i is 0 or Pieces ? 1 : i % 2 == 1 ? 4 : 2;
            work += simpson * Power(flight.Here) / flight.Here.Point.Vx * Distance / Pieces / 3;
        }

        Assert.True(work < 0);
        return Near(Energy(flight.Here) - before, work, 1e-6 * before);

        double Energy(RigidStateSi s) => 0.5 * body.Mass * s.Point.Speed * s.Point.Speed + 0.5 * body.Transverse * s.Rate.Dot(s.Rate) + body.Mass * G * s.Point.Y;

        double Power(RigidStateSi s)
        {
            double speed = s.Air.Length, along = s.Air.Dot(s.Axis), sum = -body.Mass * K * speed * speed * along;
            Vec cross = s.Air - along * s.Axis;
            foreach (LiftingPart part in ExampleArrow.Stability.Parts)
            {
                Vec w = cross - (part.Position.Meters - ExampleArrow.Stability.BalancePoint.Meters) * s.Rate;
                sum -= 0.5 * body.Density * speed * part.LiftPerRadian.SquareMeters * w.Dot(w);
            }

            Vec middle = cross - body.Stability.AcrossArm * s.Rate;
            return sum - 0.5 * body.Density * body.Stability.Across * Math.Pow(middle.Length, 3);
        }
    }, iter: 10);

    [Fact]
    public void Without_air_the_parabola_and_the_turning_stay() => Release.Sample(launch =>
    {
        RigidBodySi vacuum = Whole with { Density = 1e-12, Point = new(0, G, 0, 0, 0) };
        RigidLaunchSi gentle = launch with { Pitch = 0.1 * launch.Pitch, Yaw = 0.1 * launch.Yaw, PitchRate = 0.1 * launch.PitchRate, YawRate = 0.1 * launch.YawRate };
        RigidStateSi s = Fly(vacuum, gentle, 50);
        double t = 50 / (launch.Launch.Speed * Math.Cos(launch.Launch.Elevation));
        return Near(s.Point.Y, 50 * Math.Tan(launch.Launch.Elevation) - 0.5 * G * t * t, 1e-7)
            && Near(s.Rate.Length, Math.Sqrt(gentle.PitchRate * gentle.PitchRate + gentle.YawRate * gentle.YawRate * 1), 1e-9);
    });

    [Fact]
    public void The_point_mass_is_the_limit_of_a_short_light_arrow()
    {
        // Arms, and inertia with their square: inertia and damping going to zero together. 100 yd, released level and still.
        double far = 100 * Yard;
        Assert.Equal(Outcome.Met, Whole.Point.Fly(new(85, 0), far, 0, out StateSi point, out _));
        double Shift(double size) => Fly(Short(size), new(new(85, 0)), far).Point.Y - point.Y;
        Assert.InRange(Math.Abs(Shift(1e-3)), 0, 1e-4);
        Assert.Equal(10, Shift(1e-2) / Shift(1e-3), 0.2); // in proportion to the size
        Assert.InRange(Math.Abs(Shift(1)), 0.02, 0.1);

        // Inertia alone is not enough: the damped turning of a long arrow lags behind its path.
        double light = Fly(Whole with { Transverse = 1e-4 * ExampleArrow.Inertia, Axial = 0 }, new(new(85, 0)), far).Point.Y - point.Y;
        Assert.InRange(Math.Abs(light), 2e-3, 2e-2);

        // In a cross wind, started along its way through the air, as the point mass always flies.
        RigidBodySi blown = Blown(Short(1e-3), (-3, 0, 5));
        Vec air = new(88, 0, -5);
        Assert.Equal(Outcome.Met, blown.Point.Fly(new(85, 0), far, 0, out StateSi drift, out _));
        RigidStateSi s = Fly(blown, new(new(85, 0), Yaw: Math.Atan2(air.Z, air.X)), far);
        Assert.Equal(drift.Z, s.Point.Z, 1e-4);
        Assert.Equal(drift.Y, s.Point.Y, 1e-4);
        Assert.Equal(drift.Time, s.Point.Time, 1e-5);
    }

    [Fact]
    public void More_drag_above_an_angle_slows_a_swinging_arrow_and_leaves_a_straight_one()
    {
        RigidBodySi switched = Whole with { DragAbove = 2 * K, SwitchAngle = 1 * Degree }, always = Whole with { Point = Whole.Point with { K = 2 * K } };
        var swinging = new RigidLaunchSi(new(85, 0), PitchRate: 2);
        double low = Fly(Whole, swinging, 50).Point.Vx, high = Fly(always, swinging, 50).Point.Vx;
        Assert.InRange(Fly(switched, swinging, 50).Point.Vx, high + 0.1 * (low - high), low - 0.1 * (low - high));
        var still = new RigidLaunchSi(new(85, 0));
        Assert.Equal(Fly(Whole, still, 50).Point.Vx, Fly(switched, still, 50).Point.Vx, 0.02);
    }

    static RigidBodySi Short(double size)
    {
        StabilitySi s = Whole.Stability;
        return Whole with
        {
            Transverse = size * size * ExampleArrow.Inertia,
            Axial = 0,
            Stability = s with { Sum1 = size * s.Sum1, Sum2 = size * size * s.Sum2, AcrossArm = size * s.AcrossArm },
        };
    }

    static RigidBodySi Blown(RigidBodySi body, (double X, double Y, double Z) wind)
        => body with { Point = body.Point with { WindX = wind.X, WindY = wind.Y, WindZ = wind.Z } };

    static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance;
}
