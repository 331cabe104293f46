namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using UnitsNet;
using Xunit;

public class NextTestTests
{
    static readonly TestCosts Costs = new() { LongestSafeDistance = Length.FromYards(60), Distances = [.. Enumerable.Range(1, 10).Select(i => Length.FromYards(10 * i))] };

    static TestPlan Plan(Evidence evidence) => NextTest.Plan(Ranking.Of(evidence, CausePriors.Usual), Costs);

    [Fact]
    public void Nothing_is_proposed_beyond_the_longest_safe_distance() =>
        Assert.All(Plan(Bench.Case([20, 40, 60], 6, 1)).Tests, t => Assert.All(t.Test.Distances, d => Assert.True(d <= Costs.LongestSafeDistance)));

    [Fact]
    public void What_was_looked_for_or_read_already_is_worth_nothing()
    {
        Evidence evidence = Bench.Case([20, 40, 60], 6, 1, (CauseSize.PeakWeight, -4));
        Force full = Force.FromPoundsForce(60), error = Force.FromPoundsForce(0.4);
        TestPlan plan = Plan(evidence.With(new Sign(SignKind.WindFelt, false)).With(Reading.PeakWeight(full, error, false), Reading.PeakWeight(full, error, true)));
        Assert.Equal(0, plan.Tests.First(t => t.Test.Key == "wind").Information);
        Assert.DoesNotContain(plan.Tests, t => t.Test.Key == "bow_scale");
        Assert.All(plan.Tests, t => Assert.True(double.IsFinite(t.PerMinute) && !double.IsNaN(t.PerArrow)));
    }

    [Fact]
    public void The_order_of_stations_changes_no_plan()
    {
        Evidence evidence = Bench.Case([20, 40, 60], 6, 1, (CauseSize.Drag, 0.4));
        evidence = evidence with { Stations = [.. evidence.Stations.Select(s => s with { UpSd = s.Distance * 4e-4 })] };
        var one = Plan(evidence).Tests.ToDictionary(t => t.Test.Key, t => t.Information);
        Assert.All(Plan(evidence with { Stations = [.. evidence.Stations.Reverse()] }).Tests, t => Assert.Equal(one[t.Test.Key], t.Information, 1e-6));
    }

    [Fact] // weight and drag look alike at these distances; a scale and a chronograph do not
    public void Instruments_come_before_arrows_where_arrows_cannot_tell()
    {
        TestPlan plan = Plan(Bench.Case([20, 40, 60], 6, 1, (CauseSize.PeakWeight, -4)));
        Assert.Contains(plan.Best!.Test.Key, (string[])["bow_scale", "arrow_scale", "chronograph", "distances", "contact_marks"]);
    }

    [Fact]
    public void When_all_is_settled_another_arrow_is_worth_nothing()
    {
        Evidence evidence = Bench.Case([20, 40, 60, 80], 24, 0.5, (CauseSize.PeakWeight, -5)).With(
            Reading.PeakWeight(Force.FromPoundsForce(60), Force.FromPoundsForce(0.3), false), Reading.PeakWeight(Force.FromPoundsForce(55), Force.FromPoundsForce(0.3), true));
        Ranking ranking = Ranking.Of(evidence, CausePriors.Usual);
        TestPlan plan = NextTest.Plan(ranking, Costs);
        Assert.True(plan.Settled, $"{ranking.Best} {ranking.BestProbability} {string.Join(" ", ranking.Missing)}");
        Assert.Null(plan.Best);
        Assert.Null(plan.BestArrows);
    }

    [Fact] // outcomes drawn, each judged anew: the mean fall of the entropy is what was expected of the test
    public void Expected_information_is_what_drawn_outcomes_bring()
    {
        // three explanations of one number, by forty thousand draws of another generator
        double[] p = [0.5, 0.3, 0.2], means = [0, 1.5, -1], variances = [1, 0.5, 2];
        var random = new Random(5);
        double Density(int h, double y) => Math.Exp(-(y - means[h]) * (y - means[h]) / (2 * variances[h])) / Math.Sqrt(2 * Math.PI * variances[h]);
        double before = -p.Sum(x => x * Math.Log(x)), fall = 0;
        const int Draws = 40_000;
        for (int i = 0; i < Draws; i++)
        {
            double u = random.NextDouble();
            int h = u < 0.5 ? 0 : u < 0.8 ? 1 : 2;
            double y = means[h] + Math.Sqrt(-2 * variances[h] * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            double[] w = [.. Enumerable.Range(0, 3).Select(k => p[k] * Density(k, y))];
            fall += before + w.Sum(x => x / w.Sum() * Math.Log(x / w.Sum()));
        }

        Assert.Equal(fall / Draws, Ascham.Causes.Information.Of(p, means, variances, 1, 40_000), 0.01);
    }
}
