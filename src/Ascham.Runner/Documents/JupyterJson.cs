namespace Ascham.Runner.Documents;

using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

/// <summary>Writes JSON in the layout Jupyter itself uses, so that a rewritten notebook differs only where its content does.</summary>
/// <remarks>
/// Python's <c>json.dumps(indent=1, ensure_ascii=False)</c>: only the quote, the backslash and control characters are escaped.
/// The platform's writer would turn characters outside the basic plane into escapes, which shows as a change in every such line.
/// </remarks>
static class JupyterJson
{
    public static string Write(JsonNode node, int indent = 1)
    {
        var text = new StringBuilder();
        Write(text, node, indent, 0);
        return text.Append('\n').ToString();
    }

    static void Write(StringBuilder text, JsonNode? node, int indent, int depth)
    {
        switch (node)
        {
            case JsonObject { Count: > 0 } o:
                Block(text, '{', '}', o, indent, depth, member =>
                {
                    Quote(text, member.Key);
                    text.Append(": ");
                    Write(text, member.Value, indent, depth + 1);
                });
                break;
            case JsonObject:
                text.Append("{}");
                break;
            case JsonArray { Count: > 0 } a:
                Block(text, '[', ']', a, indent, depth, item => Write(text, item, indent, depth + 1));
                break;
            case JsonArray:
                text.Append("[]");
                break;
            case JsonValue v when v.GetValueKind() == JsonValueKind.String:
                Quote(text, v.GetValue<string>());
                break;
            default:
                // Numbers keep the characters they were read with.
                text.Append(node?.ToJsonString() ?? "null");
                break;
        }
    }

    static void Block<T>(StringBuilder text, char open, char close, IEnumerable<T> items, int indent, int depth, Action<T> write)
    {
        text.Append(open);
        bool first = true;
        foreach (T item in items)
        {
            text.Append(first ? "\n" : ",\n").Append(' ', indent * (depth + 1));
            write(item);
            first = false;
        }

        text.Append('\n').Append(' ', indent * depth).Append(close);
    }

    static void Quote(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (char c in value)
        {
            _ = c switch
            {
                '"' => text.Append("\\\""),
                '\\' => text.Append("\\\\"),
                '\n' => text.Append("\\n"),
                '\r' => text.Append("\\r"),
                '\t' => text.Append("\\t"),
                '\b' => text.Append("\\b"),
                '\f' => text.Append("\\f"),
                < ' ' => text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => text.Append(c),
            };
        }

        text.Append('"');
    }
}
