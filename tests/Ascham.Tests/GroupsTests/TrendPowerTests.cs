namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using Xunit;

public class TrendPowerTests
{
    // computed, not published: noncentral t of SciPy 1.10.1, two-sided 0.05, power 0.8
    [Theory]
    [InlineData(6, "4.50")]
    [InlineData(10, "3.17")]
    [InlineData(12, "2.86")]
    [InlineData(18, "2.31")]
    [InlineData(24, "1.988")]
    [InlineData(30, "1.775")]
    [InlineData(36, "1.619")]
    [InlineData(60, "1.253")]
    [InlineData(72, "1.144")]
    public void Detectable_drift_agrees_with_the_table(int arrows, string printed) =>
        new Printed(printed, "SciPy").Matches(TrendPower.Detectable(1, arrows, 0.05, 0.8));

    [Fact] // twelve arrows as two ends of six: each end spans half the string, so the same slope is half the drift
    public void Ends_that_start_anew_show_a_slope_less_well() =>
        Assert.True(TrendPower.Of(2, 6, 1.5, 0.05) < TrendPower.Of(1, 12, 3, 0.05));

    [Fact]
    public void No_drift_is_shown_as_often_as_a_false_alarm() => Assert.Equal(0.1, TrendPower.Of(3, 6, 0, 0.1), 1e-12);

    [Fact] // independent: the test of Trend itself on simulated strings; 4 standard errors
    public void Simulated_strings_are_told_as_often_as_stated()
    {
        const int repeats = 1500;
        var simulated = new Simulated(45);
        int told = 0;
        for (int k = 0; k < repeats; k++)
        {
            Group[] strings = [.. Enumerable.Range(0, 3).Select(_ => Group.Of(Enumerable.Range(0, 6).Select(i => Simulated.Shot(i + 1, 0, (0.4 * i) + simulated.Normal()))))];
            told += Trend.Of(strings, Axis.Vertical, TrendAgainst.ShotOrder, 0.9).Probability < 0.05 ? 1 : 0;
        }

        double power = TrendPower.Of(3, 6, 2, 0.05);
        Assert.Equal(power, told / (double)repeats, 4 * Math.Sqrt(power * (1 - power) / repeats));
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Assert.Contains("arrows must be from 3", Assert.Throws<ArgumentOutOfRangeException>(() => TrendPower.Of(1, 2, 1, 0.05)).Message, StringComparison.Ordinal);
        Assert.Contains("drift must be", Assert.Throws<ArgumentOutOfRangeException>(() => TrendPower.Of(1, 6, double.NaN, 0.05)).Message, StringComparison.Ordinal);
        Assert.Contains("power must be from 0.05", Assert.Throws<ArgumentOutOfRangeException>(() => TrendPower.Detectable(1, 6, 0.05, 0.01)).Message, StringComparison.Ordinal);
    }
}
