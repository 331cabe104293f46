namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class GrowthByDistanceTests
{
    static readonly Length[] Distances = [20.0.Yards, 60.0.Yards, 100.0.Yards];

    static readonly GrowthCurve Angle = new("angle", [1, 3, 5]), Drop = new("drop", [null, 3, 8.5]);

    static Figure Drawn(bool logarithmic = false) => GrowthByDistance.Draw("t", "lower by", "in", Distances, [Angle, Drop], LengthUnit.Yard,
        new("archer", [(0.5, 1), (1, 2), (2, 4)]), [new("across", [(60.0.Yards, Share(2))]), new("up", [(60.0.Yards, Share(3))])], logarithmic);

    static Estimate<double> Share(double value) => new(value, 0.5, value - 1, value + 1, 0.9, 12, "invented");

    static JsonNode Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!;

    [Fact]
    public void Band_curves_and_points_lie_over_one_another_with_units_on_both_axes()
    {
        var data = Json(Drawn())["data"]!.AsArray();
        Assert.Equal(["archer", "angle", "drop", "across", "up"], data.Select(t => (string)t!["name"]!));
        Assert.Equal("[1,3,5]", data[1]!["y"]!.ToJsonString());
        Assert.Equal("[null,3,8.5]", data[2]!["y"]!.ToJsonString());
        Assert.Equal("[20,60,100]", data[1]!["x"]!.ToJsonString());
        Assert.Equal(60, (double)data[3]!["x"]![0]!, 1e-9);
        Assert.InRange((double)data[4]!["x"]![0]!, 60.1, 62);   // a hair aside of the first series
        Assert.Equal("lower by (in)", (string)Json(Drawn())["layout"]!["yaxis"]!["title"]!["text"]!);
        Assert.Equal("distance (yd)", (string)Json(Drawn())["layout"]!["xaxis"]!["title"]!["text"]!);
    }

    [Fact]
    public void Words_and_table_hold_the_ends_of_every_curve()
    {
        Assert.Contains("drop: 3 in at 60 yd, 8.5 in at 100 yd.", Drawn().AltText, StringComparison.Ordinal);
        Assert.Contains("Band, archer: 0.5 in to 1 in at 20 yd, 2 in to 4 in at 100 yd.", Drawn().AltText, StringComparison.Ordinal);
        Assert.Contains("across: 2.00 in (90 %: 1.00 to 3.00 in) at 60 yd.", Drawn().AltText, StringComparison.Ordinal);
        Assert.Equal(["distance (yd)", "angle (in)", "drop (in)", "archer, low (in)", "archer, high (in)"], Drawn().Data.Headers);
        Assert.Equal(["20", "1", "", "0.5", "1"], Drawn().Data.Rows[0]);
    }

    [Fact]
    public void A_logarithmic_axis_has_round_steps_and_holds_all_values()
    {
        var axis = Json(Drawn(logarithmic: true))["layout"]!["yaxis"]!;
        Assert.Equal("log", (string)axis["type"]!);
        Assert.True((double)axis["range"]![0]! < Math.Log10(0.5) && (double)axis["range"]![1]! > Math.Log10(8.5));
        Assert.Contains("50", axis["ticktext"]!.AsArray().Select(t => (string)t!));
    }

    [Fact]
    public void What_cannot_be_drawn_is_refused_by_name()
    {
        static string Refused(Action draw) => Assert.ThrowsAny<ArgumentException>(draw).Message;
        Assert.Contains("each farther than the one before", Refused(() => GrowthByDistance.Draw("t", "w", "", [2.0.Yards, 1.0.Yards], [new("a", [1, 2])], LengthUnit.Yard)), StringComparison.Ordinal);
        Assert.Contains("\"a\" must have a value for each of the 3", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [new("a", [1, 2])], LengthUnit.Yard)), StringComparison.Ordinal);
        Assert.Contains("not all of them missing", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [new("a", [null, null, null])], LengthUnit.Yard)), StringComparison.Ordinal);
        Assert.Contains("must be finite", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [new("a", [1, double.NaN, 2])], LengthUnit.Yard)), StringComparison.Ordinal);
        Assert.Contains("must be positive; one was 0", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [new("a", [1, 0, 2])], LengthUnit.Yard, logarithmic: true)), StringComparison.Ordinal);
        Assert.Contains("in this order", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [Angle], LengthUnit.Yard, new("b", [(2, 1), (1, 2), (1, 2)]))), StringComparison.Ordinal);
        Assert.Contains("1 to 4 curves", Refused(() => GrowthByDistance.Draw("t", "w", "", Distances, [], LengthUnit.Yard)), StringComparison.Ordinal);
    }
}
