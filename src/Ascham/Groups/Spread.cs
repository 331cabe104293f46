namespace Ascham.Groups;

/// <summary>Sums of squares of one group or several, each about its own centre, in metres or radians.</summary>
/// <param name="SumRight">Sum of squares across the face.</param>
/// <param name="SumUp">Sum of squares up the face.</param>
/// <param name="DegreesOfFreedom">Of each axis: impacts less groups.</param>
/// <param name="Count">Impacts.</param>
/// <param name="Missed">Counted arrows that missed the butt; with any, nothing plain can be told.</param>
sealed record Spread(double SumRight, double SumUp, int DegreesOfFreedom, int Count, int Missed)
{
    internal static Spread OfLengths(IEnumerable<Group> groups) => Of(groups, _ => 1);

    internal static Spread OfAngles(IEnumerable<Group> groups) => Of(groups, g => g.Distance!.Value.Meters);

    /// <summary>Why these shots cannot tell; null when they can.</summary>
    internal CannotTellException? Obstacle(Axis? axis)
    {
        if (Missed > 0)
        {
            return new MissedArrowsException(Missed, Count);
        }

        if (DegreesOfFreedom == 0)
        {
            return new($"Neither spread nor how sure a centre is can be told from {Count} counted impact{(Count == 1 ? "" : "s")}: no group has two. "
                + "Shoot at least two arrows at one aim.");
        }

        bool flatRight = SumRight == 0 && axis != Axis.Vertical, flatUp = SumUp == 0 && axis != Axis.Horizontal;
        return flatRight || flatUp
            ? new($"Spread cannot be told: all {Count} counted impacts are recorded at the same {(flatUp ? "height" : "place across the face")}. "
                + "Record them finer, shoot more arrows, or ask for the other axis alone.")
            : null;
    }

    internal Sigma<T> Sigma<T>(Axis axis, double level, Func<double, T> unit)
    {
        Quantities.Require.Level(level);
        return Obstacle(axis) is { } obstacle ? throw obstacle : Of(axis, level, unit);
    }

    internal Dispersion<T> Dispersion<T>(double level, Func<double, T> unit)
        where T : struct, System.Numerics.IMultiplyOperators<T, double, T>
    {
        Quantities.Require.Level(level);
        if (Obstacle(null) is { } obstacle)
        {
            throw obstacle;
        }

        double nu = 2 * DegreesOfFreedom, s = Math.Sqrt((SumRight + SumUp) / nu);
        var both = Groups.Sigma<T>.From(s, nu, Count, level, "s/c(nu) of both axes pooled, round normal group", unit);
        return new(Of(Axis.Horizontal, level, unit), Of(Axis.Vertical, level, unit), both);
    }

    Sigma<T> Of<T>(Axis axis, double level, Func<double, T> unit)
    {
        double s = Math.Sqrt((axis == Axis.Vertical ? SumUp : SumRight) / DegreesOfFreedom);
        string how = axis == Axis.Vertical ? "s/c(nu) of heights, normal" : "s/c(nu) across the face, normal";
        return Groups.Sigma<T>.From(s, DegreesOfFreedom, Count, level, how, unit);
    }

    static Spread Of(IEnumerable<Group> groups, Func<Group, double> scale)
    {
        double right = 0, up = 0;
        int degrees = 0, count = 0, missed = 0;
        foreach (Group group in groups)
        {
            double square = scale(group) * scale(group);
            Moments moments = group.Moments;
            right += moments.SumRight / square;
            up += moments.SumUp / square;
            degrees += Math.Max(0, moments.Count - 1);
            count += moments.Count;
            missed += group.Missed;
        }

        return new(right, up, degrees, count, missed);
    }
}
