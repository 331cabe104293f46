namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using Xunit;

public class DroppedWorstTests
{
    [Theory] // simulated elsewhere, 400 000 groups, standard errors beside the values; our table has errors of the same size
    [InlineData(3, 0.588484, 0.0005, 0, 0)]
    [InlineData(4, 0.718579, 0.00042, 0.613964, 0.00054)]
    [InlineData(5, 0.775014, 0.00037, 0.657723, 0.0004)]
    [InlineData(6, 0.808432, 0.00033, 0.694164, 0.00034)]
    [InlineData(8, 0.848403, 0.00028, 0.747668, 0.00028)]
    [InlineData(10, 0.872614, 0.00025, 0.784187, 0.00024)]
    [InlineData(12, 0.889757, 0.00023, 0.810995, 0.00022)]
    [InlineData(20, 0.925395, 0.00028, 0.869936, 0.00028)]
    [InlineData(30, 0.945144, 0.00023, 0.90354, 0.00023)]
    public void Table_agrees_with_another_simulation(int shot, double one, double oneError, double two, double twoError)
    {
        Assert.Equal(one, DroppedWorst.SigmaRatio(shot, 1), 4 * Math.Sqrt(2) * oneError);
        if (shot > 3)
        {
            Assert.Equal(two, DroppedWorst.SigmaRatio(shot, 2), 4 * Math.Sqrt(2) * twoError);
        }
    }

    [Theory] // the study that wrote the table, run short
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(17)]
    public void Table_agrees_with_a_short_run_of_its_own_study(int shot)
    {
        var (one, oneError, two, twoError) = DroppedWorstStudy.Of(shot, 4000);
        Assert.Equal(DroppedWorst.SigmaRatio(shot, 1), one, 4 * oneError);
        if (shot > 3)
        {
            Assert.Equal(DroppedWorst.SigmaRatio(shot, 2), two, 4 * twoError);
        }
    }

    [Theory] // only the best of m groups shown; simulated elsewhere, three digits
    [InlineData(5, 2, "0.857")]
    [InlineData(5, 3, "0.789")]
    [InlineData(5, 5, "0.715")]
    [InlineData(5, 10, "0.631")]
    [InlineData(3, 2, "0.796")]
    [InlineData(3, 3, "0.700")]
    [InlineData(3, 5, "0.600")]
    [InlineData(3, 10, "0.490")]
    public void Best_group_agrees_with_a_simulation(int arrows, int groups, string printed) =>
        new Printed(printed, "simulated").Matches(DroppedWorst.BestGroupRatio(arrows, groups), 3); // the simulation's own error is about a unit of the last digit

    [Fact]
    public void One_group_shown_of_one_is_fair() => Assert.Equal(1, DroppedWorst.BestGroupRatio(7, 1), 1e-9);

    [Fact]
    public void Numbers_outside_the_table_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DroppedWorst.SigmaRatio(3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => DroppedWorst.SigmaRatio(31, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => DroppedWorst.SigmaRatio(10, 3));
    }
}
