namespace Ascham.Runner.Reports;

using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;

/// <summary>A notebook's run as one page: title and answers first, then text and outputs with the code folded.</summary>
sealed class Report
{
    static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;
    readonly NotebookResult result;
    readonly OutputHtml outputs;
    readonly List<JsonObject> figures = [];

    Report(NotebookResult result, bool withTrace)
    {
        this.result = result;
        outputs = new(figures, withTrace ? result.Failure?.Trace : null);
    }

    /// <param name="result">The run.</param>
    /// <param name="withTrace">Shows the exception in full where a cell failed.</param>
    public static string Write(NotebookResult result, bool withTrace = false) => new Report(result, withTrace).Write();

    /// <summary>A notebook's question: its first heading, else its name.</summary>
    public static string TitleOf(Ipynb notebook) => TitleCell(notebook) is { } cell ? MarkdownText.Title(cell.Source)! : notebook.Name;

    string Write()
    {
        var body = new StringBuilder();
        body.Append("<nav><a href=\"index.html\">All notebooks</a></nav>\n<main>\n");
        body.Append(Invariant, $"<h1>{Html.Escape(TitleOf(result.Notebook))}</h1>\n").Append(Status()).Append(AnswerBox());
        var title = TitleCell(result.Notebook);
        foreach (Cell cell in result.Notebook.Cells.Where(c => !c.HasTag(Cell.Hidden) || HasFailed(c)))
        {
            body.Append(cell.IsMarkdown ? Text(cell, cell == title) : cell.IsCode ? Code(cell) : "");
        }

        body.Append("</main>\n").Append(Invariant, $"<footer>Made from {Html.Escape(result.Notebook.Name)}.ipynb by Ascham. The numbers are the notebook's; nothing on this page was fetched.</footer>\n");
        bool evaluates = figures.Any(BuildsCode);
        return Page.Write(
            TitleOf(result.Notebook),
            result.Passed ? "passed" : "failed",
            body.ToString(),
            figures.Count == 0 ? [] : [PlottingScript.Plotly, PlottingScript.Draw, PlottingScript.Feed],
            evaluates);
    }

    static Cell? TitleCell(Ipynb notebook) => notebook.Cells.FirstOrDefault(c => c.IsMarkdown && MarkdownText.Title(c.Source) is { Length: > 0 });

    bool HasFailed(Cell cell) => result.Failure is { } f && f.Cell == cell.Number && f.Injected == cell.IsInjected;

    string Status() => result.Failure is not { } failure ? "" : $"""
        <div class="failed" role="alert"><p><strong>This notebook failed</strong> in <a href="#{Anchor(failure.Cell)}">{Html.Escape(failure.Where)}</a>. What stands below it is missing, and what stands above may not answer the question.</p>
        <pre>{Html.Escape(failure.Message)}</pre></div>

        """.ReplaceLineEndings("\n");

    string AnswerBox()
    {
        if (result.Answers.All.Count == 0)
        {
            return "";
        }

        var rows = result.Answers.All.Select(a =>
            $"<tr><th scope=\"row\">{Html.Escape(a.Name.Replace('_', ' '))}</th><td>{Html.Escape(a.Said)}</td></tr>\n");
        return $"<section class=\"answers\" aria-labelledby=\"answers\"><h2 id=\"answers\">Answers</h2>\n<div class=\"scroll\"><table>\n{string.Concat(rows)}</table></div></section>\n";
    }

    string Text(Cell cell, bool withoutTitle) =>
        $"<section class=\"text\">{MarkdownText.ToHtml(cell.Source, withoutTitle, url => InlineImage.Read(url, result.Notebook.Folder, cell))}</section>\n";

    string Code(Cell cell)
    {
        if (string.IsNullOrWhiteSpace(cell.Source))
        {
            return "";
        }

        // A value the user set is part of what the page says, so it is shown open.
        string label = cell.IsInjected ? "Set for this run" : $"Code, cell {cell.Number}";
        string open = cell.IsInjected || HasFailed(cell) ? " open" : "";
        var html = new StringBuilder().Append(Invariant, $"<section class=\"code\" id=\"{Anchor(cell.Number)}{(cell.IsInjected ? "-set" : "")}\">");
        html.Append(Invariant, $"<details{open}><summary>{label}</summary><pre><code>{Html.Escape(cell.Source)}</code></pre></details>\n");
        foreach (JsonObject output in cell.Outputs)
        {
            html.Append("<div class=\"output\">").Append(outputs.Of(output)).Append("</div>\n");
        }

        return html.Append("</section>\n").ToString();
    }

    static string Anchor(int cell) => $"cell-{cell}";

    static bool BuildsCode(JsonObject figure) => (figure["data"] as JsonArray ?? []).Any(trace =>
        (string?)(trace?["type"] as JsonValue) is { } type
        && (type.EndsWith("3d", StringComparison.Ordinal) || type.EndsWith("gl", StringComparison.Ordinal) || type is "surface" or "splom" or "parcoords" or "cone" or "streamtube" or "isosurface" or "volume"));
}
