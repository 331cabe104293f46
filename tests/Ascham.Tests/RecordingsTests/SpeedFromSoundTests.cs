namespace Ascham.Tests.RecordingsTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using Ascham.Recordings;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class SpeedFromSoundTests
{
    static readonly ArrowAtExit Exact = new()
    {
        NockToTip = 0.75.Metres,
        BraceHeight = 0.17.Metres,
        LeadError = 0.Metres,
        Delay = ExitDelay.Measured(Duration.Zero, Duration.Zero, "a test"),
        TouchToSound = Duration.Zero,
        TouchToSoundError = Duration.Zero,
    };

    [Fact] // published: a worked example in a hobby forum (primitivearcher.com, topic 59214): 21 ft, microphone 3 ft behind the archer, 0.207 s, sound at 1125 ft/s: "112 fps"
    public void A_worked_example_of_a_hobbyist_comes_out()
    {
        // The example measures from the archer and leaves the arrow's length out, so it is put in here as equal to the brace height; air of 1125 ft/s is air of 19.5 °C.
        SoundAir air = Still(19.5);
        Assert.Equal(1125, air.Air.SpeedOfSound.FeetPerSecond, 1.5);
        var shot = Shot(ShotLayout.WithMicrophone(21.Feet, 0.Feet, 3.Feet, 0.Feet, 0.Feet), 0.207);

        var speed = SpeedFromSound.Mean([shot], air, Exact with { NockToTip = 0.3.Metres, BraceHeight = 0.3.Metres }, 0.MetresPerSecond, 0.9);
        new Printed("112", "primitivearcher.com, topic 59214").Matches(speed.Value.FeetPerSecond, 1.2); // 111.5: the page rounds it up; the sound differs by 0.05 %
    }

    [Fact] // derived, independent of the library: time of a flat flight (exp(k x) - 1)/(k v), 84 m/s, k = 0.0015 1/m, 60 yd: 0.6814 s by integration of the equations of motion
    public void Launch_speed_comes_back_from_a_time_of_flight_worked_out_elsewhere()
    {
        double lead = 0.75 - 0.17;
        var layout = ShotLayout.FromDistances((60.Yards.Meters + lead).Metres, 0.Metres, 3.Metres, (60.Yards.Meters + lead).Metres, 0.Metres);
        double late = (layout.MicrophoneToTarget.Meters - 3) / Still(15).Air.SpeedOfSound.MetersPerSecond;

        var speed = SpeedFromSound.Launch([Shot(layout, 0.6814 + late)], Still(15), Exact, Gravity.Standard, Drag.FromConstant(0.0015.PerMetre), 0.Percent, 0.MetresPerSecond, 0.9);
        Assert.Equal(84, speed.Value.MetersPerSecond, 0.01); // half a unit of 0.6814 s is 0.006 m/s
    }

    [Fact] // the claim asked for: 60 yd, 2 ms between the onsets, usual errors of the rest
    public void Mean_speed_is_known_to_one_per_cent_at_60_yd_with_2_ms()
    {
        SoundAir air = Still(15) with { TemperatureError = TemperatureDelta.FromKelvins(2), TailWindError = 1.MetresPerSecond };
        var shot = Shot(ShotLayout.WithMicrophone(60.Yards, 0.1.Yards, 1.Metres, 2.Metres, 0.05.Metres), 0.80, 0.002);
        var speed = SpeedFromSound.Mean([shot], air, SynthesisedShot.Arrow, 0.MetresPerSecond, 0.9);

        Assert.InRange((speed.High - speed.Low) / 2 / speed.Value, 0.005, 0.010);
    }

    [Fact] // derived: each error alone against a difference of two answers
    public void Each_error_moves_the_answer_as_stated()
    {
        var layout = ShotLayout.FromDistances(40.Metres, 0.Metres, 5.Metres, 42.Metres, 0.Metres);
        SoundAir air = Still(10) with { TailWind = 2.MetresPerSecond };
        double Value(ShotLayout l, SoundAir a, ArrowAtExit e, double time = 0.6) => Fly(l, a, e, time).Value.MetersPerSecond;
        double Error(ShotLayout l, SoundAir a, ArrowAtExit e) => Fly(l, a, e, 0.6, 1e-9).StandardError.MetersPerSecond;
        double model = 0.0012; // of the speed of sound, always there
        double Only(double all) => Math.Sqrt((all * all) - Math.Pow(Error(layout, air, Exact), 2));

        double warmer = Value(layout, Still(10.5) with { TailWind = 2.MetresPerSecond }, Exact) - Value(layout, Still(9.5) with { TailWind = 2.MetresPerSecond }, Exact);
        Close(warmer, Only(Error(layout, air with { TemperatureError = TemperatureDelta.FromKelvins(1) }, Exact)), 0.01); // humidity aside
        Close(model / (0.5 / 283.15) * warmer, Error(layout, air, Exact), 0.01);
        double windier = Value(layout, air with { TailWind = 2.1.MetresPerSecond }, Exact) - Value(layout, air with { TailWind = 1.9.MetresPerSecond }, Exact);
        Close(5 * windier, Only(Error(layout, air with { TailWindError = 1.MetresPerSecond }, Exact)), 0.01);
        double longer = Value(layout, air, Exact with { NockToTip = 0.76.Metres }) - Value(layout, air, Exact with { NockToTip = 0.74.Metres });
        Close(longer, Only(Error(layout, air, Exact with { LeadError = 0.02.Metres })), 0.01);
        double later = Value(layout, air, Exact, 0.6005) - Value(layout, air, Exact, 0.5995);
        Close(2 * later, Only(Error(layout, air, Exact with { Delay = ExitDelay.Measured(Duration.Zero, Duration.FromMilliseconds(2), "a test") })), 0.01);

        // A distance paced off with the microphone's place given from the bow moves the way of the sound as well; the way there measured by itself does not.
        ShotLayout Behind(double metres, double error) => ShotLayout.WithMicrophone(metres.Metres, error.Metres, 1.Metres, 3.Metres, 0.Metres);
        double farther = Value(Behind(40.05, 0), air, Exact) - Value(Behind(39.95, 0), air, Exact);
        Close(farther, Math.Sqrt(Math.Pow(Error(Behind(40, 0.1), air, Exact), 2) - Math.Pow(Error(Behind(40, 0), air, Exact), 2)), 0.01);
        static void Close(double expected, double actual, double share) => Assert.Equal(Math.Abs(expected), actual, share * Math.Abs(expected));
    }

    [Fact] // derived: with the delay unknown, drag is the second difference of three times, variance 6 sigma², d²T = k h²/v
    public void Drag_from_three_distances_is_as_uncertain_as_the_second_difference_of_the_times()
    {
        const double Sigma = 0.002, Speed = 85, K = 0.0012;
        ArrowAtExit unknown = Exact with { Delay = ExitDelay.Measured(Duration.Zero, Duration.FromSeconds(1), "nothing is known") };
        TimedShot[] shots = [.. new[] { 20.0, 40, 60 }.Select(x => At(x, Speed, K, 0, Sigma))];
        SoundFit fit = SpeedFromSound.LaunchAndDrag(shots, Still(15), unknown, Gravity.Standard, 0.MetresPerSecond, 0.9);

        double second = Math.Sqrt(6) * Sigma * Speed / (20 * 20);
        Assert.Equal(second, fit.DragConstant.StandardError.InverseMeters, 0.1 * second); // to the order of k x
        Assert.Equal(K, fit.DragConstant.Value.InverseMeters, 0.00005); // gravity's arc
        Assert.True(fit.DragConstant.Low.InverseMeters < 0, "Two milliseconds to 60 m do not tell drag from none: the interval must say so.");
        Assert.InRange(fit.DragSpeedCorrelation, 0.95, 1);
    }

    [Theory] // coverage of launch speed alone, and of launch speed and drag together; truth drawn about the stated values with the stated errors, flight and sound in closed form
    [InlineData(1)]
    [InlineData(4)]
    public void Nine_intervals_in_ten_hold_launch_speed_and_drag(int shotsEach)
    {
        const int Repeats = 300;
        var random = new Random(20 + shotsEach);
        double Normal(double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        SoundAir air = Still(15) with { TemperatureError = TemperatureDelta.FromKelvins(1.5), TailWindError = 0.5.MetresPerSecond };
        ArrowAtExit arrow = SynthesisedShot.Arrow;
        (int speedAlone, int speed, int drag, int refused) = (0, 0, 0, 0);
        for (int i = 0; i < Repeats; i++)
        {
            (double v, double k) = (60 + (35 * random.NextDouble()), 0.0008 + (0.0014 * random.NextDouble()));
            (double c, double wind, double lead, double delay) = (air.Air.SpeedOfSound.MetersPerSecond * (1 + Normal(air.SoundErrorShare)), Normal(0.5), 0.58 + Normal(0.02), Normal(0.002) + 0.0005 + Normal(0.0005));
            List<TimedShot> shots = [];
            foreach (double nominal in new[] { 20, 45, 70 })
            {
                double distance = nominal + Normal(0.05);
                var layout = ShotLayout.WithMicrophone(nominal.Metres, 0.05.Metres, 1.Metres, 0.Metres, 0.Metres);
                for (int j = 0; j < shotsEach; j++)
                {
                    double time = SynthesisedShot.Flight(distance - lead, v + Normal(0.3), k, wind), sound = ((distance + 1) / (c - wind)) - (1 / (c - wind));
                    shots.Add(Shot(layout, time + delay + sound + Normal(0.0007), 0.0007));
                }
            }

            SoundFit fit;
            try
            {
                fit = SpeedFromSound.LaunchAndDrag(shots, air, arrow, Gravity.Standard, 0.3.MetresPerSecond, 0.9);
            }
            catch (ShotsDisagreeException)
            {
                refused++; // one in a thousand, by design
                continue;
            }

            var alone = SpeedFromSound.Launch(shots, air, arrow, Gravity.Standard, Drag.FromConstant((k * (1 + Normal(0.1))).PerMetre), 10.Percent, 0.3.MetresPerSecond, 0.9);
            speedAlone += alone.Low.MetersPerSecond <= v && v <= alone.High.MetersPerSecond ? 1 : 0;
            speed += fit.LaunchSpeed.Low.MetersPerSecond <= v && v <= fit.LaunchSpeed.High.MetersPerSecond ? 1 : 0;
            drag += fit.DragConstant.Low.InverseMeters <= k && k <= fit.DragConstant.High.InverseMeters ? 1 : 0;
        }

        double allowed = 4 * Math.Sqrt(0.9 * 0.1 / Repeats);
        Assert.InRange(refused, 0, 4);
        Assert.All(new[] { speedAlone, speed, drag }, held => Assert.InRange(held / (double)Repeats, 0.9 - allowed, 0.9 + allowed));
    }

    [Fact]
    public void What_all_shots_share_does_not_average_out()
    {
        TimedShot[] many = [.. Enumerable.Repeat(At(50, 85, 0.0012, 0, 0.001), 100)];
        ArrowAtExit late = Exact with { Delay = ExitDelay.AtTheBlow };
        double one = SpeedFromSound.Mean(many[..1], Still(15), late, 0.MetresPerSecond, 0.9).StandardError.MetersPerSecond;
        double all = SpeedFromSound.Mean(many, Still(15), late, 0.MetresPerSecond, 0.9).StandardError.MetersPerSecond;

        Assert.InRange(all / one, 0.85, 0.95); // 2 ms shared and 1 ms each: (4 + 0.01)/(4 + 1), the sound's error beside
    }

    [Fact]
    public void A_wrong_sound_among_several_shots_is_refused_by_name()
    {
        TimedShot[] shots = [At(20, 85, 0.0012), At(40, 85, 0.0012), At(60, 85, 0.0012), At(60, 85, 0.0012, 0.020)];
        var refused = Assert.Throws<ShotsDisagreeException>(() => SpeedFromSound.LaunchAndDrag(shots, Still(15), SynthesisedShot.Arrow, Gravity.Standard, 0.3.MetresPerSecond, 0.9));

        Assert.Contains("do not agree", refused.Message, StringComparison.Ordinal);
        Assert.Equal(2, refused.DegreesOfFreedom);
        Assert.Equal(4, refused.Residuals.Count);
        Assert.True(refused.Residuals[3] > Duration.FromMilliseconds(5));
    }

    [Fact] // relation: air that moves as a whole, and drag that follows speed
    public void Slope_wind_and_drag_by_parts_go_through_the_flight()
    {
        var drag = FlightTests.AnyDrag.Named("turbulent");
        var layout = ShotLayout.WithMicrophone(50.Metres, 0.Metres, 1.Metres, 1.Metres, 0.Metres) with { Inclination = 20.Degrees };
        double Up(double degrees) => SpeedFromSound.Launch([Shot(layout with { Inclination = degrees.Degrees }, 0.78)], Still(15), Exact, Gravity.Standard, drag, 10.Percent, 0.MetresPerSecond, 0.9).Value.MetersPerSecond;

        double expected = 9.80665 * Math.Sin(20 * Math.PI / 180) * 0.64 / 2; // gravity's part along the way, at half time
        Assert.Equal(expected, Up(20) - Up(0), 0.15 * expected);
        Assert.Equal(-expected, Up(-20) - Up(0), 0.15 * expected);
    }

    [Fact]
    public void What_makes_no_sense_is_refused_with_its_reason()
    {
        TimedShot near = At(20, 85, 0.0012), far = At(60, 85, 0.0012);
        Assert.Contains("three distances", Message<ArgumentException>(() => SpeedFromSound.LaunchAndDrag([near, far, far], Still(15), Exact, Gravity.Standard, 0.MetresPerSecond, 0.9)), StringComparison.Ordinal);
        Assert.Contains("one distance", Message<ArgumentException>(() => SpeedFromSound.Mean([near, far], Still(15), Exact, 0.MetresPerSecond, 0.9)), StringComparison.Ordinal);
        Assert.Contains("one shot or more", Message<ArgumentException>(() => SpeedFromSound.Mean([], Still(15), Exact, 0.MetresPerSecond, 0.9)), StringComparison.Ordinal);
        Assert.Contains("nothing is left for the flight", Message<ArgumentException>(() => SpeedFromSound.Mean([far with { Apart = Duration.FromMilliseconds(100) }], Still(15), Exact, 0.MetresPerSecond, 0.9)), StringComparison.Ordinal);
        Assert.Contains("no triangle", Message<ArgumentException>(() => ShotLayout.FromDistances(50.Metres, 0.1.Metres, 3.Metres, 40.Metres, 0.1.Metres)), StringComparison.Ordinal);
        Assert.Contains("m/s", Message<ArgumentOutOfRangeException>(() => new SpeedSpan(90.MetresPerSecond, 80.MetresPerSecond)), StringComparison.Ordinal);
        Assert.Contains("Apart", Message<ArgumentOutOfRangeException>(() => near with { Apart = Duration.Zero }), StringComparison.Ordinal);
        static string Message<T>(Func<object> act)
            where T : Exception => Assert.Throws<T>(act).Message;
    }

    [Fact]
    public void A_microphone_ahead_of_the_bow_comes_with_a_caution()
    {
        Assert.Null(ShotLayout.WithMicrophone(50.Metres, 0.Metres, 1.Metres, 2.Metres, 0.Metres).Caution);
        string caution = ShotLayout.WithMicrophone(50.Metres, 0.Metres, (-30).Metres, 4.Metres, 0.Metres).Caution!;
        Assert.Contains("30 m ahead of the bow and 4 m from the line of fire", caution, StringComparison.Ordinal);
        Assert.Contains("range is closed", caution, StringComparison.Ordinal);
    }

    [Theory] // 30 m ahead of the bow on the line; a metre beside it; behind the target
    [InlineData(30, 0)]
    [InlineData(30, 1)]
    [InlineData(53, 2)]
    public void A_microphone_in_the_line_of_fire_is_refused(double ahead, double aside)
    {
        string told = Assert.Throws<ArgumentException>(() => ShotLayout.WithMicrophone(50.Metres, 0.Metres, (-ahead).Metres, aside.Metres, 0.Metres)).Message;
        Assert.Contains($"{ahead} m ahead of the bow and only {aside} m from the line of fire", told, StringComparison.Ordinal);
        Assert.Contains("beside or behind the shooting line", told, StringComparison.Ordinal);
    }

    [Fact] // derived: 2 s/v and (pi/2) s/v for 0.53 m and 84 m/s are 12.62 and 9.91 ms
    public void The_power_stroke_without_let_off_takes_what_two_force_curves_say()
    {
        ExitDelay whole = ExitDelay.OverTheStroke(0.53.Metres, 84.MetresPerSecond, 0.Percent);
        Assert.Equal((12.62 + 9.91) / 2, whole.Delay.Milliseconds, 0.006);
        Assert.Equal((12.62 - 9.91) / Math.Sqrt(12), whole.Error.Milliseconds, 0.006);
    }

    [Theory] // derived: a trapezoid of 20.75 in with corners 4 and 4.25 in from its ends, integrated elsewhere: time by s/v
    [InlineData(65, 2.33)]
    [InlineData(80, 2.59)]
    [InlineData(85, 2.73)]
    public void Let_off_makes_the_arrow_slower_to_leave(double percent, double times)
    {
        double unit = 530 / 84.0;
        ExitDelay known = ExitDelay.OverTheStroke(0.53.Metres, 84.MetresPerSecond, percent.Percent), unknown = ExitDelay.OverTheStroke(0.53.Metres, 84.MetresPerSecond);
        Assert.Equal(times, ExitDelay.StrokeTime(percent / 100, 4.25 / 20.75), 0.02); // the front corner is 4 in here, a fifth there
        foreach (ExitDelay delay in (ExitDelay[])[known, unknown])
        {
            double half = delay.Error.Milliseconds * Math.Sqrt(12) / 2;
            Assert.InRange(times * unit, delay.Delay.Milliseconds - half, delay.Delay.Milliseconds + half);
        }

        Assert.True(known.Error < unknown.Error);
        Assert.Equal(1.45 * unit, ExitDelay.Anywhere(0.53.Metres, 84.MetresPerSecond).Delay.Milliseconds, 1e-6);
        Assert.Equal(2.9 * unit / Math.Sqrt(12), ExitDelay.Anywhere(0.53.Metres, 84.MetresPerSecond).Error.Milliseconds, 1e-6);
    }

    static SoundAir Still(double celsius) => new()
    {
        Air = Air.Moist(celsius.Celsius, 1013.Hectopascals, 0.Percent),
        TemperatureError = TemperatureDelta.Zero,
        TailWind = 0.MetresPerSecond,
        TailWindError = 0.MetresPerSecond,
    };

    static TimedShot Shot(ShotLayout layout, double seconds, double error = 0.001) => new() { Layout = layout, Apart = Duration.FromSeconds(seconds), ApartError = Duration.FromSeconds(error) };

    static Estimate<Speed> Fly(ShotLayout layout, SoundAir air, ArrowAtExit arrow, double time, double error = 0.001) =>
        SpeedFromSound.Launch([Shot(layout, time, error)], air, arrow, Gravity.Standard, Drag.FromConstant(0.0015.PerMetre), 0.Percent, 0.MetresPerSecond, 0.9);

    // The microphone at the bow; x is what is left to fly.
    static TimedShot At(double x, double speed, double k, double late = 0, double error = 0.001)
    {
        var layout = ShotLayout.FromDistances((x + 0.58).Metres, 0.Metres, 0.Metres, (x + 0.58).Metres, 0.Metres);
        return Shot(layout, SynthesisedShot.Flight(x, speed, k, 0) + ((x + 0.58) / Still(15).Air.SpeedOfSound.MetersPerSecond) + late, error);
    }
}
