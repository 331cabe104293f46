namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Ascham.Groups;
using UnitsNet;
using Xunit;

/// <summary>Thin or bad evidence: no conviction, and what is missing said.</summary>
public class ThinEvidenceTests
{
    static readonly ShootingFacts Facts = new() { DistanceSd = Length.FromYards(0.2), SettingSd = Angle.FromMilliradians(0.1) };

    static List<Shot> Shots(string session, double[] yards, int count, double upMrad, string? point = null) =>
    [
        .. yards.SelectMany(y => Enumerable.Range(0, count).Select(i => (Yards: y, i))).Select((p, n) => new Shot
        {
            Session = session,
            Distance = Length.FromYards(p.Yards),
            Number = n + 1,
            PointType = point,
            Impact = new(Length.FromMeters(0.9e-3 * p.Yards * Math.Sin(2 * p.i + p.Yards)), Length.FromMeters(0.9144e-3 * p.Yards * (upMrad + Math.Cos(2 * p.i + p.Yards)))),
        }),
    ];

    static Ranking Rank(IReadOnlyList<Shot> then, IReadOnlyList<Shot> now) => Ranking.Of(EvidenceOfShots.From(Bench.Bow, then, now, Facts), CausePriors.Usual);

    [Fact]
    public void Sound_evidence_of_a_large_shift_names_a_cause()
    {
        Ranking ranking = Rank(Shots("then", [20, 40, 60], 12, 0), Shots("now", [20, 40, 60], 12, -5));
        Assert.Empty(ranking.Missing);
        Assert.Equal("elevation", ranking.Best);
        Assert.True(ranking.IsSettled(0.8), $"{ranking.BestProbability}");
        SizeEstimate size = ranking.Causes[0].Sizes[0];
        Assert.InRange(-5, size.Value.Low, size.Value.High);
    }

    [Fact]
    public void One_distance_convicts_nobody()
    {
        Ranking ranking = Rank(Shots("then", [40], 12, 0), Shots("now", [40], 12, -6));
        Assert.False(ranking.IsSettled(0.5));
        Assert.Contains(ranking.Missing, m => m.Contains("about one distance"));
    }

    [Fact]
    public void Without_a_baseline_nobody_is_convicted()
    {
        Ranking ranking = Rank([], Shots("now", [20, 40, 60], 12, -6));
        Assert.False(ranking.IsSettled(0.5));
        Assert.Contains(ranking.Missing, m => m.Contains("when all was well"));
    }

    [Fact]
    public void One_arrow_at_each_distance_convicts_nobody()
    {
        Ranking ranking = Rank(Shots("then", [20, 40, 60], 1, 0), Shots("now", [20, 40, 60], 1, -6));
        Assert.False(ranking.IsSettled(0.5));
        Assert.Contains(ranking.Missing, m => m.Contains("One arrow at each station"));
    }

    [Fact]
    public void Other_arrows_than_then_convict_nobody()
    {
        Ranking ranking = Rank(Shots("then", [20, 40, 60], 12, 0, "field"), Shots("now", [20, 40, 60], 12, -5, "broadhead"));
        Assert.False(ranking.IsSettled(0.5));
        Assert.Contains(ranking.Missing, m => m.Contains("different points"));
    }

    [Fact]
    public void Readings_that_contradict_one_another_convict_nobody()
    {
        Evidence sound = EvidenceOfShots.From(Bench.Bow, Shots("then", [20, 40, 60], 12, 0), Shots("now", [20, 40, 60], 12, 0), Facts);
        Speed v = Bench.Bow.Sight.LaunchSpeed;
        Force f = Bench.Bow.PeakWeight;
        Evidence odd = sound.With(
            Reading.PeakWeight(f, f * 0.005, false), Reading.PeakWeight(f * 0.85, f * 0.005, true), // nine pounds gone
            Reading.LaunchSpeed(v, v * 0.002, false), Reading.LaunchSpeed(v, v * 0.002, true), // and as fast as ever
            Reading.ArrowMass(Bench.Bow.ArrowMass, Bench.Bow.ArrowMass * 0.002, false), Reading.ArrowMass(Bench.Bow.ArrowMass, Bench.Bow.ArrowMass * 0.002, true));
        Ranking ranking = Ranking.Of(odd, CausePriors.Usual);
        Assert.False(ranking.IsSettled(0.5), $"{ranking.Best} {ranking.BestProbability}");
        Assert.Contains(ranking.Missing, m => m.Contains("None of the causes"));
    }

    [Fact]
    public void Bad_numbers_are_refused_by_name()
    {
        var e = Assert.Throws<ArgumentException>(() => Ranking.Of(Bench.Case([20, 40], 6, 1) with { Stations = [] }, CausePriors.Usual));
        Assert.Contains("at least one station", e.Message);
        Evidence nan = Bench.Case([20, 40], 6, 1);
        nan = nan with { Stations = [nan.Stations[0] with { Arrows = double.NaN }, .. nan.Stations.Skip(1)] };
        Assert.Contains("Arrows must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => Ranking.Of(nan, CausePriors.Usual)).Message);
        Assert.Contains("Rate of drag", Assert.Throws<ArgumentOutOfRangeException>(() => Ranking.Of(Bench.Case([20, 40], 6, 1), CausePriors.Usual.With(new(Cause.Drag, 1.2, [new(CauseSize.Drag, 0, 1)])))).Message);
        Assert.Contains("in one hole", Assert.Throws<ArgumentException>(() => Ranking.Of(Bench.Case([20, 40], 6, 0), CausePriors.Usual)).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Reading.PeakWeight(Force.FromPoundsForce(60), Force.Zero, true));
    }
}
