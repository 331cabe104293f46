namespace Ascham.Runner.Pictures;

using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;
using Ascham.Runner.Reports;

/// <summary>Draws charts as still pictures: all of a run in one start of a headless Chromium, read back from the page it leaves.</summary>
static partial class Chromium
{
    static readonly string[] Names = ["chromium", "chromium-browser", "chrome", "google-chrome"];
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(3);
    const int Width = 820; // px: three faces side by side keep their labels apart
    const int Height = 450;

    /// <summary>The browser's program on the search path; null when there is none.</summary>
    public static string? Find() =>
        (from folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
         from name in Names
         from file in new[] { Path.Combine(folder, name), Path.Combine(folder, name + ".exe") }
         where File.Exists(file)
         select file).FirstOrDefault();

    /// <param name="figures">Data and layout of each chart.</param>
    /// <returns>A PNG in base64 for each.</returns>
    /// <exception cref="UsageException">There is no browser, or it drew nothing.</exception>
    public static IReadOnlyList<string> Draw(IReadOnlyList<JsonObject> figures)
    {
        if (figures.Count == 0)
        {
            return [];
        }

        string browser = Find()
            ?? throw new UsageException("drawing the still pictures needs the program chromium on the search path (for example: apt-get install chromium).");
        var folder = Directory.CreateTempSubdirectory("ascham-pictures-");
        try
        {
            string page = Path.Combine(folder.FullName, "figures.html");
            File.WriteAllText(page, PageOf(figures), new UTF8Encoding(false));
            return Read(Run(browser, page, folder.FullName), figures.Count);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static string PageOf(IReadOnlyList<JsonObject> figures) => $$"""
        <!doctype html><meta charset="utf-8"><script>{{PlottingScript.Plotly}}</script><body><script>
        (async function () {
          var figures = [{{string.Join(",\n", figures.Select(f => Html.EscapeJson(f.ToJsonString())))}}];
          for (var i = 0; i < figures.length; i++) {
            var shown = document.createElement("p"), layout = Object.assign({}, figures[i].layout);
            shown.id = "picture-" + i;
            layout.paper_bgcolor = layout.plot_bgcolor = "#ffffff";
            layout.font = Object.assign({ color: "#222222" }, layout.font);
            try {
              shown.textContent = await Plotly.toImage({ data: figures[i].data, layout: layout }, { format: "png", width: layout.width || {{Width}}, height: layout.height || {{Height}} });
            } catch (e) { shown.textContent = "failed: " + e; }
            document.body.appendChild(shown);
          }
          document.querySelectorAll("script").forEach(function (s) { s.remove(); });
        })();
        </script></body>
        """;

    static string Run(string browser, string page, string folder)
    {
        var start = new ProcessStartInfo(browser) { RedirectStandardOutput = true, RedirectStandardError = true };
        string[] arguments =
        [
            // The page is our own and nothing is fetched; without a sandbox it also runs as root, as in a container.
            "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync", "--force-device-scale-factor=1", "--user-data-dir=" + Path.Combine(folder, "profile"),
            "--virtual-time-budget=120000", "--dump-dom", "file://" + page,
        ];
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var text = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(Limit))
        {
            process.Kill(entireProcessTree: true);
            throw new UsageException($"{browser} did not draw the pictures within {Limit.TotalMinutes:0} minutes.");
        }

        return text.GetAwaiter().GetResult();
    }

    static string[] Read(string page, int count)
    {
        var pictures = Picture().Matches(page).ToDictionary(
            m => int.Parse(m.Groups["index"].Value, CultureInfo.InvariantCulture), m => m.Groups["data"].Value);
        return [.. Enumerable.Range(0, count).Select(i => pictures.TryGetValue(i, out string? data)
            ? data
            : throw new UsageException($"Chromium drew no picture of chart {i + 1} of {count}."))];
    }

    [GeneratedRegex("""<p id="picture-(?<index>\d+)">data:image/png;base64,(?<data>[^<]*)</p>""")]
    private static partial Regex Picture();
}
