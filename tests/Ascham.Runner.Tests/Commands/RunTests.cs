namespace Ascham.Runner.Tests.Commands;

using System.Text.Json.Nodes;
using Ascham.Runner.Commands;
using Ascham.Runner.Documents;
using Xunit;

/// <summary>The command line on whole notebooks. Each notebook run costs a kernel, so a test makes several claims on one run.</summary>
public sealed class RunTests : IDisposable
{
    readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    static NotebookText Good() => new NotebookText()
        .Text("# Does it hold?")
        .Planted()
        .Code("double unit = 1.5;\nstring file = \"data/none.csv\";", Cell.Parameters)
        .Code("Console.WriteLine($\"{System.IO.Path.GetFullPath(file)} {1234.5:N1}\");")
        .Code("new PlantedFigure(\"Drop <of> an arrow\", 5, unit)")
        .Code("display(new PlantedAnswer(\"drop_mm\", 16 * unit, \"mm\"));\nnew PlantedAnswer(\"points\", 5, \"\")");

    [Fact]
    public async Task A_run_twice_writes_the_same_files_and_values_can_be_set()
    {
        scratch.Write("notebooks/01-good.ipynb", Good().ToString());
        Assert.Equal(ExitCode.Passed, await scratch.Run("run"));
        Assert.EndsWith("1 passed, 0 failed\n", scratch.Output, StringComparison.Ordinal);
        Assert.Equal(["notebooks/01-good.ipynb", "reports/01-good.answers.json", "reports/01-good.html", "reports/index.html"], scratch.Files());
        Assert.Equal(
            """[{"name":"drop_mm","value":24,"unit":"mm"},{"name":"points","value":5,"unit":""}]""",
            JsonNode.Parse(scratch.Read("reports/01-good.answers.json"))!.ToJsonString());
        string report = scratch.Read("reports/01-good.html");
        Assert.Contains("notebooks/data/none.csv 1,234.5", report, StringComparison.Ordinal);
        Assert.DoesNotContain(scratch.Folder, report, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"Squares: Drop &lt;of&gt; an arrow\"", report, StringComparison.Ordinal);
        Assert.Equal(Good().ToString(), scratch.Read("notebooks/01-good.ipynb"));

        scratch.Write("mine.csv", "");
        Assert.Equal(ExitCode.Passed, await scratch.Run("run", "01", "--out", "again"));
        Assert.Equal(report, scratch.Read("again/01-good.html"));
        Assert.Equal(scratch.Read("reports/index.html"), scratch.Read("again/index.html"));

        Assert.Equal(ExitCode.Passed, await scratch.Run("run", "01", "--set", "unit=2", "file=mine.csv", "--out", "set"));
        Assert.Contains("\"value\": 32", scratch.Read("set/01-good.answers.json"), StringComparison.Ordinal);
        Assert.Contains("mine.csv 1,234.5", scratch.Read("set/01-good.html"), StringComparison.Ordinal);
        Assert.DoesNotContain(scratch.Folder, scratch.Read("set/01-good.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Failures_name_notebook_cell_line_and_reason_and_the_others_go_on()
    {
        scratch.Write("notebooks/a-argument.ipynb", new NotebookText().Text("# T").Code("int a = 1;\n\nthrow new ArgumentException(\"x must be in [0, 1] m; it was 3 m.\", \"x\");").ToString());
        scratch.Write("notebooks/b-compile.ipynb", new NotebookText().Code("int a = 1;\nb + c").Code("1").ToString());
        scratch.Write("notebooks/c-method.ipynb", new NotebookText().Code("int Of(int[] a) => a[7];").Code("int x = 1;\n\nOf([x])").ToString());
        scratch.Write("notebooks/d-language.ipynb", new NotebookText().Code("#!fsharp\nlet a = 1").ToString());
        scratch.Write("notebooks/e-twice.ipynb", new NotebookText().Planted().Code("display(new PlantedAnswer(\"a\", 1, \"\"));\nnew PlantedAnswer(\"a\", 2, \"\")").ToString());
        scratch.Write("notebooks/f-good.ipynb", new NotebookText().Code("1").ToString());
        Directory.CreateDirectory(scratch.Path("reports"));
        scratch.Write("reports/a-argument.answers.json", "[]");

        Assert.Equal(ExitCode.Failed, await scratch.Run("run"));
        Assert.EndsWith("1 passed, 5 failed\n", scratch.Output, StringComparison.Ordinal);
        string[] errors = scratch.Error.Split('\n');
        Assert.Equal("notebooks/a-argument.ipynb, cell 2, line 3: x must be in [0, 1] m; it was 3 m.", errors[0]);
        Assert.Equal("notebooks/b-compile.ipynb, cell 1, line 2: CS0103: The name 'b' does not exist in the current context", errors[1]);
        Assert.Equal("line 2: CS0103: The name 'c' does not exist in the current context", errors[2]);
        Assert.Equal("notebooks/c-method.ipynb, cell 2, line 3: IndexOutOfRangeException: Index was outside the bounds of the array.", errors[3]);
        Assert.StartsWith("notebooks/d-language.ipynb, cell 1", errors[4], StringComparison.Ordinal);
        Assert.Contains("notebooks/e-twice.ipynb, cell 2: the answer 'a' was already given with another content", scratch.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", scratch.Error, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#cell-2\">cell 2, line 3</a>", scratch.Read("reports/a-argument.html"), StringComparison.Ordinal);
        Assert.False(File.Exists(scratch.Path("reports/a-argument.answers.json")));
        Assert.Contains("content=\"passed\"", scratch.Read("reports/f-good.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_notebook_library_shows_is_shown_with_its_script_once_and_its_answers_kept()
    {
        string library = typeof(Ascham.Notebooks.Figure).Assembly.Location;
        scratch.Write("notebooks/a.ipynb", new NotebookText()
            .Code($"#r \"{library}\"\n#r \"nuget: UnitsNet, 5.75.1\"\n#r \"{typeof(Ascham.Quantities.Estimate<>).Assembly.Location}\"\nusing Ascham.Notebooks; using Ascham.Quantities; using UnitsNet; using UnitsNet.Units; using static Ascham.Notebooks.Answers;")
            .Code("var slide = new Estimate<Length>(1.5.Millimetres, 0.2.Millimetres, 1.1.Millimetres, 1.9.Millimetres, 0.90, 12, \"invented\");\nslide")
            .Code("IntervalPlot.Draw(\"How far\", \"slide\", [(\"this tape\", slide)], LengthUnit.Millimeter)")
            .Code("Answer(\"slide_mm\", slide, LengthUnit.Millimeter)")
            .Code("18.0.Metres").ToString());
        Assert.Equal(ExitCode.Passed, await scratch.Run("run"));
        string report = scratch.Read("reports/a.html");
        Assert.Equal(2, report.Split(Ascham.Runner.Reports.PlottingScript.Plotly).Length);
        Assert.Contains("<pre>1.50 mm (90 %: 1.10 to 1.90 mm)</pre>", report, StringComparison.Ordinal);
        Assert.Contains("<pre>18 m</pre>", report, StringComparison.Ordinal);
        Assert.Contains("<strong>How far</strong>", report, StringComparison.Ordinal);
        Assert.DoesNotContain("aschamFigures=window", report.Replace(Ascham.Runner.Reports.PlottingScript.Plotly, "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal("slide_mm", (string?)JsonNode.Parse(scratch.Read("reports/a.answers.json"))![0]!["name"]);
    }

    [Fact]
    public async Task The_trace_is_shown_when_asked_for()
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("throw new InvalidOperationException(\"no\");").ToString());
        Assert.Equal(ExitCode.Failed, await scratch.Run("run", "--trace"));
        Assert.StartsWith("notebooks/a.ipynb, cell 1, line 1: InvalidOperationException: no\nSystem.InvalidOperationException: no\n   at ", scratch.Error, StringComparison.Ordinal);
        Assert.Contains("<summary>Trace</summary>", scratch.Read("reports/a.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_that_does_not_end_stops_the_run_with_a_report()
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("await Task.Delay(System.Threading.Timeout.Infinite);").ToString());
        scratch.Write("notebooks/b.ipynb", new NotebookText().Code("1").ToString());
        Assert.Equal(ExitCode.Failed, await scratch.Run("run", "--timeout", "1.5"));
        Assert.Contains("notebooks/a.ipynb, cell 1: the cell did not end within 1.5 s (--timeout).", scratch.Error, StringComparison.Ordinal);
        Assert.EndsWith("0 passed, 2 failed\n", scratch.Output, StringComparison.Ordinal);
        Assert.Contains("content=\"failed\"", scratch.Read("reports/a.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_interrupted_run_leaves_no_report()
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("1").ToString());
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        Assert.Equal(ExitCode.Interrupted, await scratch.Run(stop.Token, "run"));
        Assert.Contains("Interrupted: nothing was written for a.", scratch.Error, StringComparison.Ordinal);
        Assert.Equal(["notebooks/a.ipynb"], scratch.Files());
    }

    [Theory]
    [InlineData("run 07", "ascham: no notebook is called '07'; there are: a.")]
    [InlineData("run --set b=1", "ascham: a has no parameter 'b'; it has: n.")]
    [InlineData("run --set n=x", "ascham: --set n=x: n takes a whole number.")]
    [InlineData("run --out notebooks/a.ipynb/x", "because")]
    [InlineData("run --bogus", "ascham: Unknown option 'bogus'.")]
    [InlineData("run --timeout 0", "--timeout takes a positive number of seconds.")]
    [InlineData("check --relative -1", "--relative and --absolute take numbers that are not negative.")]
    [InlineData("frob", "ascham: Unknown command 'frob'.")]
    [InlineData("list --notebooks nowhere", "is not a folder with notebooks")]
    public async Task Wrong_usage_is_one_sentence_and_nothing_is_run_or_written(string arguments, string expected)
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("int n = 1;", Cell.Parameters).ToString());
        Assert.Equal(ExitCode.Usage, await scratch.Run(arguments.Split(' ')));
        Assert.Contains(expected, scratch.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', scratch.Error.TrimEnd());
        Assert.Equal(["notebooks/a.ipynb"], scratch.Files());
    }

    [Fact]
    public async Task A_report_that_cannot_be_written_is_one_sentence_and_the_folder_is_left_clean()
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("1").ToString());
        Directory.CreateDirectory(scratch.Path("reports/a.html"));
        Assert.Equal(ExitCode.Usage, await scratch.Run("run"));
        Assert.Contains($"{scratch.Path("reports/a.html")} cannot be written: ", scratch.Error, StringComparison.Ordinal);
        Assert.Equal(["notebooks/a.ipynb"], scratch.Files());
    }

    [Fact]
    public async Task The_list_shows_questions_and_parameters()
    {
        scratch.Write("notebooks/01-a.ipynb", new NotebookText().Text("# Is it so?").Code("int n = 1;", Cell.Parameters).ToString());
        scratch.Write("notebooks/02-long.ipynb", new NotebookText().ToString());
        Assert.Equal(ExitCode.Passed, await scratch.Run("list"));
        Assert.Equal("01-a     Is it so?\n           --set n=1\n02-long  02-long\n", scratch.Output);
    }
}
