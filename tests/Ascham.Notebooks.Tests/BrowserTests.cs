namespace Ascham.Notebooks.Tests;

using PuppeteerSharp;
using Xunit;

/// <summary>Draws all charts in a browser without network.</summary>
public class BrowserTests
{
    static string? Browser { get; } = (from name in (string[])["chromium", "chromium-browser", "google-chrome"]
                                       from folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
                                       let path = Path.Combine(folder, name)
                                       where File.Exists(path)
                                       select path).FirstOrDefault();

    [Theory, InlineData(1200), InlineData(390)]
    public async Task Every_chart_is_drawn_offline_and_follows_the_page(int width)
    {
        Assert.SkipWhen(Browser is null, "No Chromium was found on PATH.");
        await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions
        {
            ExecutablePath = Browser,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
        });
        await using var page = await browser.NewPageAsync();
        List<string> trouble = [];
        page.Console += (_, e) => trouble.Add($"console: {e.Message.Text}");
        page.PageError += (_, e) => trouble.Add($"error: {e.Message}");
        page.Request += (_, e) => trouble.AddRange(e.Request.Url.StartsWith("data:", StringComparison.Ordinal) || e.Request.Url.StartsWith("about:", StringComparison.Ordinal) ? [] : [$"request: {e.Request.Url}"]);
        await page.SetOfflineModeAsync(true);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        await Scheme(page, "light");

        var figures = Samples.AllFigures;
        await page.SetContentAsync(Samples.Page([.. figures.Select(f => f.ToHtml()), Samples.Drop.Data.ToHtml(), Answers.Answer("verdict_at_" + width, "cannot tell", 0.4).ToHtml()]));
        await page.WaitForFunctionAsync("() => [...document.querySelectorAll('[data-figure]')].every(e => e.querySelector('.main-svg .plot path'))");

        // One element per figure is drawn, nothing sticks out of the page, text is at least 12 px.
        Assert.Equal(figures.Count, await page.EvaluateExpressionAsync<int>("document.querySelectorAll('[data-figure][data-drawn] .main-svg:first-child').length"));
        Assert.Equal(0, await page.EvaluateExpressionAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)"));
        Assert.Empty(await page.EvaluateExpressionAsync<string[]>(CutTexts));
        Assert.True(await page.EvaluateExpressionAsync<double>("Math.min(...[...document.querySelectorAll('.main-svg text')].filter(t => t.textContent).map(t => parseFloat(getComputedStyle(t).fontSize)))") >= 12);
        foreach (var (element, i) in (await page.QuerySelectorAllAsync("figure")).Select((e, i) => (e, i)))
        {
            await element.ScreenshotAsync(Path.Combine(Folder, $"chart-{i}-{width}.png"));
        }

        await Scheme(page, "dark");
        await page.WaitForFunctionAsync("() => getComputedStyle(document.querySelector('.main-svg .xtick text')).fill === getComputedStyle(document.body).color");
        await Picture(page, $"charts-{width}-dark.png");

        // On paper: dark text even from a dark page, no wider than the paper; afterwards as before.
        const string tickColour = "getComputedStyle(document.querySelector('.main-svg .xtick text')).fill";
        const string widest = "Math.max(...[...document.querySelectorAll('.main-svg')].map(s => s.getBoundingClientRect().width))";
        double before = await page.EvaluateExpressionAsync<double>(widest);
        await page.EvaluateExpressionAsync("window.dispatchEvent(new Event('beforeprint'))");
        Assert.Equal("rgb(34, 34, 34)", await page.EvaluateExpressionAsync<string>(tickColour));
        Assert.True(await page.EvaluateExpressionAsync<double>(widest) <= 660);
        await page.EvaluateExpressionAsync("window.dispatchEvent(new Event('afterprint'))");
        Assert.Equal(before, await page.EvaluateExpressionAsync<double>(widest));
        Assert.Equal("rgb(232, 232, 232)", await page.EvaluateExpressionAsync<string>(tickColour));

        // Turned to the other width, the figure rearranges itself: its panels stand in a row or in a column.
        const string height = "document.querySelector('[data-figure] .main-svg').getBoundingClientRect().height";
        double first = await page.EvaluateExpressionAsync<double>(height);
        await page.SetViewportAsync(new ViewPortOptions { Width = width == 390 ? 1200 : 390, Height = 900 });
        await page.WaitForFunctionAsync($"first => {(width == 390 ? "" : "-")}({height} - first) < -300", new WaitForFunctionOptions { Timeout = 10_000 }, first);
        await page.WaitForFunctionAsync($"() => ({CutTexts}).length === 0", new WaitForFunctionOptions { Timeout = 10_000 });
        Assert.Empty(trouble);
    }

    [Fact]
    public async Task A_figure_that_carries_the_script_draws_in_a_page_with_a_module_loader()
    {
        Assert.SkipWhen(Browser is null, "No Chromium was found on PATH.");
        await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = Browser, Args = ["--no-sandbox", "--disable-gpu"] });
        await using var page = await browser.NewPageAsync();
        List<string> trouble = [];
        page.PageError += (_, e) => trouble.Add(e.Message);
        await page.SetOfflineModeAsync(true);

        // A later figure stands before the one that carries the script, one is shown twice, and scripts run before elements are attached.
        string late = Samples.Intervals.ToHtml(), carrier = $"<script>{FigureScript.Page}</script>{Samples.Drop.ToHtml()}";
        await page.SetContentAsync("<html><head><script>window.define=function(){throw new Error('define was called')};window.define.amd={}</script></head><body></body></html>");
        await page.EvaluateFunctionAsync("""
            outputs => outputs.forEach(html => {
              const host = document.createElement('div');
              host.innerHTML = html;
              host.querySelectorAll('script').forEach(old => { const s = document.createElement('script'); s.textContent = old.textContent; old.replaceWith(s); (0, eval)(s.textContent); });
              requestAnimationFrame(() => document.body.append(host));
            })
            """, [(string[])[late, carrier, late]]);
        await page.WaitForFunctionAsync("() => document.querySelectorAll('[data-figure] .main-svg .plot path').length > 0 && [...document.querySelectorAll('[data-figure]')].length === 3 && [...document.querySelectorAll('[data-figure]')].every(e => e.querySelector('.main-svg'))");
        Assert.Empty(trouble);
    }

    [Fact]
    public async Task Still_pictures_hold_their_titles()
    {
        Assert.SkipWhen(Browser is null, "No Chromium was found on PATH.");
        await using var browser = await Puppeteer.LaunchAsync(new LaunchOptions { ExecutablePath = Browser, Args = ["--no-sandbox", "--disable-gpu"] });
        await using var page = await browser.NewPageAsync();
        await page.SetOfflineModeAsync(true);
        await page.SetContentAsync(Samples.Page([]));
        foreach (var (figure, i) in Samples.AllFigures.Select((f, i) => (f, i)))
        {
            string uri = await page.EvaluateFunctionAsync<string>("async (json) => { const f = JSON.parse(json); return await Plotly.toImage(f, {format:'png', width:760, height:f.layout.height}); }", figure.ToPictureJson());
            byte[] png = Convert.FromBase64String(uri[(uri.IndexOf(',', StringComparison.Ordinal) + 1)..]);
            Assert.InRange(png.Length, 5_000, 200_000);
            await File.WriteAllBytesAsync(Path.Combine(Folder, $"picture-{i}.png"), png, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Texts of charts that reach outside their chart.</summary>
    const string CutTexts = """
        [...document.querySelectorAll('[data-figure]')].flatMap(figure => {
          const box = figure.getBoundingClientRect();
          return [...figure.querySelectorAll('.main-svg text')].filter(t => t.textContent && t.getBoundingClientRect().width > 0)
            .filter(t => { const r = t.getBoundingClientRect(); return r.left < box.left - 1 || r.right > box.right + 1 || r.top < box.top - 1 || r.bottom > box.bottom + 1; })
            .map(t => t.textContent);
        })
        """;

    static string Folder { get; } = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "screenshots")).FullName;

    static Task Scheme(IPage page, string scheme) =>
        page.EmulateMediaFeaturesAsync([new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = scheme }]);

    static Task Picture(IPage page, string file) =>
        page.ScreenshotAsync(Path.Combine(Folder, file), new ScreenshotOptions { FullPage = true });
}
