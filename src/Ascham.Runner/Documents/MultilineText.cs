namespace Ascham.Runner.Documents;

using System.Text.Json;
using System.Text.Json.Nodes;

/// <summary>The notebook format's text: one string, or a list of lines that keep their line ends.</summary>
static class MultilineText
{
    public static string Read(JsonNode? node) => node switch
    {
        JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
        JsonValue value when value.GetValueKind() == JsonValueKind.String => value.GetValue<string>(),
        null => "",
        _ => node.ToJsonString(),
    };

    public static JsonArray Lines(string text)
    {
        text = text.Replace("\r\n", "\n", StringComparison.Ordinal);
        var lines = new JsonArray();
        for (int start = 0; start < text.Length;)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add((JsonNode)text[start..end]);
            start = end;
        }

        return lines;
    }
}
