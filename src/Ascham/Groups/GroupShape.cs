namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.RootFinding;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Whether a group is round or stretched, along which direction, and how surely.</summary>
/// <remarks>
/// <para><b>Model.</b> Normal impacts; the major axis may point anywhere. The test is Mauchly's, exact for two coordinates: W = 4 det S/(tr S)², p = W^((nu − 1)/2).</para>
/// <para><b>Limits.</b> Weak with few arrows: of groups stretched 1.5 to 1, twelve arrows show it one time in six, thirty-six every other time (<see cref="ChanceToShow"/>). Not showing a stretch is no reason to
/// call the group round. The sigmas of the axes were found by looking for the longest and the shortest, so the first is too long on average and the second too short.</para>
/// <para><b>Source.</b> J. W. Mauchly (1940), Ann. Math. Statist. 11, 204-209; interval and power from the exact law of W for stretched groups, docs/models/groups.md.</para>
/// </remarks>
public sealed record GroupShape
{
    /// <summary>Sample sigma along the longest direction; too long on average.</summary>
    public required Length MajorSigma { get; init; }

    /// <summary>Sample sigma along the shortest direction; too short on average.</summary>
    public required Length MinorSigma { get; init; }

    /// <summary>Direction of the longest, from right towards up as the archer sees it; above −90° up to 90°.</summary>
    public required Angle Orientation { get; init; }

    /// <summary>Sigma along the longest direction over that along the shortest; exact interval, whose lower end is 1 when the group may be round.</summary>
    public required Estimate<double> AxisRatio { get; init; }

    /// <summary>How often a round group looks at least this stretched, in whatever direction.</summary>
    public required double Probability { get; init; }

    /// <summary>Sigma up over sigma across, for groups whose axes are known beforehand to be upright: sharper when that is so, and blind to a slanted stretch.</summary>
    public required TwoSpreads UpOverRight { get; init; }

    /// <summary>Whether the group is stretched: yes when <see cref="Probability"/> is below 1 − level, else cannot tell.</summary>
    public Verdict Stretched => Probability < 1 - AxisRatio.Level ? Verdict.Yes : Verdict.CannotTell;

    /// <summary>Describes the shape of one group.</summary>
    /// <param name="group">The group; at least three counted impacts.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The shape, in the unit of the group.</returns>
    /// <exception cref="CannotTellException">Fewer than three counted impacts, all on one line, or an arrow missed.</exception>
    public static GroupShape Of(Group group, double level) => Pooled([group], level);

    /// <summary>Describes the shape of several groups shot at one distance, each about its own centre.</summary>
    /// <param name="groups">One group or more; distances, where given, must agree.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The shape, in the unit of the first group.</returns>
    /// <exception cref="ArgumentException">No group, or groups at different distances.</exception>
    /// <exception cref="CannotTellException">Fewer than two degrees of freedom, all impacts on lines of one direction, or an arrow missed.</exception>
    public static GroupShape Pooled(IEnumerable<Group> groups, double level)
    {
        Require.Level(level);
        Group[] all = Groups.Dispersion.AtOneDistance(groups);
        var spread = Spread.OfLengths(all);
        if (spread.Obstacle(null) is { } obstacle)
        {
            throw obstacle;
        }

        int degrees = spread.DegreesOfFreedom;
        Symmetric covariance = all.Aggregate(default(Symmetric), (sum, g) => sum + Symmetric.ScatterOf(g.Moments)) * (1.0 / degrees);
        if (degrees < 2 || covariance.Flat)
        {
            throw new CannotTellException($"The shape of a group cannot be told from {spread.Count} counted impacts: there are fewer than three, or they lie on one line. Shoot more arrows.");
        }

        double w = 4 * covariance.Determinant / (covariance.Trace * covariance.Trace);
        return new()
        {
            MajorSigma = all[0].InItsUnit(Math.Sqrt(covariance.Larger)),
            MinorSigma = all[0].InItsUnit(Math.Sqrt(covariance.Smaller)),
            Orientation = Angle.FromRadians(covariance.Direction).ToUnit(AngleUnit.Degree),
            AxisRatio = Ratio(w, Math.Sqrt(covariance.Larger / covariance.Smaller), degrees, level, spread.Count),
            Probability = ShapeLaw.Cdf(w, degrees, 1),
            UpOverRight = TwoSpreads.Compare(Math.Sqrt(covariance.Up), degrees, Math.Sqrt(covariance.Right), degrees, level, spread.Count),
        };
    }

    /// <summary>Whether the group is round, as near as matters.</summary>
    /// <param name="ratio">Largest ratio of the axes that does not matter; more than 1. Choose it before shooting.</param>
    /// <returns>Yes when the interval of <see cref="AxisRatio"/> lies below it, no when above, else cannot tell; each wrongly at most (1 − level)/2 of the time.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ratio"/> is not more than 1.</exception>
    public Verdict RoundWithin(double ratio)
    {
        TwoSpreads.RequireMoreThanOne(ratio);
        return AxisRatio.High < ratio ? Verdict.Yes : AxisRatio.Low > ratio ? Verdict.No : Verdict.CannotTell;
    }

    /// <summary>Radius about the true centre within which a share of impacts falls, for a group of this shape.</summary>
    /// <param name="share">Share of impacts, between 0 and 1; 0.5 for the circle that holds half.</param>
    /// <returns>The radius for the sample sigmas taken as true, without interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    public Length RadiusHolding(double share) => MajorSigma * EllipticalRadius.Of(MinorSigma / MajorSigma, Require.Level(share));

    /// <summary>Chance that a group shows its stretch by Mauchly's test.</summary>
    /// <param name="arrows">Arrows in the group; 3 or more.</param>
    /// <param name="ratio">True ratio of the sigmas of the axes; 1 to 1000.</param>
    /// <param name="significance">Probability of a false finding, between 0 and 1; 0.05 is usual.</param>
    /// <returns>Probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ChanceToShow(int arrows, double ratio, double significance)
    {
        Require.InRange(arrows, 3, 100_000, "");
        Require.InRange(ratio, 1, 1000, "");
        return ShapeLaw.Cdf(Math.Pow(Require.Level(significance), 2.0 / (arrows - 2)), arrows - 1, ratio);
    }

    /// <summary>Chance that a group whose axes are known to be upright shows its stretch by comparing up with across.</summary>
    /// <inheritdoc cref="ChanceToShow"/>
    public static double ChanceToShowUpright(int arrows, double ratio, double significance)
    {
        Require.InRange(arrows, 3, 100_000, "");
        return TwoSpreads.Chance(arrows - 1, ratio, significance, eitherWay: true);
    }

    static Estimate<double> Ratio(double w, double value, int degrees, double level, int count)
    {
        double tail = (1 - level) / 2;
        return new(value, value / Math.Sqrt(degrees), End(tail), End(1 - tail), level, count, "ratio of principal sample sigmas, exact interval, normal impacts");

        // P(W at most the one seen) grows with the true ratio.
        double End(double probability)
        {
            double Excess(double ratio) => ShapeLaw.Cdf(w, degrees, ratio) - probability;
            if (Excess(1) >= 0)
            {
                return 1;
            }

            double high = 2 * value;
            for (; Excess(high) < 0; high *= 2)
            {
            }

            return Brent.FindRoot(Excess, 1, high, 1e-9 * high, 200);
        }
    }
}
