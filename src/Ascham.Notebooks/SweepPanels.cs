namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;

/// <summary>One quantity along a sweep.</summary>
/// <param name="Name">What it is, without unit.</param>
/// <param name="Unit">Its unit; empty for a pure number.</param>
/// <param name="Points">Places along the sweep, rising, with the estimate there, or none where it cannot be told; two or more.</param>
public sealed record SweepPanel(string Name, string Unit, IReadOnlyList<(double At, Estimate<double>? Estimate)> Points);

/// <summary>Draws many quantities along one sweep, each in its own panel with its own scale and its interval as a band.</summary>
public static class SweepPanels
{
    const int MostPanels = 10, PanelHeight = 190, Above = 64;

    /// <summary>Draws the panels in two columns; in one on a narrow page.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="along">What is swept, with its unit; stands below each column.</param>
    /// <param name="marked">Places to mark in every panel, such as today's arrow; up to two, each with its name.</param>
    /// <param name="panels">The quantities; 1 to 10.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are no panels or too many, or one has fewer than two estimates.</exception>
    public static Figure Draw(string title, string along, IReadOnlyList<(double At, string Name)> marked, IEnumerable<SweepPanel> panels)
    {
        var all = Check.Some(panels.Select(Checked), MostPanels, "panels", nameof(panels));
        Check.Some(marked, 2, "places");
        var x = Look.Span(all.SelectMany(p => p.Points.Select(q => q.At)), 0.03);
        List<Trace> traces = [];
        List<Dictionary<string, object>> names = [];
        List<(string, object)> members = [];
        Dictionary<string, object> narrow = new() { ["margin.t"] = 84 };
        for (int i = 0; i < all.Count; i++)
        {
            string number = i == 0 ? "" : $"{i + 1}";
            var wide = Spot(i, all.Count, 2);
            var tall = Spot(i, all.Count, 1);
            bool last = i >= all.Count - 2;
            var across = Look.Axis(last ? along : "", x);
            var up = Look.Axis("", Look.Span(all[i].Known.SelectMany(k => (double[])[k.E.Low, k.E.High]), 0.08));
            (across["domain"], across["anchor"], up["domain"], up["anchor"]) = (wide.X, $"y{number}", wide.Y, $"x{number}");
            (up["automargin"], across["showticklabels"]) = (false, last);
            members.Add(($"xaxis{number}", across));
            members.Add(($"yaxis{number}", up));
            narrow[$"xaxis{number}.domain"] = tall.X;
            narrow[$"yaxis{number}.domain"] = tall.Y;
            narrow[$"xaxis{number}.showticklabels"] = i == all.Count - 1;
            narrow[$"xaxis{number}.title.text"] = i == all.Count - 1 ? along : "";
            var name = Look.Note($"<b>{Markup.Label(all[i].Name)}</b>{(all[i].Unit.Length == 0 ? "" : $" ({Markup.Label(all[i].Unit)})")}", wide.X[0], wide.Y[1], "left", "bottom");
            (name["xref"], name["yref"], name["yshift"]) = ("paper", "paper", 2);
            narrow[$"annotations.{i}.x"] = tall.X[0];
            narrow[$"annotations.{i}.y"] = tall.Y[1];
            names.Add(name);
            traces.AddRange(Traces(all[i], number, marked, i == 0));
        }

        int rows = (all.Count + 1) / 2;
        narrow["height"] = Above + 20 + PanelHeight * all.Count;
        double level = all[0].Known[0].E.Level;
        var chart = Look.Chart(traces, Above + PanelHeight * rows, narrow,
            [.. members, ("showlegend", true), ("legend", Look.LegendOnTop), ("annotations", names), ("margin", new { l = 52, r = 16, t = Above, b = 48 })]);
        return chart.ToFigure(title, InWords(all, along), TableOf(all, along), $"Bands are {NumberText.Percent(level)} intervals from the unknowns listed on this page; a curve without a visible band is known better than its line is wide. Each panel has its own scale, and few begin at zero.");
    }

    static List<Trace> Traces(Panel panel, string number, IReadOnlyList<(double At, string Name)> marked, bool first)
    {
        double[] x = [.. panel.Known.Select(k => k.At)];
        List<Trace> traces =
        [
            Look.Band(x, [.. panel.Known.Select(k => k.E.Low)], [.. panel.Known.Select(k => k.E.High)], $"{NumberText.Percent(panel.Known[0].E.Level)} band", Look.Series[0].Faint),
            Look.Scatter(x, [.. panel.Known.Select(k => k.E.Value)], "value", ("mode", "lines"), ("line", new { color = Look.Series[0].Colour, width = 2.5 }),
                ("hovertemplate", $"%{{y:.4~g}} {Markup.Label(panel.Unit)} at %{{x:.4~g}}<extra>{Markup.Label(panel.Name)}</extra>")),
        ];
        for (int i = 0; i < marked.Count; i++)
        {
            if (panel.Known.MinBy(k => Math.Abs(k.At - marked[i].At)) is { E: { } } near && Math.Abs(near.At - marked[i].At) < 1e-9)
            {
                var style = Look.Series[i + 1];
                traces.Add(Look.Scatter([near.At], [near.E.Value], marked[i].Name, ("mode", "markers"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 11 }), ("hoverinfo", "skip")));
            }
        }

        foreach (var trace in traces)
        {
            trace.SetProperty("xaxis", $"x{number}");
            trace.SetProperty("yaxis", $"y{number}");
            trace.SetProperty("showlegend", first);
        }

        return traces;
    }

    // Panels from the top left, with room for a name above each.
    static (double[] X, double[] Y) Spot(int i, int count, int columns)
    {
        int rows = (count + columns - 1) / columns, row = i / columns, column = i % columns;
        double height = 1.0 / rows, top = 1 - row * height - 0.16 * height, bottom = 1 - (row + 1) * height + 0.04 * height;
        return columns == 1 ? ([0, 1], [Math.Max(0, bottom), top]) : (column == 0 ? [0, 0.45] : [0.56, 1], [Math.Max(0, bottom), top]);
    }

    static Panel Checked(SweepPanel panel)
    {
        Check.Text(panel.Name, "a panel is known by its name");
        (double, Estimate<double>)[] known = [.. panel.Points.Where(p => p.Estimate is not null).Select(p => (Check.Finite(p.At, "place"), Check.Showable(p.Estimate!, panel.Name)))];
        return known.Length >= 2
            ? new(panel.Name, panel.Unit, panel.Points, known)
            : throw new ArgumentException($"The panel \"{panel.Name}\" must have two estimates or more; it has {known.Length}.", nameof(panel));
    }

    static string InWords(IReadOnlyList<Panel> all, string along) =>
        $"Panels along {along}, from {NumberText.Plain(all[0].Known[0].At)} to {NumberText.Plain(all[0].Known[^1].At)}. "
        + string.Join(" ", all.Select(p => $"{p.Name}: {NumberText.With(NumberText.Plain(p.Known[0].E.Value), p.Unit)} to {NumberText.With(NumberText.Plain(p.Known[^1].E.Value), p.Unit)}."));

    static Table TableOf(IReadOnlyList<Panel> all, string along) => Table.From(
        [along, .. all.SelectMany(p => (string[])[p.Unit.Length == 0 ? p.Name : $"{p.Name} ({p.Unit})", "low", "high"])],
        all[0].Points.Select((point, i) => (object?[])[NumberText.Plain(point.At), .. all.SelectMany(p => Cells(p.Points[i].Estimate))]));

    static string[] Cells(Estimate<double>? e)
    {
        if (e is null)
        {
            return ["cannot tell", "", ""];
        }

        int decimals = Math.Min(3, NumberText.Decimals(e.StandardError));
        return [NumberText.Fixed(e.Value, decimals), NumberText.Fixed(e.Low, decimals), NumberText.Fixed(e.High, decimals)];
    }

    sealed record Panel(string Name, string Unit, IReadOnlyList<(double At, Estimate<double>? Estimate)> Points, (double At, Estimate<double> E)[] Known);
}
