namespace Ascham.Groups;

using System.Numerics;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;

/// <summary>How widely impacts scatter about their own centre.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances (offset divided by distance).</typeparam>
/// <param name="Horizontal">Sigma across the face.</param>
/// <param name="Vertical">Sigma up the face.</param>
/// <param name="BothAxes">Sigma per axis of a round group, both axes pooled: twice the degrees of freedom, but right only when the two are alike.</param>
public sealed record Dispersion<T>(Sigma<T> Horizontal, Sigma<T> Vertical, Sigma<T> BothAxes)
    where T : struct, IMultiplyOperators<T, double, T>
{
    /// <summary>Radius about the true centre within which a share of impacts falls, for a round group.</summary>
    /// <param name="share">Share of impacts, between 0 and 1; 0.5 for the circle that holds half.</param>
    /// <returns>sigma·sqrt(−2 ln(1 − share)) with the interval of <see cref="BothAxes"/>, which it inherits exactly.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is not between 0 and 1.</exception>
    /// <remarks><b>Limits.</b> Round groups. It describes the archer's long run, not where the next arrow lands about a centre that is itself uncertain.</remarks>
    public Estimate<T> RadiusHolding(double share)
    {
        double factor = Math.Sqrt(-2 * Math.Log(1 - Require.Level(share)));
        return BothAxes.Estimate.Map(sigma => sigma * factor) with { HowObtained = $"{BothAxes.Estimate.HowObtained}; Rayleigh radius" };
    }
}

/// <summary>Dispersion of several groups, each about its own centre.</summary>
/// <remarks>
/// A sight moved between groups does no harm; a sight moved within one does. Each group gives up one degree of freedom per axis:
/// thirty arrows as ten groups of three leave 20 per axis, as one group 29.
/// </remarks>
public static class Dispersion
{
    /// <summary>Pools groups shot at one distance.</summary>
    /// <param name="groups">One group or more, without missed arrows; distances, where given, must agree. A group of one adds nothing.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>Sigma as a length on the face, in the unit of the first impact.</returns>
    /// <exception cref="ArgumentException">No group, or groups at different distances.</exception>
    /// <exception cref="CannotTellException">No group has two counted impacts, all impacts of an axis coincide, or an arrow missed.</exception>
    public static Dispersion<Length> Pooled(IEnumerable<Group> groups, double level)
    {
        Group[] all = AtOneDistance(groups);
        return Spread.OfLengths(all).Dispersion(level, all[0].InItsUnit);
    }

    /// <summary>Pools one axis of groups shot at one distance.</summary>
    /// <inheritdoc cref="Pooled(IEnumerable{Group}, double)"/>
    /// <param name="groups">One group or more, without missed arrows; distances, where given, must agree.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    public static Sigma<Length> Pooled(IEnumerable<Group> groups, Axis axis, double level)
    {
        Group[] all = AtOneDistance(groups);
        return Spread.OfLengths(all).Sigma(axis, level, all[0].InItsUnit);
    }

    /// <summary>Pools groups shot at any distances, as angles.</summary>
    /// <param name="groups">One group or more, each of known distance, without missed arrows. A group of one adds nothing.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>Sigma as an angle in milliradians: offset on the face divided by distance.</returns>
    /// <exception cref="ArgumentException">No group, or one without a distance.</exception>
    /// <exception cref="CannotTellException">No group has two counted impacts, all impacts of an axis coincide, or an arrow missed.</exception>
    /// <remarks><b>Limits.</b> Assumes the same angular sigma at all distances; measured sigma usually grows somewhat with distance.</remarks>
    public static Dispersion<Angle> PooledAngle(IEnumerable<Group> groups, double level) =>
        Spread.OfAngles(OfKnownDistance(groups)).Dispersion(level, Milliradians);

    /// <summary>Pools one axis of groups shot at any distances, as angles.</summary>
    /// <inheritdoc cref="PooledAngle(IEnumerable{Group}, double)"/>
    /// <param name="groups">One group or more, each of known distance, without missed arrows.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    public static Sigma<Angle> PooledAngle(IEnumerable<Group> groups, Axis axis, double level) =>
        Spread.OfAngles(OfKnownDistance(groups)).Sigma(axis, level, Milliradians);

    internal static Angle Milliradians(double radians) => Angle.FromRadians(radians).ToUnit(AngleUnit.Milliradian);

    internal static Group[] AtOneDistance(IEnumerable<Group> groups)
    {
        Group[] all = Checked(groups);
        Length[] distances = [.. all.Select(g => g.Distance).OfType<Length>()];
        if (Array.Find(distances, d => !ShotCheck.Same(d, distances[0])) is { Meters: > 0 } other)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"groups must be of one distance; they were shot at {distances[0]} and {other}. PooledAngle pools over distances."),
                nameof(groups));
        }

        return all;
    }

    static Group[] OfKnownDistance(IEnumerable<Group> groups)
    {
        Group[] all = Checked(groups);
        return all.All(g => g.Distance is not null)
            ? all
            : throw new ArgumentException("groups must all have a distance to be pooled as angles; give it to Group.Of beside the impacts.", nameof(groups));
    }

    static Group[] Checked(IEnumerable<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        Group[] all = [.. groups];
        return all.Length > 0 ? all : throw new ArgumentException("groups must hold at least one group; it was empty.", nameof(groups));
    }
}
