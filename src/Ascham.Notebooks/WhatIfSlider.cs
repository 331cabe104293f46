namespace Ascham.Notebooks;

using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>One position of a what-if slider.</summary>
/// <param name="Label">What was changed, such as <c>+25 gr</c>.</param>
/// <param name="Points">Distances, rising, with where the arrow strikes there; two or more.</param>
public sealed record WhatIf(string Label, IReadOnlyList<(Length Distance, Estimate<Length> Strike)> Points);

/// <summary>Draws where arrows strike against distance for one change at a time, chosen with a slider; all frames are worked out beforehand.</summary>
public static class WhatIfSlider
{
    const int MostSteps = 25;

    /// <summary>Draws the chart with its slider.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="slider">What the slider changes.</param>
    /// <param name="strike">What the vertical axis shows, without unit.</param>
    /// <param name="steps">Positions of the slider, in order; 2 to 25.</param>
    /// <param name="first">Which of them is shown first.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="strikeIn">Unit of strikes.</param>
    /// <param name="hidden">Half the height, along the same distances, within which the archer's own groups could not show a change; may be empty.</param>
    /// <returns>The figure; without scripts the table holds all positions.</returns>
    /// <exception cref="ArgumentException">There are too few or too many steps, or one has fewer than two points.</exception>
    public static Figure Draw(string title, string slider, string strike, IEnumerable<WhatIf> steps, int first, LengthUnit distanceIn, LengthUnit strikeIn, IReadOnlyList<(Length Distance, Length Half)> hidden)
    {
        ArgumentNullException.ThrowIfNull(hidden);
        var all = Check.Some(steps.Select(s => Step.Of(s, distanceIn, strikeIn)), MostSteps, "steps", nameof(steps));
        if (all.Count < 2 || first < 0 || first >= all.Count)
        {
            throw new ArgumentException($"A slider needs two positions or more, and first must be one of them; it had {all.Count}, first {first}.", nameof(steps));
        }

        string far = NumberText.Unit(distanceIn), near = NumberText.Unit(strikeIn);
        double level = all[0].Points[0].E.Level;
        List<Trace> traces = [];
        for (int i = 0; i < all.Count; i++)
        {
            double[] x = [.. all[i].Points.Select(p => p.X)];
            traces.Add(Look.Band(x, [.. all[i].Points.Select(p => p.E.Low)], [.. all[i].Points.Select(p => p.E.High)], $"{NumberText.Percent(level)} band", Look.Series[0].Faint));
            traces.Add(Look.Scatter(x, [.. all[i].Points.Select(p => p.E.Value)], "where the arrow strikes", ("mode", "lines+markers"), ("line", new { color = Look.Series[0].Colour, width = 2.5 }),
                ("marker", new { color = Look.Series[0].Colour, size = 8 }), ("hovertemplate", $"%{{y:.3~g}} {near} at %{{x:.4~g}} {far}<extra>{Markup.Label(all[i].Label)}</extra>")));
            traces[^1].SetProperty("visible", i == first);
            traces[^2].SetProperty("visible", i == first);
        }

        if (hidden.Count > 0)
        {
            double[] at = [.. hidden.Select(h => h.Distance.As(distanceIn))], half = [.. hidden.Select(h => Check.Finite(h.Half.As(strikeIn), "height"))];
            traces.Add(Look.Band(at, [.. half.Select(h => -h)], half, "your groups cannot show it", Look.BandGrey));
        }

        object[] positions = [.. all.Select((s, i) => (object)new { label = s.Label, method = "restyle", args = new object[] { "visible", Enumerable.Range(0, traces.Count).Select(t => t / 2 == i || t / 2 == all.Count) } })];
        var handle = new
        {
            active = first,
            steps = positions,
            currentvalue = new { prefix = slider + ": ", font = new { size = Look.FontSize + 2 } },
            pad = new { t = 56, b = 8 },
            x = 0.02,
            len = 0.94,
            bgcolor = Look.FaintGrey,
            bordercolor = Look.Grey,
            activebgcolor = Look.Grey,
            tickcolor = Look.Grey,
        };
        var y = Look.Span(all.SelectMany(s => s.Points).SelectMany(p => (double[])[p.E.Low, p.E.High]).Append(0));
        object aim = new { type = "line", xref = "paper", x0 = 0, x1 = 1, y0 = 0, y1 = 0, line = new { color = Look.Grey, width = 1.5, dash = "dash" }, layer = "below" };
        var chart = Look.Chart(traces, 520, new() { ["margin.t"] = 64, ["height"] = 540 },
            ("xaxis", Look.Axis($"distance ({far})", Look.Span(all[0].Points.Select(p => p.X), 0.04))), ("yaxis", Look.Axis(Markup.Wrapped($"{strike} ({near})", 42), y)),
            ("shapes", new[] { aim }), ("sliders", new[] { handle }), ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 48, b = 16 }));
        return chart.ToFigure(title,
            $"{strike} against distance, for {all.Count} positions of a slider ({slider}). At {NumberText.Plain(all[0].Points[^1].X)} {far}: " + string.Join("; ", all.Select(s => $"{s.Label} {NumberText.Of(s.Points[^1].E, near)}")) + ".",
            Table.From(all.SelectMany(s => s.Points.Select(p => (s.Label, P: p))), (slider, r => r.Label, 0), ($"distance ({far})", r => r.P.X, 0), ($"{strike} ({near})", r => r.P.E.Value, 2), ($"low ({near})", r => r.P.E.Low, 2), ($"high ({near})", r => r.P.E.High, 2), ("interval", r => NumberText.Percent(r.P.E.Level), 0)),
            $"Move the slider; the scale stays. The dashed line is the aim point. The band is a {NumberText.Percent(level)} interval from the unknowns listed on this page, not the scatter of arrows."
            + (hidden.Count > 0 ? " Within the grey wedge the archer's own groups hide the change." : ""));
    }

    sealed record Step(string Label, IReadOnlyList<(double X, Estimate<double> E)> Points)
    {
        public static Step Of(WhatIf given, LengthUnit distanceIn, LengthUnit strikeIn)
        {
            Check.Text(given.Label, "a position is known by its label");
            return given.Points.Count >= 2
                ? new(given.Label, [.. given.Points.Select(p => (Check.Finite(p.Distance.As(distanceIn), "distance"), Check.Showable(NumberText.In(p.Strike, strikeIn), given.Label)))])
                : throw new ArgumentException($"The position \"{given.Label}\" must have two points or more; it had {given.Points.Count}.", nameof(given));
        }
    }
}
