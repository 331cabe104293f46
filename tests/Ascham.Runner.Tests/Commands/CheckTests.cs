namespace Ascham.Runner.Tests.Commands;

using Ascham.Runner.Commands;
using Ascham.Runner.Documents;
using Ascham.Runner.Pictures;
using Xunit;

public sealed class CheckTests : IDisposable
{
    readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task What_was_accepted_is_found_again_and_a_change_is_reported()
    {
        Assert.SkipWhen(Chromium.Find() is null, "accept draws pictures with chromium, which is not on the search path");
        var text = new NotebookText().Text("# T").Planted().Code("new PlantedFigure(\"Drop\", 4)").Code("new PlantedAnswer(\"a\", 1.0 / 3, \"mm\")").Code("$\"{2.0 / 3:R}\"");
        scratch.Write("notebooks/a.ipynb", text.ToString());
        Assert.Equal(ExitCode.Passed, await scratch.Run("accept"));
        string accepted = scratch.Read("notebooks/a.ipynb"), answers = scratch.Read("notebooks/a.answers.json");
        Assert.DoesNotContain("<script", accepted, StringComparison.Ordinal);
        Assert.DoesNotContain("<figure", accepted, StringComparison.Ordinal);
        string picture = (string)Ipynb.Load(scratch.Path("notebooks/a.ipynb")).Cells[2].Outputs.Single()["data"]![MimeTypes.Png]!;
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], Convert.FromBase64String(picture)[..4]);
        Assert.InRange(picture.Length, 4_000, 200_000);

        // Another picture and numbers off by a billionth are no change.
        scratch.Write("notebooks/a.ipynb", accepted.Replace(picture, "AAAA", StringComparison.Ordinal).Replace("0.6666666666666666", "0.6666666670000000", StringComparison.Ordinal));
        Assert.Equal(ExitCode.Passed, await scratch.Run("check"));
        Assert.Equal("", scratch.Error);

        scratch.Write("notebooks/a.ipynb", accepted.Replace("0.6666666666666666", "0.6667", StringComparison.Ordinal));
        scratch.Write("notebooks/a.answers.json", answers.Replace("0.3333", "0.4333", StringComparison.Ordinal));
        Assert.Equal(ExitCode.Failed, await scratch.Run("check"));
        Assert.Contains("a, cell 5, output 1 (text/plain):\n  - 0.6667\n  + 0.6666666666666666\n", scratch.Error, StringComparison.Ordinal);
        Assert.Contains("a, answer a:\n  - value: 0.4333333333333333\n  + value: 0.3333333333333333\n", scratch.Error, StringComparison.Ordinal);
        Assert.EndsWith("0 passed, 1 failed\n", scratch.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_notebook_without_outputs_is_told_how_to_get_them_and_a_failing_one_is_never_accepted()
    {
        string plain = scratch.Write("notebooks/a.ipynb", new NotebookText().Code("1 + 1").ToString());
        Assert.Equal(ExitCode.Failed, await scratch.Run("check"));
        Assert.Contains("a was committed without outputs: ascham accept a writes them.", scratch.Error, StringComparison.Ordinal);

        string failing = new NotebookText().Code("1").Code("throw new FormatException(\"no\");").ToString();
        File.WriteAllText(plain, failing);
        Assert.Equal(ExitCode.Failed, await scratch.Run("accept"));
        Assert.Equal(failing, File.ReadAllText(plain));
    }

    [Fact]
    public async Task Notebooks_run_by_something_else_are_compared_without_running_them()
    {
        scratch.Write("notebooks/a.ipynb", new NotebookText().Code("1 + 1").Result((MimeTypes.Plain, "2")).ToString());
        scratch.Write("notebooks/b.ipynb", new NotebookText().Code("1 + 1").Result((MimeTypes.Plain, "2")).ToString());
        Directory.CreateDirectory(scratch.Path("jupyter"));
        scratch.Write("jupyter/a.ipynb", new NotebookText().Code("1 + 1").Result((MimeTypes.Html, "<div class=\"dni-plaintext\"><pre>2</pre></div>")).ToString());
        scratch.Write("jupyter/b.ipynb", new NotebookText().Code("1 + 1").Result((MimeTypes.Plain, "3")).ToString());
        Assert.Equal(ExitCode.Failed, await scratch.Run("check", "--executed", "jupyter"));
        Assert.Equal("a: as committed\nb: differs\n1 passed, 1 failed\n", scratch.Output);
    }
}
