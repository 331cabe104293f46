namespace Ascham.Records;

using Ascham.Causes;
using UnitsNet;

/// <summary>What the log gives to a ranking of causes: readings and signs of two times, and what could not be used.</summary>
/// <param name="Readings">Readings of instruments.</param>
/// <param name="Signs">Signs looked for now, each kind once.</param>
/// <param name="LeftOut">Entries that were not used, and why; one sentence each.</param>
public sealed record LogEvidence(IReadOnlyList<Reading> Readings, IReadOnlyList<Sign> Signs, IReadOnlyList<string> LeftOut)
{
    const double Apart = 3; // standard deviations between two lengths before something counts as moved

    /// <summary>Sorts the entries of named sessions.</summary>
    /// <param name="entries">The log.</param>
    /// <param name="then">Names of the sessions from when all was well.</param>
    /// <param name="now">Names of the sessions from now.</param>
    /// <returns>
    /// Readings of both times, and the signs of now, of each kind the last one. A peep that stands more than three standard deviations from its place then counts as a witness
    /// mark that moved; one that stands where it stood says nothing, since sight, nocking point and rest may have moved all the same.
    /// </returns>
    /// <exception cref="ArgumentException">A session is named on both sides.</exception>
    public static LogEvidence Of(IEnumerable<LogEntry> entries, IEnumerable<string> then, IEnumerable<string> now)
    {
        ArgumentNullException.ThrowIfNull(entries);
        HashSet<string> before = [.. then], after = [.. now];
        if (before.FirstOrDefault(after.Contains) is { } both)
        {
            throw new ArgumentException($"Session \"{both}\" is named both for then and for now.", nameof(then));
        }

        LogEntry[] all = [.. entries];
        List<Reading> readings = [];
        List<string> leftOut = [];
        Dictionary<SignKind, bool> signs = [];
        foreach (LogEntry entry in all)
        {
            if (!before.Contains(entry.Session) && !after.Contains(entry.Session))
            {
                leftOut.Add($"{Name(entry)}: its session is neither of then nor of now.");
            }
            else if (SignOf(entry.Quantity) is { } kind)
            {
                AddSign(entry, kind, after, signs, leftOut);
            }
            else if (entry.Quantity is LogQuantity.BraceHeight or LogQuantity.CableGuardOffset)
            {
                leftOut.Add($"{Name(entry)}: kept for the record; no cause is weighed by it.");
            }
            else if (entry.Quantity is not (LogQuantity.Temperature or LogQuantity.Pressure or LogQuantity.PeepToNock))
            {
                AddReading(entry, after.Contains(entry.Session), readings, leftOut);
            }
        }

        if (PeepMoved(all, before, after, leftOut))
        {
            signs[SignKind.WitnessMoved] = true;
        }

        Reading[] means = [.. readings.GroupBy(r => (r.Kind, r.Now, r.DistanceSi)).Select(g => Reading.MeanOf([.. g]))];
        if (means.Length < readings.Count)
        {
            leftOut.Add("Readings repeated with one instrument count as their mean: its own error does not shrink by reading again.");
        }

        return new(means, [.. signs.Select(s => new Sign(s.Key, s.Value))], leftOut);
    }

    static void AddSign(LogEntry entry, SignKind kind, HashSet<string> now, Dictionary<SignKind, bool> signs, List<string> leftOut)
    {
        if (!now.Contains(entry.Session))
        {
            leftOut.Add($"{Name(entry)}: a sign from when all was well says nothing of a change.");
            return;
        }

        if (signs.TryGetValue(kind, out bool earlier))
        {
            leftOut.Add($"{Name(entry)}: looked for twice; the last answer counts, not {(earlier ? "yes" : "no")} before it.");
        }

        signs[kind] = entry.Seen ?? throw new ArgumentException($"{Name(entry)} says neither yes nor no.", nameof(entry));
    }

    static void AddReading(LogEntry entry, bool now, List<Reading> readings, List<string> leftOut)
    {
        Reading? reading = (entry.Quantity, entry.Value, entry.Sd) switch
        {
            (LogQuantity.PeakWeight, Force value, Force sd) => Reading.PeakWeight(value, sd, now),
            (LogQuantity.ArrowMass, Mass value, Mass sd) => Reading.ArrowMass(value, sd, now),
            (LogQuantity.Speed, Speed value, Speed sd) => Reading.LaunchSpeed(value, sd, now),
            (LogQuantity.SpeedDownrange, Speed value, Speed sd) when entry.Distance is { } distance => Reading.DownrangeSpeed(value, sd, distance, now),
            (_, not null, null) => null,
            _ => throw new ArgumentException($"{Name(entry)} does not hold what its name says.", nameof(entry)),
        };
        if (reading is null)
        {
            leftOut.Add($"{Name(entry)}: give its standard deviation (sd); a reading without its error weighs nothing.");
        }
        else
        {
            readings.Add(reading);
        }
    }

    static bool PeepMoved(LogEntry[] all, HashSet<string> then, HashSet<string> now, List<string> leftOut)
    {
        LogEntry[] peeps = [.. all.Where(e => e.Quantity == LogQuantity.PeepToNock && (then.Contains(e.Session) || now.Contains(e.Session)))];
        if (peeps.LastOrDefault(e => then.Contains(e.Session)) is { Value: Length first, Sd: Length firstSd } && peeps.LastOrDefault(e => now.Contains(e.Session)) is { Value: Length last, Sd: Length lastSd } at)
        {
            double moved = Math.Abs((last - first).Millimeters) / Math.Sqrt((firstSd.Millimeters * firstSd.Millimeters) + (lastSd.Millimeters * lastSd.Millimeters));
            if (moved <= Apart)
            {
                leftOut.Add($"{Name(at)}: the peep stands where it stood; sight, nocking point and rest may have moved all the same.");
            }

            return moved > Apart;
        }

        leftOut.AddRange(peeps.Select(p => $"{Name(p)}: a peep's place tells something only with its standard deviation, and measured then and now."));
        return false;
    }

    static SignKind? SignOf(LogQuantity quantity) => quantity switch
    {
        LogQuantity.ContactMarks => SignKind.ContactMarks,
        LogQuantity.WitnessMoved => SignKind.WitnessMoved,
        LogQuantity.BareShaftsMoved => SignKind.BareShaftMoved,
        LogQuantity.LevelOff => SignKind.LevelOff,
        LogQuantity.SightBarTilted => SignKind.SightBarTilted,
        LogQuantity.WindFelt => SignKind.WindFelt,
        LogQuantity.DistancesWrong => SignKind.DistanceWrong,
        _ => null,
    };

    static string Name(LogEntry entry) => FormattableString.Invariant($"{LogVocabulary.WordOf(entry.Quantity)} of {entry.Session}, {entry.Date:yyyy-MM-dd}");
}
