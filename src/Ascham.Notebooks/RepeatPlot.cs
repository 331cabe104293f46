namespace Ascham.Notebooks;

using Plotly.NET;
using UnitsNet;

/// <summary>Draws what the same measurement gave each time it was repeated: one column of points per way of measuring.</summary>
public static class RepeatPlot
{
    const int MostColumns = 8, MostPoints = 400;

    /// <summary>Draws repeated measurements.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What was measured; stands at the axis with its unit.</param>
    /// <param name="columns">Names, and for each what every repetition gave; 1 to 8 columns of 1 to 400 values.</param>
    /// <param name="unit">Unit of the axis.</param>
    /// <param name="truth">The true value, where it is known; left out, no line is drawn.</param>
    /// <param name="truthIs">What the line is called.</param>
    /// <returns>The figure; a bar in each column spans the middle nine tenths of its points, and a tick marks their mean.</returns>
    /// <exception cref="ArgumentException">There are no columns or too many, or a column is empty or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite.</exception>
    public static Figure Draw<T>(string title, string what, IEnumerable<(string Name, IReadOnlyList<T> Values)> columns, Enum unit, T? truth = null, string truthIs = "true value")
        where T : struct, IQuantity
    {
        var all = Check.Some(columns.Select(c => Column.Of(c.Name, c.Values.Select(v => v.As(unit)))), MostColumns, "columns", nameof(columns));
        string abbreviation = NumberText.Unit(unit);
        double? line = truth is { } t ? Check.Finite(t.As(unit), nameof(truth)) : null;
        var y = Look.Span(all.SelectMany(c => c.Values).Concat(line is { } l ? [l, 0] : [0]));
        var style = Look.Series[0];
        double size = all.Max(c => c.Values.Length) > 80 ? 4 : 6;
        List<Trace> traces =
        [
            Look.Scatter([.. all.SelectMany((c, i) => c.Places.Select(p => i + p))], [.. all.SelectMany(c => c.Values)], "one repetition",
                ("mode", "markers"), ("marker", new { color = style.Faint, symbol = style.Symbol, size, line = new { color = style.Colour, width = 1 } }),
                ("hovertemplate", $"%{{y:.3~g}} {abbreviation}<extra></extra>")),
            Look.Scatter([.. all.Select((_, i) => (double)i)], [.. all.Select(c => c.Mean)], "mean, and the middle 90 %",
                ("mode", "markers"), ("marker", new { color = Look.Series[1].Colour, symbol = "line-ew", size = 26, line = new { color = Look.Series[1].Colour, width = 3 } }),
                ("error_y", new { type = "data", symmetric = false, array = all.Select(c => c.High - c.Mean), arrayminus = all.Select(c => c.Mean - c.Low), color = Look.Series[1].Colour, thickness = 2.5, width = 9 }),
                ("hoverinfo", "skip")),
        ];
        if (line is { } truly)
        {
            traces.Add(Look.Scatter([-0.5, all.Count - 0.5], [truly, truly], truthIs, ("mode", "lines"), ("line", new { color = Look.Grey, dash = "dash", width = 2 }), ("hoverinfo", "skip")));
        }

        var x = Look.Axis("", (-0.5, all.Count - 0.5));
        (x["tickvals"], x["ticktext"], x["showgrid"], x["zeroline"]) = (Enumerable.Range(0, all.Count), all.Select(c => Markup.Wrapped(c.Name, 14)), false, false);
        var chart = Look.Chart(traces, Look.Height, new() { ["margin.t"] = 84 },
            ("xaxis", x), ("yaxis", Look.Axis(Markup.Wrapped($"{what} ({abbreviation})", 42), y)),
            ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 48, b = 16 }));
        return chart.ToFigure(title, InWords(what, all, abbreviation, line), TableOf(all, abbreviation),
            "Each small point is one repetition; points are spread sideways only so that they can be seen. The bar spans the middle nine tenths of them, the tick is their mean."
            + (line is null ? "" : $" The dashed line is the {truthIs}."));
    }

    static string InWords(string what, IEnumerable<Column> columns, string unit, double? truth) =>
        $"{what}, repeated. " + string.Join(" ", columns.Select(c =>
            $"{c.Name}: {c.Values.Length} {(c.Values.Length == 1 ? "time" : "times")}, mean {NumberText.With(NumberText.Fixed(c.Mean, 2), unit)}, nine tenths within {NumberText.Range(c.Low, c.High, 2, unit)}."))
        + (truth is { } t ? $" The true value is {NumberText.With(NumberText.Plain(t), unit)}." : "");

    static Table TableOf(IEnumerable<Column> columns, string unit) => Table.From(columns,
        ("", c => c.Name, 0), ("repetitions", c => c.Values.Length, 0), ($"mean ({unit})", c => c.Mean, 2), ($"5 % below ({unit})", c => c.Low, 2),
        ($"5 % above ({unit})", c => c.High, 2), ($"smallest ({unit})", c => c.Values.Min(), 2), ($"largest ({unit})", c => c.Values.Max(), 2));

    /// <summary>One column: its values, and how far aside each is drawn.</summary>
    sealed record Column(string Name, double[] Values, double Mean, double Low, double High)
    {
        /// <summary>Sideways places in a fixed order that leaves no two neighbours close: multiples of the golden section.</summary>
        public IEnumerable<double> Places => Values.Select((_, i) => 0.62 * ((((i + 1) * 0.6180339887) % 1) - 0.5));

        public static Column Of(string name, IEnumerable<double> values)
        {
            double[] all = [.. Check.Some(values.Select(v => Check.Finite(v, "value")), MostPoints, $"values of \"{name}\"")], sorted = [.. all.Order()];
            double At(double share) => sorted[Math.Clamp((int)Math.Floor(share * sorted.Length), 0, sorted.Length - 1)];
            return new(name, all, all.Average(), At(0.05), At(0.95 - 1e-9));
        }
    }
}
