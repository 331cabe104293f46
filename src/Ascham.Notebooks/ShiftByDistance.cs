namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>What a cause would do along the distances.</summary>
/// <param name="Name">Name, shown in the legend.</param>
/// <param name="Points">Distances, rising, with the shift there; two or more.</param>
public sealed record ShiftCurve(string Name, IReadOnlyList<(Length Distance, Length Shift)> Points);

/// <summary>Draws how far the centres moved at each distance, with the signatures of causes laid over, and the band that an ordinary day reaches.</summary>
public static class ShiftByDistance
{
    const int MostPoints = 60, MostCurves = 4, Room = 34;

    /// <summary>Draws the chart.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is drawn; stands at the axis with its unit, such as <c>shift up</c>.</param>
    /// <param name="shifts">Shifts measured, with their intervals; 1 to 60.</param>
    /// <param name="curves">Signatures; up to 4.</param>
    /// <param name="ordinaryDay">Half-width, as an angle, of what an ordinary day brings at the level of the intervals; zero draws no band.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="shiftIn">Unit of shifts.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no shift, there are too many curves, a curve has fewer than two points, or a shift is not a number.</exception>
    public static Figure Draw(
        string title,
        string what,
        IEnumerable<(Length Distance, Estimate<Length> Shift)> shifts,
        IEnumerable<ShiftCurve> curves,
        Angle ordinaryDay,
        LengthUnit distanceIn,
        LengthUnit shiftIn)
    {
        ArgumentNullException.ThrowIfNull(curves);
        var points = Check.Some(shifts.Select(s => (X: Check.Finite(s.Distance.As(distanceIn), "distance"), E: Check.Showable(NumberText.In(s.Shift, shiftIn), "A shift"))).OrderBy(s => s.X), MostPoints, "shifts", nameof(shifts));
        var lines = curves.Select(c => (c.Name, Points: c.Points.Select(p => (X: p.Distance.As(distanceIn), Y: Check.Finite(p.Shift.As(shiftIn), "shift"))).ToArray())).ToArray();
        if (lines.Length > MostCurves || lines.Any(l => l.Points.Length < 2))
        {
            throw new ArgumentException($"There may be up to {MostCurves} curves of two points or more; there were {lines.Length}.", nameof(curves));
        }

        var (far, near) = (NumberText.Unit(distanceIn), NumberText.Unit(shiftIn));
        double perDistance = Check.Finite(ordinaryDay.Radians, nameof(ordinaryDay)) * Length.From(1, distanceIn).As(shiftIn);
        var x = Look.Span(points.Select(p => p.X).Concat(lines.SelectMany(l => l.Points.Select(p => p.X))), 0.04);
        double[] ends = [Math.Max(0, x.Low), x.High];
        var y = Look.Span(points.SelectMany(p => (double[])[p.E.Value, p.E.Low, p.E.High]).Concat(lines.SelectMany(l => l.Points.Select(p => p.Y))).Concat([0, perDistance * x.High, -perDistance * x.High]));
        List<Trace> traces = [];
        if (perDistance > 0)
        {
            traces.Add(Look.Band(ends, [.. ends.Select(d => -perDistance * d)], [.. ends.Select(d => perDistance * d)], "an ordinary day", Look.BandGrey));
        }

        traces.AddRange(lines.Select((l, i) => Look.Scatter([.. l.Points.Select(p => p.X)], [.. l.Points.Select(p => p.Y)], l.Name,
            ("mode", "lines"), ("line", new { color = Look.Series[i].Colour, dash = Look.Series[i].Dash, width = 2.5 }),
            ("hovertemplate", $"%{{y:.3~g}} {near} at %{{x:.4~g}} {far}<extra>{Markup.Label(l.Name)}</extra>"))));
        traces.Add(Look.Scatter([.. points.Select(p => p.X)], [.. points.Select(p => p.E.Value)], $"measured, {NumberText.Percent(points[0].E.Level)} interval",
            ("mode", "markers"), ("marker", new { color = Look.Grey, symbol = "circle", size = 10 }),
            ("error_y", new { type = "data", symmetric = false, array = points.Select(p => Math.Min(p.E.High, y.High) - p.E.Value), arrayminus = points.Select(p => p.E.Value - Math.Max(p.E.Low, y.Low)), color = Look.Grey, thickness = 2.5, width = 7 }),
            ("hovertemplate", $"%{{y:.3~g}} {near} at %{{x:.4~g}} {far}<extra>measured</extra>")));
        int rows = lines.Length + 2;
        var chart = Look.Chart(traces, Look.Height + 40, new() { ["margin.t"] = Room + 22 * rows, ["height"] = Look.Height + 22 * rows },
            ("xaxis", Look.Axis($"distance ({far})", x)), ("yaxis", Look.Axis(Markup.Wrapped($"{what} ({near})", 42), y)),
            ("showlegend", true), ("legend", Look.LegendOnTop), ("margin", new { l = 16, r = 16, t = Room + 22 * ((rows + 2) / 3), b = 16 }));
        return chart.ToFigure(title, InWords(what, points, lines, far, near), TableOf(points, lines, far, near), Caption(points, lines.Length > 0, perDistance > 0));
    }

    static string Caption(IReadOnlyList<(double X, Estimate<double> E)> points, bool curves, bool band) =>
        $"Bars are {NumberText.Percent(points[0].E.Level)} intervals from scatter, ranging and setting."
        + (band ? " The grey band is as far as an archer's ordinary days differ: a shift of all points together inside it need not mean anything." : "")
        + (curves ? " Each line is what one cause would do at its most probable size; lines that lie together cannot be told apart by arrows." : "");

    static string InWords(string what, IReadOnlyList<(double X, Estimate<double> E)> points, (string Name, (double X, double Y)[] Points)[] lines, string far, string near) =>
        $"{what} against distance. " + string.Join(" ", points.Select(p => $"{NumberText.Plain(p.X)} {far}: {NumberText.Of(p.E, near)}."))
        + string.Concat(lines.Select(l => $" {l.Name}: from {NumberText.Fixed(l.Points[0].Y, 1)} {near} at {NumberText.Plain(l.Points[0].X)} {far} to {NumberText.Fixed(l.Points[^1].Y, 1)} {near} at {NumberText.Plain(l.Points[^1].X)} {far}."));

    static Table TableOf(IReadOnlyList<(double X, Estimate<double> E)> points, (string Name, (double X, double Y)[] Points)[] lines, string far, string near)
    {
        int decimals = points.Max(p => Math.Min(2, NumberText.Decimals(p.E.StandardError)));
        string[] headers = [$"distance ({far})", $"measured ({near})", "low", "high", .. lines.Select(l => $"{l.Name} ({near})")];
        return Table.From(headers, points.Select(p => (IEnumerable<object?>)
            [NumberText.Fixed(p.X, 1), NumberText.Fixed(p.E.Value, decimals), NumberText.Fixed(p.E.Low, decimals), NumberText.Fixed(p.E.High, decimals), .. lines.Select(l => NumberText.Fixed(At(l.Points, p.X), decimals))]));
    }

    // Between two points of a curve.
    static double At((double X, double Y)[] points, double x)
    {
        int i = Math.Clamp(Array.FindIndex(points, p => p.X >= x), 1, points.Length - 1);
        var (a, b) = (points[i - 1], points[i]);
        return a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
    }
}
