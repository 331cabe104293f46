namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Causes;
using Ascham.Groups;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;

/// <summary>Shots of two times and a log made ready for a ranking of causes, with all that was set aside or supplied, and why.</summary>
/// <remarks>
/// Set aside, openly: shots with another setup, on slopes of more than 1 degree, or with the sight's setting recorded where no tape is given. Impacts of a session whose air is
/// recorded are carried over to the setup's air, so that known weather accuses nobody.
/// </remarks>
public sealed class ChangeEvidence
{
    const double SlopeAllowed = 1; // degrees; as in a tape check

    ChangeEvidence(Evidence impacts, CausePriors priors, IReadOnlyList<LogEntry> log, string[] then, string[] now)
    {
        (Impacts, Priors, Log) = (impacts, priors, log);
        (ThenSessions, NowSessions) = (then, now);
        LeftOut = LogEvidence.Of(log, then, now).LeftOut;
    }

    /// <summary>Evidence of the impacts alone.</summary>
    public Evidence Impacts { get; }

    /// <summary>The usual beliefs; the air's made narrower where it was recorded.</summary>
    public CausePriors Priors { get; }

    /// <summary>The log as read.</summary>
    public IReadOnlyList<LogEntry> Log { get; }

    /// <summary>Entries of the log that weigh nothing, and why.</summary>
    public IReadOnlyList<string> LeftOut { get; }

    /// <summary>Names of the sessions from when all was well.</summary>
    public IReadOnlyList<string> ThenSessions { get; }

    /// <summary>Names of the sessions from now.</summary>
    public IReadOnlyList<string> NowSessions { get; }

    /// <summary>What was left out of the shots, and why; one sentence each.</summary>
    public IReadOnlyList<string> SetAside { get; private init; } = [];

    /// <summary>What the answer leans on that the files do not say; one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; private init; } = [];

    /// <summary>Evidence of the impacts with some entries of the log.</summary>
    /// <param name="entries">The entries.</param>
    /// <returns>The larger evidence.</returns>
    public Evidence With(IEnumerable<LogEntry> entries)
    {
        LogEvidence told = LogEvidence.Of(entries, ThenSessions, NowSessions);
        return Impacts.With(told.Readings).With(told.Signs);
    }

    /// <summary>Makes evidence ready.</summary>
    /// <param name="setup">The setup as it was when all was well.</param>
    /// <param name="then">Shots and sessions from when all was well; <see langword="null"/> when there are none.</param>
    /// <param name="now">Shots and sessions from now.</param>
    /// <param name="log">The log; empty when there is none.</param>
    /// <param name="marks">The printed tape, for shots whose setting is recorded.</param>
    /// <returns>The evidence.</returns>
    /// <exception cref="ArgumentException">A session stands on both sides or is missing, its distances were ranged or judged and nobody said how well, or no shot from now is left.</exception>
    /// <exception cref="CannotTellException">No station of now can be estimated.</exception>
    public static ChangeEvidence Of(Setup setup, ShotRecords? then, ShotRecords now, IReadOnlyList<LogEntry> log, Marks? marks = null)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(log);
        List<string> setAside = [], cautions = [];
        SetupModel model = SetupModel.Of(setup);
        cautions.AddRange(model.Cautions);
        KnownBow bow = ChangeBow.Of(setup, model.Sight, cautions);
        Shot[] before = then is null ? [] : Kept(then, setup, marks, setAside), after = Kept(now, setup, marks, setAside);
        if (after.Length == 0)
        {
            throw new ArgumentException("No shot from now is left. " + string.Join(" ", setAside), nameof(now));
        }

        Session[] first = Used(then, before), last = Used(now, after);
        if (first.FirstOrDefault(s => last.Any(t => t.Name == s.Name)) is { } both)
        {
            throw new ArgumentException($"Session \"{both.Name}\" stands both in the baseline and in the shots from now; a session belongs to one side.", nameof(then));
        }

        ShootingFacts facts = ChangeBow.Facts([.. first, .. last], setup, marks, cautions);
        var airs = first.Concat(last).ToDictionary(s => s.Name, s => ChangeBow.AirOf(s, log, model.Sight.Air));
        Evidence evidence = EvidenceOfShots.From(bow, before, after, facts);
        evidence = evidence with { Stations = [.. evidence.Stations.Select(s => ChangeBow.InSetupAir(s, airs[s.Session], model.Sight))] };
        cautions.AddRange(ChangeBow.AirCautions(airs, model.Sight.Air));
        cautions.AddRange(after.Where(s => s.Distance > setup.Range.LongestSafeDistance * (1 + 1e-6)).Select(s => Text(s.Distance)).Distinct()
            .Select(d => $"{d} lies beyond the setup's longest safe distance, {Text(setup.Range.LongestSafeDistance)}: find out which is right before shooting there again."));
        return new(evidence, ChangeBow.Priors(airs.Values), log, [.. first.Select(s => s.Name)], [.. last.Select(s => s.Name)]) { SetAside = setAside, Cautions = cautions };
    }

    static Session[] Used(ShotRecords? records, Shot[] shots) => records is null ? [] : [.. records.Sessions.Where(s => shots.Any(x => x.Session == s.Name))];

    static Shot[] Kept(ShotRecords records, Setup setup, Marks? marks, List<string> setAside)
    {
        var sessions = records.Sessions.ToDictionary(s => s.Name);
        List<Shot> kept = [];
        Dictionary<string, int> left = [];
        foreach (Shot shot in records.Shots)
        {
            Session session = sessions.TryGetValue(shot.Session, out var s) ? s
                : throw new ArgumentException($"Session \"{shot.Session}\" of shot {shot.Number} is not in the sessions file; known: {string.Join(", ", sessions.Keys.Take(10))}.", nameof(records));
            string? why = !string.Equals(session.Setup, setup.Name, StringComparison.OrdinalIgnoreCase) ? $"shot with setup \"{session.Setup}\"; this is of \"{setup.Name}\""
                : Math.Abs(shot.Slope?.Degrees ?? 0) > SlopeAllowed ? $"on a slope of more than {SlopeAllowed} degree"
                : shot.Setting is null ? null
                : marks is null ? "the sight's setting is recorded and there is no marks.csv to read it by"
                : Tape.Of(marks).Covers(shot.Distance) ? null : "the distance lies beyond the tape, by which the sight's setting would be read";
            if (why is null)
            {
                kept.Add(shot);
            }
            else
            {
                string reason = $"of session {shot.Session}: {why}.";
                left[reason] = left.GetValueOrDefault(reason) + 1;
            }
        }

        setAside.AddRange(left.Select(l => $"{l.Value} {(l.Value == 1 ? "shot" : "shots")} {l.Key}"));
        int called = kept.Count(s => s.Called);
        if (called > 0)
        {
            setAside.Add($"{called} called {(called == 1 ? "flyer" : "flyers")} of {string.Join(", ", kept.Where(s => s.Called).Select(s => s.Session).Distinct())}.");
        }

        return [.. kept];
    }

    static string Text(Length length) => length.ToString("0.###", CultureInfo.InvariantCulture);
}
