namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

public class QuantilesTests
{
    [Theory] // D. C. Montgomery, Introduction to Statistical Quality Control, appendix VI, column c4; n = nu + 1
    [InlineData(2, "0.7979")]
    [InlineData(3, "0.8862")]
    [InlineData(4, "0.9213")]
    [InlineData(5, "0.9400")]
    [InlineData(6, "0.9515")]
    [InlineData(7, "0.9594")]
    [InlineData(8, "0.9650")]
    [InlineData(9, "0.9693")]
    [InlineData(10, "0.9727")]
    [InlineData(15, "0.9823")]
    [InlineData(20, "0.9869")]
    public void Small_sample_factor_agrees_with_the_printed_table(int n, string printed) =>
        new Printed(printed, $"Montgomery, appendix VI, c4, n = {n}").Matches(Quantiles.C4(n - 1));

    [Theory] // of a round group, both axes: nu = 2(n - 1); computed independently by mpmath, 6 digits
    [InlineData(2, "0.886227")]
    [InlineData(3, "0.939986")]
    [InlineData(6, "0.975350")]
    [InlineData(12, "0.988705")]
    [InlineData(20, "0.993443")]
    public void Small_sample_factor_of_two_axes_agrees_with_an_independent_computation(int n, string value) =>
        new Printed(value, $"mpmath, nu = {2 * (n - 1)}").Matches(Quantiles.C4(2 * (n - 1)));

    [Fact]
    public void Small_sample_factor_tends_to_one_as_its_series_says() =>
        // 1 - 1/(4 nu) + 1/(32 nu²): expansion of the ratio of gamma functions (Abramowitz and Stegun 6.1.47).
        Assert.Equal(1 - (1 / 4e4) + (1 / 32e8), Quantiles.C4(1e4), 1e-11);

    [Theory] // NIST/SEMATECH e-Handbook, section 1.3.6.7.4, lower-tail table: 0.05 and 0.025 points of chi-square, printed to three decimals
    [InlineData(1, "0.004", "0.001")]
    [InlineData(4, "0.711", "0.484")]
    [InlineData(10, "3.940", "3.247")]
    [InlineData(22, "12.338", "10.982")]
    [InlineData(70, "51.739", "48.758")]
    public void Upper_limit_of_sigma_rests_on_the_printed_chi_square(double nu, string p05, string p025)
    {
        new Printed(p05, "NIST/SEMATECH 1.3.6.7.4").Matches(ChiSquareBehind(Quantiles.SigmaMultipliers(nu, 0.90).High, nu));
        new Printed(p025, "NIST/SEMATECH 1.3.6.7.4").Matches(ChiSquareBehind(Quantiles.SigmaMultipliers(nu, 0.95).High, nu));
    }

    [Theory] // 95 % and 90 % multipliers of s, computed independently with SciPy 1.10 (chi2.ppf)
    [InlineData(4, "0.599133", "2.873556", "0.649305", "2.372356")]
    [InlineData(10, "0.698717", "1.754934", "0.739079", "1.593072")]
    [InlineData(22, "0.773395", "1.415351", "0.805295", "1.335330")]
    [InlineData(142, "0.895989", "1.131546", "0.911777", "1.108977")]
    [InlineData(198, "0.910458", "1.109229", "0.924163", "1.090684")]
    public void Multipliers_of_s_agree_with_an_independent_computation(double nu, string low95, string high95, string low90, string high90)
    {
        var (low, high) = Quantiles.SigmaMultipliers(nu, 0.95);
        new Printed(low95, "SciPy").Matches(low);
        new Printed(high95, "SciPy").Matches(high);
        (low, high) = Quantiles.SigmaMultipliers(nu, 0.90);
        new Printed(low90, "SciPy").Matches(low);
        new Printed(high90, "SciPy").Matches(high);
    }

    [Theory] // exact: nu = 1 is the Cauchy distribution, nu = 2 has an algebraic quantile; far beyond where MathNet's own search ends
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(0.99)]
    [InlineData(0.999999)]
    public void Student_multiplier_meets_its_closed_forms(double level)
    {
        Assert.Equal(1, Quantiles.StudentT(1, level) / Math.Tan(Math.PI * level / 2), 1e-9);
        Assert.Equal(1, Quantiles.StudentT(2, level) / (level * Math.Sqrt(2 / (1 - (level * level)))), 1e-9);
    }

    [Theory] // exact: F with 2 and 2 degrees of freedom has survival 1/(1 + F); with 2 and 4, (1 + F/2)^-2
    [InlineData(0.9)]
    [InlineData(0.95)]
    public void Fisher_quantile_meets_its_survival_function(double level)
    {
        Assert.Equal(1 - level, 1 / (1 + Quantiles.FisherTwo(2, level)), 1e-14);
        Assert.Equal(1 - level, Math.Pow(1 + (Quantiles.FisherTwo(4, level) / 2), -2), 1e-14);
    }

    static double ChiSquareBehind(double multiplier, double nu) => nu / multiplier / multiplier;
}
