namespace Ascham.Notebooks;

using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Plotly.NET;

/// <summary>What a cell shows of a chart: the chart itself, and what a reader needs who cannot see it or wants its numbers.</summary>
/// <remarks>
/// <para>A figure as the last line of a cell shows itself. Charts of this package come as figures; a chart drawn directly
/// with Plotly.NET becomes one with <see cref="FigureFromChart.ToFigure"/>. Change parts with <c>with</c>:
/// <c>figure with { Caption = "..." }</c>.</para>
/// <para><b>Limits.</b> The page is redrawn for its width, theme and for paper by a script; without scripts the table and the words remain.</para>
/// </remarks>
[TypeFormatterSource(typeof(FigureFormatters), PreferredMimeTypes = [Mime.Html, Mime.Plain])]
public sealed record Figure
{
    const int MostRowsInPage = 200;   // a longer table helps nobody on a page

    /// <summary>The chart, to go on with in Plotly.NET.</summary>
    public required GenericChart Chart { get; init; }

    /// <summary>Title, as plain text; not empty.</summary>
    public required string Title { get; init => field = Check.Text(value, "a figure is found by its title"); }

    /// <summary>What the chart shows, in words, for those who cannot see it; not empty.</summary>
    public required string AltText { get; init => field = Check.Text(value, "say in words what the chart shows"); }

    /// <summary>The numbers drawn.</summary>
    public required Table Data { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>How to read the chart: what bars and bands mean, what is not drawn; empty when nothing needs saying.</summary>
    public string Caption { get; init => field = value ?? ""; } = "";

    /// <summary>An identifier worked out from what is drawn and said: the same content has the same identifier in every run.</summary>
    public string Id
    {
        get
        {
            string content = string.Join('\n', Title, AltText, Caption, ToPlotlyJson());
            return "fig-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)).AsSpan(0, 6));
        }
    }

    /// <summary>Height on a wide page, in CSS pixels.</summary>
    internal int Height => FigureJson.Height(Chart);

    /// <summary>Writes the chart as plotly JSON for a page: an object with <c>data</c>, <c>layout</c> and <c>config</c>.</summary>
    /// <returns>Compact JSON, numbers rounded to six significant digits, safe inside a script element. The title is left to the page.</returns>
    public string ToPlotlyJson() => FigureJson.ForPage(Chart);

    /// <summary>Writes the chart as plotly JSON for a still picture: title inside, dark text on white, no buttons.</summary>
    /// <returns>Compact JSON as of <see cref="ToPlotlyJson"/>.</returns>
    public string ToPictureJson() => FigureJson.ForPicture(Chart, Title);

    /// <summary>Writes the figure as HTML: title, place for the chart, caption, table, and a line that hands the chart to <see cref="FigureScript"/>.</summary>
    /// <returns>A fragment that is also well-formed XML; all text escaped. The drawing script itself is not in it.</returns>
    public string ToHtml()
    {
        string caption = Caption.Length == 0 ? "" : $"<figcaption>{Markup.Html(Caption)}</figcaption>\n";
        return $"""
            <figure class="ascham-figure" style="margin:1em 0">
            <p class="ascham-title"><strong>{Markup.Html(Title)}</strong></p>
            <div data-figure="{Id}" role="img" aria-label="{Markup.Html(AltText)}" style="width:100%;height:{Height}px"></div>
            {caption}<details><summary>The numbers in this chart</summary>
            {Data.ToHtml(MostRowsInPage)}</details>
            </figure>
            <script>(window.aschamFigures=window.aschamFigures||[]).push(["{Id}",{ToPlotlyJson()}]);</script>

            """;
    }

    /// <summary>Writes title, alternative text and the number of points.</summary>
    /// <returns>Three lines of plain text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Title}\n{AltText}\n{Data.Rows.Count} {(Data.Rows.Count == 1 ? "point" : "points")}");
}

/// <summary>Makes figures of charts drawn directly with Plotly.NET.</summary>
public static class FigureFromChart
{
    /// <summary>Adds to a Plotly.NET chart what makes it a figure.</summary>
    /// <param name="chart">The chart; its axes should carry units.</param>
    /// <param name="title">Title, as plain text; not empty.</param>
    /// <param name="altText">What the chart shows, in words; not empty.</param>
    /// <param name="data">The numbers drawn.</param>
    /// <param name="caption">How to read the chart.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The title or the alternative text is empty.</exception>
    public static Figure ToFigure(this GenericChart chart, string title, string altText, Table data, string caption = "") =>
        new() { Chart = chart, Title = title, AltText = altText, Data = data, Caption = caption };
}
