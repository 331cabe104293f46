namespace Ascham.Notebooks.Tests;

using System.Reflection;
using System.Text.Json;
using Xunit;

/// <summary>Reads the display convention as a kernel does: all by name, nothing by type.</summary>
[Collection("process-wide state")]
public class ConventionTests : IDisposable
{
    public void Dispose()
    {
        NotebookHost.IsRunner = false;
        NotebookHost.StartNotebook();
        GC.SuppressFinalize(this);
    }

    static Dictionary<string, string> Show(object value)
    {
        var attribute = value.GetType().GetCustomAttributes(false).Single(a => a.GetType().Name == "TypeFormatterSourceAttribute");
        var sourceType = (Type)Get(attribute, "FormatterSourceType");
        var preferred = (IEnumerable<string>)Get(attribute, "PreferredMimeTypes");
        object source = Activator.CreateInstance(sourceType)!;
        var formatters = (IEnumerable<object>)sourceType.GetMethod("CreateTypeFormatters")!.Invoke(source, null)!;
        var shown = formatters.ToDictionary(f => (string)Get(f, "MimeType"), f =>
        {
            using var writer = new StringWriter();
            Assert.Equal(true, f.GetType().GetMethod("Format", [typeof(object), typeof(TextWriter)])!.Invoke(f, [value, writer]));
            return writer.ToString();
        });
        Assert.Equal(preferred.Order(), shown.Keys.Order());
        return shown;

        static object Get(object from, string property) => from.GetType().GetProperty(property, BindingFlags.Public | BindingFlags.Instance)!.GetValue(from)!;
    }

    [Fact]
    public void Figure_table_and_answer_show_themselves_as_html_and_text()
    {
        NotebookHost.IsRunner = true;
        foreach (object value in (object[])[Samples.Drop, Samples.Drop.Data, Answers.Answer("verdict", "cannot tell")])
        {
            var shown = Show(value);
            Assert.NotEmpty(shown["text/html"]);
            Assert.Equal(value.ToString(), shown["text/plain"]);
        }
    }

    [Fact]
    public void An_answer_also_leaves_its_json()
    {
        string json = Show(Answers.Answer("n_arrows", 12))["application/vnd.ascham.answer+json"];
        Assert.Equal("""{"name":"n_arrows","value":12}""", json);
    }

    [Fact]
    public void A_formatter_declines_what_it_does_not_know() =>
        Assert.False(new ConventionFormatter<Table>("text/html", t => t.ToHtml()).Format("text", TextWriter.Null));

    [Fact]
    public void In_a_front_end_the_first_figure_carries_the_script_again_when_its_cell_runs_again()
    {
        NotebookHost.StartNotebook();
        int script = FigureScript.Page.Length;
        Assert.True(Show(Samples.Drop)["text/html"].Length > script);
        Assert.True(Show(Samples.Intervals)["text/html"].Length < 100_000);
        Assert.True(Show(Samples.Drop)["text/html"].Length > script);
    }

    [Fact]
    public void Under_a_runner_no_figure_carries_the_script()
    {
        NotebookHost.IsRunner = true;
        NotebookHost.StartNotebook();
        Assert.Equal(Samples.Drop.ToHtml(), Show(Samples.Drop)["text/html"]);
    }

    [Fact]
    public void The_script_cannot_end_its_element_early()
    {
        Assert.DoesNotContain("</script", FigureScript.Page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<!--", FigureScript.Page, StringComparison.Ordinal);
        Assert.Contains("MIT", FigureScript.Plotly[..300], StringComparison.Ordinal);
    }

    [Fact]
    public void No_kernel_package_is_referenced() =>
        Assert.DoesNotContain(typeof(Figure).Assembly.GetReferencedAssemblies(), a => a.Name!.Contains("DotNet.Interactive", StringComparison.Ordinal));

    [Fact]
    public void Json_of_answers_is_an_array()
    {
        NotebookHost.StartNotebook();
        Assert.Equal("[]\n", Answers.ToJson());
        Answers.Answer("a", 1);
        using var json = JsonDocument.Parse(Answers.ToJson());
        Assert.Equal(JsonValueKind.Array, json.RootElement.ValueKind);
    }
}
