namespace Ascham.Runner.Tests;

using System.Text.Json.Nodes;
using Ascham.Runner.Documents;

/// <summary>Notebook files made up for tests.</summary>
sealed class NotebookText
{
    readonly JsonArray cells = [];

    public NotebookText Text(string markdown) => Add("markdown", markdown, []);

    public NotebookText Code(string source, params string[] tags) => Add("code", source, tags);

    /// <summary>A code cell that refers to this test assembly, for the planted display types.</summary>
    public NotebookText Planted() =>
        Code($"#r \"{typeof(NotebookText).Assembly.Location}\"\nusing Ascham.Runner.Tests;", Cell.Hidden);

    /// <summary>Gives the last cell an output.</summary>
    public NotebookText Output(JsonObject output)
    {
        ((JsonArray)cells[^1]!["outputs"]!).Add(output);
        return this;
    }

    /// <summary>Gives the last cell a result in the forms given.</summary>
    public NotebookText Result(params (string Mime, JsonNode Value)[] forms) => Output(new JsonObject
    {
        ["data"] = new JsonObject(forms.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Mime, f.Value))),
        ["metadata"] = new JsonObject(),
        ["output_type"] = "display_data",
    });

    public override string ToString() => JupyterJson.Write(new JsonObject
    {
        ["cells"] = cells.DeepClone(),
        ["metadata"] = new JsonObject
        {
            ["kernelspec"] = new JsonObject { ["display_name"] = ".NET (C#)", ["language"] = "C#", ["name"] = ".net-csharp" },
        },
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    });

    public Ipynb Parse(string name = "made-up") => Ipynb.Parse(Path.Combine(Path.GetTempPath(), "notebooks", name + ".ipynb"), ToString());

    NotebookText Add(string kind, string source, string[] tags)
    {
        var cell = new JsonObject { ["cell_type"] = kind };
        if (kind == "code")
        {
            cell["execution_count"] = null;
        }

        cell["id"] = $"cell-{cells.Count + 1}";
        cell["metadata"] = tags.Length == 0 ? [] : new JsonObject { ["tags"] = new JsonArray([.. tags.Select(t => (JsonNode)t)]) };
        if (kind == "code")
        {
            cell["outputs"] = new JsonArray();
        }

        cell["source"] = MultilineText.Lines(source);
        cells.Add((JsonNode)cell);
        return this;
    }
}
