namespace Ascham.Runner.Tests.Execution;

using Ascham.Notebooks;
using Ascham.Quantities;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Microsoft.DotNet.Interactive.Formatting;
using UnitsNet;
using Xunit;

public class DisplaysTests
{
    static readonly Estimate<double> Times = new(1.2, 0.1, 1.03, 1.37, 0.90, 12, "invented");

    [Fact]
    public void A_figure_gives_its_page_form_its_picture_form_and_its_words()
    {
        var forms = Forms(IntervalPlot.Draw("How far", "spread", [("second setup", Times)], "times"));
        Assert.Equal([MimeTypes.Picture, MimeTypes.Html, MimeTypes.Plain], forms.Keys.Order());
        Assert.Contains("\"title\":{\"text\":\"How far\"", forms[MimeTypes.Picture], StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_quantities_and_estimates_are_one_line_of_text()
    {
        Assert.Equal("1.5", Forms(1.5)[MimeTypes.Plain]);
        Assert.Equal("18.5 m", Forms(Length.FromMeters(18.5))[MimeTypes.Plain]);
        Assert.Equal("1.20 (90 %: 1.03 to 1.37)", Assert.Single(Forms(Times)).Value);
    }

    [Fact]
    public void A_chart_drawn_directly_is_a_chart()
    {
        var chart = Plotly.NET.GenericChart.ofTraceObject(true, new Plotly.NET.Trace("scatter"));
        Assert.Contains(FigureData.Attribute, Forms(chart)[MimeTypes.Html], StringComparison.Ordinal);
    }

    static Dictionary<string, string> Forms(object value)
    {
        Displays.Reset();
        NotebookHost.IsRunner = true;
        return FormattedValue.CreateManyFromObject(value).ToDictionary(f => f.MimeType, f => f.Value);
    }
}
