namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using MathNet.Numerics.Distributions;
using Xunit;

public class InverseNormalTests
{
    [Theory] // published: Wichura 1988 gives these three to check an implementation
    [InlineData(0.25, "-0.6744897501960817")]
    [InlineData(0.001, "-3.090232306167814")]
    [InlineData(1e-20, "-9.262340089798408")]
    public void Published_points(double probability, string point) =>
        new Printed(point, "Wichura 1988, AS 241, p. 480").Matches(InverseNormal.At(Lanes.Of(probability))[6], slack: 4); // 2 units in the last place of a double

    [Fact] // independent: MathNet's inverse, from another approximation
    public void Agrees_with_another_inverse()
    {
        for (int i = 1; i < 5000; i++)
        {
            double p = i / 5000.0;
            Assert.Equal(Normal.InvCDF(0, 1, p), InverseNormal.At(Lanes.Of(p)).Value, 2e-14);
        }
    }

    [Fact]
    public void Is_odd_and_rises_also_across_its_seams()
    {
        double last = double.NegativeInfinity;
        foreach (double p in new[] { 1e-13, 1.3e-11, 1.4e-11, 1e-3, 0.075 - 1e-12, 0.075 + 1e-12, 0.3, 0.5, 0.7, 0.925 - 1e-12, 0.925 + 1e-12, 0.999 })
        {
            double z = InverseNormal.At(Lanes.Of(p)).Value;
            Assert.True(z > last);
            Assert.Equal(-z, InverseNormal.At(Lanes.Of(1 - p)).Value, 1e-3 / (1e3 * p) * 1e-10 + 1e-12 + (p < 1e-6 ? 1e-3 : 0)); // 1 - p is itself rounded
            last = z;
        }
    }
}
