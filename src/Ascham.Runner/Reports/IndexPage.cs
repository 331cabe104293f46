namespace Ascham.Runner.Reports;

using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;

/// <summary>The list of notebooks as questions, with how each ended and a link to its page.</summary>
static partial class IndexPage
{
    /// <param name="notebooks">All notebooks to list, in order.</param>
    /// <param name="reports">The folder of the pages; a notebook without a page there is listed as not run.</param>
    public static string Write(IEnumerable<Ipynb> notebooks, string reports)
    {
        var body = new StringBuilder("<main>\n<h1>Notebooks</h1>\n<ul class=\"index\">\n");
        foreach (Ipynb notebook in notebooks)
        {
            string status = StatusOf(Path.Combine(reports, notebook.Name + ".html"));
            string title = Html.Escape(Report.TitleOf(notebook));
            string name = Html.Escape(notebook.Name);
            string link = status == NotRun ? title : $"<a href=\"{Uri.EscapeDataString(notebook.Name)}.html\">{title}</a>";
            body.Append(Invariant, $"<li>{link} <span class=\"name\">{name}</span> <span class=\"status {status.Replace(' ', '-')}\">{status}</span></li>\n");
        }

        return Page.Write("Notebooks", "index", body.Append("</ul>\n</main>\n").ToString(), []);
    }

    static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;
    const string NotRun = "not run";

    // Pages of earlier runs stay; what they say of themselves stands in their first lines.
    static string StatusOf(string report)
    {
        if (!File.Exists(report))
        {
            return NotRun;
        }

        using var reader = new StreamReader(report);
        char[] head = new char[2000];
        int length = reader.ReadBlock(head, 0, head.Length);
        return StatusElement().Match(new string(head, 0, length)) is { Success: true } m ? m.Groups[1].Value : NotRun;
    }

    [GeneratedRegex(@"<meta name=""ascham-status"" content=""(passed|failed)"">")]
    private static partial Regex StatusElement();
}
