namespace Ascham.Runner.Documents;

using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

/// <summary>A chart as a cell shows it: the figure's JSON and the HTML around it (caption, data table, a place to draw).</summary>
/// <param name="Json">Data, layout and config (and frames, if it moves).</param>
/// <param name="Fragment">HTML without script; empty when the cell gave none.</param>
/// <param name="Description">What a reader who cannot see the chart is told.</param>
sealed partial record FigureData(JsonObject Json, string Fragment, string Description)
{
    /// <summary>The attribute of the element a figure is drawn in; its value is the figure's id.</summary>
    public const string Attribute = "data-figure";

    public int? Height => (int?)(Json["layout"]?["height"] as JsonValue);

    /// <summary>Reads an output's bundle.</summary>
    /// <returns>Null when the output is no chart.</returns>
    public static FigureData? Of(JsonObject output)
    {
        if (output["data"] is not JsonObject data || Figure(data) is not { } json)
        {
            return null;
        }

        string fragment = Script().Replace(MultilineText.Read(data[MimeTypes.Html]), "");
        string description = MultilineText.Read(data[MimeTypes.Plain]).Split('\n')[0].Trim();
        return new(json, fragment, description);
    }

    static JsonObject? Figure(JsonObject data) => data[MimeTypes.Plotly] switch
    {
        JsonObject json => json,
        // Some front ends hand a JSON form over as a string.
        JsonValue text when text.GetValueKind() == JsonValueKind.String => JsonNode.Parse(text.GetValue<string>()) as JsonObject,
        _ => null,
    };

    [GeneratedRegex(@"<script\b.*?</script\s*>", RegexOptions.IgnoreCase | RegexOptions.Singleline)]
    private static partial Regex Script();
}
