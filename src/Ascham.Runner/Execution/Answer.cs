namespace Ascham.Runner.Execution;

using System.Text.Json;
using System.Text.Json.Nodes;
using Ascham.Runner.Documents;

/// <summary>A declared answer.</summary>
/// <param name="Json">Its data: name, and of value, unit, low, high, level, probability and text those that apply.</param>
/// <param name="Said">The same in words, without the name.</param>
sealed record Answer(JsonObject Json, string Said)
{
    public string Name => (string?)Json["name"] ?? "";

    /// <summary>Reads an output's bundle.</summary>
    /// <returns>Null when the output is no answer.</returns>
    public static Answer? Of(JsonObject output)
    {
        var node = output["data"]?[MimeTypes.Answer];
        // Some front ends hand a JSON form over as a string.
        node = node?.GetValueKind() == JsonValueKind.String ? JsonNode.Parse(node.GetValue<string>()) : node;
        if (node is not JsonObject json)
        {
            return null;
        }

        var answer = new Answer((JsonObject)json.DeepClone(), "");
        string said = MultilineText.Read(output["data"]![MimeTypes.Plain]).Trim();
        return answer with { Said = said.StartsWith(answer.Name + ": ", StringComparison.Ordinal) ? said[(answer.Name.Length + 2)..] : said };
    }
}
