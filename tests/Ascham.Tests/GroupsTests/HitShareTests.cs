namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using CsCheck;
using Xunit;

public class HitShareTests
{
    [Theory] // ends found by bisection of the binomial sums, another route than the beta quantile; 682 of 925 is the example of R's binom.test (its print from memory)
    [InlineData(682, 925, 0.95, "0.7076683", "0.7654066")]
    [InlineData(3, 5, 0.90, "0.1892554", "0.9235596")]
    [InlineData(11, 12, 0.90, "0.6613193", "0.9957347")]
    [InlineData(1, 20, 0.95, "0.0012651", "0.2487328")]
    [InlineData(5, 5, 0.90, "0.5492803", "1.0000000")]
    [InlineData(0, 5, 0.90, "0.0000000", "0.4507197")]
    public void Ends_agree_with_binomial_sums(int hits, int arrows, double level, string low, string high)
    {
        var share = HitShare.Of(hits, arrows, level);
        new Printed(low, $"{hits} of {arrows}, low").Matches(share.Low);
        new Printed(high, $"{hits} of {arrows}, high").Matches(share.High);
        Assert.Equal(hits / (double)arrows, share.Value);
        Assert.Equal(arrows, share.Count);
    }

    [Fact] // coverage, exact: the chance of a count whose interval misses the truth, summed over all counts
    public void Intervals_fail_no_more_often_than_stated() =>
        Gen.Select(Gen.Int[1, 60], Gen.Double[0.02, 0.98]).Sample((n, p) =>
        {
            double failed = Enumerable.Range(0, n + 1).Where(k => HitShare.Of(k, n, 0.9) is var e && (e.Low > p || e.High < p)).Sum(k => MathNet.Numerics.Distributions.Binomial.PMF(p, n, k));
            return failed <= 0.1 + 1e-9;
        });

    [Fact] // relation
    public void Hits_and_failures_mirror_each_other() =>
        Gen.Select(Gen.Int[1, 100], Gen.Int[0, 100]).Where((n, k) => k <= n).Sample((n, k) =>
        {
            var (hit, missed) = (HitShare.Of(k, n, 0.9), HitShare.Of(n - k, n, 0.9));
            return Math.Abs(hit.Low - (1 - missed.High)) < 1e-9 && Math.Abs(hit.High - (1 - missed.Low)) < 1e-9;
        });

    [Theory] // the ends of the range allowed: rare hits of many arrows follow Poisson's law, whose ends are half chi-square quantiles; 5 % points as in the NIST/SEMATECH e-Handbook 1.3.6.7.4
    [InlineData(1, 0.103, 9.488)] // chi-square with 2 and with 4 degrees of freedom
    [InlineData(5, 3.940, 21.026)] // with 10 and with 12
    public void Rare_hits_of_a_million_follow_Poisson(int hits, double lower, double upper)
    {
        var share = HitShare.Of(hits, 1_000_000, 0.9);
        Assert.Equal(lower / 2, share.Low * 1e6, 0.001);
        Assert.Equal(upper / 2, share.High * 1e6, 0.001);
        Assert.Equal(1 - share.Low, HitShare.Of(1_000_000 - hits, 1_000_000, 0.9).High, 1e-9);
    }

    [Theory]
    [InlineData(-1, 5, 0.9, "hits must be from 0 to 5")]
    [InlineData(6, 5, 0.9, "hits must be from 0 to 5")]
    [InlineData(0, 0, 0.9, "arrows must be from 1 to 1E+06")]
    public void Impossible_counts_are_refused(int hits, int arrows, double level, string message) =>
        Assert.Contains(message, Assert.Throws<ArgumentOutOfRangeException>(() => HitShare.Of(hits, arrows, level)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_level_outside_its_range_is_refused(double level) => Assert.ThrowsAny<ArgumentException>(() => HitShare.Of(1, 2, level));
}
