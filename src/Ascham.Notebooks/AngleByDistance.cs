namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>One error on the target as an angle, by distance.</summary>
/// <param name="Name">What causes it.</param>
/// <param name="Points">Distances, rising, with the angle in milliradians there; two or more.</param>
public sealed record AngleCurve(string Name, IReadOnlyList<(Length Distance, Estimate<double> Milliradians)> Points);

/// <summary>Draws errors as angles against distance: seen so, an archer's group is as wide at every distance, and what grows stands out.</summary>
public static class AngleByDistance
{
    /// <summary>Draws the errors.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="curves">The errors; 1 to 4.</param>
    /// <param name="hidden">Half-width that a group of arrows hides, milliradians; positive.</param>
    /// <param name="hides">What hides it, such as <c>the centre of six arrows</c>.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are no curves or more than four, or one has fewer than two points.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is not positive.</exception>
    public static Figure Draw(string title, IEnumerable<AngleCurve> curves, double hidden, string hides, LengthUnit distanceIn)
    {
        var all = Check.Some(curves.Select(Checked), Look.Series.Count, "curves", nameof(curves));
        double half = Check.Positive(hidden, "mrad");
        string far = NumberText.Unit(distanceIn);
        double[] ends = [all.Min(c => c.Points[0].Distance.As(distanceIn)), all.Max(c => c.Points[^1].Distance.As(distanceIn))];
        List<Trace> traces = [Look.Band(ends, [-half, -half], [half, half], $"hidden by {hides}", Look.BandGrey)];
        for (int i = 0; i < all.Count; i++)
        {
            var style = Look.Series[i];
            double[] x = [.. all[i].Points.Select(p => p.Distance.As(distanceIn))];
            traces.Add(Look.Band(x, [.. all[i].Points.Select(p => p.Milliradians.Low)], [.. all[i].Points.Select(p => p.Milliradians.High)], all[i].Name, style.Faint));
            traces[^1].SetProperty("showlegend", false);
            traces.Add(Look.Scatter(x, [.. all[i].Points.Select(p => p.Milliradians.Value)], all[i].Name, ("mode", "lines+markers"), ("line", new { color = style.Colour, dash = style.Dash, width = 2.5 }),
                ("marker", new { color = style.Colour, symbol = style.Symbol, size = 8 }), ("hovertemplate", $"%{{y:.3~g}} mrad at %{{x:.4~g}} {far}<extra></extra>")));
        }

        var y = Look.Span(all.SelectMany(c => c.Points).SelectMany(p => (double[])[p.Milliradians.Low, p.Milliradians.High]).Concat([-half, half]));
        var chart = Look.Chart(traces, Look.Height, new() { ["margin.t"] = 110 },
            ("xaxis", Look.Axis($"distance ({far})", Look.Span(ends, 0.04))), ("yaxis", Look.Axis("height, as an angle (mrad)", y)),
            ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 64, b = 16 }));
        double level = all[0].Points[0].Milliradians.Level;
        return chart.ToFigure(title,
            string.Join(" ", all.Select(c => $"{c.Name}: {NumberText.Of(c.Points[0].Milliradians, "mrad")} at {NumberText.Plain(c.Points[0].Distance.As(distanceIn))} {far}, {NumberText.Of(c.Points[^1].Milliradians, "mrad")} at {NumberText.Plain(c.Points[^1].Distance.As(distanceIn))} {far}."))
            + $" Hidden by {hides}: ±{NumberText.Plain(half)} mrad.",
            Table.From(all.SelectMany(c => c.Points.Select(p => (c.Name, P: p))), ("error", r => r.Name, 0), ($"distance ({far})", r => r.P.Distance.As(distanceIn), 0), ("angle (mrad)", r => r.P.Milliradians.Value, 2), ("low (mrad)", r => r.P.Milliradians.Low, 2), ("high (mrad)", r => r.P.Milliradians.High, 2)),
            $"One milliradian is 3.6 in at 100 yd, 10 cm at 100 m. As an angle a group is about as wide at every distance (grey). Bands around curves are {NumberText.Percent(level)} intervals.");
    }

    static AngleCurve Checked(AngleCurve curve)
    {
        Check.Text(curve.Name, "a curve is known by its name");
        foreach (var (distance, angle) in curve.Points)
        {
            Check.Finite(distance.Meters, "distance");
            Check.Showable(angle, curve.Name);
        }

        return curve.Points.Count >= 2 ? curve : throw new ArgumentException($"The curve \"{curve.Name}\" must have two points or more; it has {curve.Points.Count}.", nameof(curve));
    }
}
