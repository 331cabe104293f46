namespace Ascham.Notebooks;

using Plotly.NET;

/// <summary>How our charts look: plain, transparent behind, told apart by shape as well as colour.</summary>
/// <remarks>
/// <para>Colours are the four of the palette of M. Okabe and K. Ito, <i>Color Universal Design: how to make figures and
/// presentations that are friendly to colorblind people</i>, 2002, revised 2008, that keep a contrast of 3:1 both to white and
/// to a dark page (W3C, <i>Web Content Accessibility Guidelines 2.1</i>, 2018, criterion 1.4.11; tested in LookTests).</para>
/// <para>No text colour is set: the page gives it (see figure.js).</para>
/// </remarks>
static class Look
{
    public const int Height = 420;                           // CSS pixels
    public const int FontSize = 13;                          // CSS pixels
    public const int LegendWidth = 34;                       // characters of a name in a line of the legend; fits a phone
    public const string Grey = "#808080";                    // reads on white and on dark
    public const string FaintGrey = "rgba(128,128,128,0.3)";
    public const string BandGrey = "rgba(128,128,128,0.18)";

    /// <summary>Colour, marker and dash of the first to fourth series.</summary>
    public static readonly IReadOnlyList<Style> Series =
    [
        new("#0072B2", "circle", "solid"),        // blue
        new("#D55E00", "square", "dash"),         // vermilion
        new("#009E73", "diamond", "dashdot"),     // bluish green
        new("#CC79A7", "triangle-up", "dot"),     // reddish purple
    ];

    /// <summary>What one series looks like.</summary>
    public sealed record Style(string Colour, string Symbol, string Dash)
    {
        /// <summary>The colour, thinned for bands and discs.</summary>
        public string Faint =>
            FormattableString.Invariant($"rgba({Convert.ToByte(Colour[1..3], 16)},{Convert.ToByte(Colour[3..5], 16)},{Convert.ToByte(Colour[5..7], 16)},0.2)");
    }

    /// <summary>A scatter trace; members are named as in plotly.js.</summary>
    public static Trace Scatter(IReadOnlyList<double> x, IReadOnlyList<double> y, string name, params (string Member, object Value)[] more)
    {
        var trace = new Trace("scatter");
        trace.SetProperty("x", x);
        trace.SetProperty("y", y);
        trace.SetProperty("name", Markup.Wrapped(name, LegendWidth));
        foreach (var (member, value) in more)
        {
            trace.SetProperty(member, value);
        }

        return trace;
    }

    /// <summary>The outline of a band around a curve, filled without a border.</summary>
    public static Trace Band(IReadOnlyList<double> x, IReadOnlyList<double> low, IReadOnlyList<double> high, string name, string fill) =>
        Scatter([.. x, .. x.Reverse()], [.. low, .. high.Reverse()], name,
            ("mode", "lines"), ("fill", "toself"), ("fillcolor", fill), ("line", new { width = 0, color = fill }), ("hoverinfo", "skip"));

    /// <summary>An axis with a title that names its unit.</summary>
    public static Dictionary<string, object> Axis(string title, (double Low, double High)? range = null)
    {
        Dictionary<string, object> axis = new()
        {
            ["title"] = new { text = title, standoff = 8, font = new { size = FontSize + 1 } },
            ["gridcolor"] = FaintGrey,
            ["zerolinecolor"] = FaintGrey,
            ["linecolor"] = Grey,
            ["ticks"] = "outside",
            ["tickcolor"] = Grey,
            ["automargin"] = true,
        };
        if (range is { } r)
        {
            axis["range"] = new[] { r.Low, r.High };
        }

        return axis;
    }

    /// <summary>A legend in a row above the plot.</summary>
    public static object Legend => new { orientation = "h", x = 0, xanchor = "left", y = 1.02, yanchor = "bottom", bgcolor = "rgba(0,0,0,0)", itemclick = false, itemdoubleclick = false };

    /// <summary>A legend in rows along the top edge of the figure, above whatever the plot has on top.</summary>
    public static object LegendOnTop => new { orientation = "h", x = 0, xanchor = "left", yref = "container", y = 1, yanchor = "top", bgcolor = "rgba(0,0,0,0)", itemclick = false, itemdoubleclick = false };

    /// <summary>A text placed on the plot.</summary>
    public static Dictionary<string, object> Note(string label, object x, object y, string xanchor, string yanchor) => new()
    {
        ["text"] = label,
        ["x"] = x,
        ["y"] = y,
        ["xanchor"] = xanchor,
        ["yanchor"] = yanchor,
        ["align"] = "left",
        ["showarrow"] = false,
    };

    /// <summary>Puts traces and layout together; members are named as in plotly.js. What a narrow page changes goes into meta.narrow.</summary>
    public static GenericChart Chart(IEnumerable<Trace> traces, int height, Dictionary<string, object> narrow, params (string Member, object Value)[] members)
    {
        var layout = new Layout();
        layout.SetProperty("height", height);
        layout.SetProperty("font", new { family = "system-ui, 'DejaVu Sans', sans-serif", size = FontSize });
        layout.SetProperty("paper_bgcolor", "rgba(0,0,0,0)");
        layout.SetProperty("plot_bgcolor", "rgba(0,0,0,0)");
        layout.SetProperty("dragmode", false);
        layout.SetProperty("hovermode", "closest");
        layout.SetProperty("modebar", new { bgcolor = "rgba(0,0,0,0)", color = FaintGrey, activecolor = Grey });
        layout.SetProperty("showlegend", false);
        layout.SetProperty("margin", new { l = 16, r = 16, t = 32, b = 16 });
        layout.SetProperty("meta", new { narrow });
        foreach (var (member, value) in members)
        {
            layout.SetProperty(member, value);
        }

        return GenericChart.addLayout(layout, GenericChart.ofTraceObjects(false, Microsoft.FSharp.Collections.ListModule.OfSeq(traces)));
    }

    /// <summary>Finite ends that hold all finite numbers with some room around.</summary>
    public static (double Low, double High) Span(IEnumerable<double> numbers, double room = 0.06)
    {
        double[] finite = [.. numbers.Where(double.IsFinite)];
        double low = finite.Min(), high = finite.Max(), size = high - low;
        double around = size > 0 ? room * size : Math.Max(1e-9, 0.5 * Math.Abs(high));
        return (low - around, high + around);
    }
}
