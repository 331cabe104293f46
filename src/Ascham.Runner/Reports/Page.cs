namespace Ascham.Runner.Reports;

using System.Text;
using Ascham.Runner.Documents;

/// <summary>The frame of every page the runner writes: self-contained, and closed to everything else by its content policy.</summary>
static class Page
{
    static readonly string Style = EmbeddedText.Read("report.css");

    /// <param name="title">Shown in the window's title.</param>
    /// <param name="status">Kept in the page for the index: passed or failed.</param>
    /// <param name="body">The content of the body element.</param>
    /// <param name="scripts">Scripts to run after the content, in order; the only ones that can run.</param>
    /// <param name="evaluates">True when the scripts build code as they run: plotly.js does so for three-dimensional charts.</param>
    public static string Write(string title, string status, string body, IReadOnlyList<string> scripts, bool evaluates = false)
    {
        string allowed = scripts.Count == 0 ? "'none'" : string.Join(' ', scripts.Select(PlottingScript.Hash)) + (evaluates ? " 'unsafe-eval'" : "");
        var page = new StringBuilder();
        page.Append($"""
            <!doctype html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data: blob:; style-src 'unsafe-inline'; script-src {allowed}">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <meta name="{StatusName}" content="{status}">
            <title>{Html.Escape(title)}</title>
            <link rel="icon" href="data:,">
            <style>
            {Style}</style>
            </head>
            <body>

            """.ReplaceLineEndings("\n"));
        page.Append(body);
        foreach (string script in scripts)
        {
            page.Append("<script>").Append(script).Append("</script>\n");
        }

        return page.Append("</body>\n</html>\n").ToString();
    }

    /// <summary>The name of the element of a page's head that says how its notebook ended.</summary>
    public const string StatusName = "ascham-status";
}
