namespace Ascham.Notebooks;

using Plotly.NET;

/// <summary>Draws probabilities of named things side by side, before and after something was learnt.</summary>
public static class ProbabilityBars
{
    const int MostRows = 24, MostSeries = 3;

    /// <summary>Draws the chart.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="rows">Names, and for each one probability per series, from 0 to 1; 1 to 24.</param>
    /// <param name="series">What each probability rests on; 1 to 3.</param>
    /// <param name="asked">Probability from which something counts as found, between 0 and 1.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is nothing to draw or too much, or a row has not as many probabilities as there are series.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A probability is not from 0 to 1.</exception>
    public static Figure Draw(string title, IEnumerable<(string Name, IReadOnlyList<double> Probabilities)> rows, IReadOnlyList<string> series, double asked)
    {
        var all = Check.Some(rows, MostRows, "rows", nameof(rows));
        Check.Some(series, MostSeries, "series", nameof(series));
        if (all.Any(r => r.Probabilities.Count != series.Count))
        {
            throw new ArgumentException($"Each row must have {series.Count} probabilities, one for each series.", nameof(rows));
        }

        if (all.SelectMany(r => r.Probabilities).Append(asked).Any(p => p is not (>= 0 and <= 1)))
        {
            throw new ArgumentOutOfRangeException(nameof(rows), "A probability must be from 0 to 1.");
        }

        int rowHeight = 24 + (8 * series.Count);
        double[] at = [.. Enumerable.Range(0, all.Count).Select(i => (double)i)];
        double Beside(int s) => series.Count == 1 ? 0 : 0.44 * (s / (series.Count - 1.0) - 0.5);
        List<Trace> traces = [.. series.SelectMany((name, s) => Drawn(all, at, name, s, Beside(s)))];
        traces.Add(Look.Scatter([100 * asked, 100 * asked], [-0.6, all.Count - 0.4], $"asked for, {NumberText.Percent(asked)}", ("mode", "lines"), ("line", new { color = Look.Grey, dash = "dash", width = 2 }), ("hoverinfo", "skip")));
        var names = Look.Axis("", (all.Count - 0.4, -0.6));
        (names["tickvals"], names["ticktext"], names["showgrid"], names["zeroline"]) = (at, all.Select(r => Markup.Wrapped(r.Name, 30)), false, false);
        int legend = 22 * (series.Count + 1);
        var chart = Look.Chart(traces, 110 + (rowHeight * all.Count), new() { ["margin.t"] = 24 + legend, ["height"] = 110 + legend + (40 * all.Count), ["yaxis.ticktext"] = all.Select(r => Markup.Wrapped(r.Name, 14)) },
            ("xaxis", Look.Axis("probability (%)", (0, 112))), ("yaxis", names), ("showlegend", true), ("legend", Look.LegendOnTop), ("margin", new { l = 16, r = 16, t = 60, b = 16 }));
        return chart.ToFigure(title, $"Probabilities. {string.Join(" ", all.Select(r => $"{r.Name}: {string.Join(", ", r.Probabilities.Select((p, s) => $"{NumberText.Percent(p)} ({series[s]})"))}."))} Asked for: {NumberText.Percent(asked)}.",
            Table.From([.. (string[])["", .. series.Select(s => $"{s} (%)")]], all.Select(r => (IEnumerable<object?>)[r.Name, .. r.Probabilities.Select(p => NumberText.Fixed(100 * p, 1))])),
            "Two causes may be at work at once, so that the probabilities may add up to more than 100 %. Only what reaches the dashed line is named.");
    }

    // A stem from zero and a marker at its end, so that series differ in shape as well as colour; the number beside it.
    static IEnumerable<Trace> Drawn(IReadOnlyList<(string Name, IReadOnlyList<double> Probabilities)> rows, double[] at, string name, int s, double beside)
    {
        var style = Look.Series[s];
        double[] y = [.. at.Select(a => a + beside)], x = [.. rows.Select(r => 100 * r.Probabilities[s])];
        yield return Look.Scatter(x, y, name,
            ("mode", "markers+text"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 9 }),
            ("error_x", new { type = "data", symmetric = false, array = x.Select(_ => 0.0), arrayminus = x, color = style.Colour, thickness = 4, width = 0 }),
            ("text", x.Select(v => "  " + (v < 0.5 ? "<1" : NumberText.Fixed(v, 0)))), ("textposition", "middle right"), ("cliponaxis", false),
            ("hovertemplate", $"%{{x:.1f}} %<extra>{Markup.Label(name)}</extra>"));
    }
}
