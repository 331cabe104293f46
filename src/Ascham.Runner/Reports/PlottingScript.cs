namespace Ascham.Runner.Reports;

using System.Security.Cryptography;
using System.Text;

/// <summary>The scripts of a report, each of them in the page once: plotly.js as Plotly.NET carries it, and our own part that draws.</summary>
static class PlottingScript
{
    /// <summary>plotly.js, about 3.6 MB.</summary>
    public static string Plotly { get; } = Resource(typeof(Plotly.NET.GenericChart), name => name.EndsWith(".min.js", StringComparison.Ordinal));

    /// <summary>Draws the figures in the page's colours, fitted to screen or paper.</summary>
    public static string Draw { get; } = Resource(typeof(PlottingScript), name => name.EndsWith("draw.js", StringComparison.Ordinal));

    /// <summary>Hands the page's figures to <see cref="Draw"/>.</summary>
    public static string Feed { get; } = Resource(typeof(PlottingScript), name => name.EndsWith("feed.js", StringComparison.Ordinal));

    /// <summary>The name under which a page's content policy allows a script: nothing else in the page can run.</summary>
    public static string Hash(string script) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'";

    static string Resource(Type neighbour, Func<string, bool> wanted) =>
        EmbeddedText.Read(neighbour.Assembly, neighbour.Assembly.GetManifestResourceNames().Single(wanted));
}
