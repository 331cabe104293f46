namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using Xunit;

public class MarcumQTests
{
    // computed, not published: mpmath with 30 digits, equal to the noncentral chi-square of SciPy 1.10.1
    [Theory]
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
    public void Upper_agrees_with_thirty_digits(double a, double b, string printed)
    {
        new Printed(printed, "mpmath").Matches(MarcumQ.Upper(a, b), 12); // 12: rounding of a hundred terms
        Assert.Equal(1, MarcumQ.Upper(a, b) + MarcumQ.Lower(a, b), 1e-14);
    }

    [Theory] // Q(a, a) = (1 + exp(−a²) I0(a²))/2; Nuttall (1975), IEEE Trans. Inf. Theory 21, 95
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(11)]
    [InlineData(26)] // exp(26²) is the largest Bessel function a double holds
    public void Equal_arguments_obey_the_identity(double a) =>
        Assert.Equal((1 + (MathNet.Numerics.SpecialFunctions.BesselI0(a * a) * Math.Exp(-a * a))) / 2, MarcumQ.Upper(a, a), 1e-7); // 1e-7: a polynomial Bessel function

    [Fact] // far from the origin the circle's edge is straight: Q(a, a) = 1/2 + 1/(2 a sqrt(2 pi)) to first order
    public void The_largest_arguments_still_add_up()
    {
        const double a = MarcumQ.Largest;
        Assert.Equal(0.5 + (1 / (2 * a * Math.Sqrt(2 * Math.PI))), MarcumQ.Upper(a, a), 1e-5);
        Assert.Equal(1, MarcumQ.Upper(a, a) + MarcumQ.Lower(a, a), 1e-12);
    }

    [Fact]
    public void A_far_tail_keeps_its_digits() => // no offset: exp(−b²/2)
        Assert.Equal(1, MarcumQ.Upper(0, 30) / Math.Exp(-450), 1e-10);

    [Fact]
    public void A_small_circle_keeps_its_digits() => // density times area: exp(−a²/2) b²/2
        Assert.Equal(1, MarcumQ.Lower(3, 1e-6) / (Math.Exp(-4.5) * 5e-13), 1e-10);
}
