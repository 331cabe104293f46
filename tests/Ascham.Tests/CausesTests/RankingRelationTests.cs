namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using UnitsNet;
using Xunit;

public class RankingRelationTests
{
    static readonly double[] Yards = [20, 40, 60, 80];

    static Ranking Of(Evidence evidence) => Ranking.Of(evidence, CausePriors.Usual);

    static double P(Ranking ranking, Cause cause) => ranking.Causes.First(c => c.Cause == cause).Probability;

    [Fact]
    public void The_joint_table_sums_to_one_and_causes_are_read_from_it()
    {
        Ranking ranking = Of(Bench.Case(Yards, 6, 1, (CauseSize.PeakWeight, -3)));
        Assert.Equal(1, ranking.Table.Sum(h => h.Probability), 1e-12);
        Assert.Equal(ranking.Table.Where(h => h.Causes.Contains(Cause.Drag)).Sum(h => h.Probability), P(ranking, Cause.Drag), 1e-12);
        Assert.Equal(ranking.Table.Where(h => h.SomethingElse).Sum(h => h.Probability), ranking.NoneFits, 1e-12);
        Assert.Equal(1 + 12 + 66 + 1 + Yards.Length, ranking.Table.Count); // and a blunder at each station of now
    }

    [Fact]
    public void The_order_of_stations_changes_nothing()
    {
        Evidence evidence = Bench.Case(Yards, 6, 1, (CauseSize.Drag, 0.4));
        Ranking there = Of(evidence), back = Of(evidence with { Stations = [.. evidence.Stations.Reverse()] });
        Assert.All(there.Causes, c => Assert.Equal(c.Probability, P(back, c.Cause), 1e-9));
    }

    [Fact] // a left-handed archer's bow is the mirror image; the impacts stay in world axes
    public void A_mirrored_case_is_judged_alike()
    {
        Evidence evidence = Bench.Case(Yards, 6, 1, (CauseSize.Cant, 1.5), (CauseSize.Elevation, 1));
        Evidence mirrored = evidence with { Stations = [.. evidence.Stations.Select(s => s with { Right = -s.Right })] };
        Ranking one = Of(evidence), other = Of(mirrored);
        Assert.All(one.Causes, c => Assert.Equal(c.Probability, P(other, c.Cause), 1e-6));
        SizeEstimate a = one.Causes.First(c => c.Cause == Cause.Cant).Sizes[0], b = other.Causes.First(c => c.Cause == Cause.Cant).Sizes[0];
        Assert.Equal(a.Value.Value, -b.Value.Value, 1e-6);
    }

    [Fact]
    public void More_arrows_convict_more_surely()
    {
        double few = P(Of(Bench.Case(Yards, 3, 1, (CauseSize.PeakWeight, -4))), Cause.PeakWeight), many = P(Of(Bench.Case(Yards, 24, 1, (CauseSize.PeakWeight, -4))), Cause.PeakWeight);
        Assert.True(many > few, $"{few} {many}");
    }

    [Theory]
    [InlineData(Cause.PeakWeight)]
    [InlineData(Cause.ArrowMass)]
    [InlineData(Cause.Drag)]
    public void A_reading_that_tells_settles_it(Cause cause)
    {
        var (size, value) = cause switch
        {
            Cause.PeakWeight => (CauseSize.PeakWeight, -4.0),
            Cause.ArrowMass => (CauseSize.ArrowMass, 25.0),
            _ => (CauseSize.Drag, 0.5),
        };
        Evidence impacts = Bench.Case(Yards, 6, 1, (size, value));
        double[] sizes = new double[CauseText.Sizes];
        sizes[(int)size] = value;
        var forward = new Forward(Bench.Bow);
        double v = forward.Launch(sizes).Speed, k = 0.0015 * Math.Exp(sizes[(int)CauseSize.Drag]) * 415 / (415 + sizes[(int)CauseSize.ArrowMass]), x = 36.6;
        Speed Of(double s) => Speed.FromMetersPerSecond(s);
        Ranking told = Ranking.Of(impacts.With(
            Reading.PeakWeight(Force.FromPoundsForce(60), Force.FromPoundsForce(0.3), false), Reading.PeakWeight(Force.FromPoundsForce(60 + sizes[(int)CauseSize.PeakWeight]), Force.FromPoundsForce(0.3), true),
            Reading.ArrowMass(Mass.FromGrains(415), Mass.FromGrains(1), false), Reading.ArrowMass(Mass.FromGrains(415 + sizes[(int)CauseSize.ArrowMass]), Mass.FromGrains(1), true),
            Reading.LaunchSpeed(Of(84), Of(0.2), false), Reading.LaunchSpeed(Of(v), Of(0.2), true),
            Reading.DownrangeSpeed(Of(84 * Math.Exp(-0.0015 * x)), Of(0.25), Length.FromMeters(x), false), Reading.DownrangeSpeed(Of(v * Math.Exp(-k * x)), Of(0.25), Length.FromMeters(x), true)), CausePriors.Usual);
        Assert.Equal(cause.Key(), told.Best);
        Assert.True(told.BestProbability > 0.95, $"{told.BestProbability}");
        SizeEstimate found = told.Causes[0].Sizes[0];
        Assert.InRange(value, found.Value.Low, found.Value.High);
    }

    [Fact]
    public void Cant_and_a_tilted_sight_are_one_set_until_a_plumb_line_tells()
    {
        Evidence impacts = Bench.Case(Yards, 12, 0.7, (CauseSize.Cant, 2.5));
        Ranking doubt = Of(impacts);
        Assert.NotEmpty(doubt.ConfusedWith.Intersect([Cause.SightAxis, Cause.Wind]));
        Ranking told = Of(impacts.With(new Sign(SignKind.LevelOff, true), new Sign(SignKind.SightBarTilted, false), new Sign(SignKind.WindFelt, false)));
        Assert.Equal("cant", told.Best);
        Assert.True(told.BestProbability > 0.85, $"{told.BestProbability}");
    }

    [Fact]
    public void One_wild_arrow_does_not_convict_the_bow()
    {
        // by the shots themselves: eleven on the centre and one far low
        var simulated = new SimulatedBow(7);
        List<Groups.Shot> then = simulated.Shoot("then", Yards, 6, new double[CauseText.Sizes], 0, null, (0, 0)), now = simulated.Shoot("now", Yards, 6, new double[CauseText.Sizes], 0, null, (0, 0));
        Groups.Shot last = now[^1];
        now[^1] = last with { Impact = new(last.Impact!.Value.Right, last.Impact.Value.Up - Length.FromMeters(0.02 * simulated.SigmaThen * last.Distance.Meters)) };
        var facts = new ShootingFacts { DistanceSd = Length.Zero, SettingSd = Angle.Zero };
        Ranking ranking = Of(EvidenceOfShots.From(simulated.Known, then, now, facts));
        Assert.True(ranking.Causes[0].Probability < 0.5, $"{ranking.Best} {ranking.BestProbability}");
    }
}
