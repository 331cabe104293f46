namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Tests.ArrowsTests;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;
using static Ascham.Tests.FlightTests.RigidExample;

/// <summary>Derived, not published: closed forms of the swinging arrow, and the worked arrow.</summary>
public class RigidBodyDerivedTests
{
    const string Worked = "worked elsewhere, with the rate in force and moment";

    static AngleOfAttackMotion Motion => new(Bare);

    static Speed V => Speed.FromMetersPerSecond(ExampleArrow.Speed);

    [Fact]
    public void A_turn_rate_at_release_turns_the_path_as_the_closed_form_says()
    {
        // Small enough that what is of third order in the angle is below the ninth digit; 1500 m are 44 e-folds.
        const double Rate = 1e-3;
        double closed = Motion.PathTurn(Angle.Zero, RotationalSpeed.FromRadiansPerSecond(Rate), V)!.Value.Radians;
        Assert.Equal(1, PathAngle(new(new(85, 0), PitchRate: Rate)) / closed, 1e-8);

        // The worked value used a balance point with more digits than are printed: 2e-5 is what the last of them moves.
        Assert.Equal(new Printed("2.407254e-03", Worked).Value, closed / Rate, 2e-5 * 2.4e-3);
    }

    [Fact]
    public void A_yaw_at_release_turns_the_path_as_the_closed_form_says()
    {
        const double Small = 1e-3;
        double closed = Motion.PathTurn(Angle.FromDegrees(Small), RotationalSpeed.Zero, V)!.Value.Radians;
        Assert.Equal(1, PathAngle(new(new(85, 0), Pitch: Small * Degree)) / closed, 1e-8);
        Assert.Equal(new Printed("3.004140e-05", Worked).Value, closed / Small, 2e-5 * 3e-5);
    }

    [Theory]
    [InlineData(1e-3, 0, 0)]
    [InlineData(0, 1e-3, 0)]
    [InlineData(1e-3, -2e-3, 0)]
    [InlineData(1e-3, 2e-3, 1)] // with drag
    public void A_disturbed_release_moves_the_path_aside_as_the_closed_form_says(double rate, double attackDegrees, double drag)
    {
        const double Far = 1500;
        RigidBodySi body = Bare with { Point = new(drag * K, 0, 0, 0, 0) };
        AngleOfAttackMotion motion = new(body);
        (Angle attack, RotationalSpeed turning) = (Angle.FromDegrees(attackDegrees), RotationalSpeed.FromRadiansPerSecond(rate));
        RigidStateSi s = Fly(body, new(new(85, 0), Pitch: attack.Radians, PitchRate: rate), Far, 1.0 / 12);
        double turn = motion.PathTurn(attack, turning, V)!.Value.Radians, offset = motion.PathOffset(attack, turning, V)!.Value.Meters;
        Assert.Equal(1, (s.Point.Y - turn * Far) / offset, drag > 0 ? 1e-3 : 1e-5);
    }

    [Fact]
    public void A_bending_path_holds_the_nose_at_the_trim_and_lifts_the_arrow()
    {
        Angle trim = Motion.Trim(V, Angle.Zero, Gravity.Standard)!.Value;
        new Printed("5.5111e-4", Worked).Matches(trim.Radians);
        double lift = Motion.TrimLift!.Value.DecimalFractions;
        new Printed("0.172", Worked).Matches(100 * lift);

        // Launched in that state it stays there, and drops less by that share.
        RigidBodySi falling = Bare with { Point = new(0, G, 0, 0, 0) };
        var launch = new RigidLaunchSi(new(85, 0), Pitch: trim.Radians, PitchRate: -G / 85);
        foreach (double x in (double[])[10, 20, 40, 60])
        {
            RigidStateSi s = Fly(falling, launch, x);
            double square = s.Air.Dot(s.Air), level = s.Point.Vx / Math.Sqrt(square);
            Assert.Equal(trim.Radians * 85 * 85 * level / square, Up(s), 0.01 * trim.Radians);
            double parabola = -0.5 * G * x * x / (85 * 85);
            Assert.Equal(lift, 1 - s.Point.Y / parabola, 0.05 * lift); // it gathers speed, and the lift leans with the nose
        }
    }

    [Theory]
    [InlineData(40)]
    [InlineData(85)]
    [InlineData(110)]
    public void The_wavelength_is_that_of_the_closed_form_at_every_speed(double speed)
    {
        // The nose crosses the path every half wavelength, the first time elsewhere, as the rate force starts it off-centre.
        double half = 0.5 * Motion.Wavelength!.Value.Meters;
        var launch = new RigidLaunchSi(new(speed, 0), PitchRate: 1e-5 * speed);
        double first = Crossing(Bare, launch, 8, 12), second = Crossing(Bare, launch, first + 8, first + 12);
        Assert.Equal(half, second - first, 1e-6);
        Assert.Equal(20.1, 2 * half, 0.1);
    }

    [Fact]
    public void The_swing_decays_as_the_closed_form_says_with_drag_too()
    {
        foreach (double k in (double[])[0, K, 0.004])
        {
            RigidBodySi body = Bare with { Point = new(k, 0, 0, 0, 0) };
            var motion = new AngleOfAttackMotion(body);
            double wave = motion.Wavelength!.Value.Meters, decay = motion.DecayDistance!.Value.Meters;
            var launch = new RigidLaunchSi(new(85, 0), Pitch: 1e-4);
            double one = Up(Fly(body, launch, wave)), two = Up(Fly(body, launch, 2 * wave));
            Assert.Equal(Math.Exp(-wave / decay), two / one, 1e-5);
            Assert.Equal(wave, motion.SettleDistance(Angle.FromRadians(one), Angle.FromRadians(two))!.Value.Meters, 1e-3);
        }
    }

    [Fact]
    public void The_worked_arrow_swings_with_its_numbers()
    {
        // Without the rate force and the speed lost, to leading order.
        double omega = Math.Sqrt(0.5 * ExampleArrow.Density * 85 * 85 * Bare.Stability.Sum1 / ExampleArrow.Inertia);
        new Printed("26.556", Worked).Matches(omega, slack: 2); // the balance point again
        new Printed("3.3687", Worked).Matches(0.5 * ExampleArrow.Density * 85 * Bare.Stability.Sum2 / ExampleArrow.Inertia, slack: 2);

        // The full equations: the rate force lengthens the wave by half of c1 = 0.64 %, damping by zeta²/2.
        double leading = 2 * Math.PI * 85 / omega;
        Assert.Equal(leading * (1 + 0.0032 + 0.0003), Motion.Wavelength!.Value.Meters, 0.0015 * leading);
        Assert.Equal(34.1, Motion.DecayDistance!.Value.Meters, 0.6); // printed for a drag coefficient of 1.5 and constant speed
    }

    [Fact]
    public void A_weightless_pendulum_in_the_wind_keeps_its_period_and_its_energy()
    {
        // A pure couple on a body too heavy for the rate force: the path is straight, and the angle is a pendulum's, exactly, at any size.
        RigidBodySi body = Bare with { Stability = Bare.Stability with { Sum0 = 0, Sum2 = 0 }, Mass = 1e15 };
        const double Start = 20 * Degree;
        double perMetre = Math.Sqrt(0.5 * body.Density * body.Stability.Sum1 / body.Transverse);
        double period = 4 * CompleteElliptic(Math.Sin(Start / 2)) / perMetre;
        var launch = new RigidLaunchSi(new(85, 0), Pitch: Start);

        Assert.Equal(0, Up(Fly(body, launch, period / 4, 1.0 / 24)), 1e-9);
        Assert.Equal(-Start, Up(Fly(body, launch, period / 2, 1.0 / 24)), 1e-9);
        Assert.Equal(Start, Up(Fly(body, launch, period, 1.0 / 24)), 1e-9);

        // Rotation plus the potential of the couple stays; so does the length of the axis.
        double Energy(RigidStateSi s) => 0.5 * s.Rate.Dot(s.Rate) - perMetre * perMetre * 85 * s.Axis.Dot(s.Air);
        double before = Energy(Fly(body, launch, 0));
        foreach (double x in (double[])[5, 10, 30, 90])
        {
            Assert.Equal(before, Energy(Fly(body, launch, x, 1.0 / 24)), 1e-9 * Math.Abs(before));
        }
    }

    [Fact]
    public void Spin_settles_exponentially_to_the_turn_of_the_vanes()
    {
        RigidBodySi body = Bare with { Stability = Whole.Stability, Axial = 2.5e-7 };
        double settled = 85 * body.Stability.RollTurning / body.Stability.RollDamping;
        double distance = body.Axial / (0.5 * body.Density * body.Stability.RollDamping);
        new Printed("297.71", Worked).Matches(settled);
        foreach (double x in (double[])[1, 3, 10, 40])
        {
            Assert.Equal(settled * (1 - Math.Exp(-x / distance)), Fly(body, new(new(85, 0)), x, 1.0 / 24).Spin, 1e-5 * settled);
        }
    }

    [Fact]
    public void Gyroscopic_modes_are_those_of_a_spinning_top_without_weight()
    {
        // Linear, no path motion: a'' - i P a' + b a = 0 with P = (Ix/I) spin, so the slow and fast turns of the axis are P/2 -+ sqrt(P²/4 + b).
        RigidBodySi body = Bare with { Mass = 1e15, Stability = Bare.Stability with { Sum2 = 0, RollDamping = 0 }, Axial = 1e-4 };
        const double Spin = 900;
        double b = 0.5 * body.Density * 85 * 85 * body.Stability.Sum1 / body.Transverse, p = body.Axial / body.Transverse * Spin;
        double root = Math.Sqrt(0.25 * p * p + b), time = 0.5;
        // Start in the pure fast mode: a = A exp(i (P/2 + root) t), up the real and right the imaginary part.
        double fast = 0.5 * p + root;
        RigidStateSi s = Fly(body, new(new(85, 0), Pitch: 1e-4, YawRate: 1e-4 * fast, Spin: Spin), 85 * time, 1.0 / 24);
        (double up, double right) = s.FromPath(s.Axis);
        Assert.Equal(1e-4 * Math.Cos(fast * time), up, 1e-9);
        Assert.Equal(1e-4 * Math.Sin(fast * time), right, 1e-9);
    }

    static double PathAngle(RigidLaunchSi launch)
    {
        RigidStateSi s = Fly(Bare, launch, 1500, 1.0 / 12);
        return Math.Atan2(s.Point.Vy, s.Point.Vx);
    }

    // Complete elliptic integral of the first kind by the arithmetic-geometric mean: Abramowitz & Stegun 17.6.
    static double CompleteElliptic(double modulus)
    {
        double a = 1, g = Math.Sqrt(1 - modulus * modulus);
        while (a - g > 1e-15)
        {
            (a, g) = (0.5 * (a + g), Math.Sqrt(a * g));
        }

        return 0.5 * Math.PI / a;
    }
}
