namespace Ascham.Notebooks;

using System.Net;

/// <summary>Makes text safe for the two places it goes: HTML, and the labels of plotly.js, which read a few tags themselves.</summary>
static class Markup
{
    /// <summary>Text as HTML; quotes too, so that it may stand in an attribute.</summary>
    public static string Html(string text) => WebUtility.HtmlEncode(text);

    /// <summary>Text as a plotly label: shown as written, whatever it holds.</summary>
    public static string Label(string text) =>
        text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);

    /// <summary>A label broken into lines of at most so many characters where words allow.</summary>
    public static string Wrapped(string text, int width)
    {
        List<string> lines = [""];
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > width)
            {
                lines.Add("");
            }

            lines[^1] += lines[^1].Length > 0 ? " " + word : word;
        }

        return string.Join("<br>", lines.Select(Label));
    }
}
