namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class NextArrowTests
{
    [Theory] // radius over s that holds 50, 90 and 95 %; closed form, computed independently
    [InlineData(5, "1.34773", "2.73340", "3.27132")]
    [InlineData(6, "1.31712", "2.61223", "3.09407")]
    [InlineData(10, "1.25904", "2.40264", "2.79643")]
    [InlineData(30, "1.20406", "2.22547", "2.55387")]
    public void Radius_over_s_agrees_with_the_computed_one(int n, params string[] printed)
    {
        Group group = new Simulated(n).Group(n, 1);
        double s = group.Dispersion(0.9).BothAxes.Sample.Meters;
        double[] shares = [0.5, 0.9, 0.95];
        for (int i = 0; i < shares.Length; i++)
        {
            new Printed(printed[i], "computed").Matches(NextArrow.Circle(group, shares[i]).Radius.Meters / s);
        }
    }

    [Theory] // frequency of holding the next arrow in 4000 groups; four standard errors are 0.019
    [InlineData(3, 1)]
    [InlineData(6, 1)]
    [InlineData(6, 2)]
    [InlineData(24, 2)]
    public void The_next_arrow_is_held_as_often_as_stated(int n, double stretch)
    {
        const int groups = 4000;
        var simulated = new Simulated((20 * n) + (int)stretch);
        int circle = 0, ellipse = 0;
        for (int k = 0; k < groups; k++)
        {
            Group group = simulated.Group(n, stretch);
            Impact next = Simulated.At(simulated.Normal(), stretch * simulated.Normal());
            circle += NextArrow.Circle(group, 0.9).Contains(next) ? 1 : 0;
            ellipse += NextArrow.Ellipse(group, 0.9).Contains(next) ? 1 : 0;
        }

        Assert.Equal(0.9, ellipse / (double)groups, 0.019);
        Assert.Equal(0.9, circle / (double)groups, stretch == 1 ? 0.019 : 0.04); // a circle is not made for a stretched group
    }

    [Fact] // with all the arrows in the world it is the Rayleigh radius
    public void A_spread_from_many_arrows_narrows_the_circle()
    {
        Group few = new Simulated(1).Group(3, 1);
        Sigma<Length> pooled = Ascham.Groups.Dispersion.Pooled(Enumerable.Range(0, 200).Select(k => new Simulated(k).Group(6, 1)), 0.9).BothAxes;
        Assert.Equal(2.1459660263 * pooled.Sample.Meters * Math.Sqrt(4.0 / 3), NextArrow.Circle(few, pooled, 0.9).Radius.Meters, 0.01);
    }

    [Fact]
    public void One_arrow_predicts_only_with_a_known_spread()
    {
        Group one = Group.Of(Simulated.Of((1, 2)));
        Assert.Throws<CannotTellException>(() => NextArrow.Circle(one, 0.9));
        Assert.Throws<CannotTellException>(() => NextArrow.Ellipse(one, 0.9));
        Assert.True(NextArrow.Circle(one, new Simulated(1).Group(30, 1).Dispersion(0.9).BothAxes, 0.9).Contains(Simulated.At(1, 2)));
    }

    [Theory] // sigma = 1: circle holding a share, closed form
    [InlineData(0.5, "1.1774100225")]
    [InlineData(0.9, "2.1459660263")]
    [InlineData(0.95, "2.4477468307")]
    [InlineData(0.99, "3.0348542588")]
    public void Circle_holding_a_share_agrees_with_the_constants(double share, string printed)
    {
        var dispersion = new Simulated(9).Group(8, 1).Dispersion(0.9);
        new Printed(printed, "computed").Matches(dispersion.RadiusHolding(share).Value / dispersion.BothAxes.Estimate.Value);
    }
}
