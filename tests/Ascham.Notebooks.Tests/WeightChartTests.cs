namespace Ascham.Notebooks.Tests;

using System.Text.Json.Nodes;
using Ascham.Quantities;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public class WeightChartTests
{
    static readonly Setup Compound = SetupFile.Read(Ascham.Tests.House.Path("data-demo/draw-weight/setup.json"));

    static JsonObject Json(Figure figure) => JsonNode.Parse(figure.ToPlotlyJson())!.AsObject();

    static double[] Of(JsonNode trace, string member) => [.. trace[member]!.AsArray().Select(v => (double)v!)];

    static Estimate<double> About(double value, double half) => new(value, half / 1.645, value - half, value + half, 0.90, 1, "invented");

    [Fact]
    public void The_shaded_area_is_the_energy_that_is_said()
    {
        var curve = Compound.Bow.DrawCurve!;
        var figure = DrawCurvePlot.Draw("t", curve, Compound.Bow.LetDown, ("other", curve.ScaledTo(50.PoundsForce)), curve.StoredEnergyWithin(0.90, Ratio.FromPercent(1)), LengthUnit.Inch, ForceUnit.PoundForce, EnergyUnit.FootPound);
        var data = Json(figure)["data"]!.AsArray();
        double[] x = Of(data[0]!, "x"), y = Of(data[0]!, "y");
        double drawn = Enumerable.Range(1, x.Length - 1).Sum(i => 0.5 * (x[i] - x[i - 1]) * (y[i] + y[i - 1])) / 12;   // trapezoids under what is drawn, in lbf to ft lbf
        Assert.Equal(curve.StoredEnergy.FootPounds, drawn, 0.001 * drawn);
        Assert.Contains("86.89 ft·lbf (90 %", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("let-off 80 %", figure.AltText, StringComparison.Ordinal);
        Assert.Equal(["stored energy", "as read", "letting down", "other"], data.Select(t => (string)t!["name"]!));
        Assert.Equal(50, Of(data[3]!, "y").Max(), 0.01);
    }

    [Fact]
    public void An_energy_that_nobody_knows_the_error_of_is_said_to_be_so() =>
        Assert.Contains("how sure cannot be told", DrawCurvePlot.Draw("t", Compound.Bow.DrawCurve!, null, null, null, LengthUnit.Inch, ForceUnit.Newton, EnergyUnit.Joule).Caption, StringComparison.Ordinal);

    [Fact]
    public void Errors_as_angles_keep_their_bands_and_the_hidden_stretch()
    {
        AngleCurve lost = new("lost", [(20.Yards, About(-1, 0.1)), (40.Yards, About(-2, 0.3))]);
        var data = Json(AngleByDistance.Draw("t", [lost], 0.9, "six arrows", LengthUnit.Yard))["data"]!.AsArray();
        Assert.Equal("[-0.9,-0.9,0.9,0.9]", data[0]!["y"]!.ToJsonString());
        Assert.Equal("[-1.1,-2.3,-1.7,-0.9]", data[1]!["y"]!.ToJsonString());
        Assert.Equal("[20,40]", data[2]!["x"]!.ToJsonString());
        Assert.Throws<ArgumentException>(() => AngleByDistance.Draw("t", [lost with { Points = [(20.Yards, About(1, 1))] }], 1, "h", LengthUnit.Yard));
        Assert.Throws<ArgumentOutOfRangeException>(() => AngleByDistance.Draw("t", [lost], 0, "h", LengthUnit.Yard));
    }

    [Fact]
    public void Two_tapes_stand_on_one_scale_with_larger_numbers_below()
    {
        Tape Of(double factor) => Tape.Of([new Mark(20.Yards, 0.Millimetres), new Mark(40.Yards, (8 * factor).Millimetres), new Mark(60.Yards, (20 * factor).Millimetres)]);
        var figure = TapePair.Draw("t", ("old", Of(1)), ("new", Of(1.1)), LengthUnit.Yard, LengthUnit.Millimeter);
        var json = Json(figure);
        Assert.Equal("[0,8,20]", json["data"]![3]!["y"]!.ToJsonString());
        Assert.Equal("[0,8.8,22]", json["data"]![4]!["y"]!.ToJsonString());
        double[] range = WeightChartTests.Of(json["layout"]!["yaxis"]!, "range");
        Assert.True(range[0] > range[1]);
        Assert.Equal("2.00", figure.Data.Rows[2][3]);
        var other = Tape.Of([new Mark(20.Yards, 0.Millimetres), new Mark(45.Yards, 9.Millimetres), new Mark(60.Yards, 20.Millimetres)]);
        Assert.Throws<ArgumentException>(() => TapePair.Draw("t", ("old", Of(1)), ("new", other), LengthUnit.Yard, LengthUnit.Millimeter));
    }
}
