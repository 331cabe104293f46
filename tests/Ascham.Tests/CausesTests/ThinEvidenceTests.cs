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

    [Theory] // the sight left at another mark for one distance is no cause of the list
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void One_wrong_station_convicts_nobody(int wrong)
    {
        double[] yards = [20, 40, 60, 80];
        Evidence evidence = Bench.Case(yards, 12, 1);
        Ranking ranking = Ranking.Of(
            evidence with { Stations = [.. evidence.Stations.Select(s => s.Now && Math.Abs(s.Distance.Yards - yards[wrong]) < 1 ? s with { Up = s.Distance * -7.1e-3 } : s)] }, CausePriors.Usual);
        Assert.False(ranking.IsSettled(0.9), $"{ranking.Best} {ranking.BestProbability}");
        Assert.Equal("none_fits", ranking.Best);
    }

    [Fact]
    public void Another_day_tells_the_archer_from_the_sight()
    {
        static Evidence With(Evidence day, params (double Up, double Right)[] later) => day with
        {
            Stations = [.. day.Stations, .. later.SelectMany((shift, i) => Bench.Session($"day {i + 2}", true, 12, new[] { 20.0, 40, 60 }.Select(y => (y, 0.9144e-3 * y * shift.Up, 0.9144e-3 * y * shift.Right))))],
        };
        Evidence first = new()
        {
            Bow = Bench.Bow,
            Stations = [.. Bench.Session("then", false, 12, new[] { 20.0, 40, 60 }.Select(y => (y, 0.0, 0.0))), .. Bench.Session("now", true, 12, new[] { 20.0, 40, 60 }.Select(y => (y, -1.3 * 0.9144e-3 * y, 0.8 * 0.9144e-3 * y)))],
            ScatterThen = new(1, 1, 33),
            ScatterNow = new(1, 1, 33),
        };
        double Day(Evidence e) => Ranking.Of(e, CausePriors.Usual).Causes.First(c => c.Cause == Cause.ArcherDay).Probability;
        double one = Day(first), back = Day(With(first, (0, 0))), still = Day(With(first, (-1.3, 0.8)));
        Assert.True(back > one && still < one, $"{one:F3} back {back:F3} still {still:F3}");
    }

    [Fact]
    public void A_steady_habit_of_sinking_arrows_is_not_fatigue()
    {
        Evidence evidence = Bench.Case([20, 40, 60, 80], 24, 0.6);
        StringSlope then = new(-0.2, 280, false), now = new(-0.2, 280, true);
        double Tired(params StringSlope[] slopes) => Ranking.Of(evidence with { Slopes = slopes }, CausePriors.Usual).Causes.First(c => c.Cause == Cause.Fatigue).Probability;
        Assert.InRange(Tired(then, now), 0, 0.1);
        Assert.True(Tired(then with { PerArrow = 0 }, now with { PerArrow = -0.4 }) > 0.5);
    }

    [Fact]
    public void A_station_lost_is_told_and_convicts_nobody()
    {
        List<Shot> now = Shots("now", [20, 40, 60], 6, 0);
        for (int i = 12; i < 18; i++)
        {
            now[i] = now[i] with { Impact = null, Missed = Miss.Low };
        }

        Evidence evidence = EvidenceOfShots.From(Bench.Bow, Shots("then", [20, 40, 60], 6, 0), now, Facts);
        Assert.Contains(evidence.Doubts, d => d.Contains("could not be used") && d.Contains("missed"));
        Assert.False(Ranking.Of(evidence, CausePriors.Usual).IsSettled(0.5));
    }

    [Fact]
    public void Other_shafts_and_a_mixture_of_points_are_told()
    {
        List<Shot> Numbered(string session, string prefix) => [.. Shots(session, [20, 40], 6, 0).Select((s, i) => s with { Arrow = $"{prefix}{i % 6}" })];
        Assert.Contains(EvidenceOfShots.From(Bench.Bow, Numbered("then", "A"), Numbered("now", "B"), Facts).Doubts, d => d.Contains("different arrows"));
        Assert.Empty(EvidenceOfShots.From(Bench.Bow, Numbered("then", "A"), Numbered("now", "A"), Facts).Doubts);
        List<Shot> mixed = [.. Shots("now", [20, 40], 6, 0, "field").Select((s, i) => i % 2 == 0 ? s : s with { PointType = "broadhead" })];
        Assert.Contains(EvidenceOfShots.From(Bench.Bow, Shots("then", [20, 40], 6, 0, "field"), mixed, Facts).Doubts, d => d.Contains("different points"));
    }

    [Fact]
    public void The_same_evidence_twice_is_refused()
    {
        Evidence evidence = Bench.Case([20, 40], 6, 1);
        Reading scale = Reading.PeakWeight(Force.FromPoundsForce(58.9), Force.FromPoundsForce(0.4), true);
        Assert.Contains("Give their mean", Assert.Throws<ArgumentException>(() => Ranking.Of(evidence.With(scale, scale), CausePriors.Usual)).Message);
        var marks = new Sign(SignKind.ContactMarks, true);
        Assert.Contains("each sign once", Assert.Throws<ArgumentException>(() => Ranking.Of(evidence.With(marks, marks), CausePriors.Usual)).Message);
        Evidence both = evidence with { Stations = [.. evidence.Stations.Select(s => s with { Session = "one" })] };
        Assert.Contains("Name the two outings apart", Assert.Throws<ArgumentException>(() => Ranking.Of(both, CausePriors.Usual)).Message);
    }

    [Fact]
    public void Impossible_rates_of_signs_are_refused_by_name()
    {
        CausePriors Rate(double otherwise) => CausePriors.Usual with { Signs = [new(SignKind.ContactMarks, otherwise, [new(Cause.Drag, 0.7)])] };
        Assert.Contains("Otherwise of ContactMarks", Assert.Throws<ArgumentOutOfRangeException>(() => Ranking.Of(Bench.Case([20, 40], 6, 1), Rate(0))).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Ranking.Of(Bench.Case([20, 40], 6, 1), Rate(1.5)));
    }
}
