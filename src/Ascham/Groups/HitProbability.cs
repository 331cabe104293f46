namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.RootFinding;
using UnitsNet;

/// <summary>How often arrows land in a circle about the target's centre.</summary>
/// <remarks>
/// <para><b>Model.</b> Integral of the normal law over the circle: Marcum's Q for round scatter, 64-point Gauss-Legendre along the principal axes otherwise.</para>
/// <para><b>Accuracy.</b> Absolute error below 1e-12 (HitProbabilityTests).</para>
/// <para><b>Limits.</b> The circle is hit by the shaft's centre; add the shaft's radius where touching counts. The number says nothing of what a moving or
/// turning target, excitement, cold hands, an unseen twig or a hasty shot add. It is never a reason to shoot farther than the law, good practice and your own
/// limit allow.</para>
/// </remarks>
public static class HitProbability
{
    /// <summary>Probability of landing in a circle, the scatter known.</summary>
    /// <param name="scatter">How arrows land about the target's centre.</param>
    /// <param name="radius">Radius of the circle; positive.</param>
    /// <returns>The probability. With no scatter at all, 1 when the centre lies in the circle and 0 when not.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="radius"/> is not positive.</exception>
    public static double OfCircle(Scatter scatter, Length radius)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        return CircleQuadrature.Inside(scatter, Require.Positive(radius.Meters, "m", nameof(radius)));
    }

    /// <summary>Probability of landing in a circle, the scatter known from shots only.</summary>
    /// <param name="scatter">What the shots tell.</param>
    /// <param name="radius">Radius of the circle; positive.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The long-run share of hits with its interval, and the chance of the next arrow.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="radius"/> is not positive, or <paramref name="level"/> not between 0 and 1.</exception>
    public static HitEstimate OfCircle(ScatterEstimate scatter, Length radius, double level)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        double metres = Require.Positive(radius.Meters, "m", nameof(radius));
        var (probability, mean) = scatter.Spread(draw => CircleQuadrature.Roughly(draw, metres), level);
        return new(probability, mean);
    }

    /// <summary>Radius of the circle about the target's centre that holds a share of impacts, the scatter known.</summary>
    /// <param name="scatter">How arrows land about the target's centre; not all in one hole.</param>
    /// <param name="share">Share of impacts, between 0 and 1; 0.5 for the circle that holds half.</param>
    /// <returns>The radius, in the unit of metres.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">All arrows land in one hole.</exception>
    public static Length RadiusHolding(Scatter scatter, double share)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        Require.Level(share);
        double scale = Math.Sqrt(scatter.VarianceRight + scatter.VarianceUp), offset = double.Hypot(scatter.MeanRight, scatter.MeanUp);
        if (scale == 0)
        {
            throw new CannotTellException("No circle holds a share of impacts that all land in one hole: it holds all of them or none.");
        }

        return Length.FromMeters(Brent.FindRoot(r => CircleQuadrature.Inside(scatter, r) - share, 0, offset + (9 * scale), 1e-13 * scale, 200));
    }

    /// <summary>Finds the farthest distance at which the lower bound of the hit probability stays above the archer's own threshold.</summary>
    /// <param name="scatter">What the shots tell, as angles.</param>
    /// <param name="radius">Radius of the circle to be hit; positive.</param>
    /// <param name="threshold">The archer's own threshold, between 0 and 1.</param>
    /// <param name="level">Level of the interval whose lower end must stay above; a 90 % interval leaves 5 % below it.</param>
    /// <param name="added">What misjudged range, wind and the like add at a distance; null when nothing is added.</param>
    /// <returns>The distance, never beyond the farthest shot, and the probability there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <remarks>The distance is where the bound first falls below the threshold, walking out from the archer in steps of a thirty-second of the farthest shot; it is found to a part in thirty thousand of that.</remarks>
    public static FarthestDistance Farthest(AngularScatter scatter, Length radius, double threshold, double level, Func<Length, AddedScatter>? added)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        Require.Level(threshold);
        HitEstimate At(double share)
        {
            Length distance = scatter.Farthest * share;
            ScatterEstimate there = scatter.At(distance);
            return OfCircle(added is null ? there : there.Plus(added(distance)), radius, level);
        }

        const int steps = 32;
        HitEstimate last = At(1);
        double held = 0, broken = 0;
        for (int i = 1; i <= steps && broken == 0; i++)
        {
            double share = i / (double)steps;
            (held, broken) = (i == steps ? last : At(share)).Probability.Low >= threshold ? (share, 0) : (held, share);
        }

        if (broken == 0)
        {
            return new(scatter.Farthest, true, last, last, scatter.GrowthProbability);
        }

        for (int i = 0; i < 10; i++)
        {
            double middle = (held + broken) / 2;
            (held, broken) = At(middle).Probability.Low >= threshold ? (middle, broken) : (held, middle);
        }

        return held > 0
            ? new(scatter.Farthest * held, false, At(held), last, scatter.GrowthProbability)
            : new(null, false, null, last, scatter.GrowthProbability);
    }
}

/// <summary>How often arrows will hit, as far as the shots tell.</summary>
/// <param name="Probability">
/// Long-run share of hits: the median of what the shots leave open, with an interval that holds the true share with the stated frequency.
/// </param>
/// <param name="NextArrow">Chance that the next arrow hits, all that is unsure averaged over. For a target that is usually hit it is below the long-run value.</param>
public sealed record HitEstimate(Estimate<double> Probability, double NextArrow);

/// <summary>How far an archer may shoot by a threshold of the archer's own.</summary>
/// <param name="Distance">The farthest distance at which the lower bound stays above the threshold; null when it does nowhere.</param>
/// <param name="LimitedByShots">Whether the bound still held at the farthest distance shot: nothing is said beyond it.</param>
/// <param name="There">The hit probability at <paramref name="Distance"/>; null when there is none.</param>
/// <param name="AtFarthestShot">The hit probability at the farthest distance shot.</param>
/// <param name="GrowthProbability">See <see cref="AngularScatter.GrowthProbability"/>: small means that one angle does not describe all distances.</param>
public sealed record FarthestDistance(Length? Distance, bool LimitedByShots, HitEstimate? There, HitEstimate AtFarthestShot, double? GrowthProbability);
