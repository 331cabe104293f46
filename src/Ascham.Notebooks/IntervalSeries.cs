namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;

/// <summary>Draws estimates with their intervals one after the other, against a true value where one is known: more and more arrows, or group after group.</summary>
public static class IntervalSeries
{
    const int MostPoints = 120;

    /// <summary>Draws a series of estimates.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is estimated; stands at the axis with its unit.</param>
    /// <param name="along">What the series runs along, such as <c>arrows in the group</c>.</param>
    /// <param name="points">Place along the series, and the estimate there; 1 to 120. An end of an interval may be infinite.</param>
    /// <param name="unit">Unit of the estimates.</param>
    /// <param name="truth">The true value, where it is known; intervals that miss it are drawn as open squares.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are no points or too many, or an estimate is not a number.</exception>
    public static Figure Draw<T>(string title, string what, string along, IEnumerable<(double At, Estimate<T> Estimate)> points, Enum unit, T? truth = null)
        where T : struct, IQuantity
    {
        var all = Check.Some(points.Select(p => (At: Check.Finite(p.At, "place"), E: Check.Showable(NumberText.In(p.Estimate, unit), $"The estimate at {NumberText.Plain(p.At)}"))), MostPoints, "points", nameof(points));
        string abbreviation = NumberText.Unit(unit);
        double? line = truth is { } t ? Check.Finite(t.As(unit), nameof(truth)) : null;
        bool Misses(Estimate<double> e) => line is { } l && (e.Low > l || e.High < l);
        // A very wide interval must not flatten the rest: the axis ends a little above the third widest.
        double top = all.Select(p => p.E.High).Where(double.IsFinite).OrderDescending().Take(3).DefaultIfEmpty(all.Max(p => p.E.Value)).Last();
        top = Math.Max(1.15 * Math.Max(top, all.Max(p => p.E.Value)), line ?? 0);
        var y = Look.Span(all.SelectMany(p => (double[])[p.E.Value, Math.Min(p.E.High, top), Math.Max(p.E.Low, -1e300)]).Concat(line is { } truly ? [truly, 0] : [0]), 0.04);
        var x = Look.Span(all.Select(p => p.At), 0.05);
        bool cut = all.Any(p => p.E.High > y.High || p.E.Low < y.Low);

        List<Trace> traces = [];
        foreach (var (missing, style, name) in ((bool, Look.Style, string)[])[(false, Look.Series[0], line is null ? "estimate and interval" : "interval that holds the truth"), (true, Look.Series[1] with { Symbol = "square-open" }, "interval that misses it")])
        {
            var some = all.Where(p => Misses(p.E) == missing).ToArray();
            if (some.Length > 0)
            {
                traces.Add(Look.Scatter([.. some.Select(p => p.At)], [.. some.Select(p => p.E.Value)], name,
                    ("mode", "markers"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = all.Count > 40 ? 6 : 9 }),
                    ("error_y", new { type = "data", symmetric = false, array = some.Select(p => Math.Min(p.E.High, y.High) - p.E.Value), arrayminus = some.Select(p => p.E.Value - Math.Max(p.E.Low, y.Low)), color = style.Colour, thickness = all.Count > 40 ? 1.5 : 2.5, width = all.Count > 40 ? 3 : 6 }),
                    ("hovertemplate", $"%{{y:.3~g}} {abbreviation} at %{{x:.4~g}}<extra></extra>")));
            }
        }

        if (line is { } level)
        {
            traces.Add(Look.Scatter([x.Low, x.High], [level, level], "true value", ("mode", "lines"), ("line", new { color = Look.Grey, dash = "dash", width = 2 }), ("hoverinfo", "skip")));
        }

        var chart = Look.Chart(traces, Look.Height, new() { ["margin.t"] = 84 },
            ("xaxis", Look.Axis(Markup.Label($"{along} (number)"), x)), ("yaxis", Look.Axis(Markup.Wrapped($"{what} ({abbreviation})", 42), y)),
            ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 48, b = 16 }));
        int missed = all.Count(p => Misses(p.E)), decimals = all.Max(p => Math.Min(3, NumberText.Decimals(p.E.StandardError)));
        double[] levels = [.. all.Select(p => p.E.Level).Distinct()];
        string bars = levels.Length == 1 ? $"Bars are {NumberText.Percent(levels[0])} intervals." : "Bars are intervals of the levels listed in the table.";
        string count = line is null ? "" : $" {missed} of {all.Count} {(missed == 1 ? "misses" : "miss")} the true value.";
        return chart.ToFigure(title,
            $"{what}, {all.Count} {(all.Count == 1 ? "estimate" : "estimates")} along {along}. First, at {NumberText.Plain(all[0].At)}: {NumberText.Of(all[0].E, abbreviation)}. Last, at {NumberText.Plain(all[^1].At)}: {NumberText.Of(all[^1].E, abbreviation)}.{count}",
            Table.From(all, (along, p => NumberText.Plain(p.At), 0), ($"value ({abbreviation})", p => p.E.Value, decimals), ($"low ({abbreviation})", p => p.E.Low, decimals),
                ($"high ({abbreviation})", p => p.E.High, decimals), ("interval", p => NumberText.Percent(p.E.Level), 0), ("n", p => p.E.Count, 0)),
            bars + count + (cut ? " A bar that runs to the edge goes on beyond it; the table has its end." : ""));
    }
}
