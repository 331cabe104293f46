namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>A quantity along the distances of a chart.</summary>
/// <param name="Name">Name, shown in the legend.</param>
/// <param name="Values">One value for each distance; a distance without one leaves a gap.</param>
public sealed record GrowthCurve(string Name, IReadOnlyList<double?> Values);

/// <summary>A band along the distances of a chart, such as the archer's scatter or an interval.</summary>
/// <param name="Name">Name, shown in the legend.</param>
/// <param name="Ends">Lower and upper end for each distance.</param>
public sealed record GrowthBand(string Name, IReadOnlyList<(double Low, double High)> Ends);

/// <summary>Estimates at single distances, drawn as points with their intervals.</summary>
/// <param name="Name">Name, shown in the legend.</param>
/// <param name="Points">Distances and estimates, in the unit of the chart; may be empty.</param>
public sealed record GrowthPoints(string Name, IReadOnlyList<(Length Distance, Estimate<double> Value)> Points);

/// <summary>Draws how several quantities grow with distance, laid over one another, with a band and measured points beside them.</summary>
public static class GrowthByDistance
{
    const int MostCurves = 4, MostPoints = 40, MostRows = 25;
    const double Decades = 4;   // below so much of the largest, a logarithmic axis is cut

    /// <summary>Draws the chart.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="what">What is drawn; stands at the axis with its unit.</param>
    /// <param name="unit">Unit of all values as text; empty for a pure number.</param>
    /// <param name="distances">The distances, rising; two or more.</param>
    /// <param name="curves">One to four curves.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="band">A band behind the curves; left out, none is drawn.</param>
    /// <param name="measured">Series of points, at most two, the second drawn a hair farther out so that it does not hide the first; left out, none are drawn.</param>
    /// <param name="logarithmic">Whether equal steps upwards are equal ratios; all values must then be positive.</param>
    /// <param name="caption">How to read the chart.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">Distances do not rise, a curve or band is not as long as they are or has no value at all, a value is not finite, or not positive on a logarithmic axis.</exception>
    public static Figure Draw(
        string title,
        string what,
        string unit,
        IEnumerable<Length> distances,
        IEnumerable<GrowthCurve> curves,
        LengthUnit distanceIn,
        GrowthBand? band = null,
        IEnumerable<GrowthPoints>? measured = null,
        bool logarithmic = false,
        string caption = "")
    {
        double[] x = Rising(distances, distanceIn);
        var lines = Check.Some(curves, MostCurves, "curves", nameof(curves));
        GrowthPoints[] points = [.. (measured ?? []).Where(m => m.Points.Count > 0)];
        Check.Some(points.DefaultIfEmpty(new("", [])), 2, "series of points", nameof(measured));
        double[] all = [.. Values(lines, band, points, x.Length)];
        if (logarithmic && all.FirstOrDefault(v => v <= 0, 1) is var wrong and <= 0)
        {
            throw new ArgumentException($"On a logarithmic axis all values must be positive; one was {NumberText.Plain(wrong)}.", nameof(curves));
        }

        string far = NumberText.Unit(distanceIn);
        List<Trace> traces = [];
        if (band is not null)
        {
            traces.Add(Look.Band(x, [.. band.Ends.Select(e => e.Low)], [.. band.Ends.Select(e => e.High)], band.Name, Look.BandGrey));
        }

        traces.AddRange(lines.Select((l, i) => Curve(l, Look.Series[i], x, unit, far)));
        double aside = 0.009 * (x[^1] - x[0]);   // the second series, so that it does not hide the first
        traces.AddRange(points.Select((p, i) => Marked(p, Look.Series[i], i * aside, distanceIn, unit, far)));
        var y = Look.Axis(Markup.Wrapped(NumberText.With(what, unit.Length == 0 ? "" : $"({unit})"), 42), Range(all, logarithmic));
        if (logarithmic)
        {
            double[] steps = [.. Enumerable.Range(-6, 13).SelectMany(e => new[] { 1.0, 2, 5 }.Select(m => m * Math.Pow(10, e)))];
            (y["type"], y["tickvals"], y["ticktext"]) = ("log", steps, steps.Select(v => v.ToString("0.######", CultureInfo.InvariantCulture)));
        }

        string[] names = [.. (band is null ? [] : (string[])[band.Name]).Concat(lines.Select(l => l.Name)).Concat(points.Select(p => p.Name)).Select(n => Markup.Wrapped(n, Look.LegendWidth))];
        int wide = 30 + (20 * ((names.Length + 2) / 3)), narrow = 30 + (20 * names.Sum(n => n.Split("<br>").Length));
        var span = Look.Span(x.Concat(points.SelectMany(p => p.Points.Select(q => q.Distance.As(distanceIn)))), 0.03);
        var chart = Look.Chart(traces, Look.Height + wide - 30, new() { ["margin.t"] = narrow, ["height"] = Look.Height + narrow - 30 },
            ("xaxis", Look.Axis($"distance ({far})", span)), ("yaxis", y), ("showlegend", true), ("legend", Look.LegendOnTop), ("margin", new { l = 16, r = 16, t = wide, b = 16 }));
        return chart.ToFigure(title, InWords(what, unit, far, x, lines, band, points, distanceIn), TableOf(lines, band, x, unit, far), caption);
    }

    static Trace Curve(GrowthCurve curve, Look.Style style, double[] x, string unit, string far) => Look.Scatter(x, [.. curve.Values.Select(v => v ?? double.NaN)], curve.Name,
        ("mode", "lines"), ("line", new { color = style.Colour, dash = style.Dash, width = 2.5 }),
        ("hovertemplate", $"%{{y:.3~g}} {Markup.Label(unit)} at %{{x:.4~g}} {far}<extra>{Markup.Label(curve.Name)}</extra>"));

    static Trace Marked(GrowthPoints series, Look.Style style, double aside, LengthUnit distanceIn, string unit, string far)
    {
        var p = series.Points.Select(q => (X: q.Distance.As(distanceIn), E: q.Value)).ToArray();
        return Look.Scatter([.. p.Select(q => q.X + aside)], [.. p.Select(q => q.E.Value)], series.Name,
            ("mode", "markers"), ("marker", new { color = style.Colour, symbol = style.Symbol, size = 10 }),
            ("error_y", new { type = "data", symmetric = false, array = p.Select(q => q.E.High - q.E.Value), arrayminus = p.Select(q => q.E.Value - q.E.Low), color = style.Colour, thickness = 2, width = 6 }),
            ("hovertemplate", $"%{{y:.3~g}} {Markup.Label(unit)} at %{{x:.4~g}} {far}<extra>{Markup.Label(series.Name)}</extra>"));
    }

    static double[] Rising(IEnumerable<Length> distances, LengthUnit unit)
    {
        double[] x = [.. distances.Select(d => Check.Finite(d.As(unit), nameof(distances)))];
        return x.Length >= 2 && x.Zip(x.Skip(1), (a, b) => b > a).All(rises => rises)
            ? x
            : throw new ArgumentException($"distances must be two or more, each farther than the one before; they were {string.Join(", ", x.Take(12).Select(NumberText.Plain))}.", nameof(distances));
    }

    /// <summary>All values that are drawn, checked.</summary>
    static IEnumerable<double> Values(IReadOnlyList<GrowthCurve> curves, GrowthBand? band, GrowthPoints[] points, int count)
    {
        foreach (var curve in curves)
        {
            Check.Text(curve.Name, "a curve is known by its name");
            if (curve.Values.Count != count || curve.Values.All(v => v is null))
            {
                throw new ArgumentException($"The curve \"{curve.Name}\" must have a value for each of the {count} distances, not all of them missing; it has {curve.Values.Count(v => v is not null)}.", nameof(curves));
            }
        }

        if (band is not null && (band.Ends.Count != count || band.Ends.Any(e => !(e.Low <= e.High))))
        {
            throw new ArgumentException($"The band \"{band.Name}\" must have a lower and an upper end, in this order, for each of the {count} distances; it has {band.Ends.Count}.", nameof(band));
        }

        Check.Some(points.SelectMany(p => p.Points).DefaultIfEmpty(), MostPoints, "points", nameof(points));
        return curves.SelectMany(c => c.Values.OfType<double>())
            .Concat(band?.Ends.SelectMany(e => (double[])[e.Low, e.High]) ?? [])
            .Concat(points.SelectMany(p => p.Points).SelectMany(p => Check.Showable(p.Value, "A point") is var e ? (double[])[e.Value, e.Low, e.High] : []))
            .Select(v => Check.Finite(v, "value"));
    }

    static (double Low, double High) Range(double[] values, bool logarithmic)
    {
        if (!logarithmic)
        {
            return Look.Span(values.Append(0), 0.04);
        }

        double high = Math.Log10(values.Max());
        return Look.Span([Math.Max(Math.Log10(values.Min()), high - Decades), high], 0.05);
    }

    static string InWords(string what, string unit, string far, double[] x, IReadOnlyList<GrowthCurve> lines, GrowthBand? band, GrowthPoints[] points, LengthUnit distanceIn)
    {
        string Number(double v) => NumberText.With(NumberText.Plain(v), unit);
        string Ends(GrowthCurve c)
        {
            int[] there = [.. Enumerable.Range(0, x.Length).Where(i => c.Values[i] is not null)];
            return $"{c.Name}: {Number(c.Values[there[0]]!.Value)} at {NumberText.Plain(x[there[0]])} {far}, {Number(c.Values[there[^1]]!.Value)} at {NumberText.Plain(x[there[^1]])} {far}. ";
        }

        return $"{what} against distance. " + string.Concat(lines.Select(Ends))
            + (band is null ? "" : $"Band, {band.Name}: {Number(band.Ends[0].Low)} to {Number(band.Ends[0].High)} at {NumberText.Plain(x[0])} {far}, {Number(band.Ends[^1].Low)} to {Number(band.Ends[^1].High)} at {NumberText.Plain(x[^1])} {far}. ")
            + string.Concat(points.Select(s => $"{s.Name}: {string.Join("; ", s.Points.Select(p => $"{NumberText.Of(p.Value, unit)} at {NumberText.Plain(p.Distance.As(distanceIn))} {far}"))}. "));
    }

    static Table TableOf(IReadOnlyList<GrowthCurve> lines, GrowthBand? band, double[] x, string unit, string far)
    {
        int step = Math.Max(1, (x.Length + MostRows - 1) / MostRows);
        string suffix = unit.Length == 0 ? "" : $" ({unit})";
        string[] headers = [$"distance ({far})", .. lines.Select(l => l.Name + suffix), .. band is null ? [] : (string[])[$"{band.Name}, low{suffix}", $"{band.Name}, high{suffix}"]];
        return Table.From(headers,
            from i in Enumerable.Range(0, x.Length)
            where i % step == 0 || i == x.Length - 1
            select (IEnumerable<object?>)[x[i], .. lines.Select(l => (object?)l.Values[i]), .. band is null ? [] : (object?[])[band.Ends[i].Low, band.Ends[i].High]]);
    }
}
