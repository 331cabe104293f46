namespace Ascham.Runner.Reports;

using System.Security.Cryptography;
using System.Text;
using Ascham.Notebooks;

/// <summary>The scripts of a report that has charts; each stands in the page once.</summary>
static class PlottingScript
{
    /// <summary>plotly.js, about 3.6 MB.</summary>
    public static string Plotly { get; } = EmbeddedText.WithLineFeeds(FigureScript.Plotly);

    /// <summary>Draws the figures in the page's colours, fitted to screen or paper.</summary>
    public static string Draw { get; } = EmbeddedText.WithLineFeeds(FigureScript.Draw);

    /// <summary>Hands the page's figures to <see cref="Draw"/>.</summary>
    public static string Feed { get; } = EmbeddedText.Read("feed.js");

    /// <summary>The name under which a page's content policy allows a script: nothing else in the page can run.</summary>
    public static string Hash(string script) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'";
}
