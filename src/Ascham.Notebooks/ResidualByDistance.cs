namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Draws an error against distance: measured points with intervals, what was fitted through them, and what would not matter.</summary>
/// <remarks>Draw the same check twice: in millimetres of the tape, and in inches on the target.</remarks>
public static class ResidualByDistance
{
    /// <summary>Draws one check.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is drawn and which way is positive, such as <c>tape error, mark too low positive</c>; stands at the axis with its unit.</param>
    /// <param name="measured">Distances with the error estimated there; at least one. An end of an interval may be infinite.</param>
    /// <param name="fitted">Points of a fitted curve with its band, distances rising; empty when nothing was fitted.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="errorIn">Unit of errors.</param>
    /// <param name="margin">Half-width of the band around zero that does not matter, the same at all distances; positive.</param>
    /// <param name="marginAt">The same where it changes with distance; not both.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">Nothing was measured, an estimate is not a number, or both kinds of margin are given.</exception>
    public static Figure Draw(
        string title,
        string what,
        IEnumerable<(Length Distance, Estimate<Length> Error)> measured,
        IEnumerable<(Length Distance, Estimate<Length> Error)> fitted,
        LengthUnit distanceIn,
        LengthUnit errorIn,
        Length? margin = null,
        Func<Length, Length>? marginAt = null)
    {
        if (margin is not null && marginAt is not null)
        {
            throw new ArgumentException("Give margin or marginAt, not both.", nameof(marginAt));
        }

        var points = Check.Some(Read(measured, distanceIn, errorIn), 200, "measured errors", nameof(measured));
        Point[] curve = [.. Read(fitted, distanceIn, errorIn)];
        string far = NumberText.Unit(distanceIn), unit = NumberText.Unit(errorIn);
        var x = Look.Span(points.Concat(curve).Select(p => p.X), 0.05);
        var band = MarginBand(x, distanceIn, errorIn, marginAt ?? (margin is { } m ? _ => m : null));
        var y = Look.Span(points.Concat(curve).SelectMany(p => p.Numbers).Concat(band.Half).Concat(band.Half.Select(h => -h)).Append(0));

        List<Trace> traces = [];
        if (band.Half.Length > 0)
        {
            traces.Add(Look.Band(band.X, [.. band.Half.Select(h => -h)], band.Half, "does not matter", Look.BandGrey));
        }

        if (curve.Length > 0)
        {
            var style = Look.Series[1];
            double[] cx = [.. curve.Select(p => p.X)];
            traces.Add(Look.Band(cx, [.. curve.Select(p => Math.Max(p.E.Low, y.Low))], [.. curve.Select(p => Math.Min(p.E.High, y.High))],
                $"{NumberText.Percent(curve[0].E.Level)} band", style.Faint));
            traces.Add(Look.Scatter(cx, [.. curve.Select(p => p.E.Value)], "fitted",
                ("mode", "lines"), ("line", new { color = style.Colour, dash = style.Dash, width = 2.5 }), ("hoverinfo", "skip")));
        }

        traces.Add(Measured(points, y, far, unit));
        object zero = new { type = "line", xref = "paper", x0 = 0, x1 = 1, y0 = 0, y1 = 0, line = new { color = Look.Grey, width = 1.5, dash = "dot" }, layer = "below" };
        var chart = Look.Chart(traces, Look.Height, new() { ["margin.t"] = 72 },
            ("xaxis", Look.Axis($"distance ({far})", x)), ("yaxis", Look.Axis(Markup.Wrapped($"{what} ({unit})", 42), y)),
            ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 44, b = 16 }), ("shapes", new[] { zero }));
        return chart.ToFigure(title,
            $"{what}, at {points.Count} {(points.Count == 1 ? "distance" : "distances")}. "
            + string.Join(" ", points.Select(p => $"{NumberText.Plain(p.X)} {far}: {NumberText.Of(p.E, unit)}.")),
            TableOf(points, far, unit), Caption(points, curve, band.Half, unit));
    }

    static Trace Measured(IReadOnlyList<Point> points, (double Low, double High) y, string far, string unit)
    {
        var style = Look.Series[0];
        var above = points.Select(p => Math.Min(p.E.High, y.High) - p.E.Value);
        var below = points.Select(p => p.E.Value - Math.Max(p.E.Low, y.Low));
        return Look.Scatter([.. points.Select(p => p.X)], [.. points.Select(p => p.E.Value)], $"measured, {NumberText.Percent(points[0].E.Level)} interval",
            ("mode", "markers"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 10 }),
            ("error_y", new { type = "data", symmetric = false, array = above, arrayminus = below, color = style.Colour, thickness = 2.5, width = 7 }),
            ("hovertemplate", $"%{{y:.3~g}} {unit} at %{{x:.4~g}} {far}<extra></extra>"));
    }

    static (double[] X, double[] Half) MarginBand((double Low, double High) x, LengthUnit distanceIn, LengthUnit errorIn, Func<Length, Length>? marginAt)
    {
        const int steps = 24;   // enough for a curve to look smooth
        double[] at = marginAt is null ? [] : [.. Enumerable.Range(0, steps + 1).Select(i => x.Low + ((x.High - x.Low) * i / steps))];
        return (at, [.. at.Select(d => Check.Positive(marginAt!(new Length(d, distanceIn)).As(errorIn), NumberText.Unit(errorIn), "margin"))]);
    }

    static Table TableOf(IEnumerable<Point> points, string far, string unit)
    {
        int decimals = points.Max(p => NumberText.Decimals(p.E.StandardError));
        return Table.From(points,
            ($"distance ({far})", p => p.X, 1), ($"error ({unit})", p => p.E.Value, decimals), ($"low ({unit})", p => p.E.Low, decimals),
            ($"high ({unit})", p => p.E.High, decimals), ("interval", p => NumberText.Percent(p.E.Level), 0), ("n", p => p.E.Count, 0));
    }

    static string Caption(IReadOnlyList<Point> points, Point[] curve, double[] half, string unit)
    {
        List<string> sentences = [$"Bars are {NumberText.Percent(points[0].E.Level)} intervals, each distance by itself."];
        if (points.Any(p => p.E.Level != points[0].E.Level))
        {
            sentences = ["Bars are intervals of the levels listed in the table."];
        }

        if (points.Any(p => double.IsInfinity(p.E.Low) || double.IsInfinity(p.E.High)))
        {
            sentences.Add("A bar that runs to the edge has no known end.");
        }

        if (curve.Length > 0)
        {
            sentences.Add($"The dashed line was fitted to all distances together; its band is {NumberText.Percent(curve[0].E.Level)}.");
        }

        if (half.Length > 0)
        {
            string size = half.Max() - half.Min() < 1e-9 * half.Max() ? NumberText.Plain(half[0]) : $"{Rough(half.Min())} to {Rough(half.Max())}";
            sentences.Add($"Inside the grey band (±{size} {unit}) an error does not matter.");
        }

        return string.Join(" ", sentences);

        static string Rough(double number) => number.ToString("G2", CultureInfo.InvariantCulture);
    }

    static IEnumerable<Point> Read(IEnumerable<(Length Distance, Estimate<Length> Error)> points, LengthUnit distanceIn, LengthUnit errorIn) =>
        points.Select(p => new Point(
            Check.Finite(p.Distance.As(distanceIn), "distance"),
            Check.Showable(NumberText.In(p.Error, errorIn), $"The error at {NotebookDisplay.Text(p.Distance)}")));

    sealed record Point(double X, Estimate<double> E)
    {
        public IEnumerable<double> Numbers => [E.Value, E.Low, E.High];
    }
}
