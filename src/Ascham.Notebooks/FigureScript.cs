namespace Ascham.Notebooks;

using Plotly.NET;

/// <summary>The script that draws figures, read from the assemblies themselves; nothing is ever fetched from a network.</summary>
public static class FigureScript
{
    static readonly Lock Gate = new();
    static string? carrier;

    /// <summary>The plotly.js that Plotly.NET carries (about 3.6 MB, MIT licence named in its first lines).</summary>
    public static string Plotly { get; } = Resource(typeof(GenericChart), name => name.EndsWith(".min.js", StringComparison.Ordinal));

    /// <summary>Licences of the parts inside <see cref="Plotly"/>.</summary>
    public static string PlotlyLicences { get; } = Resource(typeof(GenericChart), name => name.EndsWith(".LICENSE.txt", StringComparison.Ordinal));

    /// <summary>Our own part: draws waiting figures, takes the text colour from the page, fits narrow screens and paper.</summary>
    public static string Draw { get; } = Resource(typeof(FigureScript), name => name == "Ascham.Notebooks.figure.js");

    /// <summary>
    /// Both, for one <c>script</c> element anywhere in a page. A <c>Plotly</c> that the page already has is used instead of
    /// the copy; loaders that pages may define (<c>define</c>, <c>module</c>) are hidden from the copy, which would register there.
    /// </summary>
    public static string Page => $"if(!window.Plotly){{(function(define,exports,module){{{Plotly}\n}}).call(window);}}\n{Draw}";

    /// <summary>
    /// The script element to put before a figure: in a front end the first figure shown carries it, and carries it again
    /// when its cell runs again; under a runner none does.
    /// </summary>
    internal static string CarriedBy(string figureId)
    {
        lock (Gate)
        {
            if (NotebookHost.IsRunner || figureId != (carrier ??= figureId))
            {
                return "";
            }
        }

        return $"<script>{Page}</script>\n";
    }

    internal static void Forget()
    {
        lock (Gate)
        {
            carrier = null;
        }
    }

    static string Resource(Type neighbour, Func<string, bool> wanted)
    {
        string name = neighbour.Assembly.GetManifestResourceNames().Single(wanted);
        using var reader = new StreamReader(neighbour.Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
