namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using CsCheck;
using Xunit;

public class RankAndRunsTests
{
    // exact one-sided probabilities; Kendall, Rank Correlation Methods, appendix table 1 (recomputed by counting, SciPy and NumPy)
    [Theory]
    [InlineData(4, 6, ".04167")]
    [InlineData(4, 4, ".16667")]
    [InlineData(5, 10, ".00833")]
    [InlineData(5, 8, ".04167")]
    [InlineData(6, 13, ".00833")]
    [InlineData(6, 11, ".02778")]
    [InlineData(8, 18, ".01558")]
    [InlineData(8, 16, ".03051")]
    [InlineData(10, 23, ".02331")]
    [InlineData(10, 21, ".03628")]
    [InlineData(12, 28, ".03143")]
    [InlineData(12, 30, ".02237")]
    public void Exact_probabilities_agree_with_the_table(int n, int score, string printed) =>
        new Printed(printed, "Kendall").Matches(KendallNull.TwoSided([n], score) / 2);

    [Fact] // computed, not published: SciPy; the numbers are in the style of Gilbert (1987)
    public void Ties_lower_the_variance()
    {
        MannKendall test = MannKendall.Of([23, 24, 29, 6, 29, 24, 24, 29, 23]);
        Assert.Equal((3, false), (test.Score, test.Exact));
        new Printed("83.666667", "SciPy").Matches(test.Variance);
        new Printed(".2186522", "SciPy").Matches(test.Z);
    }

    [Fact] // independent: all orders of five counted out
    public void Exact_probability_is_that_of_all_orders_counted()
    {
        int[][] orders = [.. Orders([0, 1, 2, 3, 4])];
        foreach (int score in new[] { 2, 4, 6, 8, 10 })
        {
            double share = orders.Count(o => Math.Abs(Score(o)) >= score) / 120.0;
            Assert.Equal(share, KendallNull.TwoSided([5], score), 1e-12);
        }

        Assert.Equal(orders.Average(o => (double)Score(o) * Score(o)), KendallNull.Variance(new([0, 1, 2, 3, 4], [4, 2, 1, 0, 3])), 1e-12);
    }

    [Fact] // independent: variance with ties on both sides, all orders of five counted out
    public void Variance_with_ties_on_both_sides_is_that_of_all_orders_counted()
    {
        double[] x = [1, 1, 2, 3, 3], y = [5, 5, 5, 7, 8];
        double Score(int[] order)
        {
            double sum = 0;
            for (int i = 0; i < 5; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    sum += Math.Sign(x[i] - x[j]) * Math.Sign(y[order[i]] - y[order[j]]);
                }
            }

            return sum;
        }

        Assert.Equal(Orders([0, 1, 2, 3, 4]).Average(o => Score(o) * Score(o)), KendallNull.Variance(new(x, y)), 1e-12);
    }

    [Fact] // an arrow that missed low is lower than all that struck: three of four pairs more fall
    public void Missed_arrows_take_part_in_the_rank_test()
    {
        Group string1 = Group.Of([Simulated.Shot(1, 0, 0.2), Simulated.Shot(2, 0, 0.1), Simulated.Shot(3, 0, 0.15), Simulated.Lost(4, Miss.Low)]);
        MannKendall test = MannKendall.Of([string1], Axis.Vertical, TrendAgainst.ShotOrder);
        Assert.Equal((-4, 6), (test.Score, test.Pairs));
        Assert.Contains("missed (Low)", Assert.Throws<CannotTellException>(() => MannKendall.Of([string1], Axis.Horizontal, TrendAgainst.ShotOrder)).Message, StringComparison.Ordinal);
    }

    [Fact] // R, tseries::runs.test, quoted in the tests of statsmodels 0.13.5 (test_nonparametric.py)
    public void Runs_agree_with_r()
    {
        RunsTest test = RunsTest.OfSides("1110010101110101".Select(c => c == '1'));
        new Printed("1.386750", "R tseries").Matches(test.Z);
        // R uses the normal law; here the count is exact, so R's probability is checked from Z.
        new Printed(".1655179", "R tseries").Matches(2 * MathNet.Numerics.Distributions.Normal.CDF(0, 1, -test.Z), 3); // 3: Z is itself rounded in print
    }

    [Fact] // NIST/SEMATECH e-Handbook 1.3.5.13, beam deflection (StRD Lew): 2.6938 as recalled; digits computed with SciPy
    public void Runs_agree_with_the_handbook_example()
    {
        RunsTest test = RunsTest.AboutMedian(File.ReadAllLines(House.Path("tests/authorities/strd/univariate/Lew.csv")).Where(l => double.TryParse(l, System.Globalization.CultureInfo.InvariantCulture, out _))
            .Select(l => double.Parse(l, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal((120, 101), (test.Runs, test.Expected));
        new Printed("7.0532789", "SciPy").Matches(test.StandardDeviation);
        new Printed("2.6937826", "SciPy").Matches(test.Z);
        Assert.False(test.Exact);
    }

    [Theory] // exact; computed by counting, SciPy; Swed and Eisenhart (1943), Ann. Math. Statist. 14, table I
    [InlineData(6, 3, ".0129870")]
    [InlineData(10, 6, ".0185217")]
    public void Exact_runs_agree_with_the_table(int each, int runs, string printed) =>
        new Printed(printed, "Swed and Eisenhart").Matches(RunsTest.OfSides(Arrangement(each, runs)).FewerProbability);

    [Fact] // independent: mean and variance of the counted chances are the formulas
    public void Counted_chances_have_the_stated_mean()
    {
        bool[][] all = [.. Enumerable.Range(0, 1 << 9).Select(m => Enumerable.Range(0, 9).Select(b => (m >> b & 1) == 1).ToArray()).Where(s => s.Count(x => x) == 4)];
        double[] runs = [.. all.Select(s => (double)RunsTest.OfSides(s).Runs)];
        RunsTest one = RunsTest.OfSides(all[0]);
        Assert.Equal(runs.Average(), one.Expected, 1e-12);
        Assert.Equal(Math.Sqrt(runs.Average(r => (r - one.Expected) * (r - one.Expected))), one.StandardDeviation, 1e-12);
        Assert.Equal(runs.Count(r => r <= one.Runs) / (double)runs.Length, one.FewerProbability, 1e-12);
        Assert.Equal(runs.Count(r => r >= one.Runs) / (double)runs.Length, one.MoreProbability, 1e-12);
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Assert.Contains("one was NaN", Assert.Throws<ArgumentException>(() => MannKendall.Of([1, double.NaN, 2])).Message, StringComparison.Ordinal);
        Assert.Contains("one was NaN", Assert.Throws<ArgumentException>(() => RunsTest.AboutMedian([1, double.NaN, 2])).Message, StringComparison.Ordinal);
        Assert.Contains("three arrows or more that differ", Assert.Throws<CannotTellException>(() => MannKendall.Of([1, 2])).Message, StringComparison.Ordinal);
        Assert.Contains("three arrows or more that differ", Assert.Throws<CannotTellException>(() => MannKendall.Of([1, 1, 1, 1])).Message, StringComparison.Ordinal);
        Assert.Contains("on one side", Assert.Throws<CannotTellException>(() => RunsTest.OfSides([true, true])).Message, StringComparison.Ordinal);
        Assert.Contains("on the median", Assert.Throws<CannotTellException>(() => RunsTest.AboutMedian([3, 3, 3])).Message, StringComparison.Ordinal);
    }

    // Blocks of one, alternating, but for the first of each side, which holds the rest.
    static IEnumerable<bool> Arrangement(int each, int runs) =>
        Enumerable.Range(0, runs).SelectMany(i => Enumerable.Repeat(i % 2 == 0, i < 2 ? each - (((runs + 1 - i) / 2) - 1) : 1));

    static int Score(int[] order) => Enumerable.Range(0, order.Length).Sum(i => Enumerable.Range(0, i).Sum(j => Math.Sign(order[i] - order[j])));

    static IEnumerable<int[]> Orders(int[] items) => items.Length < 2
        ? [items]
        : items.SelectMany((item, i) => Orders([.. items[..i], .. items[(i + 1)..]]).Select(rest => (int[])[item, .. rest]));
}
