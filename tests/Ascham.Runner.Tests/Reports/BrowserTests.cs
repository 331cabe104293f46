namespace Ascham.Runner.Tests.Reports;

using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Ascham.Runner.Pictures;
using Ascham.Runner.Reports;
using PuppeteerSharp;
using PuppeteerSharp.Media;
using Xunit;

/// <summary>A report as a browser shows it, with the network off.</summary>
public sealed class BrowserTests : IAsyncLifetime
{
    readonly Scratch scratch = new();
    readonly List<string> complaints = [], requests = [];
    IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        string? program = Chromium.Find();
        Assert.SkipWhen(program is null, "chromium is not on the search path");
        browser = await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = program, Headless = true, Args = ["--no-sandbox", "--disable-gpu"] });
        var notebook = new NotebookText()
            .Text("# Does it hold?\n\nSome words with $x^2$, and a table:\n\n| a | b |\n|---|---|\n| 1 | 2 |")
            .Code("var figure = Squares(); // a long line that must scroll inside its own box and not widen the page " + new string('x', 200))
            .Result((MimeTypes.Html, new PlantedFigure("Drop", 8).Fragment()), (MimeTypes.Plain, "Drop"))
            .Text("## And the other way?\n\n" + string.Join(' ', Enumerable.Repeat("Words to read.", 40)))
            .Code("Squares()").Result((MimeTypes.Html, new PlantedFigure("Drift <b>", 5).Fragment()), (MimeTypes.Plain, "Drift"))
            .Code("Answer()").Result((MimeTypes.Answer, System.Text.Json.Nodes.JsonNode.Parse("""{"name":"slide_mm","value":1.5}""")!), (MimeTypes.Plain, "slide_mm: 1.50 mm (90 %: 1.10 to 1.94 mm)"), (MimeTypes.Html, "<div>slide</div>"))
            .Parse();
        scratch.Write("report.html", Report.Write(new NotebookResult(notebook, AnswerCollection.Of(notebook), null)));
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        scratch.Dispose();
    }

    [Theory]
    [InlineData(1200)]
    [InlineData(390)]
    public async Task Every_chart_is_drawn_within_the_page_without_a_complaint_or_a_request(int width)
    {
        await using var page = await Open(width);
        Assert.Equal(2, await page.EvaluateExpressionAsync<int>("document.querySelectorAll('.main-svg .scatterlayer path.js-line').length"));
        Assert.True(await page.EvaluateExpressionAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), "the page is wider than the screen");
        Assert.True(await page.EvaluateExpressionAsync<bool>("[...document.querySelectorAll('[data-figure]')].every(e => e.querySelector('svg').clientWidth <= e.clientWidth)"));
        Assert.Equal("en", await page.EvaluateExpressionAsync<string>("document.documentElement.lang"));
        Assert.Empty(complaints);
        Assert.Equal([new Uri(scratch.Path("report.html")).AbsoluteUri], requests);
    }

    [Fact]
    public async Task Text_and_charts_read_on_a_dark_page_and_on_paper()
    {
        await using var page = await Open(1200);
        await page.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = "dark" }]);
        // Plotly redraws on the change of scheme; the colour of an axis title tells when.
        const string chartInk = "getComputedStyle(document.querySelector('.xtitle')).fill";
        const string pageInk = "getComputedStyle(document.body).color";
        await page.WaitForFunctionAsync($"() => {chartInk} === {pageInk}");
        Assert.True(await Contrast(page) > 7, "dark text on dark paper");
        await page.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = "light" }]);
        await page.WaitForFunctionAsync($"() => {chartInk} === {pageInk}");
        Assert.True(await Contrast(page) > 7, "light text on light paper");
        await page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.Equal("none", await page.EvaluateExpressionAsync<string>("getComputedStyle(document.querySelector('nav')).display"));
        Assert.NotEmpty(await page.PdfDataAsync());
        Assert.Empty(complaints);
    }

    async Task<IPage> Open(int width)
    {
        var page = await browser!.NewPageAsync();
        await page.SetOfflineModeAsync(true);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        page.Console += (_, e) => complaints.Add(e.Message.Text);
        page.PageError += (_, e) => complaints.Add(e.Message);
        // Data inside the page shows as a request too, but nothing leaves the page.
        page.Request += (_, e) => requests.AddRange(e.Request.Url.StartsWith("data:", StringComparison.Ordinal) ? [] : [e.Request.Url]);
        requests.Clear();
        await page.GoToAsync(new Uri(scratch.Path("report.html")).AbsoluteUri);
        await page.WaitForFunctionAsync("() => document.querySelectorAll('[data-figure] .main-svg').length >= 2");
        return page;
    }

    // The contrast ratio of text and paper; WCAG 2.2, definitions "relative luminance" and "contrast ratio".
    static Task<double> Contrast(IPage page) => page.EvaluateExpressionAsync<double>("""
        (function () {
          function luminance(colour) {
            var c = colour.match(/[\d.]+/g).slice(0, 3).map(function (v) { v /= 255; return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); });
            return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
          }
          var style = getComputedStyle(document.body), a = luminance(style.color), b = luminance(style.backgroundColor);
          return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        })()
        """);
}
