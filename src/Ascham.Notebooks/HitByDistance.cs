namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>A hit probability along the distances shot.</summary>
/// <param name="Name">Name, shown in the legend.</param>
/// <param name="Points">Distances, rising, with the probability there, 0 to 1; two or more.</param>
public sealed record HitCurve(string Name, IReadOnlyList<(Length Distance, Estimate<double> Probability)> Points);

/// <summary>Draws hit probability against distance, with the archer's own threshold, and the time of flight below it.</summary>
public static class HitByDistance
{
    const int MostObserved = 60, Height = 560, MostRows = 25;

    /// <summary>Draws the chart.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="curves">One or two curves; the first has its interval drawn as a band and is the one that the threshold is held against.</param>
    /// <param name="observed">Shares of hits counted at distances shot; may be empty.</param>
    /// <param name="threshold">The archer's own threshold, between 0 and 1.</param>
    /// <param name="times">Time of flight along the same distances; two or more.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <returns>The figure; it ends at the last distance given.</returns>
    /// <exception cref="ArgumentException">There is no curve or more than two, too few points, or a probability is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The threshold is not between 0 and 1.</exception>
    public static Figure Draw(
        string title,
        IEnumerable<HitCurve> curves,
        IEnumerable<(Length Distance, Estimate<double> Share)> observed,
        double threshold,
        IEnumerable<(Length Distance, Duration Time)> times,
        LengthUnit distanceIn)
    {
        var lines = Check.Some(curves.Select(c => (c.Name, Points: Points(c.Points, distanceIn))), 2, "curves", nameof(curves));
        Point[] counted = [.. observed.Select(o => Point.Of(o.Distance.As(distanceIn), o.Share))];
        Check.Some(counted.DefaultIfEmpty(lines[0].Points[0]), MostObserved, "observed shares", nameof(observed));
        (double X, double Y)[] flight = [.. times.Select(t => (Check.Finite(t.Distance.As(distanceIn), "distance"), Check.Finite(t.Time.Seconds, "time")))];
        if (threshold is not (> 0 and < 1) || flight.Length < 2)
        {
            throw flight.Length < 2 ? new ArgumentException("times must hold two points or more.", nameof(times)) : new ArgumentOutOfRangeException(nameof(threshold), threshold, $"threshold must lie between 0 and 1; it was {NumberText.Plain(threshold)}.");
        }

        string far = NumberText.Unit(distanceIn);
        var x = (Low: lines.Min(l => l.Points[0].X) - 0.5, High: 1.03 * lines.Max(l => l.Points[^1].X));
        string asked = $"own threshold, {NumberText.Percent(threshold)}";
        List<Trace> traces = [Look.Band([.. lines[0].Points.Select(p => p.X)], [.. lines[0].Points.Select(p => 100 * p.E.Low)], [.. lines[0].Points.Select(p => 100 * p.E.High)], $"{NumberText.Percent(lines[0].Points[0].E.Level)} band", Look.Series[0].Faint)];
        traces.AddRange(lines.Select((l, i) => Look.Scatter([.. l.Points.Select(p => p.X)], [.. l.Points.Select(p => 100 * p.E.Value)], l.Name,
            ("mode", "lines"), ("line", new { color = Look.Series[i == 0 ? 0 : 3].Colour, dash = Look.Series[i == 0 ? 0 : 3].Dash, width = 2.5 }),
            ("hovertemplate", $"%{{y:.0f}} % at %{{x:.4~g}} {far}<extra>{Markup.Label(l.Name)}</extra>"))));
        traces.Add(Look.Scatter([x.Low, x.High], [100 * threshold, 100 * threshold], asked, ("mode", "lines"), ("line", new { color = Look.Grey, dash = "dash", width = 2 }), ("hoverinfo", "skip")));
        if (counted.Length > 0)
        {
            traces.Add(Counted(counted, far));
        }

        var time = Look.Scatter([.. flight.Select(f => f.X)], [.. flight.Select(f => f.Y)], "time of flight", ("mode", "lines"), ("line", new { color = Look.Series[2].Colour, width = 2.5 }),
            ("xaxis", "x"), ("yaxis", "y2"), ("showlegend", false), ("hovertemplate", $"%{{y:.2f}} s at %{{x:.4~g}} {far}<extra></extra>"));
        traces.Add(time);

        var across = Look.Axis($"distance ({far})", x);
        var share = Look.Axis("hit probability (%)", (0, 104));
        var seconds = Look.Axis("time of flight (s)", (0, 1.15 * flight.Max(f => f.Y)));
        across["anchor"] = "y2";
        (share["domain"], seconds["domain"]) = (new[] { 0.34, 1.0 }, new[] { 0.0, 0.22 });
        var chart = Look.Chart(traces, Height, new() { ["margin.t"] = 150, ["height"] = 620 },
            ("xaxis", across), ("yaxis", share), ("yaxis2", seconds), ("showlegend", true), ("legend", Look.LegendOnTop), ("margin", new { l = 16, r = 16, t = 76, b = 16 }));
        return chart.ToFigure(title, InWords(lines[0].Name, lines[0].Points, counted, threshold, flight, far), TableOf(lines, flight, far),
            $"The band is a {NumberText.Percent(lines[0].Points[0].E.Level)} interval of \"{lines[0].Name}\". Its lower edge, not the line, is held against the threshold. "
            + (counted.Length > 0 ? "Diamonds are hits counted over arrows shot, each with its own interval. " : "")
            + "Nothing is drawn beyond the farthest distance shot. Below: how long the arrow is in the air.");
    }

    static Trace Counted(Point[] counted, string far)
    {
        var style = Look.Series[1] with { Symbol = "diamond" };
        return Look.Scatter([.. counted.Select(p => p.X)], [.. counted.Select(p => 100 * p.E.Value)], "hits counted",
            ("mode", "markers"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 10 }),
            ("error_y", new { type = "data", symmetric = false, array = counted.Select(p => 100 * (p.E.High - p.E.Value)), arrayminus = counted.Select(p => 100 * (p.E.Value - p.E.Low)), color = style.Colour, thickness = 2, width = 6 }),
            ("hovertemplate", $"%{{y:.0f}} % at %{{x:.4~g}} {far}<extra>hits counted</extra>"));
    }

    static string InWords(string name, Point[] points, Point[] counted, double threshold, (double X, double Y)[] flight, string far)
    {
        string Said(Point p) => $"at {NumberText.Plain(p.X)} {far} {NumberText.Percent(p.E.Value)} ({NumberText.Percent(p.E.Level)}: {NumberText.Percent(p.E.Low)} to {NumberText.Percent(p.E.High)})";
        return $"Hit probability against distance, {name}: {Said(points[0])}, {Said(points[^1])}; threshold {NumberText.Percent(threshold)}. "
            + string.Concat(counted.Select(p => $"Counted at {NumberText.Plain(p.X)} {far}: {NumberText.Percent(p.E.Value)} of {p.E.Count}. "))
            + $"Time of flight from {NumberText.Fixed(flight[0].Y, 2)} s to {NumberText.Fixed(flight[^1].Y, 2)} s at {NumberText.Plain(flight[^1].X)} {far}.";
    }

    static Table TableOf(IEnumerable<(string Name, Point[] Points)> lines, (double X, double Y)[] flight, string far) => Table.From(
        from line in lines
        let step = Math.Max(1, (line.Points.Length + MostRows - 1) / MostRows)
        from i in Enumerable.Range(0, line.Points.Length)
        where i % step == 0 || i == line.Points.Length - 1
        select (line.Name, P: line.Points[i], Time: flight.MinBy(f => Math.Abs(f.X - line.Points[i].X)).Y),
        ("curve", r => r.Name, 0), ($"distance ({far})", r => r.P.X, 1), ("hit probability (%)", r => 100 * r.P.E.Value, 0), ("low (%)", r => 100 * r.P.E.Low, 0),
        ("high (%)", r => 100 * r.P.E.High, 0), ("interval", r => NumberText.Percent(r.P.E.Level), 0), ("time of flight (s)", r => r.Time, 2));

    static Point[] Points(IReadOnlyList<(Length Distance, Estimate<double> Probability)> points, LengthUnit unit) => points.Count >= 2
        ? [.. points.Select(p => Point.Of(p.Distance.As(unit), p.Probability))]
        : throw new ArgumentException($"A curve must have two points or more; it had {points.Count}.", nameof(points));

    sealed record Point(double X, Estimate<double> E)
    {
        const double Rounding = 1e-9;   // of the quadrature

        public static Point Of(double x, Estimate<double> e) => Check.Showable(e, "A hit probability") is { Low: >= -Rounding, High: <= 1 + Rounding } share
            ? new(Check.Finite(x, "distance"), share)
            : throw new ArgumentException($"A hit probability must lie between 0 and 1; it was {NumberText.Plain(e.Low)} to {NumberText.Plain(e.High)}.", nameof(e));
    }
}
