namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Groups;
using Ascham.Records;
using UnitsNet;

/// <summary>Prepares shots for the question how far to shoot: what counts, the first arrow of each day kept apart, what was set aside and why.</summary>
/// <remarks>
/// <para>Called flyers count here: an arrow that goes astray in the field is not taken back by calling it. Missed arrows count too.</para>
/// <para><b>Set aside.</b> Bare shafts, shots with another setup, slopes over one degree, and distances beyond the setup's longest safe distance, each with the reason.</para>
/// <para><b>Model.</b> One angular sigma across and another up (one for both below twelve degrees of freedom an axis), the sight right on. Where the angle grows with distance (one-sided F test at 5 %), only the
/// farthest groups are used: nearer distances are then judged too cautiously rather than the farthest too kindly.</para>
/// </remarks>
public sealed class HitShots
{
    const double FreedomForTwoSigmas = 12, GrowthAlarm = 0.05;
    static readonly Angle Level = Angle.FromDegrees(1);

    HitShots(IReadOnlyList<Group> groups, IReadOnlyList<Shot> first, AngularScatter scatter, bool farOnly, IReadOnlyList<string> setAside, IReadOnlyList<string> cautions) =>
        (Groups, FirstArrows, Scatter, FarOnly, SetAside, Cautions) = (groups, first, scatter, farOnly, setAside, cautions);

    /// <summary>The shots that count, one group for each session, distance and sight setting; first arrows of a day not among them.</summary>
    public IReadOnlyList<Group> Groups { get; }

    /// <summary>The first arrow of each day, where it was recorded and kept apart.</summary>
    public IReadOnlyList<Shot> FirstArrows { get; }

    /// <summary>The scatter as an angle, for distances up to the farthest that carries it.</summary>
    public AngularScatter Scatter { get; }

    /// <summary>Whether only the farthest groups were used, because the angle grew with distance.</summary>
    public bool FarOnly { get; }

    /// <summary>What was set aside, with the reason, one sentence each.</summary>
    public IReadOnlyList<string> SetAside { get; }

    /// <summary>What the answer leans on, one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>The distances shot, nearest first.</summary>
    public IReadOnlyList<Length> Distances => [.. Groups.Select(g => g.Distance!.Value).DistinctBy(d => Math.Round(d.Meters, 3)).OrderBy(d => d.Meters)];

    /// <summary>Sorts the shots.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="sessions">The sessions they name.</param>
    /// <param name="setup">The setup: its name says which sessions count, its range how far is safe and where the butt ends.</param>
    /// <param name="firstShotApart">Whether shot 1 of the first session of a date was the first arrow of that day, and is to be kept apart.</param>
    /// <returns>The sorted shots.</returns>
    /// <exception cref="ArgumentException">A session is missing from <paramref name="sessions"/>.</exception>
    /// <exception cref="CannotTellException">Nothing is left to estimate from, or an arrow missed in an unknown direction.</exception>
    public static HitShots Of(IEnumerable<Shot> shots, IEnumerable<Session> sessions, Setup setup, bool firstShotApart)
    {
        ArgumentNullException.ThrowIfNull(shots);
        ArgumentNullException.ThrowIfNull(sessions);
        ArgumentNullException.ThrowIfNull(setup);
        Session[] known = [.. sessions];
        List<string> setAside = [], cautions = [];
        Shot[] fit = Fit([.. shots.Select(s => s with { Called = false })], known, setup, setAside);
        var dayOpeners = known.GroupBy(s => s.Date).Select(day => day.First().Name).ToHashSet();
        Shot[] first = [.. fit.Where(s => firstShotApart && s.Number == 1 && dayOpeners.Contains(s.Session))];
        Shot[] later = [.. fit.Where(s => !first.Contains(s))];
        if (later.Length == 0)
        {
            throw new CannotTellException($"No shots are left to tell how far. {string.Join(" ", setAside)}{(first.Length > 0 ? $"First arrows of a day kept apart: {first.Length}." : "")}");
        }

        var stations = StationGroup.From(later);
        Group[] groups = [.. stations.Select(s => Group.Of(s.Shots))];
        var (scatter, farOnly) = ScatterOf(groups, stations, setup, cautions);
        string[] points = [.. groups.SelectMany(g => g.Shots).Select(s => s.PointType).OfType<string>().Distinct()];
        if (points.Length > 1)
        {
            cautions.Add($"Arrows with {string.Join(" and ", points)} points are counted together, as if they flew alike.");
        }

        return new(groups, first, scatter, farOnly, setAside, cautions);
    }

    /// <summary>Counts the arrows of a distance that struck within a radius of the aim point; missed arrows are no hits.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="radius">Radius of the circle.</param>
    /// <returns>How many hit, of how many.</returns>
    public static (int Hits, int Arrows) Count(IEnumerable<Shot> shots, Length radius)
    {
        Shot[] all = [.. shots];
        return (all.Count(s => s.Impact is { } i && double.Hypot(i.Right.Meters, i.Up.Meters) <= radius.Meters), all.Length);
    }

    static Shot[] Fit(Shot[] shots, Session[] known, Setup setup, List<string> setAside)
    {
        if (shots.Select(s => s.Session).FirstOrDefault(n => known.All(k => k.Name != n)) is { } lost)
        {
            throw new ArgumentException($"Session \"{lost}\" is not in the sessions file; known: {string.Join(", ", known.Select(k => k.Name).Take(10))}.", nameof(shots));
        }

        var other = known.Where(k => !string.Equals(k.Setup, setup.Name, StringComparison.OrdinalIgnoreCase)).Select(k => k.Name).ToHashSet();
        Length safe = setup.Range.LongestSafeDistance;
        (Func<Shot, bool> Unfit, string Reason)[] rules =
        [
            (s => other.Contains(s.Session), $"shot with another setup than \"{setup.Name}\""),
            (s => s.Fletched == false, "bare shafts"),
            (s => s.Slope is { } slope && Math.Abs(slope.Radians) > Level.Radians, "shot on a slope of more than one degree"),
            (s => s.Distance > safe * (1 + 1e-6), string.Create(CultureInfo.InvariantCulture, $"shot beyond the setup's longest safe distance, {safe.Value:0.##} {NumberText.Unit(safe.Unit)}")),
        ];
        foreach (var (unfit, reason) in rules)
        {
            if (shots.Count(unfit) is > 0 and var count)
            {
                setAside.Add($"{count} {(count == 1 ? "arrow" : "arrows")} {reason}.");
                shots = [.. shots.Where(s => !unfit(s))];
            }
        }

        return shots;
    }

    static (AngularScatter Scatter, bool FarOnly) ScatterOf(Group[] groups, IReadOnlyList<StationGroup> stations, Setup setup, List<string> cautions)
    {
        if (stations.Any(s => s.Missed > 0))
        {
            return (FromStations(stations, setup, cautions), false);
        }

        var all = AngularScatter.From(groups, Shape(groups));
        if (all.GrowthProbability is not < GrowthAlarm)
        {
            return (all, false);
        }

        Group[] far = [.. groups.Where(g => Math.Abs(g.Distance!.Value.Meters - all.Farthest.Meters) < 1e-3)];
        cautions.Add($"The farthest groups scatter more, as an angle, than the nearer ones (probability {NumberText.Fixed(all.GrowthProbability!.Value, 3)} if the angle were the same). Only the farthest groups are used; nearer distances are judged too cautiously by them.");
        return (AngularScatter.From(far, Shape(far)), true);
    }

    static AngularScatter FromStations(IReadOnlyList<StationGroup> stations, Setup setup, List<string> cautions)
    {
        var range = setup.Range;
        var centres = StationCentres.Fit(stations, new() { ButtBelow = range.ButtBelow, ButtAbove = range.ButtAbove, ButtLeft = range.ButtLeft, ButtRight = range.ButtRight, Level = 0.9 });
        if (centres.SetAside.FirstOrDefault(s => s.Station.Missed > 0) is { } lost)
        {
            throw new CannotTellException($"{lost.Station}: {lost.Reason} Arrows that missed cannot be left out of a hit probability.");
        }

        cautions.Add($"{stations.Sum(s => s.Missed)} counted arrows missed the butt. They take part in the scatter as lying beyond its edge; whether the angle grows with distance is then not tested.");
        return AngularScatter.From(centres.Horizontal, centres.Vertical, stations.Where(s => s.Counted > 1).Select(s => s.Distance).MaxBy(d => d.Meters));
    }

    static ScatterShape Shape(Group[] groups) => groups.Sum(g => g.Counted - 1) >= FreedomForTwoSigmas ? ScatterShape.Stretched : ScatterShape.Round;
}
