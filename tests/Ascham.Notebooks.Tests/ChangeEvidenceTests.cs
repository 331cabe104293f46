namespace Ascham.Notebooks.Tests;

using Ascham.Causes;
using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Records;
using UnitsNet;
using Xunit;

/// <summary>The demonstrations of "what changed?", whole, thinned and spoilt.</summary>
public class ChangeEvidenceTests
{
    static readonly Setup Alder = SetupFile.Read(Path("what-changed", "setup.json"));
    static readonly ShotRecords Then = ShotRecords.Read(Path("what-changed", "baseline.csv")), Now = ShotRecords.Read(Path("what-changed", "shots.csv"));
    static readonly IReadOnlyList<LogEntry> Log = LogFile.Read(Path("what-changed", "log.csv"), Now.Sessions);

    static string Path(string set, string file) => Ascham.Tests.House.Path($"data-demo/{set}/{file}");

    static Ranking Rank(ShotRecords? then, ShotRecords now, IReadOnlyList<LogEntry> log)
    {
        var ready = ChangeEvidence.Of(Alder, then, now, log);
        return Ranking.Of(ready.With(log), ready.Priors);
    }

    static ShotRecords Only(ShotRecords all, Func<Shot, bool> keep) => all with { Shots = [.. all.Shots.Where(keep)] };

    [Fact] // planted: 3.5 lb less; impacts leave doubt, bow scale and chronograph resolve it
    public void The_demonstration_is_in_doubt_from_impacts_and_resolved_by_the_bench()
    {
        Ranking before = Rank(Then, Now, []), after = Rank(Then, Now, Log);
        Assert.False(before.IsSettled(0.9));
        Assert.NotEqual("nothing", before.Best);
        Assert.True(after.IsSettled(0.9));
        Assert.Equal("peak_weight", after.Best);
        Estimate<double> pounds = after.Causes[0].Sizes[0].Value;
        Assert.InRange(-3.5, pounds.Low, pounds.High);
    }

    [Fact] // planted: a vane that touches, drag up by six tenths
    public void The_metric_demonstration_finds_the_drag()
    {
        ShotRecords then = ShotRecords.Read(Path("what-changed-metric", "baseline.csv")), now = ShotRecords.Read(Path("what-changed-metric", "shots.csv"));
        var ready = ChangeEvidence.Of(SetupFile.Read(Path("what-changed-metric", "setup.json")), then, now, LogFile.Read(Path("what-changed-metric", "log.csv"), now.Sessions));
        Ranking found = Ranking.Of(ready.With(ready.Log), ready.Priors);
        Assert.Equal("drag", found.Best);
        Assert.InRange(Math.Log(1.6), found.Causes[0].Sizes[0].Value.Low, found.Causes[0].Sizes[0].Value.High);
    }

    [Fact]
    public void Thin_sets_name_no_cause_and_say_what_is_missing()
    {
        Assert.Contains("No session from when all was well", string.Concat(Rank(null, Now, Log).Missing), StringComparison.Ordinal);
        Assert.Contains("about one distance", string.Concat(Rank(Then, Only(Now, s => s.Distance.Yards > 55), Log).Missing), StringComparison.Ordinal);
        Assert.Contains("One arrow at each station", string.Concat(Rank(Only(Then, s => s.Arrow == "1"), Only(Now, s => s.Arrow == "1"), Log).Missing), StringComparison.Ordinal);
        Assert.False(Rank(null, Now, Log).IsSettled(0.5));
    }

    [Fact]
    public void The_plan_is_followed_through_the_log_and_uses_all_that_weighs()
    {
        var ready = ChangeEvidence.Of(Alder, Then, Now, Log);
        Ranking impacts = Ranking.Of(ready.Impacts, ready.Priors);
        var steps = LoggedTests.Follow(ready, impacts, LoggedTests.Costs(Alder), 0.9, 0.9);
        Assert.NotEmpty(steps);
        Assert.Equal(Log.Count(e => e.Quantity != LogQuantity.BraceHeight), steps.Sum(s => s.Entries.Count));
        Assert.NotNull(steps[0].Taken);
        Assert.Equal("peak_weight", steps[^1].Ranking.Best);
        Assert.Equal(2, ready.LeftOut.Count); // brace height, then and now
    }

    [Fact] // relation: air that is recorded as colder explains its own drop
    public void Recorded_weather_accuses_nobody()
    {
        var cold = Now with { Sessions = [.. Now.Sessions.Select(s => s.Name == "thornmere-after" ? s with { Temperature = (-20).Celsius } : s)] };
        StationMean same = ChangeEvidence.Of(Alder, Then, Now, []).Impacts.Stations[^1], carried = ChangeEvidence.Of(Alder, Then, cold, []).Impacts.Stations[^1];
        Assert.True(carried.Up > same.Up);
        Assert.Contains(ChangeEvidence.Of(Alder, Then, cold, []).Cautions, c => c.Contains("denser than the setup's", StringComparison.Ordinal));
        Assert.Equal(0.01, ChangeEvidence.Of(Alder, Then, cold, []).Priors.Causes.Single(c => c.Cause == Cause.Air).Sizes[0].Sd);
        var silent = Now with { Sessions = [.. Now.Sessions.Select(s => s with { Temperature = null })] };
        Assert.Equal(0.04, ChangeEvidence.Of(Alder, Then, silent, []).Priors.Causes.Single(c => c.Cause == Cause.Air).Sizes[0].Sd);
    }

    [Fact]
    public void Other_setups_and_slopes_are_set_aside_openly_and_one_session_on_both_sides_is_refused()
    {
        var sloping = Now with { Shots = [.. Now.Shots.Select((s, i) => i < 2 ? s with { Slope = 10.Degrees } : i == 2 ? s with { Setting = 10.Millimetres } : s)] };
        var ready = ChangeEvidence.Of(Alder, Then, sloping, []);
        Assert.Equal(["2 shots of session thornmere-after: on a slope of more than 1 degree.", "1 shot of session thornmere-after: the sight's setting is recorded and there is no marks.csv to read it by."], ready.SetAside);
        Assert.StartsWith("No shot from now is left. 18 shots of session thornmere-after: shot with setup", Assert.Throws<ArgumentException>(() => ChangeEvidence.Of(Alder with { Name = "other" }, null, Now, [])).Message, StringComparison.Ordinal);
        Assert.StartsWith("Session \"thornmere-after\" stands both in the baseline", Assert.Throws<ArgumentException>(() => ChangeEvidence.Of(Alder, Now, Now, [])).Message, StringComparison.Ordinal);
        var ranged = Now with { Sessions = [.. Now.Sessions.Select(s => s with { DistanceSd = null })] };
        Assert.Contains("add a column distance_sd_yd", Assert.Throws<ArgumentException>(() => ChangeEvidence.Of(Alder, null, ranged, [])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_proposed_beyond_the_longest_safe_distance()
    {
        TestCosts costs = LoggedTests.Costs(Alder);
        Assert.Equal([20, 30, 40, 50, 60, 70, 80], costs.Distances.Select(d => (int)Math.Round(d.Yards)));
        Assert.Equal(15.Metres, LoggedTests.Costs(Alder with { Range = Alder.Range with { LongestSafeDistance = 15.Metres } }).Distances.Single());
    }
}
