namespace Ascham.Bows;

using System.Globalization;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How hard a bow pulls at each draw length, from brace to full draw: measured, or sketched as a named shape.</summary>
/// <remarks>
/// <para>Draw lengths are those of the trade standard: nocking point to grip pivot, plus 1.75 in (AMO FP-3, 2000; ASTM F1880). The string at rest
/// therefore stands at brace height plus 1.75 in.</para>
/// <para><b>Model.</b> Between measured points a smooth curve that never swings past them; a sketched compound has straight lines.
/// Stored energy is the area under the curve (ASTM F1832). Checks: docs/models/bows.md.</para>
/// <para><b>Left out</b>: speed of drawing, temperature, creep of the limbs, the archer's stop.</para>
/// </remarks>
public sealed partial class DrawCurve : IEquatable<DrawCurve>
{
    /// <summary>What the trade adds to the distance from grip pivot to nocking point: 1.75 in.</summary>
    public static readonly Length PivotAllowance = Length.FromInches(1.75);

    readonly DrawPoint[] points;
    readonly double[] draw, force; // m, N
    readonly MonotoneCubic? smooth; // straight lines when null
    readonly double sketchError;    // relative standard error of the energy of a sketch; 0 when measured

    DrawCurve(DrawPoint[] points, bool straight, double sketchError)
    {
        this.points = points;
        this.sketchError = sketchError;
        draw = [.. points.Select(p => p.Draw.Meters)];
        force = [.. points.Select(p => p.Force.Newtons)];
        smooth = straight ? null : new(draw, force);
    }

    /// <summary>The points, by growing draw length, the string at rest first.</summary>
    public IReadOnlyList<DrawPoint> Points => points;

    /// <summary>Whether the curve is a named shape and no measurement.</summary>
    public bool IsSketch => sketchError > 0;

    /// <summary>Draw length of the string at rest: brace height plus 1.75 in.</summary>
    public Length AtRest => points[0].Draw;

    /// <summary>Longest draw length of the curve.</summary>
    public Length FullDraw => points[^1].Draw;

    /// <summary>How far the string pushes the arrow.</summary>
    public Length PowerStroke => FullDraw - AtRest;

    /// <summary>Largest force: the trade's peak draw weight.</summary>
    public Force PeakWeight => points[Peak].Force;

    /// <summary>Least force from the peak on: the valley of a compound; the peak itself where the force only grows.</summary>
    public Force HoldingWeight => points[Peak..].MinBy(p => p.Force.Newtons)!.Force;

    /// <summary>Let-off: (peak − holding)/peak; zero where the force only grows.</summary>
    public Ratio LetOff => Ratio.FromDecimalFractions(1 - HoldingWeight / PeakWeight);

    int Peak => Array.LastIndexOf(force, force.Max());

    /// <summary>A measured curve that begins at the string at rest.</summary>
    /// <param name="points">At least four, by growing or by falling draw length as they were read; the one at rest with zero force.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentException">Fewer than four points, draw lengths that turn back or repeat, no force at all, or a force at rest.</exception>
    public static DrawCurve FromPoints(IEnumerable<DrawPoint> points)
    {
        DrawPoint[] list = Ordered(points);
        return list[0].Force.Newtons == 0
            ? Measured(list)
            : throw new ArgumentException(
                Text($"The curve begins at {list[0].Draw.Inches:0.##} in with {list[0].Force.PoundsForce:0.#} lbf; it must begin with the string at rest. Measure the brace height and give it, or add the point of zero force at brace height plus 1.75 in."),
                nameof(points));
    }

    /// <summary>A measured curve whose point at rest is given by the brace height.</summary>
    /// <param name="points">At least three, by growing or by falling draw length as they were read; a point of zero force may be among them.</param>
    /// <param name="braceHeight">String at rest to grip pivot; positive.</param>
    /// <returns>The curve, from rest.</returns>
    /// <exception cref="ArgumentException">Too few points, draw lengths that turn back or repeat, no force at all, or a force at or below the draw length of rest.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The brace height is not positive.</exception>
    public static DrawCurve FromPoints(IEnumerable<DrawPoint> points, Length braceHeight)
    {
        Require.Positive(braceHeight.Meters, "m", nameof(braceHeight));
        DrawPoint[] list = Ordered(points);
        if (list[0].Force.Newtons == 0)
        {
            return Measured(list);
        }

        Length rest = braceHeight + PivotAllowance;
        return rest < list[0].Draw
            ? Measured([new DrawPoint { Draw = rest, Force = Force.Zero }, .. list])
            : throw new ArgumentException(
                Text($"The bow pulls {list[0].Force.PoundsForce:0.#} lbf at {list[0].Draw.Inches:0.##} in, yet with this brace height the string rests at {rest.Inches:0.##} in (brace height plus 1.75 in). Measure the brace height again, and whether the draw lengths count from the grip pivot plus 1.75 in."),
                nameof(braceHeight));
    }

    /// <summary>Force at a draw length.</summary>
    /// <param name="drawLength">By the trade standard; on the curve.</param>
    /// <returns>The force.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The draw length is not on the curve.</exception>
    public Force ForceAt(Length drawLength) =>
        Force.FromNewtons(At(Require.InRange(drawLength.Meters, draw[0], draw[^1], "m", nameof(drawLength))));

    /// <summary>The same shape at another peak weight, as limb bolts leave it in first approximation; spreads of the readings go along.</summary>
    /// <param name="peakWeight">The new peak; positive.</param>
    /// <returns>The curve, each force multiplied.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is not positive, or above 1000 N.</exception>
    public DrawCurve ScaledTo(Force peakWeight)
    {
        double factor = Require.Positive(peakWeight.Newtons, "N", nameof(peakWeight)) / PeakWeight.Newtons;
        return new([.. points.Select(p => p with { Force = p.Force * factor, ForceSd = p.ForceSd * factor })], smooth is null, sketchError);
    }

    /// <inheritdoc/>
    public bool Equals(DrawCurve? other) =>
        other is not null && points.SequenceEqual(other.points) && sketchError == other.sketchError && (smooth is null) == (other.smooth is null);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DrawCurve);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(points.Length, points[0], points[^1]);

    double At(double at)
    {
        if (smooth is not null)
        {
            return smooth.At(new Real(at)).Value;
        }

        int found = Array.BinarySearch(draw, at), i = Math.Clamp(found < 0 ? ~found - 1 : found, 0, draw.Length - 2);
        return force[i] + (at - draw[i]) * (force[i + 1] - force[i]) / (draw[i + 1] - draw[i]);
    }

    static DrawCurve Measured(DrawPoint[] points) => points.Length >= 4
        ? new(points, straight: false, 0)
        : throw new ArgumentException(Text($"A draw curve needs four points or more, the one at rest among them; there are {points.Length}. Read the scale every inch, and closer where the force turns."), nameof(points));

    static DrawPoint[] Ordered(IEnumerable<DrawPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        DrawPoint[] list = [.. points.Select(p => p.Force.Newtons == 0 ? p with { ForceSd = null } : p)]; // rest is where the force ends, by definition
        if (list.Length < 3)
        {
            throw new ArgumentException(Text($"A draw curve needs four points or more, the one at rest among them; {list.Length} given."), nameof(points));
        }

        if (list[^1].Draw < list[0].Draw)
        {
            Array.Reverse(list); // read while letting down
        }

        for (int i = 1; i < list.Length; i++)
        {
            if (!(list[i].Draw > list[i - 1].Draw))
            {
                throw new ArgumentException(
                    Text($"Draw lengths must go one way: {list[i].Draw.Inches:0.###} in ({list[i].Force.PoundsForce:0.#} lbf) follows {list[i - 1].Draw.Inches:0.###} in ({list[i - 1].Force.PoundsForce:0.#} lbf). Measure these two again; readings while drawing and while letting down are two curves."),
                    nameof(points));
            }
        }

        return list.Any(p => p.Force.Newtons > 0) ? list : throw new ArgumentException("No point of the draw curve has any force.", nameof(points));
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
