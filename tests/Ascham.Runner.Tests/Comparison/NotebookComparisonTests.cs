namespace Ascham.Runner.Tests.Comparison;

using System.Text.Json.Nodes;
using Ascham.Runner.Comparison;
using Ascham.Runner.Documents;
using Ascham.Runner.Execution;
using Xunit;

public class NotebookComparisonTests
{
    static readonly Tolerance Usual = new();
    readonly NotebookComparison comparison = new(Usual);

    [Fact]
    public void A_changed_number_is_reported_with_its_cell_and_line()
    {
        var difference = Assert.Single(comparison.Compare(Shown("a 1\nb 2.5\nc 3"), Shown("a 1\nb 2.6\nc 3")));
        Assert.Equal("cell 2, output 1 (text/plain)", difference.Where);
        Assert.Equal(["- b 2.5", "+ b 2.6"], difference.Lines(Usual));
    }

    [Fact]
    public void A_number_off_by_a_billionth_is_no_change() => Assert.Empty(comparison.Compare(Shown("b 2.5"), Shown("b 2.5000000025")));

    [Fact]
    public void The_bytes_of_a_picture_are_not_compared_but_its_words_are()
    {
        Ipynb Picture(string png, string words) => new NotebookText().Code("f").Result((MimeTypes.Png, png), (MimeTypes.Plain, words)).Parse();
        Assert.Empty(comparison.Compare(Picture("AAAA", "Drop"), Picture("BBBB", "Drop")));
        Assert.Single(comparison.Compare(Picture("AAAA", "Drop"), Picture("AAAA", "Drift")));
    }

    [Fact]
    public void A_live_chart_agrees_with_its_committed_picture()
    {
        var figure = new PlantedFigure("Drop", 3);
        var live = new NotebookText().Code("f").Result((MimeTypes.Html, figure.Fragment()), (MimeTypes.Plain, "Drop\n3 points")).Parse();
        var kept = new NotebookText().Code("f").Result((MimeTypes.Png, "AAAA"), (MimeTypes.Plain, "Drop\n3 points")).Parse();
        Assert.Empty(comparison.Compare(kept, live));
        Assert.Single(comparison.Compare(new NotebookText().Code("f").Result((MimeTypes.Plain, "Drop\n3 points")).Parse(), live));
    }

    [Fact]
    public void A_missing_and_an_added_output_and_changed_code_are_reported()
    {
        var none = new NotebookText().Text("# T").Code("x").Parse();
        Assert.Equal(["+ 1"], Assert.Single(comparison.Compare(none, Shown("1"))).Lines(Usual));
        Assert.Equal(["- 1"], Assert.Single(comparison.Compare(Shown("1"), none)).Lines(Usual));
        var other = new NotebookText().Text("# T").Code("y").Parse();
        Assert.Equal("cell 2, code", Assert.Single(comparison.Compare(none, other)).Where);
    }

    [Fact]
    public void The_noise_of_another_front_end_is_left_out()
    {
        var noisy = new NotebookText().Text("# T").Code("x")
            .Result((MimeTypes.Html, "<div id=\"dotnet-interactive-this-cell-1\"></div><script>probe()</script>"))
            .Output(new JsonObject { ["name"] = "stderr", ["output_type"] = "stream", ["text"] = "\n(1,1): warning CS1701: unified\n(3,12): warning CS8632: annotation\n\n" })
            .Result((MimeTypes.Html, "<div class=\"dni-plaintext\"><pre>4 &lt; 5</pre></div><style>p{}</style>"))
            .Parse();
        Assert.Empty(comparison.Compare(Shown("4 < 5"), noisy));
    }

    [Fact]
    public void Answers_are_compared_by_name_within_the_tolerance()
    {
        var old = Answers("""{"name":"a","value":1.0,"unit":"mm"}""", """{"name":"b","text":"slid"}""");
        Assert.Empty(comparison.Compare(old, Answers("""{"name":"b","text":"slid"}""", """{"name":"a","unit":"mm","value":1.0000000001}""")));
        Assert.Equal(
            ["answer a", "answer b", "answer c"],
            comparison.Compare(old, Answers("""{"name":"a","value":1.1,"unit":"mm"}""", """{"name":"c","text":"slid"}""")).Select(d => d.Where));
    }

    [Fact]
    public void A_kept_chart_is_a_picture_and_words_without_script()
    {
        var output = new NotebookText().Code("f").Result((MimeTypes.Html, new PlantedFigure("Drop", 3).Fragment()), (MimeTypes.Plain, "Drop")).Parse().CodeCells.Single().Outputs.Single();
        var data = CommittedForm.Of(output, "PNG")!["data"]!.AsObject();
        Assert.Equal([MimeTypes.Png, MimeTypes.Plain], data.Select(d => d.Key));
        Assert.Equal("PNG", (string?)data[MimeTypes.Png]);
    }

    static Ipynb Shown(string text) => new NotebookText().Text("# T").Code("x").Result((MimeTypes.Plain, text)).Parse();

    static AnswerCollection Answers(params string[] json)
    {
        var text = new NotebookText().Code("x");
        foreach (string answer in json)
        {
            text.Result((MimeTypes.Answer, JsonNode.Parse(answer)!), (MimeTypes.Plain, ""));
        }

        return AnswerCollection.Of(text.Parse());
    }
}
