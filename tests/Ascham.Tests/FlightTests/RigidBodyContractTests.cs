namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using UnitsNet;
using Xunit;
using static Ascham.Tests.FlightTests.RigidExample;

public class RigidBodyContractTests
{
    static RigidLaunch Disturbed => LevelShot with { PitchRate = RotationalSpeed.FromRadiansPerSecond(1), Yaw = Angle.FromDegrees(1) };

    [Fact]
    public void A_state_tells_where_the_arrow_is_and_where_it_points()
    {
        RigidState start = TheArrow.At(Disturbed with { Pitch = Angle.FromDegrees(2), Spin = RotationalSpeed.FromRadiansPerSecond(3) }, Length.Zero);
        Assert.Equal(2, start.AttackUp.Degrees, 1e-2);
        Assert.Equal(1, start.AttackRight.Degrees, 1e-2);
        Assert.Equal(Math.Sqrt(5), start.Attack.Degrees, 1e-3);
        Assert.Equal(2, start.Pointing.Degrees, 1e-9);
        Assert.Equal(1, start.PointingRight.Degrees, 1e-9);
        Assert.Equal(1, start.Turning.RadiansPerSecond, 1e-9);
        Assert.Equal(3, start.Spin.RadiansPerSecond, 1e-12);
        Assert.Equal(85, start.Flight.Speed.MetersPerSecond, 1e-12);
    }

    [Fact]
    public void A_launch_point_off_the_origin_moves_the_flight()
    {
        Launch moved = LevelShot.Launch with { Forward = Length.FromMeters(1), Up = Length.FromMeters(0.5), Right = Length.FromMeters(-0.2) };
        RigidState here = TheArrow.At(Disturbed, Length.FromMeters(40)), there = TheArrow.At(Disturbed with { Launch = moved }, Length.FromMeters(41));
        Assert.Equal(here.Flight.Up.Meters + 0.5, there.Flight.Up.Meters, 1e-12);
        Assert.Equal(here.Flight.Right.Meters - 0.2, there.Flight.Right.Meters, 1e-12);
    }

    [Fact]
    public void A_history_holds_the_single_flights_and_warns_of_large_angles()
    {
        Length[] distances = [.. Enumerable.Range(0, 31).Select(i => Length.FromMeters(2 * i))];
        AttackHistory history = TheArrow.History(Disturbed, distances);
        Assert.Equal(31, history.States.Count);
        Assert.Equal(TheArrow.At(Disturbed, distances[^1]).Flight.Up.Meters, history.States[^1].Flight.Up.Meters, 1e-6);
        Assert.Empty(history.Cautions);
        Assert.InRange(history.LargestAttack.Degrees, 1.9, 2.6);

        AttackHistory wild = TheArrow.History(LevelShot with { Yaw = Angle.FromDegrees(12) }, distances);
        Assert.Contains("12°", Assert.Single(wild.Cautions));
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => TheArrow.History(Disturbed, distances.Reverse()));
        Assert.Equal("downrange", e.ParamName);
    }

    [Fact]
    public void A_drag_that_follows_the_speed_is_refused_with_what_to_give_instead()
    {
        Assert.Contains("FromConstant", Assert.Throws<ArgumentException>(() => TheArrow with { Drag = AnyDrag.Named("table") }).Message);
        Assert.Throws<ArgumentException>(() => new DragAboveAngle { Angle = 1.Degrees, Drag = AnyDrag.Named("turbulent") });
    }

    [Fact]
    public void An_arrow_that_cannot_be_is_refused_before_it_flies()
    {
        var s = TheArrow.Stability;
        foreach (RigidBody wrong in new[]
        {
            TheArrow with { Stability = s with { BalancePoint = 2.Metres } },
            TheArrow with { Stability = s with { Fletching = s.Fletching! with { FromTip = 6.9.Metres } } },
            TheArrow with { TransverseInertia = MassMomentOfInertia.FromKilogramSquareMeters(1.5) },
        })
        {
            Assert.Contains("must be from 0 to", Assert.Throws<ArgumentOutOfRangeException>(() => wrong.At(LevelShot, 20.Metres)).Message);
        }
    }

    [Fact]
    public void A_large_angle_on_the_way_is_warned_of_wherever_one_looks()
    {
        AttackHistory history = TheArrow.History(LevelShot with { Yaw = 15.Degrees }, [40.Metres]);
        Assert.Equal(15, history.LargestAttack.Degrees, 1e-9);
        Assert.Single(history.Cautions);
    }

    [Fact]
    public void Many_launches_on_any_number_of_threads_are_the_single_flights()
    {
        RigidLaunch[] launches = [.. Enumerable.Range(-20, 41).Select(i => LevelShot with { Yaw = Angle.FromDegrees(0.1 * i) })];
        double[] alone = [.. launches.Select(l => TheArrow.At(l, 40.Metres).Flight.Right.Meters)];
        Assert.Equal(alone, TheArrow.AtAll(launches, 40.Metres).Select(s => s.Flight.Right.Meters));
        Assert.Equal(alone, TheArrow.AtAll(launches, 40.Metres, threads: 1).Select(s => s.Flight.Right.Meters));
        Assert.Empty(TheArrow.AtAll([], 40.Metres));
        var e = Assert.Throws<AggregateException>(() => TheArrow.AtAll([LevelShot, LevelShot with { YawRate = RotationalSpeed.FromRadiansPerSecond(95) }], 40.Metres));
        Assert.IsType<TumbledException>(Assert.Single(e.InnerExceptions));
    }

    [Fact]
    public void An_arrow_settles_once_and_for_all_where_it_says()
    {
        Angle within = Angle.FromDegrees(0.5);
        Length settled = TheArrow.SettledFrom(Disturbed, within, Length.FromMeters(90))!.Value;
        Length[] after = [.. Enumerable.Range(0, 200).Select(i => settled + Length.FromMeters(0.001 + 0.15 * i))];
        Assert.All(TheArrow.History(Disturbed, after).States, s => Assert.True(s.Attack <= within));
        Assert.True(TheArrow.At(Disturbed, settled - Length.FromMillimeters(1)).Attack > within);

        // By the envelope, from some 2.3 degrees: within half a wavelength.
        double envelope = TheArrow.Motion.SettleDistance(Angle.FromDegrees(2.3), within)!.Value.Meters;
        Assert.InRange(settled.Meters, envelope - 12, envelope + 5);
        Assert.Null(TheArrow.SettledFrom(Disturbed, within, settled + Length.FromMeters(10)));
        Assert.Equal(0, TheArrow.SettledFrom(LevelShot, within, Length.FromMeters(90))!.Value.Meters);
    }

    [Fact]
    public void The_shift_against_the_point_mass_follows_the_release()
    {
        Length far = Length.FromMeters(90);
        ShiftFromPointMass up = TheArrow.Shift(LevelShot with { PitchRate = RotationalSpeed.FromRadiansPerSecond(2) }, far, Angle.Zero), still = TheArrow.Shift(LevelShot, far, Angle.Zero);
        Assert.True(up.Up > still.Up);
        ShiftFromPointMass right = TheArrow.Shift(LevelShot with { YawRate = RotationalSpeed.FromRadiansPerSecond(2) }, far, Angle.Zero);
        Assert.Equal((up.Up - still.Up).Meters, right.Right.Meters, 0.05 * right.Right.Meters);

        // Without the shaft across the flow, the closed form; with it a quarter more, since it lifts but hardly turns.
        RigidBody slick = TheArrow with { Stability = TheArrow.Stability with { CrossflowConstant = 0 } };
        double turned = TheArrow.Motion.PathTurn(Angle.Zero, RotationalSpeed.FromRadiansPerSecond(2), Speed.FromMetersPerSecond(85))!.Value.Radians;
        Length plain = slick.Shift(LevelShot with { YawRate = RotationalSpeed.FromRadiansPerSecond(2) }, far, Angle.Zero).Right;
        Assert.Equal(turned * 90, plain.Meters, 0.03 * turned * 90);
        Assert.InRange(right.Right / plain, 1.2, 1.3);
    }

    [Fact]
    public void An_answer_can_be_asked_over_all_vanes_thought_possible()
    {
        VaneBound<double> wave = TheArrow.Over(a => a.Motion.Wavelength!.Value.Meters);
        Assert.Equal(wave.Given, wave.Full, 1e-12);
        Assert.InRange(wave.Weak / wave.Full, 1.2, 1.45); // about 1 over the root of 0.6
        VaneBound<ShiftFromPointMass> shift = TheArrow.Over(a => a.Shift(Disturbed, Length.FromMeters(50), Angle.Zero));
        Assert.True(shift.Weak.Up > shift.Full.Up);
    }

    [Fact]
    public void An_arrow_aligned_with_the_air_has_no_angle_of_attack()
    {
        Wind wind = Wind.Of(Speed.FromMetersPerSecond(-3), Speed.FromMetersPerSecond(5), Speed.FromMetersPerSecond(1));
        RigidBody blown = TheArrow with { Wind = wind };
        Launch launch = LevelShot.Launch with { Elevation = Angle.FromDegrees(5), Azimuth = Angle.FromDegrees(-2) };
        Assert.Equal(0, blown.At(RigidLaunch.AlignedWithAir(launch, wind), Length.Zero).Attack.Degrees, 1e-6);
        Assert.InRange(blown.At(new RigidLaunch { Launch = launch }, Length.Zero).Attack.Degrees, 3, 4);
    }

    [Fact]
    public void A_bare_shaft_flies_and_says_that_nothing_holds_it_straight()
    {
        RigidBody bare = TheArrow with { Stability = TheArrow.Stability with { Fletching = null } };
        Assert.False(bare.Motion.Settles);
        Assert.Null(bare.Motion.DecayDistance);
        Assert.Null(bare.Motion.PathTurn(Angle.Zero, RotationalSpeed.Zero, Speed.FromMetersPerSecond(85)));
        AttackHistory history = bare.History(LevelShot with { Pitch = Angle.FromDegrees(0.5) }, [Length.FromMeters(5), Length.FromMeters(20)]);
        Assert.Contains("ahead of the balance point", history.Cautions[0]);
        Assert.True(history.States[1].Attack > history.States[0].Attack);
    }

    [Fact]
    public void An_arrow_that_tumbles_says_where_and_why()
    {
        RigidBody hopeless = TheArrow with { Stability = TheArrow.Stability with { Fletching = null, CrossflowConstant = 0 } };
        var e = Assert.Throws<TumbledException>(() => hopeless.At(LevelShot with { Pitch = Angle.FromDegrees(3) }, Length.FromYards(60)));
        Assert.InRange(e.Distance.Meters, 5, 54);
        Assert.InRange(e.Attack.Degrees, 30, 60);
        Assert.True(e.Margin < Length.Zero);
        Assert.Contains("ahead of the balance point", e.Message);
        Assert.False(hopeless.TryAt(LevelShot with { Pitch = Angle.FromDegrees(3) }, Length.FromYards(60), out _));

        var thrown = Assert.Throws<TumbledException>(() => TheArrow.At(LevelShot with { Yaw = Angle.FromDegrees(24), YawRate = RotationalSpeed.FromRadiansPerSecond(20) }, Length.FromYards(60)));
        Assert.Contains("stable at small angles", thrown.Message);
    }

    [Fact]
    public void Faces_out_of_reach_or_behind_are_refused_with_data()
    {
        RigidLaunch steep = new() { Launch = new() { Speed = Speed.FromMetersPerSecond(40), Elevation = Angle.FromDegrees(50) } };
        var e = Assert.Throws<OutOfReachException>(() => TheArrow.AtSlant(steep, Length.FromMeters(150), Angle.FromDegrees(45)));
        Assert.True(TheArrow.TryAtSlant(steep, e.Reach - Length.FromCentimeters(2), Angle.FromDegrees(45), out _));
        Assert.False(TheArrow.TryAtSlant(steep, e.Reach + Length.FromCentimeters(2), Angle.FromDegrees(45), out _));
        Assert.Contains("behind the launch point", Assert.Throws<ArgumentOutOfRangeException>(() => TheArrow.At(LevelShot, Length.FromMeters(-1))).Message);
    }

    [Fact]
    public void Bodies_and_launches_that_cannot_be_are_refused_by_name()
    {
        Assert.Equal("TransverseInertia", Refused(() => TheArrow with { TransverseInertia = MassMomentOfInertia.FromKilogramSquareMeters(-1e-3) }));
        Assert.Equal("AxialInertia", Refused(() => TheArrow with { AxialInertia = MassMomentOfInertia.Zero }));
        Assert.Equal("Mass", Refused(() => TheArrow with { Mass = Mass.FromGrams(-26) }));
        Assert.Equal("Gravity", Refused(() => TheArrow with { Gravity = default }));
        Assert.Equal("Pitch", Refused(() => LevelShot with { Pitch = Angle.FromDegrees(40) }));
        Assert.Equal("Spin", Refused(() => LevelShot with { Spin = RotationalSpeed.FromRadiansPerSecond(1e5) }));
        Assert.Equal("Angle", Refused(() => new DragAboveAngle { Angle = Angle.Zero, Drag = Drag.None }));
        Assert.Equal("within", Refused(() => TheArrow.SettledFrom(LevelShot, Angle.Zero, Length.FromMeters(50))));
        Assert.ThrowsAny<ArgumentException>(() => TheArrow with { Mass = Mass.FromGrams(double.NaN) });
        Assert.ThrowsAny<ArgumentException>(() => LevelShot with { Yaw = Angle.FromDegrees(double.NaN) });

        static string? Refused(Func<object?> build) => Assert.Throws<ArgumentOutOfRangeException>(build).ParamName;
    }

    [Fact]
    public void Numbers_that_are_none_never_fly()
    {
        RigidBodySi[] bodies =
        [
            Whole with { Transverse = double.NaN }, Whole with { Mass = double.NaN }, Whole with { Density = double.NaN },
            Whole with { Stability = Whole.Stability with { Sum1 = double.NaN } }, Whole with { Point = Whole.Point with { WindZ = double.NaN } },
        ];
        foreach (RigidBodySi body in bodies)
        {
            Assert.NotEqual(RigidOutcome.Met, body.Start(new(new(85, 0)), 0).ToEnd(30));
        }

        Assert.NotEqual(RigidOutcome.Met, Whole.Start(new(new(85, 0), Pitch: double.NaN), 0).ToEnd(30));
        Assert.NotEqual(RigidOutcome.Met, Whole.Start(new(new(85, 0), Spin: double.NaN), 0).ToEnd(30));
        Assert.NotEqual(RigidOutcome.Met, Whole.Start(new(new(85, 0)), 0).ToEnd(double.NaN));
    }

    [Fact]
    public void The_si_door_allocates_nothing()
    {
        RigidBodySi body = Whole;
        var launch = new RigidLaunchSi(new(85, 0.03), PitchRate: 1, Yaw: 0.01);
        double sum = Run(20); // compiled and warm
        long least = long.MaxValue; // of five rounds: the runtime itself may allocate once, when it compiles a method anew on this thread
        for (int round = 0; round < 5; round++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            sum += Run(200);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
        Assert.True(double.IsFinite(sum));

        double Run(int times)
        {
            double total = 0;
            for (int i = 0; i < times; i++)
            {
                RigidFlight flight = body.Start(launch, 0);
                flight.To(20);
                flight.To(50 + 0.1 * i);
                total += flight.Here.Point.Y + flight.Attack;
            }

            return total;
        }
    }
}

static class RigidFlightEnd
{
    /// <summary>The outcome alone.</summary>
    public static RigidOutcome ToEnd(this RigidFlight flight, double distance) => flight.To(distance);
}
