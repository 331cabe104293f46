namespace Ascham.Runner.Documents;

using System.Text.Json.Nodes;

/// <summary>One cell of a notebook: a view on its JSON.</summary>
/// <param name="Json">The cell as it stands in the file.</param>
/// <param name="Number">Place in the file, counted from 1 over all cells; an injected cell carries its parameter cell's number.</param>
sealed record Cell(JsonObject Json, int Number)
{
    public const string Parameters = "parameters";
    public const string Injected = "injected-parameters";
    public const string Hidden = "hidden";

    public bool IsCode => (string?)Json["cell_type"] == "code";

    public bool IsMarkdown => (string?)Json["cell_type"] == "markdown";

    public bool IsInjected => HasTag(Injected);

    public string Source => MultilineText.Read(Json["source"]);

    /// <summary>The language named in the cell's metadata; C# when none is named.</summary>
    public string Language =>
        (string?)Json["metadata"]?["polyglot_notebook"]?["kernelName"]
        ?? (string?)Json["metadata"]?["dotnet_interactive"]?["language"]
        ?? "csharp";

    public bool HasTag(string tag) =>
        Json["metadata"]?["tags"] is JsonArray tags && tags.Any(t => (string?)t == tag);

    public IEnumerable<JsonObject> Outputs => (Json["outputs"] as JsonArray ?? []).OfType<JsonObject>();

    public void SetSource(string text) => Json["source"] = MultilineText.Lines(text);

    public void SetOutputs(IEnumerable<JsonObject> outputs, int? executionCount)
    {
        Json["execution_count"] = executionCount;
        Json["outputs"] = new JsonArray([.. outputs]);
    }
}
