namespace Ascham.Runner.Documents;

/// <summary>Text made safe to stand in a page.</summary>
static class Html
{
    public static string Escape(string text) => text
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("'", "&#39;", StringComparison.Ordinal);

    /// <summary>JSON made safe to stand in a script element: no character of it can end the element.</summary>
    public static string EscapeJson(string json) => json
        .Replace("<", "\\u003c", StringComparison.Ordinal)
        .Replace(">", "\\u003e", StringComparison.Ordinal)
        .Replace("&", "\\u0026", StringComparison.Ordinal);
}
