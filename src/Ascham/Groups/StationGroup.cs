namespace Ascham.Groups;

using UnitsNet;

/// <summary>All shots of one station: one session, one distance, one sight setting, one slope.</summary>
/// <remarks>Within a station nothing was moved, so its shots share one centre. The list is not split by arrow, point or fletching: filter it first.</remarks>
public sealed class StationGroup
{
    StationGroup(List<Shot> shots)
    {
        Shot first = shots[0];
        (Session, Distance, Setting, Slope, Shots) = (first.Session, first.Distance, first.Setting, first.Slope ?? Angle.Zero, shots.AsReadOnly());
        Shot[] counted = [.. shots.Where(s => !s.Called)];
        Impacts = [.. counted.Select(s => s.Impact).OfType<Impact>()];
        Misses = [.. counted.Select(s => s.Missed).OfType<Miss>()];
    }

    /// <summary>Name of the session.</summary>
    public string Session { get; }

    /// <summary>Distance along the line of sight.</summary>
    public Length Distance { get; }

    /// <summary>Where the sight stood; null when at the mark for the distance.</summary>
    public Length? Setting { get; }

    /// <summary>Slope of the line of sight, positive uphill; zero when not recorded.</summary>
    public Angle Slope { get; }

    /// <summary>All its shots, in the order given.</summary>
    public IReadOnlyList<Shot> Shots { get; }

    /// <summary>Impacts that count: called flyers set aside.</summary>
    public IReadOnlyList<Impact> Impacts { get; }

    /// <summary>Where each counted arrow that missed the butt went.</summary>
    public IReadOnlyList<Miss> Misses { get; }

    /// <summary>Number of shots that count, struck or missed.</summary>
    public int Counted => Impacts.Count + Misses.Count;

    /// <summary>Number of counted arrows that missed the butt.</summary>
    public int Missed => Misses.Count;

    /// <summary>Number of called flyers set aside, struck or missed.</summary>
    public int CalledSetAside => Shots.Count - Counted;

    /// <summary>Splits shots into stations.</summary>
    /// <param name="shots">One shot or more, each with an impact or a miss.</param>
    /// <returns>The stations, in order of first appearance; shots keep their order. A setting given and none given are two stations.</returns>
    /// <exception cref="ArgumentException">No shot, or a shot with both impact and miss or neither.</exception>
    public static IReadOnlyList<StationGroup> From(IEnumerable<Shot> shots)
    {
        List<List<Shot>> stations = [];
        foreach (Shot shot in ShotCheck.Checked(shots, nameof(shots)))
        {
            if (stations.Find(s => OneStation(s[0], shot)) is { } known)
            {
                known.Add(shot);
            }
            else
            {
                stations.Add([shot]);
            }
        }

        return [.. stations.Select(s => new StationGroup(s))];
    }

    /// <summary>Names the station in a sentence.</summary>
    /// <returns>Session, distance and setting, in the invariant culture.</returns>
    public override string ToString() => Setting is { } setting
        ? FormattableString.Invariant($"{Session} at {Distance}, sight at {setting}")
        : FormattableString.Invariant($"{Session} at {Distance}");

    static bool OneStation(Shot a, Shot b) =>
        a.Session == b.Session && ShotCheck.Same(a.Distance, b.Distance) && ShotCheck.Same(a.Setting, b.Setting)
        && Math.Abs((a.Slope ?? Angle.Zero).Radians - (b.Slope ?? Angle.Zero).Radians) < 1e-9;
}
