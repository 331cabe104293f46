namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using CsCheck;
using Xunit;

public class DragTableTests
{
    static readonly DragTable Table = DragTable.Of([(1e4, 1.6), (1.5e4, 1.5), (2e4, 2.6), (4e4, 2.3)]);

    [Fact]
    public void The_table_goes_through_its_points() => Assert.All(Table.Points, p => Assert.Equal(p.Coefficient, Table.At(p.Reynolds), 1e-12));

    [Fact]
    public void Between_points_it_stays_between_their_values() => Gen.Select(Gen.Int[0, 2], Gen.Double[0, 1]).Sample((i, share) =>
    {
        var (low, high) = (Table.Points[i], Table.Points[i + 1]);
        double at = Table.At(low.Reynolds + share * (high.Reynolds - low.Reynolds));
        Assert.InRange(at, Math.Min(low.Coefficient, high.Coefficient) - 1e-12, Math.Max(low.Coefficient, high.Coefficient) + 1e-12);
    });

    [Theory]
    [InlineData(9999)]
    [InlineData(40001)]
    [InlineData(double.NaN)]
    public void Outside_it_is_refused_with_its_range(double reynolds)
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => Table.At(reynolds));
        Assert.Contains("from 10000 to 40000", e.Message);
    }

    [Fact]
    public void Tables_that_cannot_be_are_refused()
    {
        Assert.Contains("two points", Assert.Throws<ArgumentException>(() => DragTable.Of([(1e4, 2)])).Message);
        Assert.Contains("point 2", Assert.Throws<ArgumentException>(() => DragTable.Of([(1e4, 2), (1e4, 2.1)])).Message);
        Assert.Equal("Coefficient", Assert.Throws<ArgumentOutOfRangeException>(() => DragTable.Of([(1e4, 2), (2e4, -1)])).ParamName);
        Assert.Equal("Reynolds", Assert.Throws<ArgumentOutOfRangeException>(() => DragTable.Of([(double.NaN, 2), (2e4, 1)])).ParamName);
    }

    [Fact]
    public void Tables_with_the_same_points_are_equal() =>
        Assert.Equal((DragTable.Of(Table.Points), DragTable.Of(Table.Points).GetHashCode()), (Table, Table.GetHashCode()));
}
