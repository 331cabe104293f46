namespace Ascham.Runner.Comparison;

using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;

/// <summary>What of an output is kept in a committed notebook, so that it reads without running and a change shows as a change of text.</summary>
/// <remarks>
/// A chart keeps its words and a still picture: web views of a repository show the picture only when there is no HTML
/// beside it, and the figure's own data would be thousands of lines.
/// </remarks>
static partial class CommittedForm
{
    /// <param name="output">An output as a kernel gave it, or as it was committed.</param>
    /// <param name="picture">PNG in base64 for a chart; null where only the text matters.</param>
    /// <returns>A new output; null for the front end's own noise.</returns>
    public static JsonObject? Of(JsonObject output, string? picture = null)
    {
        var kept = (JsonObject)output.DeepClone();
        if (kept["data"] is not JsonObject data)
        {
            return IsNoise(kept) ? null : kept;
        }

        if (FigureData.Of(output) is not null)
        {
            kept["data"] = new JsonObject { [MimeTypes.Png] = picture ?? "", [MimeTypes.Plain] = data[MimeTypes.Plain]?.DeepClone() ?? new JsonArray() };
            return kept;
        }

        string html = MultilineText.Read(data[MimeTypes.Html]);
        if (html.Contains(FrontEndScript, StringComparison.Ordinal))
        {
            return null;
        }

        if (WrappedText().Match(html) is { Success: true } plain && !data.ContainsKey(MimeTypes.Plain))
        {
            kept["data"] = new JsonObject { [MimeTypes.Plain] = MultilineText.Lines(System.Net.WebUtility.HtmlDecode(plain.Groups["text"].Value)) };
        }

        return kept;
    }

    /// <summary>The parts of an output that are compared, each as text: everything but pictures, and HTML only where there is nothing plainer.</summary>
    public static IReadOnlyDictionary<string, string> Texts(JsonObject output)
    {
        switch ((string?)output["output_type"])
        {
            case "stream":
                return new Dictionary<string, string> { [(string?)output["name"] ?? "stdout"] = MultilineText.Read(output["text"]) };
            case "error":
                return new Dictionary<string, string> { ["error"] = MultilineText.Read(output["evalue"]) };
            default:
                var data = output["data"] as JsonObject ?? [];
                return data
                    .Where(d => d.Key != MimeTypes.Html || !data.ContainsKey(MimeTypes.Plain))
                    .ToDictionary(d => d.Key, d => d.Key.StartsWith("image/", StringComparison.Ordinal) ? "" : Text(d.Key, d.Value));
        }
    }

    static string Text(string mime, JsonNode? value)
    {
        string text = MultilineText.Read(value);
        // Key order and spacing of JSON say nothing.
        return MimeTypes.IsJson(mime) && JsonNode.Parse(text) is JsonObject o
            ? string.Join('\n', o.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => $"{p.Key}: {p.Value?.ToJsonString() ?? "null"}"))
            : text;
    }

    // Jupyter's .NET kernel writes the compiler's warnings to the error stream; nothing the notebook says.
    static bool IsNoise(JsonObject output) =>
        (string?)output["output_type"] == "stream" && (string?)output["name"] == "stderr"
        && MultilineText.Read(output["text"]).Split('\n').All(line => line.Trim().Length == 0 || CompilerWarning().IsMatch(line));

    [GeneratedRegex(@"^\(\d+,\d+\): warning CS\d+: ")]
    private static partial Regex CompilerWarning();

    const string FrontEndScript = "dotnet-interactive-this-cell";

    // How Jupyter's .NET kernel wraps a simple value.
    [GeneratedRegex(@"^\s*<div class=""dni-plaintext""><pre>(?<text>.*?)</pre></div>", RegexOptions.Singleline)]
    private static partial Regex WrappedText();
}
