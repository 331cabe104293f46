namespace Ascham.Notebooks;

using Ascham.Causes;
using Ascham.Records;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Follows the plan of tests for as long as the log holds their outcomes: which test is asked for, what it said, what is believed afterwards.</summary>
/// <param name="Asked">The test that promised most per minute of all.</param>
/// <param name="Taken">The one that promised most of those the log answers; <see langword="null"/> for what was still left in the log.</param>
/// <param name="Entries">Its entries in the log.</param>
/// <param name="Ranking">The ranking with them.</param>
public sealed record LoggedTests(RankedTest? Asked, RankedTest? Taken, IReadOnlyList<LogEntry> Entries, Ranking Ranking)
{
    static readonly Dictionary<string, LogQuantity[]> Answering = new()
    {
        ["bow_scale"] = [LogQuantity.PeakWeight],
        ["chronograph"] = [LogQuantity.Speed],
        ["chronograph_downrange"] = [LogQuantity.SpeedDownrange],
        ["arrow_scale"] = [LogQuantity.ArrowMass],
        ["contact_marks"] = [LogQuantity.ContactMarks],
        ["witness_marks"] = [LogQuantity.WitnessMoved, LogQuantity.PeepToNock],
        ["bare_shafts"] = [LogQuantity.BareShaftsMoved],
        ["plumb_line"] = [LogQuantity.LevelOff],
        ["sight_bar"] = [LogQuantity.SightBarTilted],
        ["wind"] = [LogQuantity.WindFelt],
        ["distances"] = [LogQuantity.DistancesWrong],
    };

    /// <summary>What tests cost at a setup's range: the library's usual costs, every ten yards or metres from twenty up to the longest safe distance.</summary>
    /// <param name="setup">The setup.</param>
    /// <returns>The costs.</returns>
    public static TestCosts Costs(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        Length safe = setup.Range.LongestSafeDistance;
        LengthUnit unit = safe.Unit == LengthUnit.Meter ? LengthUnit.Meter : LengthUnit.Yard;
        return new() { LongestSafeDistance = safe, Distances = [.. Enumerable.Range(2, 99).Select(i => Length.From(10 * i, unit)).Where(d => d <= safe * (1 + 1e-9)).DefaultIfEmpty(safe)] };
    }

    /// <summary>Follows the plan.</summary>
    /// <param name="evidence">Impacts and log.</param>
    /// <param name="ranking">The ranking of the impacts alone.</param>
    /// <param name="costs">What tests cost.</param>
    /// <param name="confidence">Probability at which a cause counts as found.</param>
    /// <param name="level">Level of the intervals.</param>
    /// <returns>The tests in the order asked for until a cause is found, then the rest of the log in one; empty when the log answers nothing.</returns>
    public static IReadOnlyList<LoggedTests> Follow(ChangeEvidence evidence, Ranking ranking, TestCosts costs, double confidence, double level)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(ranking);
        List<LoggedTests> steps = [];
        List<LogEntry> used = [], left = [.. evidence.Log.Where(e => Weighs(evidence, e))];
        while (left.Count > 0)
        {
            TestPlan plan = NextTest.Plan(ranking, costs, confidence);
            RankedTest? next = plan.Best is null ? null : plan.Tests.FirstOrDefault(t => t.Information > 0 && left.Any(e => Of(t).Contains(e.Quantity) && evidence.NowSessions.Contains(e.Session)));
            LogEntry[] told = [.. left.Where(e => next is null || Of(next).Contains(e.Quantity))];
            left.RemoveAll(told.Contains);
            used.AddRange(told);
            ranking = Ranking.Of(evidence.With(used), evidence.Priors, level);
            steps.Add(new(plan.Best, next, told, ranking));
        }

        return steps;
    }

    static LogQuantity[] Of(RankedTest test) => Answering.GetValueOrDefault(test.Test.Key, []);

    // Whether the entry adds a reading or a sign by itself, or with the rest of its kind.
    static bool Weighs(ChangeEvidence evidence, LogEntry entry)
    {
        LogEvidence told = LogEvidence.Of(evidence.Log.Where(e => e.Quantity == entry.Quantity), evidence.ThenSessions, evidence.NowSessions);
        return Answering.Values.Any(q => q.Contains(entry.Quantity)) && told.Readings.Count + told.Signs.Count > 0;
    }
}
