namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using Ascham.Groups;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class ChartTests
{
    static JsonObject Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!.AsObject();

    [Fact]
    public void Face_panels_share_one_scale_and_circles_stay_round()
    {
        var layout = Json(Samples.Face)["layout"]!.AsObject();
        string[] x = ["xaxis", "xaxis2", "xaxis3"], y = ["yaxis", "yaxis2", "yaxis3"];
        Assert.Single(x.Concat(y).Select(a => layout[a]!["range"]!.ToJsonString()).Distinct());
        Assert.Equal(["x", "x2", "x3"], y.Select(a => (string)layout[a]!["scaleanchor"]!));
        Assert.All(x.Concat(y), a => Assert.Equal("domain", (string)layout[a]!["constrain"]!));
        Assert.Equal(3, layout["annotations"]!.AsArray().Count);
    }

    [Fact]
    public void Marks_stand_where_the_arrows_struck_in_the_unit_asked_for()
    {
        var figure = TargetFace.Draw("t", [FacePanel.Of("one", [new Impact(2.54.Centimetres, -5.08.Centimetres), new Impact(0.Inches, 1.Inches)])], LengthUnit.Inch);
        var marks = Json(figure)["data"]!.AsArray().Single(t => (string)t!["mode"]! == "markers")!;
        Assert.Equal("[1,0]", marks["x"]!.ToJsonString());
        Assert.Equal("[-2,1]", marks["y"]!.ToJsonString());
        Assert.Contains("one, arrows: 2 marks, on average 0.5 in right and 0.5 in low.", figure.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void Called_flyers_differ_in_shape_and_colour_and_misses_are_counted_in_the_caption()
    {
        var traces = Json(Samples.Face)["data"]!.AsArray();
        var arrows = traces.First(t => (string)t!["name"]! == "arrows")!["marker"]!;
        var called = traces.Single(t => (string)t!["name"]! == "called flyer")!["marker"]!;
        Assert.NotEqual((string)arrows["symbol"]!, (string)called["symbol"]!);
        Assert.NotEqual((string)arrows["color"]!, (string)called["color"]!);
        Assert.Contains("Not drawn: 1 arrow missed the butt at 60 yd (1 low).", Samples.Face.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Called_flyers_do_not_move_the_centre()
    {
        int seen = 0;
        FacePanel.PerDistance(Samples.Shots(60), LengthUnit.Yard, impacts => { seen = impacts.Count; return null; });
        Assert.Equal(4, seen);   // six arrows, one called, one missed
    }

    [Fact]
    public void The_legend_names_each_look_once()
    {
        var named = Json(Samples.ManyPanels)["data"]!.AsArray().Where(t => (bool)t!["showlegend"]!).Select(t => (string)t!["name"]!).ToArray();
        Assert.Equal(["8 in across", "arrows", "called flyer"], named);
    }

    [Fact]
    public void A_face_without_marks_or_with_too_many_groups_is_refused()
    {
        Assert.Contains("must have left a mark", Assert.Throws<ArgumentException>(() =>
            TargetFace.Draw("t", [FacePanel.Of("one", [])], LengthUnit.Inch)).Message, StringComparison.Ordinal);
        var impact = new FaceMark(new(1.Inches, 1.Inches));
        Assert.Contains("1 to 3 group names; it held 4", Assert.Throws<ArgumentException>(() =>
            TargetFace.Draw("t", [new("one", [new("a", [impact]), new("b", [impact]), new("c", [impact]), new("d", [impact])], [])], LengthUnit.Inch)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => TargetFace.Draw("t", Samples.Shots(20), LengthUnit.Yard, LengthUnit.Inch, 0.Inches));
    }

    [Fact]
    public void Names_beside_curves_that_end_together_do_not_overlap()
    {
        (Length, Length)[] same = [(0.0.Yards, 0.Inches), (60.0.Yards, -40.Inches)];
        var layout = Json(DropPath.Draw("t", [new("one", same), new("two", same), new("three", same), new("four", same)], LengthUnit.Yard, LengthUnit.Inch))["layout"]!;
        double perPixel = ((double)layout["yaxis"]!["range"]![1]! - (double)layout["yaxis"]!["range"]![0]!) / (Look.Height - 90);
        double[] y = [.. layout["annotations"]!.AsArray().Select(a => (double)a!["y"]!).Order()];
        Assert.All(y.Zip(y.Skip(1), (a, b) => (b - a) / perPixel), gap => Assert.True(gap >= 17, $"{gap} px"));
    }

    [Fact]
    public void Drop_tables_are_thinned_and_keep_the_ends()
    {
        var rows = Samples.Drop.Data.Rows.Where(r => r[0] == "50 lb, 420 gr").ToArray();
        Assert.InRange(rows.Length, 10, 26);
        Assert.Equal("0.0", rows[0][1]);
        Assert.Equal("80.0", rows[^1][1]);
    }

    [Fact]
    public void Intervals_reach_from_end_to_end_and_open_ones_to_the_edge()
    {
        var json = Json(Samples.Intervals);
        var bars = json["data"]![0]!["error_x"]!;
        Assert.Equal(1.645 * 0.3, (double)bars["array"]![0]!, 1e-5);
        Assert.Equal(1.645 * 0.3, (double)bars["arrayminus"]![0]!, 1e-5);
    }

    [Fact]
    public void An_interval_without_end_runs_to_the_edge_and_says_so()
    {
        var json = Json(Samples.OpenIntervals);
        var bars = json["data"]![0]!["error_x"]!;
        Assert.Equal((double)json["layout"]!["xaxis"]!["range"]![1]!, 1.1 + (double)bars["array"]![1]!, 1e-5);
        Assert.Contains("no known end", Samples.OpenIntervals.Caption, StringComparison.Ordinal);
        Assert.Contains("unbounded", Samples.OpenIntervals.Data.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_estimate_that_is_not_a_number_is_not_drawn() => Assert.Contains("cannot tell", Assert.Throws<ArgumentException>(() =>
        IntervalPlot.Draw("t", "w", [("a", new Estimate<double>(double.NaN, 1, 0, 1, 0.9, 3, "invented"))], "mm")).Message, StringComparison.Ordinal);

    [Fact]
    public void Residuals_have_bars_band_and_margin()
    {
        var json = Json(Samples.Residuals);
        Assert.Equal(["does not matter", "90 % band", "fitted", "measured, 90 % interval"], json["data"]!.AsArray().Select(t => (string)t!["name"]!));
        var margin = json["data"]![0]!;
        double x = (double)margin["x"]![25]!, high = (double)margin["y"]![25]!;   // the upper edge runs back from the far end
        Assert.Equal(15 / x, high, 1e-4);
        Assert.Contains("60 yd: 0.62 mm (90 %: 0.41 to 0.83 mm).", Samples.Residuals.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void Residuals_take_one_kind_of_margin() => Assert.Throws<ArgumentException>(() => ResidualByDistance.Draw(
        "t", "w", [(20.0.Yards, Samples.Inches(1, 1))], [], LengthUnit.Yard, LengthUnit.Inch, 1.Inches, _ => 1.Inches));
}
