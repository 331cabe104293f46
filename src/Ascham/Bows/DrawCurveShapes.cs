namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

public sealed partial class DrawCurve
{
    // Standard errors of the energy of a sketch, relative. Compound: rounding the corners of the trapezoid moves its area by 4 to 5 %, worked out.
    // Recurve and longbow: half the range of energy per peak pound of their kind over a stroke of 20 in. // from memory
    const double CompoundError = 0.05, RecurveError = 0.05, LongbowError = 0.06;

    // Stored energy over peak weight times stroke: a straight line from zero has 1/2. // from memory; a measured recurve has 0.575 (docs/models/bows.md)
    const double RecurveFullness = 0.58, LongbowFullness = 0.52;

    /// <summary>Sketches a compound: straight up to the peak, level, straight down to the holding weight.</summary>
    /// <param name="peakWeight">Of the level part; positive.</param>
    /// <param name="letOff">(peak − holding)/peak; 0 to below 100 %.</param>
    /// <param name="braceHeight">String at rest to grip pivot; positive.</param>
    /// <param name="drawLength">Full draw by the trade standard; at most 2 m.</param>
    /// <param name="rise">Draw over which the force grows; positive. A sharper cam rises faster.</param>
    /// <param name="fall">Draw over which it falls; positive.</param>
    /// <returns>The curve; its energy is good to some 5 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or rise and fall do not fit between rest and full draw.</exception>
    public static DrawCurve Compound(Force peakWeight, Ratio letOff, Length braceHeight, Length drawLength, Length rise, Length fall)
    {
        (Length rest, Length stroke) = Stroke(peakWeight, braceHeight, drawLength);
        double off = Require.InRange(letOff.DecimalFractions, 0, 0.99, "", nameof(letOff));
        Require.InRange(rise.Meters, 1e-3, stroke.Meters - 2e-3, "m", nameof(rise));
        Require.InRange(fall.Meters, 1e-3, stroke.Meters - rise.Meters - 1e-3, "m", nameof(fall));
        return new(
            [Point(rest, 0 * peakWeight), Point(rest + rise, peakWeight), Point(drawLength - fall, peakWeight), Point(drawLength, (1 - off) * peakWeight)],
            straight: true,
            CompoundError);
    }

    /// <summary>Sketches a recurve: a parabola that stores 0.58 of peak weight times stroke.</summary>
    /// <param name="peakWeight">Force at full draw; positive.</param>
    /// <param name="braceHeight">String at rest to grip pivot; positive.</param>
    /// <param name="drawLength">Full draw by the trade standard; at most 2 m.</param>
    /// <returns>The curve; its energy is good to some 5 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static DrawCurve Recurve(Force peakWeight, Length braceHeight, Length drawLength)
        => Parabola(peakWeight, braceHeight, drawLength, RecurveFullness, RecurveError);

    /// <summary>Sketches a longbow: a parabola that stores 0.52 of peak weight times stroke, hardly more than a straight line.</summary>
    /// <param name="peakWeight">Force at full draw; positive.</param>
    /// <param name="braceHeight">String at rest to grip pivot; positive.</param>
    /// <param name="drawLength">Full draw by the trade standard; at most 2 m.</param>
    /// <returns>The curve; its energy is good to some 6 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static DrawCurve Longbow(Force peakWeight, Length braceHeight, Length drawLength)
        => Parabola(peakWeight, braceHeight, drawLength, LongbowFullness, LongbowError);

    // F = peak ((1 + a) s - a s²), whose area is 1/2 + a/6.
    static DrawCurve Parabola(Force peak, Length brace, Length drawLength, double fullness, double error)
    {
        const int Pieces = 40;
        (Length rest, Length stroke) = Stroke(peak, brace, drawLength);
        double a = 6 * (fullness - 0.5);
        DrawPoint At(double s) => Point(rest + s * stroke, s * (1 + a - a * s) * peak);
        return new([.. Enumerable.Range(0, Pieces).Select(i => At(i / (double)Pieces)), Point(drawLength, peak)], straight: false, error);
    }

    static (Length AtRest, Length Stroke) Stroke(Force peak, Length brace, Length drawLength)
    {
        Require.InRange(peak.Newtons, double.Epsilon, 1000, "N", "peakWeight");
        Require.Positive(brace.Meters, "m", "braceHeight");
        Length rest = brace + PivotAllowance;
        Require.InRange(drawLength.Meters, rest.Meters + 0.1, 2, "m", "drawLength");
        return (rest, drawLength - rest);
    }

    static DrawPoint Point(Length draw, Force force) => new() { Draw = draw, Force = force };
}
