namespace Ascham.Notebooks;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Draws named estimates with their intervals one above the other, against what would not matter.</summary>
public static class IntervalPlot
{
    /// <summary>Draws estimates of a quantity.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is estimated; stands at the axis with its unit.</param>
    /// <param name="rows">Names and estimates, the first on top; 1 to 24. An end of an interval may be infinite.</param>
    /// <param name="unit">Unit of the axis.</param>
    /// <param name="margin">Half-width of the band around zero that does not matter; positive; left out, no band is drawn.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are no rows or too many, or an estimate is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The margin is not positive.</exception>
    public static Figure Draw<T>(string title, string what, IEnumerable<(string Name, Estimate<T> Estimate)> rows, Enum unit, T? margin = null)
        where T : struct, IQuantity =>
        Draw(title, what, rows.Select(r => (r.Name, NumberText.In(r.Estimate, unit))), NumberText.Unit(unit), margin?.As(unit));

    /// <summary>Draws estimates that are plain numbers.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is estimated; stands at the axis with its unit.</param>
    /// <param name="rows">Names and estimates, the first on top; 1 to 24. An end of an interval may be infinite.</param>
    /// <param name="unit">Unit as text; empty for a pure number.</param>
    /// <param name="margin">Half-width of the band around zero that does not matter; positive; left out, no band is drawn.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are no rows or too many, or an estimate is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The margin is not positive.</exception>
    public static Figure Draw(string title, string what, IEnumerable<(string Name, Estimate<double> Estimate)> rows, string unit, double? margin = null)
    {
        var all = Check.Some(rows.Select(r => (r.Name, E: Check.Showable(r.Estimate, r.Name))), 24, "estimates", nameof(rows));
        double band = margin is { } m ? Check.Positive(m, unit, nameof(margin)) : 0;
        var x = Look.Span(all.SelectMany(r => (double[])[r.E.Value, r.E.Low, r.E.High]).Concat([0, -band, band]), 0.1);
        double[] at = [.. Enumerable.Range(0, all.Count).Select(i => (double)i)], value = [.. all.Select(r => r.E.Value)];
        double[] low = [.. all.Select(r => Math.Max(r.E.Low, x.Low))], high = [.. all.Select(r => Math.Min(r.E.High, x.High))];
        var style = Look.Series[0];
        var trace = Look.Scatter(value, at, what,
            ("mode", "markers+text"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 10 }),
            ("error_x", new { type = "data", symmetric = false, array = high.Zip(value, (h, v) => h - v), arrayminus = value.Zip(low, (v, l) => v - l), color = style.Colour, thickness = 2.5, width = 7 }),
            ("text", all.Select(r => NumberText.With(NumberText.Fixed(r.E.Value, NumberText.Decimals(r.E.StandardError)), unit))),
            ("textposition", "top center"), ("cliponaxis", false), ("hoverinfo", "skip"));

        List<object> shapes = [Upright(0, 0, "rgba(0,0,0,0)", new { color = Look.Grey, width = 1.5, dash = "dot" })];
        List<object> notes = [];
        string axis = NumberText.With(what, unit.Length == 0 ? "" : $"({unit})");
        Dictionary<string, object> narrow = new() { ["xaxis.title.text"] = Markup.Wrapped(axis, NarrowWidth) };
        if (band > 0)
        {
            shapes.Add(Upright(-band, band, Look.BandGrey, new { width = 0 }));
            string said = $"shaded: within ±{NumberText.With(NumberText.Plain(band), unit)}, does not matter";
            var note = Look.Note(Markup.Label(said), 0, 1, "left", "bottom");
            (narrow["annotations.0.text"], narrow["margin.t"]) = (Markup.Wrapped(said, NarrowWidth), 52);
            (note["xref"], note["yref"]) = ("paper", "paper");
            notes.Add(note);
        }

        var names = Look.Axis("", (all.Count - 0.5, -0.6));
        (names["tickvals"], names["ticktext"]) = (at, all.Select(r => Markup.Wrapped(r.Name, 18)));
        (names["showgrid"], names["zeroline"]) = (false, false);
        var chart = Look.Chart([trace], Math.Clamp(110 + (62 * all.Count), 220, 900), narrow,
            ("xaxis", Look.Axis(Markup.Label(axis), x)), ("yaxis", names), ("shapes", shapes), ("annotations", notes));

        double[] levels = [.. all.Select(r => r.E.Level).Distinct()];
        string bars = levels.Length == 1 ? $"Bars are {NumberText.Percent(levels[0])} intervals." : "Bars are intervals of the levels listed in the table.";
        string open = all.Any(r => double.IsInfinity(r.E.Low) || double.IsInfinity(r.E.High)) ? " A bar that runs to the edge has no known end." : "";
        int decimals = all.Max(r => NumberText.Decimals(r.E.StandardError));
        return chart.ToFigure(title, $"{what}, estimates with intervals. {string.Join(" ", all.Select(r => $"{r.Name}: {NumberText.Of(r.E, unit)}."))}",
            Table.From(all, unit, decimals), bars + open);
    }

    const int NarrowWidth = 26;   // characters that fit beside the names on a phone

    static object Upright(double x0, double x1, string fillcolor, object line) =>
        new { type = x0 == x1 ? "line" : "rect", yref = "paper", x0, x1, y0 = 0, y1 = 1, fillcolor, line, layer = "below" };
}
