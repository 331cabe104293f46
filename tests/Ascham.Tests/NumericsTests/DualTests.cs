namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using CsCheck;
using Xunit;

public class DualTests
{
    [Fact]
    public void A_formula_on_duals_gives_its_derivative() => Gen.Double[0.1, 5].Sample(x =>
    {
        // f = (x² - 3x)/(sqrt(x) + 2x); f' by hand with the quotient rule.
        var d = new Dual(x, 1);
        Dual f = (d * d - 3.0 * d) / (Dual.SquareRoot(d) + d + d);
        double u = x * x - 3 * x, v = Math.Sqrt(x) + 2 * x;
        Assert.Equal(u / v, f.Value, 1e-12 * (1 + Math.Abs(f.Value)));
        double slope = ((2 * x - 3) * v - u * (0.5 / Math.Sqrt(x) + 2)) / (v * v);
        Assert.Equal(slope, f.Slope, 1e-11 * (1 + Math.Abs(slope)));
    });

    [Fact]
    public void Constants_have_no_slope() => Assert.Equal(0, (Dual.Of(3) * Dual.Of(4) / Dual.Of(5)).Slope);
}
