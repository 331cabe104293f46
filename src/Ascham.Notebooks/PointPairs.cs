namespace Ascham.Notebooks;

using Ascham.Groups;
using UnitsNet;

/// <summary>Shots with two kinds of point, shot at one distance in one session.</summary>
/// <param name="Distance">The distance.</param>
/// <param name="First">Arrows with the first kind of point.</param>
/// <param name="Second">Arrows with the second.</param>
/// <param name="Order">The kinds in the order shot, called flyers left out: whether each arrow had the second kind.</param>
public sealed record PointPair(Length Distance, Group First, Group Second, IReadOnlyList<bool> Order);

/// <summary>Pairs shots with two kinds of point by distance, and says what was left out.</summary>
public sealed class PointPairs
{
    PointPairs(IReadOnlyList<PointPair> pairs, string session, IReadOnlyList<string> setAside) => (Pairs, Session, SetAside) = (pairs, session, setAside);

    /// <summary>One pair for each distance at which both kinds were shot, nearest first.</summary>
    public IReadOnlyList<PointPair> Pairs { get; }

    /// <summary>The session they were shot in.</summary>
    public string Session { get; }

    /// <summary>What was set aside, with the reason, one sentence each.</summary>
    public IReadOnlyList<string> SetAside { get; }

    /// <summary>Pairs the shots of one session.</summary>
    /// <param name="shots">The shots, with point types.</param>
    /// <param name="first">Point type of the first kind, such as <c>field</c>.</param>
    /// <param name="second">Point type of the second, such as <c>broadhead</c>.</param>
    /// <param name="session">Name of the session; empty when the shots are of one session only.</param>
    /// <returns>The pairs.</returns>
    /// <exception cref="ArgumentException">The kinds are the same or not in the shots, the shots are of several sessions and none was named, or no distance has both kinds.</exception>
    public static PointPairs Of(IEnumerable<Shot> shots, string first, string second, string session)
    {
        ArgumentNullException.ThrowIfNull(shots);
        Shot[] all = [.. shots];
        string[] sessions = [.. all.Select(s => s.Session).Distinct()];
        string chosen = session is "" && sessions.Length == 1 ? sessions[0] : sessions.Contains(session)
            ? session
            : throw new ArgumentException($"Parameter session is \"{session}\"; expected one of {string.Join(", ", sessions)}. Days differ more than points do, so that only arrows of one session are compared.", nameof(session));
        all = [.. all.Where(s => s.Session == chosen)];
        Known(first, all);
        Known(second, all);
        if (Same(first, second))
        {
            throw new ArgumentException($"Both kinds of point are \"{first}\".", nameof(second));
        }

        List<string> setAside = [];
        Drop(setAside, ref all, s => s.Fletched == false, "without vanes");
        Drop(setAside, ref all, s => !Same(s.PointType, first) && !Same(s.PointType, second), $"with neither {first} nor {second} points");
        List<PointPair> pairs = [];
        foreach (var there in all.GroupBy(s => Math.Round(s.Distance.Meters, 3)).OrderBy(g => g.Key))
        {
            Shot[] one = [.. there.Where(s => Same(s.PointType, first))], other = [.. there.Where(s => Same(s.PointType, second))];
            if (one.Length == 0 || other.Length == 0)
            {
                setAside.Add($"{there.Count()} {(there.Count() == 1 ? "arrow" : "arrows")} at {NotebookDisplay.Text(there.First().Distance)}: only one kind of point was shot there.");
                continue;
            }

            pairs.Add(new(one[0].Distance, Group.Of(one), Group.Of(other), [.. there.Where(s => !s.Called).OrderBy(s => s.Number).Select(s => Same(s.PointType, second))]));
        }

        return pairs.Count > 0 ? new(pairs, chosen, setAside) : throw new ArgumentException($"At no distance were both {first} and {second} points shot. {string.Join(" ", setAside)}", nameof(shots));
    }

    /// <summary>The pair at a distance.</summary>
    /// <param name="distance">The distance, to a centimetre.</param>
    /// <returns>The pair.</returns>
    /// <exception cref="ArgumentException">Both kinds were not shot there.</exception>
    public PointPair At(Length distance) => Pairs.FirstOrDefault(p => Math.Abs(p.Distance.Meters - distance.Meters) < 0.01)
        ?? throw new ArgumentException($"Both kinds of point were not shot at {NotebookDisplay.Text(distance)}; they were at {string.Join(", ", Pairs.Select(p => NotebookDisplay.Text(p.Distance)))}.", nameof(distance));

    static void Known(string kind, Shot[] shots)
    {
        if (!shots.Any(s => Same(s.PointType, kind)))
        {
            throw new ArgumentException($"No arrow has point type \"{kind}\"; the column point_type holds {string.Join(", ", shots.Select(s => s.PointType is { } p ? $"\"{p}\"" : "nothing").Distinct().Take(10))}.", nameof(kind));
        }
    }

    static void Drop(List<string> setAside, ref Shot[] shots, Func<Shot, bool> unfit, string reason)
    {
        if (shots.Count(unfit) is > 0 and var count)
        {
            setAside.Add($"{count} {(count == 1 ? "arrow" : "arrows")} {reason}.");
            shots = [.. shots.Where(s => !unfit(s))];
        }
    }

    static bool Same(string? a, string? b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
