namespace Ascham.Groups;

using UnitsNet;

/// <summary>What a string of arrows is set against.</summary>
public enum TrendAgainst
{
    /// <summary>The place within the string: first arrow, second arrow, and so on, missed arrows and called flyers holding their places.</summary>
    ShotOrder,

    /// <summary>Seconds held at full draw.</summary>
    HoldTime,
}

/// <summary>One string of arrows along one axis, in shot order: against what, and where.</summary>
/// <param name="Against">Place in the string, or seconds of hold.</param>
/// <param name="Offset">Offset along the axis in metres or radians; plus or minus infinity for an arrow missed beyond that side.</param>
sealed record StringSeries(double[] Against, double[] Offset)
{
    internal int Count => Offset.Length;

    /// <summary>Takes the counted arrows of strings; a new string starts anew.</summary>
    /// <param name="strings">One string or more.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="against">What the string is set against.</param>
    /// <param name="angles">Whether offsets are divided by the distance.</param>
    /// <param name="censored">Whether missed arrows may take part as infinitely far off.</param>
    /// <returns>The strings, and how many counted arrows were left out for want of a hold time.</returns>
    internal static (StringSeries[] Series, int LeftOut) Of(Group[] strings, Axis axis, TrendAgainst against, bool angles, bool censored)
    {
        if (!censored && strings.Sum(g => g.Missed) is > 0 and var missed)
        {
            throw new MissedArrowsException(missed, strings.Sum(g => g.Impacts.Count));
        }

        int leftOut = 0;
        StringSeries Series(Group group)
        {
            double scale = angles ? group.Distance!.Value.Meters : 1;
            List<(double Against, double Offset)> points = [];
            foreach (var (place, shot) in Places(group))
            {
                double? x = against == TrendAgainst.ShotOrder ? place : shot.Hold?.Seconds;
                leftOut += x is null ? 1 : 0;
                if (x is { } known)
                {
                    points.Add((known, Along(shot, axis) / scale));
                }
            }

            return new([.. points.Select(p => p.Against)], [.. points.Select(p => p.Offset)]);
        }

        return ([.. strings.Select(Series)], leftOut);
    }

    static IEnumerable<(int Place, Shot Shot)> Places(Group group)
    {
        if (group.Shots.Count == 0)
        {
            return group.Impacts.Select((impact, i) => (i + 1, new Shot { Session = "", Distance = Length.Zero, Number = i + 1, Impact = impact }));
        }

        Shot[] ordered = [.. group.Shots.OrderBy(s => s.Number)];
        for (int i = 1; i < ordered.Length; i++)
        {
            if (ordered[i].Session != ordered[0].Session || ordered[i].Number == ordered[i - 1].Number)
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"A string must hold the shots of one session, each with its own number; shot {ordered[i].Number} of {ordered[i].Session} stands beside shot {ordered[i - 1].Number} of {ordered[i - 1].Session}."));
            }
        }

        bool aside = group.CalledSetAside > 0;
        return ordered.Select((shot, i) => (i + 1, shot)).Where(p => !(aside && p.shot.Called));
    }

    static double Along(Shot shot, Axis axis) => shot.Impact is { } impact
        ? (axis == Axis.Vertical ? impact.Up : impact.Right).Meters
        : (shot.Missed, axis) switch
        {
            (Miss.Low, Axis.Vertical) or (Miss.Left, Axis.Horizontal) => double.NegativeInfinity,
            (Miss.High, Axis.Vertical) or (Miss.Right, Axis.Horizontal) => double.PositiveInfinity,
            _ => throw new CannotTellException(
                $"Shot {shot.Number} of session {shot.Session} missed ({shot.Missed}), which says nothing of where it went along the {axis} axis. Leave its string out."),
        };

    internal static Group[] Checked(IEnumerable<Group> strings, bool angles)
    {
        ArgumentNullException.ThrowIfNull(strings);
        Group[] all = [.. strings];
        return all.Length == 0 ? throw new ArgumentException("strings must hold at least one string; it was empty.", nameof(strings))
            : angles && all.Any(g => g.Distance is null) ? throw new ArgumentException("strings must all have a distance to be set side by side as angles.", nameof(strings))
            : all;
    }
}
