namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Xunit;
using static Ascham.Tests.GroupsTests.WorkedExample;

public class PermutationTests
{
    [Theory] // all 924 deals, computed with NumPy 1.24
    [InlineData(PermutationStatistic.Distance, 72)]
    [InlineData(PermutationStatistic.Hotelling, 104)]
    public void Worked_example_gives_the_computed_count(PermutationStatistic statistic, int count)
    {
        Permutation test = Permutation.Test(G1, G2, statistic, 1000, 1);
        Assert.True(test.Exact);
        Assert.Equal(924, test.Deals);
        Assert.Equal(count / 924.0, test.Probability, 1e-15);
        Assert.Equal(2 / 924.0, test.Smallest, 1e-15);
    }

    [Theory] // three standard errors of a frequency near 0.1 in 20 000
    [InlineData(PermutationStatistic.Distance, 72)]
    [InlineData(PermutationStatistic.Hotelling, 104)]
    public void Drawn_deals_agree_with_all_deals(PermutationStatistic statistic, int count)
    {
        static Group Shorter(Group g) => g;
        Permutation drawn = Permutation.Test(Shorter(G1), G2, statistic, 900, 7);
        Assert.False(drawn.Exact);
        Assert.Equal(count / 924.0, drawn.Probability, 0.035);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer()
    {
        Assert.Equal(Permutation.Test(G1, G2, PermutationStatistic.Distance, 500, 3), Permutation.Test(G1, G2, PermutationStatistic.Distance, 500, 3));
        Assert.NotEqual(Permutation.Test(G1, G2, PermutationStatistic.Distance, 500, 3), Permutation.Test(G1, G2, PermutationStatistic.Distance, 500, 4));
    }

    [Fact] // groups of unequal size have no twin deals
    public void Groups_far_apart_reach_the_smallest_probability()
    {
        Group far = CentreShiftTests.Moved(G2, 100, 0), less = Group.Of(G1.Impacts.Take(4).ToArray());
        Permutation even = Permutation.Test(G1, far, PermutationStatistic.Distance, 1000, 1), odd = Permutation.Test(less, far, PermutationStatistic.Distance, 1000, 1);
        Assert.Equal(even.Smallest, even.Probability);
        Assert.Equal(odd.Smallest, odd.Probability);
        Assert.Equal(1 / 210.0, odd.Smallest, 1e-15);
    }

    [Fact] // moving or turning the face changes no deal
    public void Turning_and_moving_both_groups_changes_nothing()
    {
        static Group Turn(Group g) => Group.Of(g.Impacts.Select(i => Simulated.At((0.6 * i.Right.Meters) - (0.8 * i.Up.Meters) + 40, (0.8 * i.Right.Meters) + (0.6 * i.Up.Meters) - 7)).ToArray());
        foreach (PermutationStatistic statistic in Enum.GetValues<PermutationStatistic>())
        {
            Assert.Equal(Permutation.Test(G1, G2, statistic, 1000, 1).Probability, Permutation.Test(Turn(G1), Turn(G2), statistic, 1000, 1).Probability);
        }
    }

    [Fact]
    public void Impacts_in_one_place_cannot_be_told_apart()
    {
        Group hole = Group.Of(Simulated.Of((1, 1), (1, 1), (1, 1)));
        Assert.Throws<CannotTellException>(() => Permutation.Test(hole, hole, PermutationStatistic.Distance, 1000, 1));
        Group line = Group.Of(Simulated.Of((1, 1), (2, 2), (3, 3)));
        Assert.Throws<CannotTellException>(() => Permutation.Test(line, line, PermutationStatistic.Hotelling, 1000, 1));
        Assert.Equal(1, Permutation.Test(line, line, PermutationStatistic.Distance, 1000, 1).Probability, 1e-12);
    }
}
