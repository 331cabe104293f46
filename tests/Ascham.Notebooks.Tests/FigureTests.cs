namespace Ascham.Notebooks.Tests;

using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;
using Charts = Plotly.NET.GenericChart;

public class FigureTests
{
    public static TheoryData<int> Each => [.. Enumerable.Range(0, Samples.AllFigures.Count)];

    [Theory, MemberData(nameof(Each))]
    public void Every_chart_has_title_words_and_a_table(int index)
    {
        var figure = Samples.AllFigures[index];
        Assert.NotEmpty(figure.Title);
        Assert.True(figure.AltText.Length > 40, figure.AltText);
        Assert.NotEmpty(figure.Data.Rows);
    }

    [Theory, MemberData(nameof(Each))]
    public void Html_is_well_formed_and_holds_words_caption_and_table(int index)
    {
        var figure = Samples.AllFigures[index];
        var html = Parse(figure.ToHtml());
        Assert.Equal(figure.AltText, html.Descendants("div").Single(d => d.Attribute("role")?.Value == "img").Attribute("aria-label")!.Value);
        Assert.Equal(figure.Title, html.Descendants("strong").Single().Value);
        Assert.Equal(figure.Caption, html.Descendants("figcaption").Single().Value);
        Assert.Equal(Math.Min(200, figure.Data.Rows.Count), html.Descendants("tbody").Single().Elements("tr").Count());
    }

    [Theory, MemberData(nameof(Each))]
    public void Every_axis_title_names_a_unit_unless_it_lists_names(int index)
    {
        var layout = JsonNode.Parse(Samples.AllFigures[index].ToPlotlyJson())!["layout"]!.AsObject();
        var titles = layout.Where(m => m.Key.StartsWith("xaxis", StringComparison.Ordinal) || m.Key.StartsWith("yaxis", StringComparison.Ordinal))
            .Where(m => m.Value!["ticktext"] is null).Select(m => (string)m.Value!["title"]!["text"]!);
        Assert.All(titles, t => Assert.Matches(@"\((mm|cm|in|yd|times|%|s|number)\)$", t));
    }

    [Theory, MemberData(nameof(Each))]
    public void Content_makes_the_identifier(int index)
    {
        var (first, second) = (Samples.AllFigures[index], Samples.AllFigures[index]);
        Assert.Equal(first.Id, second.Id);
        Assert.Equal(first.ToHtml(), second.ToHtml());
        Assert.Matches("^fig-[0-9a-f]{12}$", first.Id);
        Assert.NotEqual(first.Id, (first with { Caption = "other" }).Id);
    }

    [Theory, MemberData(nameof(Each))]
    public void No_more_than_four_colours_carry_series(int index)
    {
        string json = Samples.AllFigures[index].ToPlotlyJson();
        Assert.InRange(Look.Series.Count(s => json.Contains(s.Colour, StringComparison.Ordinal)), 1, 4);
    }

    [Theory, MemberData(nameof(Each))]
    public void Numbers_in_json_have_at_most_six_significant_digits(int index)
    {
        void Walk(JsonElement e)
        {
            switch (e.ValueKind)
            {
                case JsonValueKind.Object: foreach (var m in e.EnumerateObject()) { Walk(m.Value); } break;
                case JsonValueKind.Array: foreach (var item in e.EnumerateArray()) { Walk(item); } break;
                case JsonValueKind.Number:
                    double value = e.GetDouble();
                    Assert.Equal(double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), value);
                    break;
                default: break;
            }
        }

        using var json = JsonDocument.Parse(Samples.AllFigures[index].ToPlotlyJson());
        Walk(json.RootElement);
    }

    [Fact]
    public void Hostile_names_do_no_harm_anywhere()
    {
        Length inch = 1.Inches;
        Figure[] figures =
        [
            TargetFace.Draw(Samples.Hostile, [new FacePanel(Samples.Hostile, [new(Samples.Hostile, [new(new(inch, inch), false, Samples.Hostile)])], [])], LengthUnit.Inch, nameArrows: true),
            DropPath.Draw(Samples.Hostile, [new(Samples.Hostile, [(0.0.Yards, inch), (9.0.Yards, inch)])], LengthUnit.Yard, LengthUnit.Inch),
            IntervalPlot.Draw(Samples.Hostile, Samples.Hostile, [(Samples.Hostile, Samples.Inches(1, 1))], LengthUnit.Inch, inch),
            ResidualByDistance.Draw(Samples.Hostile, Samples.Hostile, [(20.0.Yards, Samples.Inches(1, 1))], [], LengthUnit.Yard, LengthUnit.Inch, margin: inch),
        ];
        foreach (string html in figures.Select(f => (f with { Caption = Samples.Hostile }).ToHtml()))
        {
            Assert.Single(Parse(html).Descendants("script"));
            Assert.DoesNotContain("<script>alert", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("</script> &", html, StringComparison.OrdinalIgnoreCase);
        }

        // plotly.js reads tags in labels; a label must hold entities instead.
        Assert.All(figures, f => Assert.DoesNotContain(Strings(JsonNode.Parse(f.ToPlotlyJson())), s => s.Contains("<script", StringComparison.Ordinal)));
    }

    [Fact]
    public void Infinite_and_missing_numbers_are_gaps_in_json()
    {
        var chart = Charts.ofTraceObject(false, Look.Scatter([1, double.NaN, 3], [double.PositiveInfinity, 2.0 / 3, 1234567.8], "a"));
        var trace = JsonNode.Parse(chart.ToFigure("t", "w", Table.From(["a"], [[1]])).ToPlotlyJson())!["data"]![0]!;
        Assert.Equal("[1,null,3]", trace["x"]!.ToJsonString());
        Assert.Equal("[null,0.666667,1234570]", trace["y"]!.ToJsonString());
    }

    [Fact]
    public void A_users_own_chart_becomes_a_figure_and_comes_back()
    {
        var chart = Charts.ofTraceObject(true, Look.Scatter([1, 2], [3, 4], "a"));
        var figure = chart.ToFigure("My title", "Two points, rising", Table.From(["a"], [[1]]));
        Assert.Same(chart, figure.Chart);
        Assert.Equal("My title\nTwo points, rising\n1 point", figure.ToString());
    }

    [Fact]
    public void A_figure_without_words_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => Samples.Drop with { AltText = " " });
        Assert.Contains("say in words what the chart shows", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Samples.Drop with { Title = "" });
    }

    [Theory, MemberData(nameof(Each))]
    public void A_still_picture_has_its_title_inside_and_is_dark_on_white(int index)
    {
        var figure = Samples.AllFigures[index];
        var page = JsonNode.Parse(figure.ToPlotlyJson())!["layout"]!;
        var picture = JsonNode.Parse(figure.ToPictureJson())!["layout"]!;
        Assert.Null(page["title"]);
        Assert.Equal(figure.Title, (string)picture["title"]!["text"]!);
        Assert.Equal("#ffffff", (string)picture["paper_bgcolor"]!);
        Assert.Equal("#222222", (string)picture["font"]!["color"]!);
        Assert.True((double)picture["margin"]!["t"]! > (double)page["margin"]!["t"]!);
    }

    static XElement Parse(string html) => XElement.Parse($"<div>{html}</div>");

    static IEnumerable<string> Strings(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(m => Strings(m.Value)),
        JsonArray a => a.SelectMany(Strings),
        JsonValue v when v.GetValueKind() == JsonValueKind.String => [v.GetValue<string>()],
        _ => [],
    };
}
