namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the next arrow will land: wider than the group's own spread, because centre and spread are themselves uncertain.</summary>
/// <remarks>
/// <para><b>Limits.</b> The next arrow must be of the same kind as those before: same archer, day, distance, setting. One arrow only; a region for all of the next ten is wider.</para>
/// <para><b>Source.</b> The ratio of the next arrow's distance to s follows F with 2 and nu degrees of freedom, in closed form; G. J. Hahn, W. Q. Meeker, <i>Statistical Intervals</i>, on prediction.</para>
/// </remarks>
public static class NextArrow
{
    /// <summary>Predicts from a round group alone.</summary>
    /// <param name="group">The group; at least two counted impacts.</param>
    /// <param name="share">Probability of holding the next arrow, between 0 and 1.</param>
    /// <returns>The circle about the mean, in the unit of the group; radius s·sqrt(nu(1 + 1/n)((1 − share)^(−2/nu) − 1)), nu = 2(n − 1).</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">Fewer than two counted impacts, all recorded at one height or one place across, or an arrow missed.</exception>
    public static PredictiveCircle Circle(Group group, double share)
    {
        ArgumentNullException.ThrowIfNull(group);
        return Circle(group, group.Dispersion(Require.Level(share)).BothAxes, share);
    }

    /// <summary>Predicts about the mean of a group with a spread known from more arrows.</summary>
    /// <param name="group">The group that gives the centre; one counted impact or more.</param>
    /// <param name="sigma">Spread of both axes, pooled over groups of the same distance; this group may be one of them.</param>
    /// <param name="share">Probability of holding the next arrow, between 0 and 1.</param>
    /// <returns>The circle about the mean, in the unit of the group.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">No counted impact, or an arrow missed.</exception>
    public static PredictiveCircle Circle(Group group, Sigma<Length> sigma, double share)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentNullException.ThrowIfNull(sigma);
        Require.Level(share);
        int n = RequireImpacts(group, 1);
        double nu = sigma.DegreesOfFreedom, square = nu * (1 + (1.0 / n)) * (Math.Pow(1 - share, -2 / nu) - 1);
        return new(Mean(group), group.InItsUnit(sigma.Sample.Meters * Math.Sqrt(square)), share);
    }

    /// <summary>Predicts from a group of any shape.</summary>
    /// <param name="group">The group; at least three counted impacts, of use from five.</param>
    /// <param name="share">Probability of holding the next arrow, between 0 and 1.</param>
    /// <returns>The ellipse about the mean, in the unit of the group.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">Fewer than three counted impacts, all on one line, or an arrow missed.</exception>
    public static PredictiveEllipse Ellipse(Group group, double share)
    {
        ArgumentNullException.ThrowIfNull(group);
        Require.Level(share);
        int n = RequireImpacts(group, 3);
        // The mean's ellipse answers for sigma²/n, the next arrow for sigma²(1 + 1/n).
        return ConfidenceEllipse.From(group.Moments, Mean(group), share, group.InItsUnit) is { } mean
            ? new(mean.Centre, mean.SemiMajor * Math.Sqrt(n + 1), mean.SemiMinor * Math.Sqrt(n + 1), mean.Orientation, share)
            : throw new CannotTellException("All impacts lie on one line, so the shape of the group cannot be told. Record them finer, or shoot more arrows.");
    }

    static Impact Mean(Group group) => new(group.InItsUnit(group.Moments.MeanRight), group.InItsUnit(group.Moments.MeanUp));

    static int RequireImpacts(Group group, int least)
    {
        int n = group.Moments.Count;
        return group.Missed > 0 ? throw new MissedArrowsException(group.Missed, n)
            : n >= least ? n
            : throw new CannotTellException($"The next arrow cannot be predicted from {n} counted impact{(n == 1 ? "" : "s")}: at least {least} are needed.");
    }
}

/// <summary>A circle that holds the next arrow with a stated probability, over repeated groups and next arrows.</summary>
/// <param name="Centre">The mean impact.</param>
/// <param name="Radius">Radius; includes that centre and spread are uncertain.</param>
/// <param name="Share">Probability of holding the next arrow.</param>
public sealed record PredictiveCircle(Impact Centre, Length Radius, double Share)
{
    /// <summary>Whether a point of the face lies in the circle.</summary>
    /// <param name="point">The point.</param>
    /// <returns>True inside and on the edge.</returns>
    public bool Contains(Impact point) => new ConfidenceDisc(Centre, Radius, Share).Contains(point);
}

/// <summary>An ellipse that holds the next arrow with a stated probability, over repeated groups and next arrows.</summary>
/// <param name="Centre">The mean impact.</param>
/// <param name="SemiMajor">Longer half axis.</param>
/// <param name="SemiMinor">Shorter half axis.</param>
/// <param name="Orientation">Direction of the longer axis, from right towards up as the archer sees it; above −90° up to 90°.</param>
/// <param name="Share">Probability of holding the next arrow.</param>
public sealed record PredictiveEllipse(Impact Centre, Length SemiMajor, Length SemiMinor, Angle Orientation, double Share)
{
    /// <summary>Whether a point of the face lies in the ellipse.</summary>
    /// <param name="point">The point.</param>
    /// <returns>True inside and on the edge.</returns>
    public bool Contains(Impact point) => new ConfidenceEllipse(Centre, SemiMajor, SemiMinor, Orientation, Share).Contains(point);
}
