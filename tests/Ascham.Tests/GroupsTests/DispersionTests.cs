namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class DispersionTests
{
    [Fact] // by hand: heights 0, 3, 6 cm have s = 3 cm; across 0, 1, 2 cm have s = 1 cm; both axes (18 + 2)/4 = 5 cm²
    public void Three_arrows_worked_by_hand()
    {
        Dispersion<Length> dispersion = Group.Of(Simulated.Of((0, 0), (0.01, 0.03), (0.02, 0.06))).Dispersion(0.9);

        Assert.Equal(0.03, dispersion.Vertical.Sample.Meters, 1e-12);
        Assert.Equal(0.01, dispersion.Horizontal.Sample.Meters, 1e-12);
        Assert.Equal(Math.Sqrt(5e-4), dispersion.BothAxes.Sample.Meters, 1e-12);
        Assert.Equal((2, 2, 4), (dispersion.Vertical.DegreesOfFreedom, dispersion.Horizontal.DegreesOfFreedom, dispersion.BothAxes.DegreesOfFreedom));
        // c4 at n = 3 is sqrt(pi)/2, exactly.
        Assert.Equal(0.03 * 2 / Math.Sqrt(Math.PI), dispersion.Vertical.Estimate.Value.Meters, 1e-12);
        // sd of s over sigma is sqrt(1 - c4²), so that of s/c4 is sqrt(4/pi - 1) at n = 3.
        Assert.Equal(dispersion.Vertical.Estimate.Value.Meters * Math.Sqrt((4 / Math.PI) - 1), dispersion.Vertical.Estimate.StandardError.Meters, 1e-12);
        // nu = 2: chi-square quantile is -2 ln(1 - p).
        Assert.Equal(0.03 * Math.Sqrt(2 / (-2 * Math.Log(0.05))), dispersion.Vertical.Estimate.Low.Meters, 1e-12);
        Assert.Equal(0.03 * Math.Sqrt(2 / (-2 * Math.Log(0.95))), dispersion.Vertical.Estimate.High.Meters, 1e-12);
    }

    [Theory] // Rayleigh radii over sigma; computed, mpmath; sqrt(2 ln 2) and so on
    [InlineData(0.50, "1.1774100225")]
    [InlineData(0.90, "2.1459660263")]
    [InlineData(0.95, "2.4477468307")]
    [InlineData(0.99, "3.0348542588")]
    public void Radius_holding_a_share_is_the_rayleigh_quantile(double share, string printed)
    {
        Dispersion<Length> dispersion = Group.Of(Simulated.Of((0, 0), (1, 2), (3, 1))).Dispersion(0.9);
        new Printed(printed, "mpmath").Matches(dispersion.RadiusHolding(share).Value / dispersion.BothAxes.Estimate.Value);
        new Printed(printed, "mpmath").Matches(dispersion.RadiusHolding(share).High / dispersion.BothAxes.Estimate.High);
    }

    [Theory] // thirty arrows: each group gives up one degree of freedom per axis
    [InlineData(10, 3, 40)]
    [InlineData(3, 10, 54)]
    [InlineData(1, 30, 58)]
    public void Pooling_spends_two_degrees_of_freedom_a_group(int groups, int n, double expected)
    {
        var simulated = new Simulated(7);
        Assert.Equal(expected, Dispersion.Pooled(Enumerable.Range(0, groups).Select(_ => simulated.Group(n, 1)), 0.9).BothAxes.DegreesOfFreedom);
    }

    [Fact]
    public void Moving_the_sight_between_groups_does_not_widen_the_pool()
    {
        Impact[] points = Simulated.Of((0, 0), (0.1, 0.3), (0.2, -0.1)), moved = [.. points.Select(p => Simulated.At(p.Right.Meters, p.Up.Meters + 0.5))];
        double apart = Dispersion.Pooled([Group.Of(points), Group.Of(moved)], 0.9).Vertical.Sample.Meters;
        Assert.Equal(Group.Of(points).Dispersion(0.9).Vertical.Sample.Meters, apart, 1e-12);
    }

    [Fact]
    public void Same_angles_at_two_distances_pool_to_the_same_angle()
    {
        (double, double)[] milliradians = [(0, 0), (1, 3), (2, -1), (-1, 0.5)];
        Group near = At(20), far = At(60);
        Dispersion<Angle> pooled = Dispersion.PooledAngle([near, far], 0.9);

        Assert.Equal(near.Dispersion(0.9).Vertical.Sample.Meters / 20 * 1000, pooled.Vertical.Sample.Milliradians, 1e-9);
        Assert.Equal(UnitsNet.Units.AngleUnit.Milliradian, pooled.Vertical.Estimate.Value.Unit);
        Assert.Equal(6, pooled.Horizontal.DegreesOfFreedom);
        Assert.Equal(pooled.Horizontal, Dispersion.PooledAngle([near, far], Axis.Horizontal, 0.9));

        Group At(double distance) => Group.Of(Simulated.Of([.. milliradians.Select(m => (m.Item1 * distance / 1000, m.Item2 * distance / 1000))]), Length.FromMeters(distance));
    }

    [Fact]
    public void A_group_of_one_adds_nothing_to_a_pool()
    {
        Group three = Group.Of(Simulated.Of((0, 0), (1, 2), (3, 1))), one = Group.Of(Simulated.Of((9, 9)));
        Assert.Equal(three.Dispersion(0.9).Vertical.Sample, Dispersion.Pooled([three, one], 0.9).Vertical.Sample);
    }

    [Fact]
    public void Groups_at_two_distances_do_not_pool_as_lengths()
    {
        Group near = Group.Of(Simulated.Of((0, 0), (1, 2)), Length.FromMeters(20)), far = Group.Of(Simulated.Of((0, 0), (1, 2)), Length.FromMeters(30));
        Assert.Contains("20 m and 30 m. PooledAngle", Assert.Throws<ArgumentException>(() => Dispersion.Pooled([near, far], 0.9)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_without_distance_do_not_pool_as_angles() =>
        Assert.Contains("must all have a distance", Assert.Throws<ArgumentException>(() => Dispersion.PooledAngle([Group.Of(Simulated.Of((0, 0), (1, 2)))], 0.9)).Message, StringComparison.Ordinal);

    [Fact]
    public void No_group_does_not_pool() =>
        Assert.Contains("at least one group", Assert.Throws<ArgumentException>(() => Dispersion.Pooled([], 0.9)).Message, StringComparison.Ordinal);
}
