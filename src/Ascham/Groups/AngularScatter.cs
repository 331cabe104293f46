namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>What shots at one distance or several tell of the scatter as an angle, for distances up to the farthest shot.</summary>
/// <remarks>
/// <para><b>Model.</b> One angular sigma at all distances, impacts centred on the aim point.</para>
/// <para><b>Limits.</b> Measured angular sigma usually grows with distance; nearer groups then promise too much farther out.
/// <see cref="GrowthProbability"/> watches for it; where it is small, use groups from the far distances only.</para>
/// </remarks>
public sealed class AngularScatter
{
    readonly ScatterDraws draws;
    readonly int count;

    AngularScatter(ScatterDraws draws, int count, Length farthest, double? growth) =>
        (this.draws, this.count, Farthest, GrowthProbability) = (draws, count, farthest, growth);

    /// <summary>The farthest distance shot: nothing is said beyond it.</summary>
    public Length Farthest { get; }

    /// <summary>
    /// How often the farthest groups would scatter so much more (as an angle) than the nearer ones if the angle were the same: a one-sided F test.
    /// Null when all were shot at one distance, or there is nothing to compare.
    /// </summary>
    public double? GrowthProbability { get; }

    /// <summary>Takes what groups at any distances tell, each about its own centre.</summary>
    /// <param name="groups">One group or more, each of known distance, without missed arrows. A group of one adds nothing.</param>
    /// <param name="shape">Whether one sigma serves both axes.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="ArgumentException">No group, or one without a distance.</exception>
    /// <exception cref="CannotTellException">No group has two counted impacts, all impacts of an axis coincide, or an arrow missed.</exception>
    public static AngularScatter From(IEnumerable<Group> groups, ScatterShape shape)
    {
        ArgumentNullException.ThrowIfNull(groups);
        Group[] all = [.. groups];
        Dispersion<Angle> pooled = Dispersion.PooledAngle(all, 0.9);
        // The farthest that says something of the scatter: a lone arrow does not carry the claim out to its distance.
        Length farthest = all.Where(g => g.Moments.Count > 1).Select(g => g.Distance!.Value).MaxBy(d => d.Meters);
        (double, double)[] variances = shape == ScatterShape.Round ? [Of(pooled.BothAxes)] : [Of(pooled.Horizontal), Of(pooled.Vertical)];
        return new(ScatterDraws.Centred(variances), pooled.BothAxes.Estimate.Count, farthest, Growth(all, farthest));
    }

    /// <summary>Takes a round scatter found elsewhere, such as one that missed arrows took part in.</summary>
    /// <param name="bothAxes">Sigma per axis, as an angle.</param>
    /// <param name="farthest">The farthest distance it was found at; positive.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="farthest"/> is not positive.</exception>
    public static AngularScatter From(Sigma<Angle> bothAxes, Length farthest)
    {
        ArgumentNullException.ThrowIfNull(bothAxes);
        Require.Positive(farthest.Meters, "m", nameof(farthest));
        return new(ScatterDraws.Centred(Of(bothAxes)), bothAxes.Estimate.Count, farthest, null);
    }

    /// <summary>Takes a stretched scatter found elsewhere.</summary>
    /// <param name="across">Sigma across the face, as an angle.</param>
    /// <param name="up">Sigma up the face, as an angle.</param>
    /// <param name="farthest">The farthest distance they were found at; positive.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="farthest"/> is not positive.</exception>
    public static AngularScatter From(Sigma<Angle> across, Sigma<Angle> up, Length farthest)
    {
        ArgumentNullException.ThrowIfNull(across);
        ArgumentNullException.ThrowIfNull(up);
        Require.Positive(farthest.Meters, "m", nameof(farthest));
        return new(ScatterDraws.Centred(Of(across), Of(up)), Math.Min(across.Estimate.Count, up.Estimate.Count), farthest, null);
    }

    /// <summary>Carries the scatter to a distance.</summary>
    /// <param name="distance">The distance; positive, and not beyond <see cref="Farthest"/>.</param>
    /// <returns>The scatter on a face there, about the aim point.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="distance"/> is not positive.</exception>
    /// <exception cref="CannotTellException"><paramref name="distance"/> is beyond the farthest distance shot.</exception>
    public ScatterEstimate At(Length distance)
    {
        double metres = Require.Positive(distance.Meters, "m", nameof(distance));
        return metres <= Farthest.Meters * (1 + 1e-9)
            ? new(draws.Scaled(metres), count)
            : throw new CannotTellException(FormattableString.Invariant(
                $"Nothing is said of {distance}: the farthest distance shot was {Farthest}. Shoot groups there, in safety, or ask nearer."));
    }

    static double? Growth(Group[] all, Length farthest)
    {
        var (far, near) = (Spread.OfAngles(all.Where(g => ShotCheck.Same(g.Distance, farthest))), Spread.OfAngles(all.Where(g => !ShotCheck.Same(g.Distance, farthest))));
        if (near.DegreesOfFreedom == 0 || near.SumRight + near.SumUp == 0)
        {
            return null;
        }

        double nuFar = 2 * far.DegreesOfFreedom, nuNear = 2 * near.DegreesOfFreedom;
        return NoncentralF.Survival((far.SumRight + far.SumUp) / nuFar / ((near.SumRight + near.SumUp) / nuNear), nuFar, nuNear);
    }

    static (double Variance, double Freedom) Of(Sigma<Angle> sigma) => (sigma.Sample.Radians * sigma.Sample.Radians, sigma.DegreesOfFreedom);
}
