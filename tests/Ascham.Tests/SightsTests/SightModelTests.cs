namespace Ascham.Tests.SightsTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using Ascham.Sights;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

public class SightModelTests
{
    const string Table = "derived: full planar integration, v 84 m/s, peep 0.110 m above the arrow, peep to pin 0.80 m, g 9.80665 (independent integration, not published)";

    // yd, sight angle without drag, sight angle and pin below peep with k = 0.0015 1/m
    public static readonly TheoryData<double, string, string, string> Rows = new()
    {
        { 10, "18.384", "18.443", "14.76" },
        { 20, "18.726", "18.962", "15.17" },
        { 30, "23.079", "23.613", "18.89" },
        { 40, "28.438", "29.395", "23.52" },
        { 50, "34.201", "35.709", "28.58" },
        { 60, "40.171", "42.359", "33.91" },
        { 70, "46.261", "49.265", "39.44" },
        { 80, "52.430", "56.388", "45.16" },
        { 90, "58.655", "63.709", "51.04" },
        { 100, "64.923", "71.219", "57.07" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Sight_angles_and_pin_heights_match_the_table(double yards, string vacuum, string drag, string pin)
    {
        new Printed(vacuum, Table).Matches(Sight(0).SightAngle(yards.Yards).Milliradians);
        new Printed(drag, Table).Matches(Sight(0.0015).SightAngle(yards.Yards).Milliradians);
        new Printed(pin, Table).Matches(Sight(0.0015).PinBelowPeep(yards.Yards).Millimeters);
    }

    [Fact] // closed form: drop g R²/(2 v²), smallest sight angle sqrt(2 h0 g)/v at R = v sqrt(2 h0/g), to the order of the angle squared
    public void Without_drag_the_smallest_sight_angle_is_where_the_parabola_says()
    {
        double turn = 84 * Math.Sqrt(2 * 0.11 / 9.80665), smallest = Math.Sqrt(2 * 0.11 * 9.80665) / 84;
        var sight = Sight(0);
        Assert.Equal(smallest, sight.SightAngle(turn.Metres).Radians, smallest * smallest * smallest * 2);
        Assert.True(sight.SightAngle((turn - 2).Metres) > sight.SightAngle(turn.Metres));
        Assert.True(sight.SightAngle((turn + 2).Metres) > sight.SightAngle(turn.Metres));
    }

    [Fact] // relation: a mark solved and then flown lands on the aim point
    public void A_solved_mark_flown_lands_on_the_aim_point() =>
        Gen.Select(Gen.Double[5, 110], Gen.Double[45, 110], Gen.Double[0, 0.003]).Sample((distance, speed, k) =>
        {
            var sight = Sight(k) with { LaunchSpeed = speed.MetresPerSecond };
            var height = sight.HeightWithPinAt(sight.PinBelowPeep(distance.Metres), distance.Metres);
            Assert.InRange(height.Meters, -1e-9, 1e-9);
        });

    [Fact] // relation: the slope used for errors is the derivative of the marks
    public void Travel_per_height_is_the_derivative_of_the_centring_position()
    {
        var sight = Sight(0.0015);
        foreach (double yards in new double[] { 15, 40, 100 })
        {
            double one = sight.CentringPosition(Station(yards, 0.01)), other = sight.CentringPosition(Station(yards, -0.01));
            Assert.Equal((one - other) / 0.02, sight.PositionPerHeight(yards.Yards), 1e-7);
        }
    }

    [Theory]
    [InlineData(ScaleDirection.Down, 1.0, 1)]
    [InlineData(ScaleDirection.Down, 1.8, 1.8)]
    [InlineData(ScaleDirection.Up, 1.0, -1)]
    public void The_scale_follows_the_pin_by_ratio_and_direction(ScaleDirection increases, double ratio, double expected)
    {
        var plain = Sight(0.0015);
        var sight = plain with { Geometry = plain.Geometry with { Increases = increases, TapePerPinTravel = ratio } };
        Assert.Equal(expected * plain.PinBelowPeep(60.Yards).Meters, sight.ScaleTravel(60.Yards), 1e-15);
    }

    [Fact]
    public void A_distance_out_of_reach_is_named_with_the_reach()
    {
        var exception = Assert.Throws<OutOfReachException>(() => Sight(0.0015).SightAngle(600.Metres));
        Assert.Equal(600, exception.Asked.Meters, 1e-9);
        Assert.InRange(exception.Reach.Meters, 405, 422); // derived maximum 416 m for v 84 m/s, k 0.0015 1/m
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void A_distance_that_is_not_positive_is_refused(double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sight(0.0015).PinBelowPeep(metres.Metres));

    internal static SightModel Sight(double k) => new()
    {
        Geometry = new() { PeepToPin = 0.8.Metres, PeepHeight = 0.11.Metres, TapePerPinTravel = 1, Increases = ScaleDirection.Down },
        LaunchSpeed = 84.MetresPerSecond,
        Drag = Drag.FromConstant(k.PerMetre),
        Air = Air.StandardAt(Length.Zero),
        Gravity = Gravity.Standard,
    };

    internal static TapeStation Station(double yards, double up) => new()
    {
        Distance = yards.Yards,
        Setting = Length.Zero,
        MeanUp = up.Metres,
        MeanUpSd = 1.Centimetres,
        ScatterFreedom = 25,
        DistanceSd = Length.Zero,
        SettingSd = Length.Zero,
        SettingKey = "s",
        Arrows = 6,
    };
}
