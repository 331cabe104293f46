namespace Ascham.Tests.SightsTests;

using Ascham.Quantities;
using Ascham.Sights;
using Xunit;

public class FixedSettingPlanTests
{
    static readonly SightModel Bow = SightModelTests.Sight(0.0015);

    [Fact]
    public void The_distance_the_sight_is_set_for_is_expected_on_the_aim_point() =>
        Assert.Equal(0, FixedSettingPlan.Of(Bow, 20.Yards, null, [20.Yards], null, null, 3.Milliradians)[0].Expected.Meters, 1e-9);

    [Fact]
    public void Drops_grow_and_those_beyond_a_metre_are_warned_of()
    {
        var plan = FixedSettingPlan.Of(Bow, 20.Yards, null, [30.Yards, 40.Yards, 50.Yards, 60.Yards], 3.Metres, null, 3.Milliradians);
        Assert.Equal([null, null, null], plan.Take(3).Select(p => p.Warning));
        Assert.Contains("more than this test needs", plan[3].Warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Arrows_under_the_butt_are_warned_of_before_the_drop_is()
    {
        var plan = FixedSettingPlan.Of(Bow, 20.Yards, null, [50.Yards], 60.Centimetres, 60.Centimetres, 3.Milliradians);
        Assert.Equal("some arrows would pass under the butt (60 cm below the aim)", plan[0].Warning);
    }

    [Fact]
    public void Arrows_over_the_butt_are_warned_of()
    {
        var plan = FixedSettingPlan.Of(Bow, 60.Yards, null, [30.Yards], 60.Centimetres, 50.Centimetres, 3.Milliradians);
        Assert.Equal("some arrows would pass over the butt (50 cm above the aim)", plan[0].Warning);
    }

    [Fact]
    public void An_unknown_edge_of_the_butt_is_said_not_passed_over() =>
        Assert.Contains("edge is not in the setup", FixedSettingPlan.Of(Bow, 20.Yards, null, [30.Yards], null, null, 3.Milliradians)[0].Warning, StringComparison.Ordinal);

    [Fact] // relation: a pin 1 mm too high at 0.8 m shoots 1.25 mrad low
    public void A_printed_mark_that_is_out_moves_the_expected_height()
    {
        var error = new Estimate<UnitsNet.Length>(1.Millimetres, 0.1.Millimetres, 0.8.Millimetres, 1.2.Millimetres, 0.9, 6, "test");
        var sound = FixedSettingPlan.Of(Bow, 20.Yards, null, [40.Yards], 3.Metres, null, 3.Milliradians)[0].Expected;
        var off = FixedSettingPlan.Of(Bow, 20.Yards, error, [40.Yards], 3.Metres, null, 3.Milliradians)[0].Expected;
        Assert.Equal(-1.25e-3 * 36.576, (off - sound).Meters, 1e-4);
    }
}
