namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

public class NoncentralFTests
{
    // First text: R, pwr::pwr.f2.test, quoted in the tests of statsmodels 0.13.5 (test_power.py); lambda = f2 (u + v + 1). R stops its noncentral sum at 1e-9.
    // Second: the same sum with each beta tail by Simpson's rule in the arcsine of the root (computed, not published).
    [Theory]
    [InlineData(5, 199, 0.01, 0.01, "0.0494137732920332", "0.0494137727")]
    [InlineData(5, 199, 0.09, 0.01, "0.7967191006290872", "0.7967191005")]
    [InlineData(5, 19, 0.09, 0.1, "0.235454222377575", "0.2354542219")]
    public void Power_agrees_with_r(double u, double v, double f2, double alpha, string printed, string summed)
    {
        double power = NoncentralF.Survival(NoncentralF.UpperQuantile(alpha, u, v), u, v, f2 * (u + v + 1));
        Assert.Equal(new Printed(printed, "R pwr.f2.test").Value, power, 1e-9);
        new Printed(summed, "Simpson").Matches(power);
    }

    [Fact] // G*Power manual, F(9, 190), lambda 12.5, alpha 0.1592; quoted in the tests of statsmodels 0.13.5 (test_power.py)
    public void Power_agrees_with_the_manual_of_a_power_program()
    {
        double critical = NoncentralF.UpperQuantile(0.1592, 9, 190);
        new Printed("1.4762", "G*Power manual").Matches(critical, 2); // 2: alpha itself is rounded
        new Printed("0.8408", "G*Power manual").Matches(NoncentralF.Survival(critical, 9, 190, 12.5), 2); // likewise
    }

    [Theory] // closed form: with 2 and nu degrees of freedom the survival function is (1 + 2F/nu)^(−nu/2)
    [InlineData(0.05, 4)]
    [InlineData(0.95, 7)]
    [InlineData(1e-9, 22)]
    public void Central_quantile_is_that_of_the_closed_form(double tail, double nu)
    {
        double closed = nu / 2 * (Math.Pow(tail, -2 / nu) - 1);
        Assert.Equal(closed, NoncentralF.UpperQuantile(tail, 2, nu), 1e-10 * closed);
        Assert.Equal(1 / closed, NoncentralF.UpperQuantile(1 - tail, nu, 2), 1e-6 / closed); // 1 − 1e-9 keeps seven digits
    }

    [Fact] // F with 1 degree of freedom is Student's t squared: 12.706 at one (Fisher and Yates, table III)
    public void One_degree_of_freedom_is_student() =>
        new Printed("12.706", "Fisher and Yates, table III").Matches(Math.Sqrt(NoncentralF.UpperQuantile(0.05, 1, 1)));

    [Fact] // nu2 to infinity: noncentral chi-square with 2 degrees of freedom, which is Marcum's Q
    public void Many_degrees_of_freedom_give_marcum() =>
        Assert.Equal(MarcumQ.Upper(2, 3), NoncentralF.Survival(9.0 / 2, 2, 1e8, 4), 1e-7);

    [Fact] // the mixture is summed from its largest weight: exp(−lambda/2) alone would be zero
    public void A_large_noncentrality_does_not_underflow()
    {
        // mean of F is nu2 (nu1 + lambda) / (nu1 (nu2 − 2)); far in either tail the answer is certain
        double mean = 1000 * 4002.0 / (2 * 998);
        Assert.Equal(1, NoncentralF.Survival(mean / 2, 2, 1000, 4000), 1e-12);
        Assert.Equal(0, NoncentralF.Survival(mean * 2, 2, 1000, 4000), 1e-12);
        Assert.InRange(NoncentralF.Survival(mean, 2, 1000, 4000), 0.4, 0.6);
    }
}
