namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using Ascham.Causes;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class ChangeChartTests
{
    static JsonObject Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!.AsObject();

    static readonly (Length, Estimate<Length>)[] Two = [(20.0.Yards, Samples.Inches(-0.5, 0.3)), (40.0.Yards, Samples.Inches(-2, 0.6))];

    [Fact]
    public void A_shift_stands_with_its_interval_over_band_and_signatures()
    {
        var json = Json(ShiftByDistance.Draw("t", "shift up", Two, [new("weight", [(20.0.Yards, -0.5.Inches), (40.0.Yards, -2.0.Inches)])], 1.Milliradians, LengthUnit.Yard, LengthUnit.Inch));
        var data = json["data"]!.AsArray();
        Assert.Equal(["an ordinary day", "weight", "measured, 90 % interval"], data.Select(t => (string)t!["name"]!));
        Assert.Equal("[-0.5,-2]", data[2]!["y"]!.ToJsonString());
        Assert.Equal(1.645 * 0.6, (double)data[2]!["error_y"]!["array"]![1]!, 1e-5);
        double far = (double)data[0]!["x"]![1]!, high = (double)data[0]!["y"]![2]!;   // the upper edge runs back from the far end
        Assert.Equal(0.001 * 36 * far, high, 1e-4);                                      // one milliradian is 0.036 in a yard
    }

    [Fact]
    public void The_table_of_shifts_holds_the_signature_at_the_measured_distance() =>
        Assert.Equal(["30.0", "-1.25"], ShiftByDistance.Draw("t", "shift up", [(30.0.Yards, Samples.Inches(-1, 0.3))], [new("weight", [(20.0.Yards, -0.5.Inches), (40.0.Yards, -2.0.Inches)])], Angle.Zero, LengthUnit.Yard, LengthUnit.Inch)
            .Data.Rows.Select(r => new[] { r[0], r[4] }).Single());

    [Fact]
    public void Five_signatures_or_one_of_a_single_point_are_refused()
    {
        ShiftCurve line = new("a", [(20.0.Yards, 0.Inches), (40.0.Yards, 1.Inches)]);
        Assert.Throws<ArgumentException>(() => ShiftByDistance.Draw("t", "w", Two, [line, line, line, line, line], Angle.Zero, LengthUnit.Yard, LengthUnit.Inch));
        Assert.Throws<ArgumentException>(() => ShiftByDistance.Draw("t", "w", Two, [line with { Points = [(20.0.Yards, 0.Inches)] }], Angle.Zero, LengthUnit.Yard, LengthUnit.Inch));
    }

    [Fact]
    public void Probabilities_stand_in_per_cent_with_the_one_asked_for()
    {
        var json = Json(ProbabilityBars.Draw("t", [("weight", [0.4, 0.96]), ("mass", [0.3, 0.001])], ["before", "after"], 0.9));
        var data = json["data"]!.AsArray();
        Assert.Equal(["before", "after", "asked for, 90 %"], data.Select(t => (string)t!["name"]!));
        Assert.Equal("[96,0.1]", data[1]!["x"]!.ToJsonString());
        Assert.Equal("[90,90]", data[2]!["x"]!.ToJsonString());
        Assert.EndsWith("<1", (string)data[1]!["text"]![1]!, StringComparison.Ordinal);
        Assert.NotEqual((string)data[0]!["marker"]!["symbol"]!, (string)data[1]!["marker"]!["symbol"]!);
    }

    [Fact]
    public void A_probability_out_of_range_or_a_row_too_short_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbabilityBars.Draw("t", [("weight", [1.2])], ["before"], 0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProbabilityBars.Draw("t", [("weight", [double.NaN])], ["before"], 0.9));
        Assert.Throws<ArgumentException>(() => ProbabilityBars.Draw("t", [("weight", [0.2])], ["before", "after"], 0.9));
    }

    [Fact]
    public void Pairs_that_are_not_told_apart_are_outlined_and_counted()
    {
        var figure = ApartnessGrid.Draw("t", [new(Cause.PeakWeight, Cause.ArrowMass, 1.2), new(Cause.PeakWeight, null, 50000), new(Cause.ArrowMass, Cause.PeakWeight, 1.4), new(Cause.ArrowMass, null, 40)]);
        Assert.Contains("2 pairs are left confused", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("draw weight against arrow mass: 1.2 : 1.", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("draw weight against nothing: >999 : 1.", figure.AltText, StringComparison.Ordinal);
        Assert.Equal([2.5, 1, 2.5, 1], Json(figure)["layout"]!["shapes"]!.AsArray().Select(s => (double)s!["line"]!["width"]!));
    }

    [Fact]
    public void The_ladder_lists_what_each_test_costs_and_tells()
    {
        var figure = TestLadder.Draw("t", Samples.Plan, 3);
        Assert.Equal(3, figure.Data.Rows.Count);
        RankedTest best = Samples.Plan.Tests[0];
        Assert.Equal(best.Test.Key, figure.Data.Rows[0][1]);
        Assert.Equal(100 * best.PerMinute / Samples.Plan.Left, (double)Json(figure)["data"]![0]!["x"]![0]!, 1e-3 * best.PerMinute / Samples.Plan.Left * 100);
        Assert.Throws<ArgumentException>(() => TestLadder.Draw("t", Samples.Plan, 0));
    }

    [Fact]
    public void A_probability_is_written_as_value_and_as_probability()
    {
        var answer = Answers.Probability("cause.test_only", 0.25);
        Assert.Equal("{\"name\":\"cause.test_only\",\"value\":0.25,\"probability\":0.25}", answer.ToJson());
        Assert.Equal("cause.test_only: probability 0.250", answer.ToString());
        Assert.Throws<ArgumentException>(() => Answers.Probability("cause.", 0.25));
        Assert.Throws<ArgumentException>(() => Answers.Probability("cause..x", 0.25));
        Assert.Throws<ArgumentOutOfRangeException>(() => Answers.Probability("cause.test_only_2", 1.25));
    }
}
