namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Groups;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;

/// <summary>Shots made ready for a tape check: stations with their centres and shared errors, and all that was set aside, with its reason.</summary>
/// <remarks>
/// A shot without a setting is taken as shot with the sight at the tape's mark for its distance, one without a slope as level. Set aside, openly: called flyers,
/// bare shafts, sessions with another setup, and whole stations on a slope of more than 1 degree, off the tape, with more than half the arrows under or over the butt, or
/// with an arrow that missed nobody knows where.
/// </remarks>
public sealed class TapeShots
{
    static readonly Angle Level = Angle.FromDegrees(1); // gravity along the path: 4 mm low uphill, 3 mm high downhill at 70 m (integrated, 84 m/s)

    TapeShots(StationCentres centres, IReadOnlyList<TapeStation> stations, IReadOnlyList<string> setAside, IReadOnlyList<string> cautions, int called)
    {
        (Centres, Stations, SetAside, Cautions, FlyersSetAside) = (centres, stations, setAside, cautions, called);
    }

    /// <summary>The groups' centres, with the common scatter they rest on.</summary>
    public StationCentres Centres { get; }

    /// <summary>What the tape check takes.</summary>
    public IReadOnlyList<TapeStation> Stations { get; }

    /// <summary>What was left out, and why; one sentence each.</summary>
    public IReadOnlyList<string> SetAside { get; }

    /// <summary>What the intervals lean on that the files do not say; one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>Shots that count, misses included.</summary>
    public int ShotsUsed => Centres.Count;

    /// <summary>Flyers that the archer called.</summary>
    public int FlyersSetAside { get; }

    /// <summary>Makes shots ready.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="sessions">The sessions they name.</param>
    /// <param name="tape">The printed tape.</param>
    /// <param name="setup">The setup: its name says which sessions count, its range where the butt ends and how far is safe.</param>
    /// <param name="level">Level of the groups' intervals.</param>
    /// <returns>The stations.</returns>
    /// <exception cref="ArgumentException">A session is missing, or its distances were ranged or judged and nobody said how well.</exception>
    /// <exception cref="CannotTellException">Nothing is left to estimate from.</exception>
    public static TapeShots Of(IEnumerable<Shot> shots, IEnumerable<Session> sessions, Tape tape, Setup setup, double level)
    {
        ArgumentNullException.ThrowIfNull(shots);
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(tape);
        ArgumentNullException.ThrowIfNull(setup);
        var known = sessions.ToDictionary(s => s.Name);
        Shot[] all = [.. shots], fletched = [.. all.Where(s => s.Fletched != false)];
        List<string> setAside = [];
        if (all.Length > fletched.Length)
        {
            setAside.Add($"{all.Length - fletched.Length} bare shafts: they fly by other marks.");
        }

        List<StationGroup> fit = [];
        foreach (var station in StationGroup.From(fletched))
        {
            if (WhyNot(station, SessionOf(station, known), tape, setup) is { } reason)
            {
                setAside.Add($"{station}: {reason}");
            }
            else
            {
                fit.Add(station);
            }
        }

        if (fit.Count == 0)
        {
            throw new CannotTellException($"No station is left for a tape check. {string.Join(" ", setAside)}");
        }

        var centres = StationCentres.Fit(fit, Butt(setup.Range, level));
        setAside.AddRange(centres.SetAside.Select(s => $"{s.Station}: {s.Reason}"));
        TapeStation[] stations = [.. centres.Stations.Select(c => Station(c, SessionOf(c.Station, known), tape, centres.Vertical.DegreesOfFreedom))];
        return new(centres, stations, setAside, [.. CautionsOf(centres, known, setup)], fletched.Count(s => s.Called));
    }

    static StationOptions Butt(ShootingRange range, double level) =>
        new() { ButtBelow = range.ButtBelow, ButtAbove = range.ButtAbove, ButtLeft = range.ButtLeft, ButtRight = range.ButtRight, Level = level };

    static string? WhyNot(StationGroup station, Session session, Tape tape, Setup setup)
    {
        if (!string.Equals(session.Setup, setup.Name, StringComparison.OrdinalIgnoreCase))
        {
            return $"shot with setup \"{session.Setup}\"; this check is of \"{setup.Name}\".";
        }

        if (Math.Abs(station.Slope.Radians) > Level.Radians)
        {
            return string.Create(CultureInfo.InvariantCulture, $"a slope of {station.Slope.Degrees:0.#} degrees; this check is for level shots.");
        }

        int beyond = station.Misses.Count(m => m is Miss.Low or Miss.High);
        if (2 * beyond > station.Counted)
        {
            return $"{beyond} of {station.Counted} counted arrows passed under or over the butt; the centre would rest on the normal law more than on impacts.";
        }

        return tape.Covers(station.Distance) ? null : $"the tape runs from {Text(tape.Shortest.Distance)} to {Text(tape.Longest.Distance)} only.";
    }

    static TapeStation Station(StationCentre centre, Session session, Tape tape, double freedom) => new()
    {
        Distance = centre.Station.Distance,
        Setting = centre.Station.Setting ?? tape.PositionAt(centre.Station.Distance),
        MeanUp = centre.MeanUp,
        MeanUpSd = centre.MeanUpStandardError,
        ScatterFreedom = freedom,
        DistanceSd = session.DistanceSd ?? Length.Zero,
        SettingSd = session.SettingSd ?? Length.Zero,
        SettingKey = centre.Station.Setting is { } setting ? FormattableString.Invariant($"{session.Name} {setting.Millimeters:0.####}") : FormattableString.Invariant($"{session.Name} at {centre.Station.Distance.Meters:0.###}"),
        Arrows = centre.Count,
    };

    static Session SessionOf(StationGroup station, Dictionary<string, Session> known)
    {
        if (!known.TryGetValue(station.Session, out var session))
        {
            throw new ArgumentException($"Session \"{station.Session}\" of {station} is not in the sessions file; known: {string.Join(", ", known.Keys.Take(10))}.", nameof(station));
        }

        return session is { DistanceSource: not DistanceSource.Marked, DistanceSd: null }
            ? throw new ArgumentException($"Session \"{session.Name}\" has {(session.DistanceSource == DistanceSource.Ranged ? "ranged" : "judged")} distances, but sessions.csv does not say how well: add a column distance_sd_yd or distance_sd_m with their standard deviation, such as 0.3 yd for a rangefinder (from its own data sheet).", nameof(station))
            : session;
    }

    static IEnumerable<string> CautionsOf(StationCentres centres, Dictionary<string, Session> known, Setup setup)
    {
        Session[] used = [.. centres.Stations.Select(s => s.Station.Session).Distinct().Select(n => known[n])];
        foreach (var session in used.Where(s => s.SettingSd is null))
        {
            yield return $"Session \"{session.Name}\" gives no setting_sd: the sight is taken as set without error, so intervals are too narrow by whatever it was.";
        }

        foreach (var session in used.Where(s => s.DistanceSd is null))
        {
            yield return $"Session \"{session.Name}\" gives no distance_sd: its marked distances are taken as exact.";
        }

        foreach (var station in centres.Stations.Where(s => s.Station.Distance > setup.Range.LongestSafeDistance * (1 + 1e-6)))
        {
            yield return $"{station.Station} lies beyond the setup's longest safe distance, {Text(setup.Range.LongestSafeDistance)}: find out which is right before shooting there again.";
        }

        string[] points = [.. centres.Stations.SelectMany(s => s.Station.Shots).Where(s => !s.Called && s.PointType is not null).Select(s => s.PointType!).Distinct()];
        if (points.Length > 1)
        {
            yield return $"Arrows with {string.Join(" and ", points)} points are counted together, as if they flew alike.";
        }

        foreach (var station in centres.Stations.Where(s => s.EdgeAssumed))
        {
            yield return $"{station.Station}: an arrow missed and the edge of the butt is not in the setup; the outermost arrow seen there stands for it.";
        }
    }

    static string Text(Length length) => length.ToString("0.###", CultureInfo.InvariantCulture);
}
