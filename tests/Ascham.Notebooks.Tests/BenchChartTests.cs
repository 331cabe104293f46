namespace Ascham.Notebooks.Tests;

using System.Globalization;
using System.Text.Json.Nodes;
using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class BenchChartTests
{
    static JsonObject Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!.AsObject();

    static readonly ArrowBuild Build = new()
    {
        Parts =
        [
            ArrowPart.Shaft(8.5, 0.5.Inches, 28.5.Inches), ArrowPart.At(PartKind.Nock, 10.Grains, 0.25.Inches), ArrowPart.Over(PartKind.Vanes, 18.Grains, 1.5.Inches, 2.Inches),
            ArrowPart.At(PartKind.Insert, 20.Grains, 28.6.Inches), ArrowPart.Over(PartKind.Point, 125.Grains, 29.Inches, 0.7.Inches) with { Name = "point <new>" },
        ],
        WeighedMass = 420.Grains,
    };

    static Estimate<double> About(double value, double half) => new(value, half / 1.645, value - half, value + half, 0.90, 1, "invented");

    [Fact]
    public void Contributions_of_the_parts_add_up_to_front_of_centre()
    {
        var table = ArrowParts.Draw("t", Build, null, LengthUnit.Inch, MassUnit.Grain).Data;
        double Sum(Func<IReadOnlyList<string>, bool> which) => table.Rows.Where(which).Sum(r => double.Parse(r[3], CultureInfo.InvariantCulture));
        string[] totals = ["sum of the parts", "as measured", "difference"];
        Assert.Equal(Sum(r => r[0] == "sum of the parts"), Sum(r => !totals.Contains(r[0])), 0.03);   // five numbers rounded to 0.01
        Assert.Equal("15.28", table.Rows.Single(r => r[0] == "sum of the parts")[3]);                // derived, docs/models/arrows.md
        Assert.Equal("4.8", table.Rows.Single(r => r[0] == "difference")[1]);                        // 420 - 415.25, to a tenth
    }

    [Fact]
    public void Parts_stand_at_their_places_and_names_are_escaped()
    {
        var figure = ArrowParts.Draw("t", Build, (4.Inches, 5.5.Inches), LengthUnit.Inch, MassUnit.Grain);
        var json = Json(figure);
        Assert.Equal("point &lt;new&gt;<br>125 gr", (string)json["layout"]!["yaxis"]!["ticktext"]![0]!);
        Assert.Equal("[29,29.7,29.7,29,29]", json["data"]![0]!["x"]!.ToJsonString());
        Assert.Equal((4, 5.5), ((double)json["layout"]!["shapes"]![0]!["x0"]!, (double)json["layout"]!["shapes"]![0]!["x1"]!));
        Assert.Equal("from the bottom of the nock slot (in)", (string)json["layout"]!["xaxis"]!["title"]!["text"]!);
        Assert.Contains("balances", figure.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void Mode_shapes_mark_the_nodes_where_the_curve_crosses()
    {
        var flexure = ArrowFlexure.Of(Build, StaticSpine.FromNumber(340));
        var figure = ModeShapes.Draw("t", flexure.Modes.Select(m => (m, About(m.Frequency.Hertz, 1))), Build, LengthUnit.Inch);
        var data = Json(figure)["data"]!.AsArray();
        Assert.Equal(9, data.Count);
        for (int mode = 0; mode < 3; mode++)
        {
            double[] x = [.. data[3 * mode]!["x"]!.AsArray().Select(v => (double)v!)], y = [.. data[3 * mode]!["y"]!.AsArray().Select(v => (double)v!)];
            double[] nodes = [.. data[3 * mode + 2]!["x"]!.AsArray().Select(v => (double)v!)];
            Assert.All(nodes, node => Assert.True(y[Array.FindIndex(x, v => v > node) - 1] * y[Array.FindIndex(x, v => v > node)] <= 0));
        }

        Assert.Contains("Mode 1: ", figure.AltText, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ModeShapes.Draw("t", [], Build, LengthUnit.Inch));
    }

    [Fact]
    public void Sweep_panels_carry_units_bands_and_marked_places_and_say_what_cannot_be_told()
    {
        SweepPanel panel = new("speed", "ft/s", [(0, About(270, 2)), (10, About(268, 2)), (20, null)]);
        var figure = SweepPanels.Draw("t", "added (gr)", [(0, "now"), (10, "tried")], [panel, panel with { Name = "drift", Unit = "in" }]);
        var json = Json(figure);
        Assert.Equal(["90 % band", "value", "now", "tried"], json["data"]!.AsArray().Take(4).Select(t => (string)t!["name"]!));
        Assert.Equal("[0,10,10,0]", json["data"]![0]!["x"]!.ToJsonString());
        Assert.Equal("[268,266,270,272]", json["data"]![0]!["y"]!.ToJsonString());
        Assert.Equal("<b>drift</b> (in)", (string)json["layout"]!["annotations"]![1]!["text"]!);
        Assert.Equal("cannot tell", figure.Data.Rows[2][1]);
        Assert.Equal("[0,1]", json["layout"]!["meta"]!["narrow"]!["xaxis2.domain"]!.ToJsonString());
        Assert.Throws<ArgumentException>(() => SweepPanels.Draw("t", "a", [(0, "now")], [panel with { Points = [(0, About(1, 1)), (1, null)] }]));
    }

    static WhatIf Position(string label, double at) => new(label, [(20.Yards, new(at.Inches, 0.1.Inches, (at - 0.2).Inches, (at + 0.2).Inches, 0.90, 1, "i")), (60.Yards, new((9 * at).Inches, 1.Inches, (9 * at - 2).Inches, (9 * at + 2).Inches, 0.90, 1, "i"))]);

    [Fact]
    public void Each_position_of_the_slider_shows_its_own_curve_and_band_and_the_wedge_always()
    {
        var figure = WhatIfSlider.Draw("t", "on the point", "height", [Position("−25 gr", 0.5), Position("+25 gr", -0.5)], 1, LengthUnit.Yard, LengthUnit.Inch, [(20.Yards, 0.6.Inches), (60.Yards, 1.8.Inches)]);
        var json = Json(figure);
        Assert.Equal([false, false, true, true], json["data"]!.AsArray().Take(4).Select(t => (bool)t!["visible"]!));
        var slider = json["layout"]!["sliders"]![0]!;
        Assert.Equal(1, (int)slider["active"]!);
        Assert.Equal("[\"visible\",[true,true,false,false,true]]", slider["steps"]![0]!["args"]!.ToJsonString());
        Assert.Equal("[-0.5,-4.5]", json["data"]![3]!["y"]!.ToJsonString());
        Assert.Equal(4, figure.Data.Rows.Count);
        Assert.Throws<ArgumentException>(() => WhatIfSlider.Draw("t", "s", "h", [Position("a", 1)], 0, LengthUnit.Yard, LengthUnit.Inch, []));
        Assert.Throws<ArgumentException>(() => WhatIfSlider.Draw("t", "s", "h", [Position("a", 1), Position("b", 1)], 2, LengthUnit.Yard, LengthUnit.Inch, []));
    }

    [Theory]
    [InlineData("25 gr", 25)]
    [InlineData("-25 gr", -25)]
    public void A_change_of_mass_has_a_sign_and_a_unit(string text, double grains) => Assert.Equal(grains, Wanted.ChangeOfMass(text, "added").Grains);

    [Theory]
    [InlineData("25")]
    [InlineData("0 gr")]
    [InlineData("25,5 gr")]
    [InlineData("25 grains")]
    [InlineData("NaN gr")]
    [InlineData("500 gr")]
    [InlineData("")]
    public void Other_changes_of_mass_are_refused(string text) =>
        Assert.StartsWith($"Parameter added is \"{text}\"; expected", Assert.Throws<ArgumentException>(() => Wanted.ChangeOfMass(text, "added")).Message, StringComparison.Ordinal);

    [Fact]
    public void A_range_of_masses_may_be_unknown()
    {
        Assert.Null(Wanted.MassRangeOrUnknown("unknown", "k"));
        var (low, high) = Wanted.MassRangeOrUnknown("60 gr to 95 gr", "k")!.Value;
        Assert.Equal((60, 95), (low.Grains, high.Grains));
        foreach (string text in (string[])["95 gr to 60 gr", "60 gr", "60 to 95 gr", "-3 g to 4 g", "yes"])
        {
            Assert.Contains("the smaller first", Assert.Throws<ArgumentException>(() => Wanted.MassRangeOrUnknown(text, "k")).Message, StringComparison.Ordinal);
        }

        Assert.Equal(0.5, Wanted.Mass("0.5 gr", "scale").Grains);
        Assert.Throws<ArgumentException>(() => Wanted.Mass("-0.5 gr", "scale"));
    }
}
