namespace Ascham.Runner.Tests.Reports;

using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Ascham.Runner.Reports;
using Xunit;

public partial class ReportTests
{
    const string Nasty = "<script>alert('x')</script> & \"quoted\" <img src=http://example.org/a.png onerror=alert(1)>";

    [Fact]
    public void Text_of_the_user_is_shown_as_written_wherever_it_comes_from()
    {
        string report = Write(new NotebookText()
            .Text($"# Title {Nasty}\n\nText {Nasty}\n\n{Nasty}")
            .Code($"// {Nasty}")
            .Output(new JsonObject { ["name"] = "stdout", ["output_type"] = "stream", ["text"] = Nasty })
            .Result((MimeTypes.Plain, Nasty))
            .Result((MimeTypes.Answer, new JsonObject { ["name"] = "verdict", ["text"] = Nasty }), (MimeTypes.Plain, "verdict: " + Nasty)));
        Assert.DoesNotContain("<script", report, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", report, StringComparison.Ordinal);
        // Title element, heading, two texts, code, stream, result, answer, and the answer in the box at the top.
        Assert.Equal(9, Count(report, "&lt;script&gt;"));
    }

    [Fact]
    public void Text_in_a_chart_cannot_end_its_script()
    {
        string report = Write(new NotebookText().Code("f").Result((MimeTypes.Html, new PlantedFigure("</script><script>alert(1)</script>", 3).Fragment()), (MimeTypes.Plain, "f")));
        Assert.DoesNotContain("alert(1)</script>", report, StringComparison.Ordinal);
        Assert.Equal(3, Executable().Count(report));
    }

    [Fact]
    public void The_plotting_script_stands_in_a_report_once_and_only_where_there_are_charts()
    {
        string chart = new PlantedFigure("Drop", 3).Fragment();
        string report = Write(new NotebookText().Code("f").Result((MimeTypes.Html, chart), (MimeTypes.Plain, "f")).Code("g").Result((MimeTypes.Html, chart), (MimeTypes.Plain, "g")));
        Assert.Equal(1, Count(report, PlottingScript.Plotly));
        Assert.Equal(2, Count(report, "data-draws="));
        Assert.Contains("data-figure=\"figure-2\"", report, StringComparison.Ordinal);
        Assert.InRange(Write(new NotebookText().Text("# No chart")).Length, 1000, 20_000);
    }

    [Fact]
    public void Nothing_in_a_report_is_loaded_from_elsewhere()
    {
        string report = Write(new NotebookText()
            .Text("# T\n\n![a picture](https://example.org/p.png) ![gone](p.png) [a source](https://example.org/)")
            .Code("f").Result((MimeTypes.Html, new PlantedFigure("Drop", 3).Fragment()), (MimeTypes.Plain, "f")));
        string own = report.Replace(PlottingScript.Plotly, "", StringComparison.Ordinal);
        Assert.DoesNotMatch(Loading(), own);
        Assert.Contains("default-src 'none'; img-src data: blob:;", own, StringComparison.Ordinal);
        Assert.Contains("[a picture] [gone]", own, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_scripts_of_the_page_itself_may_run()
    {
        string report = Write(new NotebookText().Code("f").Result((MimeTypes.Html, new PlantedFigure("Drop", 3).Fragment()), (MimeTypes.Plain, "f")));
        foreach (string script in new[] { PlottingScript.Plotly, PlottingScript.Draw, PlottingScript.Feed })
        {
            Assert.Contains(PlottingScript.Hash(script), report, StringComparison.Ordinal);
            Assert.Contains($"<script>{script}</script>", report, StringComparison.Ordinal);
        }

        Assert.Contains("script-src 'none'", Write(new NotebookText().Text("# T")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_chart_has_a_description_for_those_who_cannot_see_it()
    {
        Assert.Contains("role=\"img\" aria-label=\"Squares: Drop\"", Write(new NotebookText().Code("f").Result((MimeTypes.Html, new PlantedFigure("Drop", 3).Fragment()), (MimeTypes.Plain, "f"))), StringComparison.Ordinal);
        string bare = Write(new NotebookText().Code("f").Result((MimeTypes.Plotly, JsonNode.Parse(new PlantedFigure("Drop", 3).Json())!), (MimeTypes.Plain, "A \"bare\" chart\nmore")));
        Assert.Contains("data-figure=\"figure-1\" role=\"img\" aria-label=\"A &quot;bare&quot; chart\" style=\"height:360px\"", bare, StringComparison.Ordinal);
    }

    [Fact]
    public void The_title_stands_once_and_the_answers_right_below_it()
    {
        string report = Write(new NotebookText().Text("# Does it *hold*?\n\nWords.").Code("x")
            .Result((MimeTypes.Answer, new JsonObject { ["name"] = "slide_mm", ["value"] = 1.5 }), (MimeTypes.Plain, "slide_mm: 1.5 mm")));
        Assert.Contains("<title>Does it hold?</title>", report, StringComparison.Ordinal);
        Assert.Equal(1, Count(report, "<h1"));
        Assert.Contains("<tr><th scope=\"row\">slide mm</th><td>1.5 mm</td></tr>", report, StringComparison.Ordinal);
        Assert.True(report.IndexOf("id=\"answers\"", StringComparison.Ordinal) < report.IndexOf("Words.", StringComparison.Ordinal));
    }

    [Fact]
    public void Hidden_cells_are_left_out_and_values_that_were_set_are_shown_open()
    {
        string report = Write(new NotebookText().Code("secret()", Cell.Hidden).Code("a = 3;", Cell.Injected).Code("plain()"));
        Assert.DoesNotContain("secret", report, StringComparison.Ordinal);
        Assert.Contains("<details open><summary>Set for this run</summary><pre><code>a = 3;", report, StringComparison.Ordinal);
        Assert.Contains("<details><summary>Code, cell 3</summary>", report, StringComparison.Ordinal);
    }

    [Fact]
    public void A_failure_is_said_at_the_top_with_the_way_to_its_cell_even_a_hidden_one()
    {
        var failure = new Failure(2, false, 3, "x must be < 1 m.", "Trace at line 3");
        string report = Write(new NotebookText().Text("# T").Code("boom()", Cell.Hidden), failure);
        Assert.Contains("content=\"failed\"", report, StringComparison.Ordinal);
        Assert.Contains("<strong>This notebook failed</strong> in <a href=\"#cell-2\">cell 2, line 3</a>", report, StringComparison.Ordinal);
        Assert.Contains("x must be &lt; 1 m.", report, StringComparison.Ordinal);
        Assert.Contains("id=\"cell-2\"", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Trace at", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_to_notebooks_lead_to_their_reports_and_harmless_markup_stays()
    {
        string html = MarkdownText.ToHtml("See [next](02-b.ipynb), [bad](javascript:alert(1)).\n\n<details><summary>Why</summary>\n\nBecause H<sub>2</sub>O<b onclick=x()>!\n\n</details>");
        Assert.Contains("<a href=\"02-b.html\">next</a>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("javascript:", html, StringComparison.Ordinal);
        Assert.Contains("<details><summary>Why</summary>", html, StringComparison.Ordinal);
        Assert.Contains("H<sub>2</sub>O&lt;b onclick=x()&gt;!", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_formula_reads_as_it_was_written() =>
        Assert.Equal(
            "<p>So <span class=\"math\">v_0 &lt; 3</span>.</p>\n<div class=\"math\">x^2</div>\n".Replace("\n", "", StringComparison.Ordinal),
            MarkdownText.ToHtml("So $v_0 < 3$.\n\n$$\nx^2\n$$").Replace("\n", "", StringComparison.Ordinal));

    [Fact]
    public void A_picture_beside_the_notebook_or_attached_to_the_cell_is_carried_in_the_page()
    {
        using var scratch = new Scratch();
        scratch.Write("notebooks/a b.svg", "<svg/>");
        var cell = new Cell(new JsonObject { ["attachments"] = new JsonObject { ["p.png"] = new JsonObject { ["image/png"] = "QUJD" } } }, 1);
        Assert.Equal("data:image/svg+xml;base64,PHN2Zy8+", InlineImage.Read("a%20b.svg", scratch.Path("notebooks"), cell));
        Assert.Equal("data:image/png;base64,QUJD", InlineImage.Read("attachment:p.png", scratch.Path("notebooks"), cell));
        Assert.Null(InlineImage.Read("https://example.org/a.png", scratch.Path("notebooks"), cell));
        Assert.Null(InlineImage.Read("attachment:other.png", scratch.Path("notebooks"), cell));
    }

    [Fact]
    public void The_index_lists_questions_with_how_each_ended()
    {
        using var scratch = new Scratch();
        var one = new NotebookText().Text("# One & only?").Parse("01-one");
        scratch.Write("01-one.html", Write(new NotebookText().Text("# One"), new Failure(1, false, null, "no")));
        string index = IndexPage.Write([one, new NotebookText().Parse("02-two")], scratch.Folder);
        Assert.Contains("<a href=\"01-one.html\">One &amp; only?</a> <span class=\"name\">01-one</span> <span class=\"status failed\">failed</span>", index, StringComparison.Ordinal);
        Assert.Contains("<li>02-two <span class=\"name\">02-two</span> <span class=\"status not-run\">not run</span>", index, StringComparison.Ordinal);
    }

    static string Write(NotebookText text, Failure? failure = null)
    {
        var notebook = text.Parse();
        return Report.Write(new NotebookResult(notebook, AnswerCollection.Of(notebook), failure));
    }

    static int Count(string text, string part) => text.Split(part).Length - 1;

    [GeneratedRegex(@"<script>")]
    private static partial Regex Executable();

    // Whatever makes a browser fetch something; a link to follow (a href) is not among them.
    [GeneratedRegex(@"\bsrc=[""']?(?!data:)|<link\b(?! rel=""icon"" href=""data:,"")|@import|url\((?!data:)|<iframe|<object|<embed", RegexOptions.IgnoreCase)]
    private static partial Regex Loading();
}
