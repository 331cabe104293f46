namespace Ascham.Tests.GroupsTests;

using Ascham.Numerics;
using Xunit;

/// <summary>Mean and standard deviation against the certified values of NIST StRD, digits asked for per set.</summary>
public class CertifiedTests
{
    // Certified values: NIST StRD, univariate summary statistics, page of each set.
    // NumAcc3 and NumAcc4 cannot do better in double precision: their data do not survive conversion to binary with more digits.
    internal static CertifiedSummary[] Sets { get; } =
    [
        new("NumAcc1", 10000002, 1, 15.9), new("NumAcc2", 1.2, 0.1, 15.6), new("NumAcc3", 1000000.2, 0.1, 9.5), new("NumAcc4", 10000000.2, 0.1, 8.3),
        new("Michelso", 299.852400000000, 0.0790105478190518, 13.8), new("Mavro", 2.00185600000000, 0.000429123454003053, 13.1), new("Lew", -177.435000000000, 277.332168044316, 15.4),
        new("Lottery", 518.958715596330, 291.699727470969, 15.7), new("PiDigits", 4.53480000000000, 2.86733906028871, 15.2),
    ];

    public static TheoryData<string> Names => [.. Sets.Select(s => s.Set)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Mean_and_sd_agree_with_the_certified_values(string set)
    {
        CertifiedSummary certified = Sets.Single(s => s.Set == set);
        var (mean, sd) = certified.Digits();
        Assert.InRange(mean, 14.7, 16);
        Assert.InRange(sd, certified.Known - 0.5, 16);
    }

    public static TheoryData<string> VarianceNames => [.. CertifiedVariance.Sets.Select(s => s.Set)];

    // Certified F and residual standard deviation: NIST StRD, analysis of variance (tests/authorities/strd/anova).
    [Theory]
    [MemberData(nameof(VarianceNames))]
    public void Analysis_of_variance_agrees_with_the_certified_values(string set)
    {
        CertifiedVariance certified = CertifiedVariance.Sets.Single(s => s.Set == set);
        var (f, residual) = certified.Digits();
        Assert.InRange(f, certified.Known - 0.5, 16);
        Assert.InRange(residual, Math.Min(certified.Known, 13) - 0.5, 16);
    }

    // NIST StRD, linear regression, Norris: the slope against a hold of x seconds
    [Fact]
    public void A_trend_agrees_with_the_certified_line()
    {
        var (slope, error, residual) = CertifiedPageTests.NorrisTrend();
        Assert.InRange(slope, 11.7, 16);
        Assert.InRange(error, 11.7, 16);
        Assert.InRange(residual, 11.7, 16);
    }

    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.2: ZARR13.DAT, n 195, mean 9.261460, sd 0.022789, 95 % limits 9.258242 and 9.264679.
    [Fact]
    public void Student_interval_agrees_with_the_handbook_example()
    {
        double half = Quantiles.StudentT(194, 0.95) * 0.022789 / Math.Sqrt(195);
        new Checks.Printed("9.258242", "NIST/SEMATECH 1.3.5.2").Matches(9.261460 - half, 2); // mean and sd are themselves rounded to the sixth decimal
        new Checks.Printed("9.264679", "NIST/SEMATECH 1.3.5.2").Matches(9.261460 + half, 2); // likewise
    }
}
