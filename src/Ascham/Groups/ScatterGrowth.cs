namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;
using UnitsNet.Units;

/// <summary>How the scatter along one axis grows with distance: what is a fixed length, what an angle, what grows with the drop.</summary>
/// <remarks>
/// <para><b>Model.</b> Variance on the face at distance D: fixed² + (angle·D)² + (drop·(D/farthest)²)². Fixed: a coarse ruler, merged holes. Angle: the archer, the rest.
/// Drop: scatter of speed and drag up the face, of cant across it. Sums of squares of groups about their own centres follow chi-square (restricted likelihood); parts cannot be
/// negative. The standard error is the width of the interval over that of a normal one. Intervals: the parts at which the profile likelihood falls short by half a chi-square quantile with one degree of freedom; they hold zero whenever it does not.</para>
/// <para><b>Limits.</b> Normal impacts. From a few arrows at few distances parts stand in for one another: read the intervals. A part at zero is held more often than stated; one wild arrow takes about a tenth off (docs/limits.md);
/// coverage is tested for twelve arrows at each of five distances only (docs/limits.md). Drop as the square of distance leaves out that drag bends it more.</para>
/// <para><b>Source.</b> Searle, Casella and McCulloch, <i>Variance Components</i>, chapter 6; Self and Liang (1987), <i>J. Am. Statist. Assoc.</i> 82, 605 for the boundary.</para>
/// </remarks>
public sealed class ScatterGrowth
{
    readonly ShiftKind[] kinds;
    readonly double[] variances;
    readonly VarianceParts fit;
    readonly int count;
    readonly Func<double, Length> unit;

    ScatterGrowth(Axis axis, Length farthest, ShiftKind[] kinds, double[] variances, VarianceParts fit, int count, Func<double, Length> unit) =>
        (Axis, Farthest, this.kinds, this.variances, this.fit, this.count, this.unit) = (axis, farthest, kinds, variances, fit, count, unit);

    /// <summary>The axis.</summary>
    public Axis Axis { get; }

    /// <summary>The farthest distance shot: nothing is said beyond it.</summary>
    public Length Farthest { get; }

    /// <summary>Sigma of the part that is the same length everywhere; null when not asked for.</summary>
    public Estimate<Length>? Fixed { get; private init; }

    /// <summary>Sigma of the part that is an angle, in milliradians; null when not asked for.</summary>
    public Estimate<Angle>? Angle { get; private init; }

    /// <summary>Sigma, at <see cref="Farthest"/>, of the part that grows with the square of the distance; null when not asked for.</summary>
    public Estimate<Length>? Drop { get; private init; }

    /// <summary>How often so much would seem to grow with the drop if nothing did; null when not asked for.</summary>
    public double? DropProbability { get; private init; }

    /// <summary>Separates the parts of the scatter.</summary>
    /// <param name="groups">Groups of known distance without missed arrows, each about its own centre, at as many distances as there are parts, better more. A group of one adds nothing.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="parts">The parts to look for, each once.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The parts.</returns>
    /// <exception cref="ArgumentException">No group, one without a distance, no part, or a part twice.</exception>
    /// <exception cref="CannotTellException">Fewer distances than parts, no scatter at all, or an arrow missed.</exception>
    public static ScatterGrowth Of(IEnumerable<Group> groups, Axis axis, IEnumerable<ShiftKind> parts, double level)
    {
        Require.Level(level);
        ArgumentNullException.ThrowIfNull(parts);
        ShiftKind[] kinds = [.. parts];
        if (kinds.Length == 0 || kinds.Distinct().Count() != kinds.Length || kinds.Any(k => !Enum.IsDefined(k)))
        {
            throw new ArgumentException("parts must name at least one part, and each of them once.", nameof(parts));
        }

        Group[] all = Known(groups);
        double far = all.Max(g => g.Distance!.Value.Meters);
        double[] distances = [.. all.Select(g => g.Distance!.Value.Meters / far)];
        if (distances.Where((d, i) => !distances.Take(i).Any(e => Math.Abs(d - e) < 1e-6)).Count() < kinds.Length)
        {
            throw new CannotTellException($"It takes groups at {kinds.Length} distances or more to tell {kinds.Length} parts of the scatter apart.");
        }

        double[][] shapes = [.. distances.Select(d => Shape(kinds, d))];
        var fit = new VarianceParts(shapes, [.. all.Select(g => g.Moments.SumOf(axis))], [.. all.Select(g => g.Moments.Count - 1.0)]);
        double[] best = fit.Best(null, 0);
        int count = all.Sum(g => g.Moments.Count);
        Estimate<double>? Part(ShiftKind kind)
        {
            int k = Array.IndexOf(kinds, kind);
            if (k < 0)
            {
                return null;
            }

            var (low, high) = fit.Interval(k, best, level);
            double error = (high - low) / (2 * Normal.InvCDF(0, 1, (1 + level) / 2));
            return new(Math.Sqrt(best[k]), error, low, high, level, count, "restricted likelihood of the parts, profile interval, normal impacts");
        }

        int drop = Array.IndexOf(kinds, ShiftKind.WithSquare);
        Length farthest = all.MaxBy(g => g.Distance!.Value.Meters)!.Distance!.Value;
        return new(axis, farthest, kinds, best, fit, count, all[0].InItsUnit)
        {
            Fixed = Part(ShiftKind.Constant)?.Map(all[0].InItsUnit),
            Angle = Part(ShiftKind.WithDistance)?.Map(metres => UnitsNet.Angle.FromRadians(metres / far).ToUnit(AngleUnit.Milliradian)),
            Drop = Part(ShiftKind.WithSquare)?.Map(all[0].InItsUnit),
            DropProbability = drop < 0 || kinds.Length == 1 ? null : fit.ChanceOfNone(drop, best),
        };
    }

    /// <summary>Sigma on the face at a distance, all parts together.</summary>
    /// <param name="distance">The distance; positive, and not beyond <see cref="Farthest"/>.</param>
    /// <returns>Sigma along the axis, in metres: the likeliest value, without an interval. How sure it is, those of the parts say; near a distance shot, so do the groups shot there.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="distance"/> is not positive, or beyond the farthest shot.</exception>
    public Length SigmaAt(Length distance) => Length.FromMeters(Math.Sqrt(VarianceOf(ShapeAt(distance))));

    /// <summary>Sigma on the face at a distance, all parts together, with its interval.</summary>
    /// <param name="distance">The distance; positive, and not beyond <see cref="Farthest"/>.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Sigma along the axis: the sum is often well known where the parts are not. Chi-square with the degrees of freedom of Satterthwaite, from the expected information of all parts.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="distance"/> is not positive, or beyond the farthest shot; or <paramref name="level"/> is out of range.</exception>
    /// <remarks>F. E. Satterthwaite (1946), <i>Biometrics Bulletin</i> 2, 110-114. Exact with one part, and with as many distances as parts where none is zero. Coverage: docs/limits.md.</remarks>
    public Estimate<Length> SigmaAt(Length distance, double level)
    {
        Require.Level(level);
        double[] shape = ShapeAt(distance);
        double sigma = Math.Sqrt(VarianceOf(shape)), freedom = fit.Freedom(shape, variances);
        Length End(double share) => unit(sigma * Math.Sqrt(freedom / ChiSquared.InvCDF(freedom, share)));
        return new(unit(sigma), unit(sigma / Math.Sqrt(2 * freedom)), End((1 + level) / 2), End((1 - level) / 2), level, count,
            "sum of the parts, chi-square with Satterthwaite's degrees of freedom, normal impacts");
    }

    double[] ShapeAt(Length distance) =>
        Shape(kinds, Require.InRange(distance.Meters, double.Epsilon, Farthest.Meters * (1 + 1e-9), "m", nameof(distance)) / Farthest.Meters);

    double VarianceOf(double[] shape) => shape.Zip(variances, (s, v) => s * v).Sum();

    static double[] Shape(ShiftKind[] kinds, double share) =>
        [.. kinds.Select(k => Math.Pow(share, k == ShiftKind.Constant ? 0 : k == ShiftKind.WithDistance ? 2 : 4))];

    static Group[] Known(IEnumerable<Group> groups)
    {
        Group[] all = [.. StringSeries.Checked(groups, true)];
        if (all.Sum(g => g.Missed) is > 0 and var missed)
        {
            throw new MissedArrowsException(missed, all.Sum(g => g.Impacts.Count));
        }

        Group[] told = [.. all.Where(g => g.Moments.Count > 1)];
        return told.Length > 0 ? told : throw new CannotTellException("Scatter cannot be told: no group has two counted impacts.");
    }
}
