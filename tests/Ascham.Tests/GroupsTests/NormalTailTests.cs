namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Xunit;

public class NormalTailTests
{
    [Fact] // at zero: phi/Phi = sqrt(2/pi)
    public void Hazard_at_zero_is_exact() => Assert.Equal(Math.Sqrt(2 / Math.PI), NormalTail.Hazard(0), 1e-15);

    [Fact] // two routes: erfc above the switch at -6, continued fraction below it
    public void Both_routes_agree_at_the_switch() =>
        Assert.Equal(NormalTail.Hazard(Math.BitDecrement(-6)), NormalTail.Hazard(Math.BitIncrement(-6)), 1e-13);

    [Theory] // Gordon (1941), Annals of Mathematical Statistics 12, 364: t < 1/Mills < t + 1/t; the ratio never overflows or vanishes
    [InlineData(8)]
    [InlineData(40)]
    [InlineData(1000)]
    public void Hazard_far_out_stays_between_gordons_bounds(double t) => Assert.InRange(NormalTail.Hazard(-t), t, t + (1 / t));

    [Theory] // central differences
    [InlineData(-9)]
    [InlineData(-2)]
    [InlineData(0.3)]
    [InlineData(3)]
    public void Weight_and_its_slope_are_derivatives(double a)
    {
        const double h = 1e-5;
        Assert.Equal(-(NormalTail.Hazard(a + h) - NormalTail.Hazard(a - h)) / (2 * h), NormalTail.Weight(a), 1e-8);
        Assert.Equal((NormalTail.Weight(a + h) - NormalTail.Weight(a - h)) / (2 * h), NormalTail.WeightSlope(a), 1e-8);
    }

    [Fact]
    public void A_censored_arrow_tells_less_than_one_that_struck()
    {
        for (double a = -30; a < 30; a += 0.25)
        {
            Assert.InRange(NormalTail.Weight(a), 0, 1);
        }
    }
}
