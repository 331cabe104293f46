namespace Ascham.Arrows;

using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>A measured or computed drag coefficient by Reynolds number of the shaft diameter.</summary>
/// <remarks>
/// Between points a monotone cubic runs that never swings past them. A flight that leaves the table is refused, not extrapolated.
/// </remarks>
public sealed record DragTable
{
    readonly (double Reynolds, double Coefficient)[] points;

    DragTable((double, double)[] points, MonotoneCubic curve) => (this.points, Curve) = (points, new(curve));

    /// <summary>The points, by rising Reynolds number.</summary>
    public IReadOnlyList<(double Reynolds, double Coefficient)> Points => points;

    internal TableCurve Curve { get; }

    /// <summary>A table from its points.</summary>
    /// <param name="points">At least two, Reynolds numbers positive and rising, coefficients zero or more, referred to the cross-section of the shaft.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">Too few points, or Reynolds numbers that do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static DragTable Of(IEnumerable<(double Reynolds, double Coefficient)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        (double Reynolds, double Coefficient)[] all = [.. points];
        if (all.Length < 2)
        {
            throw new ArgumentException($"A table of drag needs at least two points; it had {all.Length}. For one coefficient give the drag area.", nameof(points));
        }

        for (int i = 0; i < all.Length; i++)
        {
            Require.Positive(all[i].Reynolds, "", "Reynolds");
            Require.NotNegative(all[i].Coefficient, "", "Coefficient");
            if (i > 0 && all[i].Reynolds <= all[i - 1].Reynolds)
            {
                throw new ArgumentException(FormattableString.Invariant($"Reynolds numbers must rise from point to point; point {i + 1} has {all[i].Reynolds:G6} after {all[i - 1].Reynolds:G6}. Sort the table."), nameof(points));
            }
        }

        return new(all, new([.. all.Select(p => p.Reynolds)], [.. all.Select(p => p.Coefficient)]));
    }

    /// <summary>The coefficient at a Reynolds number.</summary>
    /// <param name="reynolds">Within the table.</param>
    /// <returns>Drag coefficient on the cross-section of the shaft.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Outside the table.</exception>
    public double At(double reynolds) => Curve.At(new Real(Require.InRange(reynolds, Curve.Low, Curve.High, "", nameof(reynolds)))).Value;

    /// <summary>Equal when the points are.</summary>
    /// <param name="other">Another table.</param>
    /// <returns>Whether the points are the same.</returns>
    public bool Equals(DragTable? other) => other is not null && points.AsSpan().SequenceEqual(other.points);

    /// <summary>Of the points.</summary>
    /// <returns>A hash code.</returns>
    public override int GetHashCode() => points.Aggregate(points.Length, HashCode.Combine);
}

/// <summary>A table as the integrator sees it.</summary>
readonly struct TableCurve(MonotoneCubic cubic) : IReynoldsCurve
{
    public double Low => cubic.Low;

    public double High => cubic.High;

    public T At<T>(T reynolds)
        where T : struct, ITranscendental<T>
        => cubic.At(reynolds);

    public double Room(double reynolds, bool? falling) => cubic.Room(reynolds, falling);
}
