namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

public class SpatialMedianTests
{
    [Fact] // Fermat's point of the 3-4-5 triangle; its sum of distances in closed form
    public void Triangle_has_its_Fermat_point()
    {
        Impact centre = Median((0, 0), (4, 0), (0, 3));
        new Printed("0.69578853", "computed").Matches(centre.Right.Meters);
        new Printed("0.75117611", "computed").Matches(centre.Up.Meters);
        Assert.Equal(Math.Sqrt(25 + (12 * Math.Sqrt(3))), Sum(centre, (0, 0), (4, 0), (0, 3)), 1e-12);
    }

    [Fact] // a convex quadrilateral: where its diagonals cross
    public void Quadrilateral_has_the_crossing_of_its_diagonals()
    {
        Impact centre = Median((0, 0), (4, 0), (5, 3), (0, 2));
        Assert.Equal(20.0 / 11, centre.Right.Meters, 1e-12);
        Assert.Equal(12.0 / 11, centre.Up.Meters, 1e-12);
    }

    [Fact] // a corner of 120 degrees or more is the median itself; the search must come to rest on a mark
    public void A_blunt_corner_is_the_median()
    {
        Assert.Equal(Simulated.At(0, 0), Median((0, 0), (5, 0.5), (-4, 1)));
        Assert.Equal(Simulated.At(0, 0), Median((0, 0), (1, 0), (-0.5, Math.Sqrt(0.75))));
        Assert.Equal(Simulated.At(2, 1), Median((2, 1), (2, 1), (5, 9), (-1, 4)));
    }

    [Fact]
    public void Starting_on_a_mark_that_is_not_the_median_does_not_stall() =>
        Assert.Equal(Simulated.At(1, 0).Right.Meters, Median((0, 0), (1, 0), (9, 0), (-5, 0), (1, 0)).Right.Meters, 1e-12); // the mean, 1.2, is no mark; the middle one is doubled

    [Fact] // no step in any direction gets nearer to all
    public void No_neighbour_has_a_smaller_sum() => Simulated.Impacts.Sample(
        impacts =>
        {
            Impact centre = SpatialMedian.Of(Group.Of(impacts)).Centre;
            double best = Sum(centre, impacts);
            for (int k = 0; k < 8; k++)
            {
                var (s, c) = Math.SinCos(k * Math.PI / 4);
                foreach (double step in new[] { 1e-5, 1e-2, 1 })
                {
                    Assert.True(Sum(Simulated.At(centre.Right.Meters + (step * c), centre.Up.Meters + (step * s)), impacts) >= best * (1 - 1e-14));
                }
            }
        },
        iter: 200);

    [Fact]
    public void A_wild_arrow_moves_the_mean_and_hardly_the_median()
    {
        Group sound = new Simulated(2).Group(11, 1), wild = Group.Of([.. sound.Impacts, Simulated.At(1000, 0)]);
        SpatialMedian before = SpatialMedian.Of(sound), after = SpatialMedian.Of(wild);
        Assert.InRange(double.Hypot((after.Centre.Right - before.Centre.Right).Meters, (after.Centre.Up - before.Centre.Up).Meters), 0, 0.5);
        Assert.InRange(after.FromMean.Meters, 80, 90);
    }

    [Theory] // what the documentation says of efficiency and of sigma from the median radius, in 4000 groups
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(9)]
    [InlineData(70)]
    public void Factors_for_small_groups_hold_in_simulation(int n)
    {
        int groups = n > 20 ? 1000 : 4000;
        var simulated = new Simulated(800 + n);
        SpatialMedian[] medians = [.. Enumerable.Range(0, groups).Select(_ => SpatialMedian.Of(simulated.Group(n, 1)))];
        // Sigma from the median radius varies by about 1/sqrt(nu) of itself; variance of the centre by sqrt(1/groups).
        Assert.Equal(1, medians.Average(m => m.Sigma()!.Value.Meters), 4 * 0.8 / Math.Sqrt(n * groups));
        double variance = medians.Average(m => Math.Pow(m.Centre.Right.Meters, 2) + Math.Pow(m.Centre.Up.Meters, 2)) / 2;
        Assert.Equal(1 / SpatialMedian.EfficiencyOfCentre(n), n * variance, 4 * 1.4 / Math.Sqrt(groups));
        Assert.Equal(0.95, medians.Count(m => m.FromMean.Meters * Math.Sqrt(n) < 1.3) / (double)groups, 0.035);
    }

    [Fact]
    public void One_arrow_is_its_own_median_and_tells_no_spread()
    {
        SpatialMedian one = SpatialMedian.Of(Group.Of(Simulated.Of((3, 4))));
        Assert.Equal(Simulated.At(3, 4), one.Centre);
        Assert.Null(one.Sigma());
        Assert.Throws<CannotTellException>(() => SpatialMedian.Of(Group.Of([Simulated.Shot(1, 0, 0, called: true)])));
        Assert.Throws<MissedArrowsException>(() => SpatialMedian.Of(Group.Of([Simulated.Shot(1, 0, 0), Simulated.Lost(2, Miss.Low)])));
    }

    static Impact Median(params (double, double)[] points) => SpatialMedian.Of(Group.Of(Simulated.Of(points))).Centre;

    static double Sum(Impact centre, params (double, double)[] points) => Sum(centre, Simulated.Of(points));

    static double Sum(Impact centre, Impact[] impacts) =>
        impacts.Sum(i => double.Hypot((i.Right - centre.Right).Meters, (i.Up - centre.Up).Meters));
}
