namespace Ascham.Runner.Tests.Documents;

using Ascham.Runner.Documents;
using Xunit;

public class IpynbTests
{
    // Written by hand in the layout of Jupyter (json.dumps, indent 1, ensure_ascii False), with what an editor of outputs must not touch.
    const string Awkward = """
        {
         "cells": [
          {
           "cell_type": "raw",
           "id": "a",
           "metadata": {},
           "source": [
            "left \"alone\" \\ \u0001\n",
            "café 😀 naïve\u0007"
           ]
          },
          {
           "attachments": {
            "p.png": {
             "image/png": "AAAA"
            }
           },
           "cell_type": "markdown",
           "id": "b",
           "metadata": {
            "custom": {
             "number": 1.0,
             "big": 12345678901234567890,
             "small": 1e-07,
             "none": null
            }
           },
           "source": []
          },
          {
           "cell_type": "code",
           "execution_count": 7,
           "id": "c",
           "metadata": {},
           "outputs": [],
           "source": "one string, not lines"
          }
         ],
         "metadata": {
          "kernelspec": {
           "name": ".net-csharp"
          }
         },
         "nbformat": 4,
         "nbformat_minor": 5,
         "unknown": [
          true,
          {}
         ]
        }

        """;

    [Fact]
    public void A_notebook_read_and_written_is_the_same_to_the_last_character() =>
        Assert.Equal(Awkward, Ipynb.Parse("/n/x.ipynb", Awkward).ToJson());

    [Fact]
    public void Setting_outputs_changes_only_the_cell_it_is_set_on()
    {
        var notebook = Ipynb.Parse("/n/x.ipynb", Awkward);
        notebook.CodeCells.Single().SetOutputs([new() { ["output_type"] = "stream" }], 1);
        string expected = Awkward
            .Replace("\"execution_count\": 7", "\"execution_count\": 1", StringComparison.Ordinal)
            .Replace("\"outputs\": []", "\"outputs\": [\n    {\n     \"output_type\": \"stream\"\n    }\n   ]", StringComparison.Ordinal);
        Assert.Equal(expected, notebook.ToJson());
    }

    [Fact]
    public void Cells_are_numbered_over_all_kinds()
    {
        var notebook = Ipynb.Parse("/n/x.ipynb", Awkward);
        Assert.Equal([1, 2, 3], notebook.Cells.Select(c => c.Number));
        Assert.Equal("one string, not lines", notebook.CodeCells.Single().Source);
    }

    [Theory]
    [InlineData("{\n\"cells\": [,]}", "line 2 is not valid JSON")]
    [InlineData("{\"cells\": 3, \"nbformat\": 4}", "not a notebook of format 4")]
    [InlineData("{\"cells\": [], \"nbformat\": 3}", "not a notebook of format 4")]
    [InlineData("[]", "not a notebook of format 4")]
    [InlineData("", "is not valid JSON")]
    public void What_is_no_notebook_is_refused_in_one_sentence(string json, string expected)
    {
        var error = Assert.Throws<UsageException>(() => Ipynb.Parse("/n/x.ipynb", json));
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
        Assert.StartsWith("/n/x.ipynb: ", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_in_place_of_a_notebook_is_refused_by_name()
    {
        using var scratch = new Scratch();
        var error = Assert.Throws<UsageException>(() => Ipynb.Load(scratch.Path("notebooks")));
        Assert.Contains("notebooks: cannot be read", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("a", 1)]
    [InlineData("a\n", 1)]
    [InlineData("a\r\nb", 2)]
    [InlineData("\n\n", 2)]
    public void Text_becomes_lines_that_keep_their_ends(string text, int lines)
    {
        var split = MultilineText.Lines(text);
        Assert.Equal(lines, split.Count);
        Assert.Equal(text.Replace("\r\n", "\n", StringComparison.Ordinal), MultilineText.Read(split));
    }
}
