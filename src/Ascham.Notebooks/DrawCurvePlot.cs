namespace Ascham.Notebooks;

using Ascham.Bows;
using Ascham.Quantities;
using Plotly.NET;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Draws how hard a bow pulls at each draw length, with the energy it stores as the area below.</summary>
public static class DrawCurvePlot
{
    const int Looks = 121;

    /// <summary>Draws the curve.</summary>
    /// <param name="title">Title of the figure.</param>
    /// <param name="curve">While drawing.</param>
    /// <param name="letDown">While letting down; <see langword="null"/> when not measured.</param>
    /// <param name="other">The curve after a change, with its name; <see langword="null"/> for none.</param>
    /// <param name="stored">The energy stored, with its interval; <see langword="null"/> when how sure it is cannot be told.</param>
    /// <param name="drawIn">Unit of draw lengths.</param>
    /// <param name="forceIn">Unit of forces.</param>
    /// <param name="energyIn">Unit of energies.</param>
    /// <returns>The figure.</returns>
    public static Figure Draw(string title, DrawCurve curve, DrawCurve? letDown, (string Name, DrawCurve Curve)? other, Estimate<Energy>? stored, LengthUnit drawIn, ForceUnit forceIn, EnergyUnit energyIn)
    {
        ArgumentNullException.ThrowIfNull(curve);
        string far = NumberText.Unit(drawIn), pull = NumberText.Unit(forceIn), work = energyIn == EnergyUnit.FootPound ? "ft·lbf" : NumberText.Unit(energyIn);   // the library of units leaves out that the pound is a force
        string held = stored is { } e ? NumberText.Of(NumberText.In(e, energyIn), work) : $"about {NumberText.With(NumberText.Plain(curve.StoredEnergy.As(energyIn)), work)}, how sure cannot be told";
        double[] at = [.. curve.Points.Select(p => p.Draw.As(drawIn))], force = [.. curve.Points.Select(p => p.Force.As(forceIn))], sd = [.. curve.Points.Select(p => p.ForceSd?.As(forceIn) ?? 0)];
        List<Trace> traces =
        [
            Line(curve, "stored energy", Look.Series[0], drawIn, forceIn, ("fill", "tozeroy"), ("fillcolor", Look.Series[0].Faint)),
            Look.Scatter(at, force, curve.IsSketch ? "corners of the sketch" : "as read", ("mode", "markers"), ("marker", new { color = Look.Series[0].Colour, symbol = "circle", size = 8 }),
                ("error_y", new { type = "data", array = sd, color = Look.Series[0].Colour, thickness = 1.5, width = 4 }), ("hovertemplate", $"%{{y:.3~g}} {pull} at %{{x:.4~g}} {far}<extra></extra>")),
        ];
        if (letDown is not null)
        {
            traces.Add(Line(letDown, "letting down", Look.Series[2], drawIn, forceIn));
        }

        if (other is { } changed)
        {
            traces.Add(Line(changed.Curve, changed.Name, Look.Series[1], drawIn, forceIn));
        }

        double top = 1.1 * Math.Max(force.Max(), other?.Curve.PeakWeight.As(forceIn) ?? 0);
        var chart = Look.Chart(traces, Look.Height, new() { ["margin.t"] = 96 },
            ("xaxis", Look.Axis($"draw length, trade standard ({far})", Look.Span(at, 0.03))), ("yaxis", Look.Axis($"force on the string ({pull})", (0, top))),
            ("showlegend", true), ("legend", Look.Legend), ("margin", new { l = 16, r = 16, t = 48, b = 16 }));
        string holding = curve.LetOff > Ratio.Zero ? $", holding {NumberText.Fixed(curve.HoldingWeight.As(forceIn), 1)} {pull} (let-off {NumberText.Percent(Math.Round(curve.LetOff.DecimalFractions, 2))})" : "";
        string form = $"Peak {NumberText.Fixed(curve.PeakWeight.As(forceIn), 1)} {pull}{holding}, power stroke {NumberText.Plain(curve.PowerStroke.As(drawIn))} {far}";
        return chart.ToFigure(title, $"Force against draw length, from rest at {NumberText.Plain(at[0])} {far} to full draw at {NumberText.Plain(at[^1])} {far}. {form}. Stored energy {held}.",
            Table.From(curve.Points, ($"draw length ({far})", p => p.Draw.As(drawIn), 2), ($"force ({pull})", p => p.Force.As(forceIn), 1), ($"± ({pull})", p => p.ForceSd is { } s ? NumberText.Plain(s.As(forceIn)) : "", 0)),
            $"Shaded area: stored energy, {held}. {form}."
            + (letDown is null ? "" : " What lies between drawing and letting down is lost in the bow (static hysteresis).")
            + (other is null ? "" : " The curve after the change is the same shape at its peak weight: an approximation."));
    }

    static Trace Line(DrawCurve curve, string name, Look.Style style, LengthUnit drawIn, ForceUnit forceIn, params (string, object)[] more)
    {
        double from = curve.AtRest.Meters, to = curve.FullDraw.Meters;
        Length[] places = [.. Enumerable.Range(0, Looks).Select(i => Length.FromMeters(Math.Clamp(from + (to - from) * i / (Looks - 1), from, to)))];
        return Look.Scatter([.. places.Select(p => p.As(drawIn))], [.. places.Select(p => curve.ForceAt(p).As(forceIn))], name,
            [("mode", "lines"), ("line", new { color = style.Colour, dash = style.Dash, width = 2.5 }), ("hoverinfo", "skip"), .. more]);
    }
}
