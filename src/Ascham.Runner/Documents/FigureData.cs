namespace Ascham.Runner.Documents;

using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

/// <summary>A chart as a cell shows it: the figure's JSON and the HTML around it (title, caption, data table, a place to draw).</summary>
/// <param name="Json">Data, layout and config of a plotly figure, for a page.</param>
/// <param name="Picture">The same for a still picture, with its title inside; the page's form when the cell gave no other.</param>
/// <param name="Fragment">HTML without script; empty when the cell gave none.</param>
/// <param name="Description">What a reader who cannot see the chart is told.</param>
sealed partial record FigureData(JsonObject Json, JsonObject Picture, string Fragment, string Description)
{
    /// <summary>The attribute of the element a figure is drawn in; its value is the figure's id.</summary>
    public const string Attribute = "data-figure";

    public int? Height => (int?)(Json["layout"]?["height"] as JsonValue);

    /// <summary>Reads an output's bundle.</summary>
    /// <returns>Null when the output is no chart.</returns>
    public static FigureData? Of(JsonObject output)
    {
        if (output["data"] is not JsonObject data)
        {
            return null;
        }

        string html = MultilineText.Read(data[MimeTypes.Html]);
        if ((Read(data[MimeTypes.Plotly]) ?? HandedOver(html)) is not { } json)
        {
            return null;
        }

        string description = MultilineText.Read(data[MimeTypes.Plain]).Split('\n')[0].Trim();
        return new(json, Read(data[MimeTypes.Picture]) ?? json, Script().Replace(html, "").Trim(), description);
    }

    static JsonObject? Read(JsonNode? node) => node switch
    {
        JsonObject json => json,
        // Some front ends hand a JSON form over as a string.
        JsonValue text when text.GetValueKind() == JsonValueKind.String => JsonNode.Parse(text.GetValue<string>()) as JsonObject,
        _ => null,
    };

    // A figure of Ascham.Notebooks ends with a line of script that hands [id, figure] to the script that draws.
    static JsonObject? HandedOver(string html)
    {
        const string before = "aschamFigures||[]).push(", after = ");</script>";
        int start = html.LastIndexOf(before, StringComparison.Ordinal);
        int end = start < 0 ? -1 : html.IndexOf(after, start, StringComparison.Ordinal);
        return end < 0 ? null : (JsonNode.Parse(html[(start + before.Length)..end]) as JsonArray)?[1] as JsonObject;
    }

    [GeneratedRegex(@"<script\b.*?</script\s*>", RegexOptions.IgnoreCase | RegexOptions.Singleline)]
    private static partial Regex Script();
}
