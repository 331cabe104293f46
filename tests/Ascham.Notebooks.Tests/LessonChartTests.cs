namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class LessonChartTests
{
    static JsonObject Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!.AsObject();

    static Estimate<double> Share(double value, double half) => new(value, half / 2, Math.Max(0, value - half), Math.Min(1, value + half), 0.90, 20, "invented");

    [Fact]
    public void Repetitions_keep_every_point_and_mark_mean_and_middle_nine_tenths()
    {
        Length[] values = [.. Enumerable.Range(1, 100).Select(i => ((double)i).Centimetres)];
        var figure = RepeatPlot.Draw("t", "sigma", [("five", (IReadOnlyList<Length>)values)], LengthUnit.Centimeter, 50.Centimetres);
        var data = Json(figure)["data"]!.AsArray();
        Assert.Equal(100, data[0]!["y"]!.AsArray().Count);
        Assert.Equal(50.5, (double)data[1]!["y"]![0]!, 1e-9);
        Assert.Equal(6, 50.5 - (double)data[1]!["error_y"]!["arrayminus"]![0]!, 1e-5);    // five of a hundred lie below 6
        Assert.Equal(95, 50.5 + (double)data[1]!["error_y"]!["array"]![0]!, 1e-5);
        Assert.Equal("true value", (string)data[2]!["name"]!);
        Assert.Contains("The true value is 50 cm.", figure.AltText, StringComparison.Ordinal);
        Assert.Equal("sigma (cm)", (string)Json(figure)["layout"]!["yaxis"]!["title"]!["text"]!);
    }

    [Fact]
    public void Points_are_spread_sideways_within_their_own_column()
    {
        Length[] values = [.. Enumerable.Repeat(1.Inches, 40)];
        double[] x = [.. Json(RepeatPlot.Draw("t", "w", [("a", (IReadOnlyList<Length>)values), ("b", values)], LengthUnit.Inch))["data"]![0]!["x"]!.AsArray().Select(v => (double)v!)];
        Assert.All(x.Take(40), v => Assert.InRange(v, -0.32, 0.32));
        Assert.All(x.Skip(40), v => Assert.InRange(v, 0.68, 1.32));
        Assert.Equal(40, x.Take(40).Distinct().Count());
    }

    [Fact]
    public void Intervals_that_miss_the_truth_differ_in_shape_and_colour_and_are_counted()
    {
        var figure = IntervalSeries.Draw("t", "sigma", "group", [(1, Samples.Inches(2, 0.1)), (2, Samples.Inches(1, 0.1)), (3, Samples.Inches(2.1, 0.1))], LengthUnit.Inch, 2.Inches);
        var data = Json(figure)["data"]!.AsArray();
        Assert.Equal(["interval that holds the truth", "interval that misses it", "true value"], data.Select(t => (string)t!["name"]!));
        Assert.Equal("[2]", data[1]!["x"]!.ToJsonString());
        Assert.NotEqual((string)data[0]!["marker"]!["symbol"]!, (string)data[1]!["marker"]!["symbol"]!);
        Assert.NotEqual((string)data[0]!["marker"]!["color"]!, (string)data[1]!["marker"]!["color"]!);
        Assert.Contains("1 of 3 misses the true value.", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void One_very_wide_interval_does_not_flatten_the_others_and_says_that_it_goes_on()
    {
        Estimate<Length> wide = new(2.Inches, 1.Inches, 1.Inches, 500.Inches, 0.90, 2, "invented");
        var figure = IntervalSeries.Draw("t", "sigma", "arrows", [(2, wide), (3, Samples.Inches(2, 0.5)), (4, Samples.Inches(2, 0.4)), (5, Samples.Inches(2, 0.3))], LengthUnit.Inch);
        Assert.InRange((double)Json(figure)["layout"]!["yaxis"]!["range"]![1]!, 2.5, 6);
        Assert.Contains("goes on beyond it", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("500", figure.Data.ToString(), StringComparison.Ordinal);
    }

    static Figure Hits(double threshold = 0.8) => HitByDistance.Draw("t",
        [new("field", [(10.0.Yards, Share(0.99, 0.01)), (40.0.Yards, Share(0.7, 0.1))]), new("range", [(10.0.Yards, Share(1, 0.01)), (40.0.Yards, Share(0.8, 0.1))])],
        [(40.0.Yards, Share(0.75, 0.2))], threshold, [(10.0.Yards, Duration.FromSeconds(0.12)), (40.0.Yards, Duration.FromSeconds(0.47))], LengthUnit.Yard);

    [Fact]
    public void Hit_chances_stand_in_per_cent_with_band_threshold_counts_and_flight_time()
    {
        var json = Json(Hits());
        var data = json["data"]!.AsArray();
        Assert.Equal(["90 % band", "field", "range", "own threshold, 80 %", "hits counted", "time of flight"], data.Select(t => (string)t!["name"]!));
        Assert.Equal("[99,70]", data[1]!["y"]!.ToJsonString());
        Assert.Equal("[80,80]", data[3]!["y"]!.ToJsonString());
        Assert.Equal("[0.12,0.47]", data[5]!["y"]!.ToJsonString());
        Assert.Equal("y2", (string)data[5]!["yaxis"]!);
        Assert.Equal("hit probability (%)", (string)json["layout"]!["yaxis"]!["title"]!["text"]!);
        Assert.Equal("time of flight (s)", (string)json["layout"]!["yaxis2"]!["title"]!["text"]!);
        Assert.Contains("at 40 yd 70 % (90 %: 60 % to 80 %)", Hits().AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_threshold_or_a_probability_out_of_range_is_refused()
    {
        Assert.Contains("threshold must lie between 0 and 1", Assert.Throws<ArgumentOutOfRangeException>(() => Hits(1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => HitByDistance.Draw("t", [new("a", [(1.0.Yards, new(1.2, 0.1, 1.1, 1.3, 0.9, 3, "")), (2.0.Yards, Share(0.5, 0.1))])], [], 0.8,
            [(1.0.Yards, Duration.FromSeconds(1)), (2.0.Yards, Duration.FromSeconds(2))], LengthUnit.Yard));
    }

    [Fact]
    public void Circles_of_a_group_are_drawn_round_inside_the_panel_and_named()
    {
        FaceGroup group = new("arrows", [new(new(1.Inches, 0.Inches))]) { Circles = [new("next arrow, 90 %", new(1.Inches, 0.Inches), 5.Inches)] };
        var figure = TargetFace.Draw("t", [new FacePanel("30 yd", [group], [])], LengthUnit.Inch);
        var json = Json(figure);
        var circle = json["data"]!.AsArray().Single(t => (string)t!["name"]! == "next arrow, 90 %")!;
        Assert.All(circle["x"]!.AsArray().Zip(circle["y"]!.AsArray()), p => Assert.Equal(5, double.Hypot((double)p.First! - 1, (double)p.Second!), 1e-4));
        Assert.True((double)json["layout"]!["xaxis"]!["range"]![1]! > 6);
        Assert.Contains("next arrow, 90 %: radius 5.0 in.", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("next arrow, 90 %", figure.Caption, StringComparison.Ordinal);
    }
}
