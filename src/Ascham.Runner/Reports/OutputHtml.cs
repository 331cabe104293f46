namespace Ascham.Runner.Reports;

using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Ascham.Runner.Documents;

/// <summary>One output of a cell as HTML.</summary>
/// <param name="figures">Collects the charts of the page, in order.</param>
/// <param name="trace">Shown under an error; null to leave it out.</param>
sealed partial class OutputHtml(List<JsonObject> figures, string? trace)
{
    public string Of(JsonObject output) => (string?)output["output_type"] switch
    {
        "stream" => $"<pre class=\"{((string?)output["name"] == "stderr" ? "stderr" : "stdout")}\">{Html.Escape(MultilineText.Read(output["text"]))}</pre>",
        "error" => Error(output),
        _ when FigureData.Of(output) is { } figure => Figure(figure),
        _ when output["data"] is JsonObject data => Data(data),
        _ => "",
    };

    string Error(JsonObject output)
    {
        string details = trace is null ? "" : $"<details><summary>Trace</summary><pre>{Html.Escape(trace)}</pre></details>";
        return $"<div class=\"error\" role=\"alert\"><pre>{Html.Escape(MultilineText.Read((output["traceback"] as JsonArray)?[0]))}</pre>{details}</div>";
    }

    static string Data(JsonObject data)
    {
        string Text(string mime) => MultilineText.Read(data[mime]);
        return data switch
        {
            _ when data.ContainsKey(MimeTypes.Html) => $"<div class=\"scroll\">{Text(MimeTypes.Html)}</div>",
            _ when data.ContainsKey(MimeTypes.Markdown) => MarkdownText.ToHtml(Text(MimeTypes.Markdown)),
            _ when data.ContainsKey(MimeTypes.Svg) => $"<div class=\"scroll\">{Text(MimeTypes.Svg)}</div>",
            _ when data.ContainsKey(MimeTypes.Png) => $"<img alt=\"{Html.Escape(Text(MimeTypes.Plain))}\" src=\"data:image/png;base64,{Html.Escape(Text(MimeTypes.Png).Trim())}\">",
            _ => $"<pre>{Html.Escape(Text(MimeTypes.Plain))}</pre>",
        };
    }

    // The place to draw keeps the fragment's own description; a chart without a fragment gets both from here.
    string Figure(FigureData figure)
    {
        string id = $"figure-{figures.Count + 1}";
        figures.Add(figure.Json);
        string place = $"<div class=\"chart\" {FigureData.Attribute}=\"{id}\" role=\"img\" aria-label=\"{Html.Escape(figure.Description)}\" style=\"height:{figure.Height ?? 450}px\"></div>";
        string html = PlaceToDraw().IsMatch(figure.Fragment)
            ? PlaceToDraw().Replace(figure.Fragment, $"{FigureData.Attribute}=\"{id}\"", 1)
            : place + figure.Fragment;
        return $"{html}\n<script type=\"application/json\" data-draws=\"{id}\">{Html.EscapeJson(figure.Json.ToJsonString())}</script>";
    }

    [GeneratedRegex(@"\bdata-figure=""[^""]*""")]
    private static partial Regex PlaceToDraw();
}
