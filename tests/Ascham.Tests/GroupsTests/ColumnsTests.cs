namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using UnitsNet;
using Xunit;

public class ColumnsTests
{
    [Theory] // relation: columns are impacts by another door, whatever the number is to the blocks they are summed in
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(127)]
    [InlineData(128)]
    [InlineData(130)]
    [InlineData(1000)]
    public void Columns_of_metres_give_the_group_of_the_same_impacts(int n)
    {
        var simulated = new Simulated(n);
        double[] right = [.. Enumerable.Range(0, n).Select(_ => 7 + simulated.Normal())], up = [.. right.Select(r => (0.3 * r) + simulated.Normal())];
        Impact[] impacts = [.. right.Zip(up, Simulated.At)];
        Group columns = Group.OfMetres(right, up, 20.Metres), group = Group.Of(impacts);

        Assert.Equal(impacts, columns.Impacts);
        Assert.Equal(group.Moments, columns.Moments);
        Assert.Equal(20, columns.Distance!.Value.Meters);
        // independent: plain sums, well conditioned here
        double meanRight = right.Average(), meanUp = up.Average();
        Assert.Equal(meanRight, columns.Moments.MeanRight, 1e-12);
        Assert.Equal(right.Sum(r => (r - meanRight) * (r - meanRight)), columns.Moments.SumRight, 1e-9);
        Assert.Equal(right.Zip(up, (r, u) => (r - meanRight) * (u - meanUp)).Sum(), columns.Moments.SumCross, 1e-9);
    }

    [Fact] // relation: other units, and a list that is no array, change the last digits at most
    public void Impacts_in_inches_or_from_any_list_have_the_same_moments()
    {
        Impact[] metres = [.. new Simulated(9).Group(300, 2).Impacts];
        Group expected = Group.Of(metres);
        Group inches = Group.Of(metres.Select((i, k) => k % 2 == 0 ? i : new Impact(i.Right.ToUnit(UnitsNet.Units.LengthUnit.Inch), i.Up.ToUnit(UnitsNet.Units.LengthUnit.Centimeter))));
        Moments list = Moments.Of(new List<Impact>(metres));
        Assert.Equal(expected.Moments, list);
        Assert.Equal(expected.Moments.MeanUp, inches.Moments.MeanUp, 1e-14);
        Assert.Equal(expected.Moments.SumCross, inches.Moments.SumCross, 1e-11);
    }

    [Fact] // later changes of the caller's columns do not reach into the group
    public void Columns_are_copied()
    {
        double[] right = [1, 2, 4], up = [0, 1, 0];
        Group group = Group.OfMetres(right, up);
        right[0] = 100;
        Assert.Equal(1, group.Impacts[0].Right.Meters);
        Assert.Equal(7.0 / 3, group.Centre(Axis.Horizontal, 0.9).Value.Meters, 1e-15);
    }

    [Fact]
    public void Columns_that_cannot_be_impacts_are_refused()
    {
        Assert.Contains("they held 2 and 3", Assert.Throws<ArgumentException>(() => Group.OfMetres([1, 2], [1, 2, 3])).Message, StringComparison.Ordinal);
        Assert.Contains("they held 0 and 0", Assert.Throws<ArgumentException>(() => Group.OfMetres([], [])).Message, StringComparison.Ordinal);
        var missing = Assert.Throws<ArgumentException>(() => Group.OfMetres([1, 2], [1, double.NaN]));
        Assert.Contains("row 1 (from 0) was 2 right, NaN up", missing.Message, StringComparison.Ordinal);
        Assert.Equal("up", missing.ParamName);
        Assert.Equal("right", Assert.Throws<ArgumentException>(() => Group.OfMetres([double.PositiveInfinity], [1])).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Group.OfMetres([1], [1], Length.Zero));
    }

    [Theory] // bounded memory: beside the copy that the group keeps, next to nothing is allocated
    [InlineData(200_000)]
    public void Summarising_many_impacts_allocates_little_beside_the_copy(int n)
    {
        double[] right = new double[n], up = [.. Enumerable.Range(0, n).Select(i => (double)(i % 7))];
        right[0] = 1;
        Impact[] impacts = [.. right.Zip(up, Simulated.At)];
        Assert.InRange(Allocated(() => Group.OfMetres(right, up).Dispersion(0.9)) - (16.0 * n), 0, 100_000);
        Assert.InRange(Allocated(() => Group.Of(impacts).Dispersion(0.9)) - (32.0 * n), 0, 100_000);
    }

    static long Allocated(Func<object> work)
    {
        work();
        long before = GC.GetAllocatedBytesForCurrentThread();
        GC.KeepAlive(work());
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
