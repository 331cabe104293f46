namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using MathNet.Numerics.Distributions;
using Xunit;

public class ChiSquareQuantileTests
{
    [Theory] // NIST/SEMATECH e-Handbook 1.3.6.7.4, critical values of chi-square
    [InlineData(8, 0.05, "2.733")]
    [InlineData(8, 0.95, "15.507")]
    [InlineData(1, 0.95, "3.841")]
    [InlineData(100, 0.99, "135.807")]
    public void Quantiles_agree_with_the_handbook(double nu, double share, string printed) =>
        new Printed(printed, "NIST/SEMATECH 1.3.6.7.4").Matches(ChiSquareQuantile.At(nu, share));

    [Fact] // with two degrees of freedom −2 ln(1 − p)
    public void Two_degrees_of_freedom_have_the_closed_form() =>
        Assert.All(new[] { 1e-12, 1e-4, 0.1, 0.5, 0.9, 0.9999 }, p => Assert.Equal(1, ChiSquareQuantile.At(2, p) / Exact(p), 1e-9));

    // 1 − p loses digits near zero, where the series of the logarithm does not.
    static double Exact(double p) => p < 1e-3 ? 2 * (p + (p * p / 2) + (p * p * p / 3)) : -2 * Math.Log(1 - p);

    [Fact] // round trip over the range in use, with degrees of freedom that are not whole
    public void The_quantile_undoes_the_distribution()
    {
        foreach (double nu in new[] { 1, 1.5, 3, 10, 46.7, 400 })
        {
            for (double p = 1 / 4096.0; p < 1; p += 1 / 61.0)
            {
                Assert.Equal(p, ChiSquared.CDF(nu, ChiSquareQuantile.At(nu, p)), 1e-10);
            }
        }
    }
}
