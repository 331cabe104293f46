namespace Ascham.Runner.Documents;

/// <summary>The forms an output may take.</summary>
static class MimeTypes
{
    /// <summary>A chart: data, layout and config of a plotly figure.</summary>
    public const string Plotly = "application/vnd.plotly.v1+json";

    /// <summary>The same for a still picture, its title inside.</summary>
    public const string Picture = "application/vnd.ascham.picture+json";

    /// <summary>A declared answer: name, and of value, unit, low, high, level, probability and text those that apply.</summary>
    public const string Answer = "application/vnd.ascham.answer+json";

    public const string Html = "text/html";
    public const string Markdown = "text/markdown";
    public const string Plain = "text/plain";
    public const string Png = "image/png";
    public const string Svg = "image/svg+xml";

    public static bool IsJson(string mime) => mime == "application/json" || mime.EndsWith("+json", StringComparison.Ordinal);
}
