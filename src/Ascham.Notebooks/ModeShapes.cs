namespace Ascham.Notebooks;

using Ascham.Arrows;
using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Draws the ways in which a free arrow swings while it bends, with the places that stay still.</summary>
public static class ModeShapes
{
    const int Looks = 121, PanelHeight = 150;

    /// <summary>Draws the modes below one another.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="modes">The modes with their frequencies in hertz; 1 to 3.</param>
    /// <param name="build">The arrow.</param>
    /// <param name="lengthIn">Unit of places.</param>
    /// <returns>The figure; displacements are not to scale.</returns>
    /// <exception cref="ArgumentException">There are no modes or more than three.</exception>
    public static Figure Draw(string title, IEnumerable<(FlexuralMode Mode, Estimate<double> Hertz)> modes, ArrowBuild build, LengthUnit lengthIn)
    {
        ArgumentNullException.ThrowIfNull(build);
        var all = Check.Some(modes.Select(m => (m.Mode, Hertz: Check.Showable(m.Hertz, "The frequency"))), 3, "modes", nameof(modes));
        string unit = NumberText.Unit(lengthIn);
        double rear = build.Parts.Min(p => p.From.As(lengthIn)), front = build.Parts.Max(p => p.To.As(lengthIn));
        double[] x = [.. Enumerable.Range(0, Looks).Select(i => rear + (front - rear) * i / (Looks - 1))];
        List<Trace> traces = [];
        List<Dictionary<string, object>> names = [];
        List<object> shapes = [];
        List<(string, object)> members = [];
        for (int i = 0; i < all.Count; i++)
        {
            var (mode, hertz) = all[i];
            string number = i == 0 ? "" : $"{i + 1}";
            double top = 1 - i / (double)all.Count, bottom = top - 0.78 / all.Count;
            double[] y = [.. x.Select(place => mode.DisplacementAt(Length.From(place, lengthIn)))], nodes = [.. mode.Nodes.Select(n => n.As(lengthIn))];
            traces.AddRange(On(number,
                Look.Scatter(x, y, "bent one way", ("mode", "lines"), ("line", new { color = Look.Series[0].Colour, width = 3 }), ("showlegend", i == 0), ("hoverinfo", "skip")),
                Look.Scatter(x, [.. y.Select(v => -v)], "half a swing later", ("mode", "lines"), ("line", new { color = Look.Series[1].Colour, width = 2, dash = "dot" }), ("showlegend", i == 0), ("hoverinfo", "skip")),
                Look.Scatter(nodes, [.. nodes.Select(_ => 0.0)], "node: stays on the line of flight", ("mode", "markers+text"), ("marker", new { color = Look.Series[2].Colour, symbol = "circle", size = 10 }),
                    ("text", nodes.Select(n => NumberText.Fixed(n, lengthIn == LengthUnit.Inch ? 1 : 0))), ("textposition", "top right"), ("showlegend", i == 0), ("hovertemplate", $"node at %{{x:.4~g}} {unit}<extra></extra>"))));
            var down = Look.Axis("", (-1.35, 1.35));
            (down["domain"], down["showticklabels"], down["ticks"], down["showgrid"], down["anchor"]) = (new[] { Math.Max(0, bottom), top - 0.16 / all.Count }, false, "", false, "x");
            members.Add(($"yaxis{number}", down));
            var name = Look.Note($"<b>mode {mode.Number}</b>: {NumberText.Of(hertz, "Hz")}", 0, top, "left", "top");
            (name["xref"], name["yref"]) = ("paper", "paper");
            names.Add(name);
            shapes.AddRange(build.Parts.Where(p => p.Kind is PartKind.Vanes or PartKind.Point && p.Length > Length.Zero).Select(p => (object)new
            {
                type = "rect",
                xref = "x",
                yref = $"y{number}",
                x0 = p.From.As(lengthIn),
                x1 = p.To.As(lengthIn),
                y0 = -1.3,
                y1 = 1.3,
                fillcolor = Look.BandGrey,
                line = new { width = 0 },
                layer = "below",
            }));
        }

        var across = Look.Axis($"from the bottom of the nock slot ({unit})", Look.Span([rear, front], 0.02));
        across["anchor"] = all.Count == 1 ? "y" : $"y{all.Count}";
        var chart = Look.Chart(traces, 130 + PanelHeight * all.Count, new() { ["margin.t"] = 110, ["height"] = 180 + PanelHeight * all.Count },
            [("xaxis", across), .. members, ("showlegend", true), ("legend", Look.LegendOnTop), ("annotations", names), ("shapes", shapes), ("margin", new { l = 16, r = 16, t = 56, b = 16 })]);
        return chart.ToFigure(title,
            string.Join(" ", all.Select(m => $"Mode {m.Mode.Number}: {NumberText.Of(m.Hertz, "Hz")}, nodes at {string.Join(", ", m.Mode.Nodes.Select(n => NumberText.Plain(n.As(lengthIn))))} {unit} from the nock slot.")),
            Table.From(all, ("mode", m => m.Mode.Number, 0), ("frequency (Hz)", m => m.Hertz.Value, 1), ("low (Hz)", m => m.Hertz.Low, 1), ("high (Hz)", m => m.Hertz.High, 1), ("interval", m => NumberText.Percent(m.Hertz.Level), 0),
                ("one swing (ms)", m => 1000 / m.Hertz.Value, 1), ($"nodes ({unit} from slot)", m => string.Join(", ", m.Mode.Nodes.Select(n => NumberText.Plain(n.As(lengthIn)))), 0)),
            "Grey stretches: vanes and point; nodes are marked on the shaft. The sideways scale is stretched; how far an arrow really bends is not worked out here.");
    }

    static Trace[] On(string number, params Trace[] traces)
    {
        foreach (var trace in traces)
        {
            trace.SetProperty("xaxis", "x");
            trace.SetProperty("yaxis", $"y{number}");
        }

        return traces;
    }
}
