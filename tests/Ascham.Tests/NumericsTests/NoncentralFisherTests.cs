namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using MathNet.Numerics.Integration;
using Xunit;

public class NoncentralFisherTests
{
    [Theory] // R, pwr.f2.test, quoted in the tests of statsmodels 0.13.5; noncentrality f2 (u + v + 1)
    [InlineData(5, 199, 0.01, 0.01, 0.0494137732920332)]
    [InlineData(5, 199, 0.09, 0.01, 0.7967191006290872)]
    [InlineData(5, 19, 0.09, 0.1, 0.235454222377575)]
    public void Power_agrees_with_the_printed_values(double u, double v, double f2, double alpha, double printed) =>
        Assert.Equal(printed, NoncentralFisher.Survival(Fisher.Quantile(alpha, u, v), u, v, f2 * (u + v + 1)), 1e-9); // R stops its own series at 1e-9

    [Fact] // G*Power's example, quoted in the tests of statsmodels 0.13.5: F(9, 190), lambda 12.5, critical value 1.4762
    public void Power_agrees_with_the_printed_example() =>
        new Printed("0.8408", "G*Power, quoted in statsmodels").Matches(NoncentralFisher.Survival(1.4762, 9, 190, 12.5));

    [Fact] // Jan and Shieh (2019), quoted in the tests of statsmodels 0.13.5: p .0083; more digits computed with SciPy 1.10
    public void Lower_tail_agrees_with_the_printed_equivalence_test()
    {
        new Printed("0.0083", "Jan and Shieh 2019, quoted in statsmodels").Matches(NoncentralFisher.Cdf(0.0925902, 3, 46, 3.125));
        new Printed("0.00830753", "computed, SciPy").Matches(NoncentralFisher.Cdf(0.0925902, 3, 46, 3.125), 4); // F is given to seven digits
        new Printed("0.3083251", "computed, SciPy").Matches(NoncentralFisher.Quantile(0.05, 3, 46, 3.125));
    }

    [Fact] // Steiger (2004), quoted in the tests of statsmodels 0.13.5: F = 5 with 3 and 76 degrees of freedom, 95 % interval
    public void Interval_of_the_noncentrality_agrees_with_the_printed_one()
    {
        new Printed("1.8666", "Steiger 2004, quoted in statsmodels").Matches(NoncentralFisher.Noncentrality(5, 3, 76, 0.975));
        new Printed("32.563", "Steiger 2004, quoted in statsmodels").Matches(NoncentralFisher.Noncentrality(5, 3, 76, 0.025));
    }

    [Theory] // Marcum's Q1(a, b) is the upper tail of chi-square with two degrees of freedom; computed, mpmath with 30 digits
    [InlineData(0, 1, "0.606530659712633")]
    [InlineData(0.5, 1, "0.642714230272544")]
    [InlineData(1, 1, "0.732879803796820")]
    [InlineData(1, 2, "0.269012060035910")]
    [InlineData(2, 1, "0.918107696369406")]
    [InlineData(2, 2, "0.603500960611993")]
    [InlineData(2, 3, "0.214362088162649")]
    [InlineData(3, 3, "0.567479762290862")]
    [InlineData(1, 3, "0.0437159715786357")]
    [InlineData(5, 7, "0.0277147862959634")]
    [InlineData(10, 10, "0.519972189649548")]
    [InlineData(0.2, 6, "2.11651170510379e-8")]
    public void Upper_tail_of_chi_square_is_the_computed_Q_to_twelve_digits(double a, double b, string computed)
    {
        double value = double.Parse(computed, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(value, NoncentralFisher.ChiSquareSurvival(b * b, 2, a * a), 1e-12 * value);
    }

    [Fact] // independent: Rice's density r exp(-(r² + a²)/2) I0(ar), integrated
    public void Lower_tail_of_chi_square_is_the_integral_of_its_density()
    {
        static double Density(double r) => r * Math.Exp(-((r * r) + 2.25) / 2) * MathNet.Numerics.SpecialFunctions.BesselI0(1.5 * r);
        Assert.Equal(GaussLegendreRule.Integrate(Density, 0, 1.7, 64), NoncentralFisher.ChiSquareCdf(1.7 * 1.7, 2, 2.25), 1e-8); // BesselI0 is a fit of about 1e-8
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(40)]
    [InlineData(900)]
    public void Tails_add_to_one(double noncentrality)
    {
        double f = 1 + (noncentrality / 2);
        Assert.Equal(1, NoncentralFisher.Cdf(f, 2, 20, noncentrality) + NoncentralFisher.Survival(f, 2, 20, noncentrality), 1e-12);
        Assert.Equal(1, NoncentralFisher.ChiSquareCdf(f, 2, noncentrality) + NoncentralFisher.ChiSquareSurvival(f, 2, noncentrality), 1e-12);
    }

    [Theory] // where the sum of the mixture gives way to the normal law of the root
    [InlineData(2, 10)]
    [InlineData(2, 400)]
    [InlineData(3, 76)]
    public void Far_law_takes_over_without_a_step(double first, double second)
    {
        foreach (double share in new[] { 0.8, 0.99, 1, 1.01, 1.3 })
        {
            double f = share * 1e5 / first, x = Math.Pow(Math.Sqrt(1e5) + (3 * (share - 1)), 2);
            Assert.Equal(NoncentralFisher.Cdf(f, first, second, 99_999.999), NoncentralFisher.Cdf(f, first, second, 100_000.001), 2e-6);
            Assert.Equal(NoncentralFisher.ChiSquareCdf(x, first, 99_999.999), NoncentralFisher.ChiSquareCdf(x, first, 100_000.001), 5e-6);
        }
    }

    [Fact]
    public void Nothing_to_find_leaves_the_central_law() =>
        Assert.Equal(Fisher.Survival(3.1, 4, 11), NoncentralFisher.Survival(3.1, 4, 11, 0), 1e-15);

    [Fact]
    public void An_F_near_zero_leaves_no_lower_end() => Assert.Equal(0, NoncentralFisher.Noncentrality(1e-6, 2, 10, 0.05));
}
