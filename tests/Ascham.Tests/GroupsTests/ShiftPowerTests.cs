namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.AirTests;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class ShiftPowerTests
{
    public static TheoryData<int> PowerRows => AuthorityFile.Rows("shift-power.csv");

    public static TheoryData<int> ArrowRows => AuthorityFile.Rows("shift-arrows.csv");

    public static TheoryData<int> DetectableRows => AuthorityFile.Rows("shift-detectable.csv");

    public static TheoryData<int> DistanceRows => AuthorityFile.Rows("shift-by-distance.csv");

    [Theory]
    [MemberData(nameof(PowerRows))]
    public void Power_agrees_with_the_table(int row)
    {
        var table = new AuthorityFile("shift-power.csv");
        foreach (double shift in new[] { 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3 })
        {
            table.Cell(row, FormattableString.Invariant($"d{shift}"))!.Matches(ShiftPower.Of((int)table.Value(row, "n"), shift, ShiftTest.RoundGroups, 0.05));
        }
    }

    [Theory]
    [MemberData(nameof(ArrowRows))]
    public void Arrows_agree_with_the_table(int row)
    {
        var table = new AuthorityFile("shift-arrows.csv");
        double shift = table.Value(row, "delta_over_sigma");
        foreach (var (column, test) in new[] { ("circF", ShiftTest.RoundGroups), ("hotelling", ShiftTest.AnyShape), ("vertical_t", ShiftTest.OneAxis) })
        {
            Assert.Equal((int?)table.Value(row, $"{column}_p80"), ShiftPower.Arrows(shift, test, 0.05, 0.8));
            Assert.Equal((int?)table.Value(row, $"{column}_p90"), ShiftPower.Arrows(shift, test, 0.05, 0.9));
        }
    }

    [Theory]
    [MemberData(nameof(DetectableRows))]
    public void Detectable_shift_agrees_with_the_table(int row)
    {
        var table = new AuthorityFile("shift-detectable.csv");
        int n = (int)table.Value(row, "n_per_group");
        table.Cell(row, "MDS_sigma_circularF_p80")!.Matches(ShiftPower.Detectable(n, ShiftTest.RoundGroups, 0.05, 0.8));
        table.Cell(row, "MDS_sigma_vertical_t_p80")!.Matches(ShiftPower.Detectable(n, ShiftTest.OneAxis, 0.05, 0.8));
    }

    [Theory]
    [MemberData(nameof(DistanceRows))]
    public void Three_laws_of_distance_agree_with_the_table(int row)
    {
        var table = new AuthorityFile("shift-by-distance.csv");
        Length distance = table.Value(row, "distance_yd").Yards;
        Angle sigma = 1.Milliradians;
        foreach (var (law, kind) in new[] { ("const", ShiftKind.Constant), ("linear", ShiftKind.WithDistance), ("quad", ShiftKind.WithSquare) })
        {
            var shift = new PlannedShift(3.Centimetres, 40.Yards, kind);
            table.Cell(row, $"d_{law}")!.Matches(shift.InSigmas(distance, sigma, Length.Zero));
            table.Cell(row, $"pow12_{law}")!.Matches(shift.Power(12, distance, sigma, Length.Zero, ShiftTest.RoundGroups, 0.05));
            Assert.Equal((int?)table.Value(row, $"n80_{law}"), shift.Arrows(distance, sigma, Length.Zero, ShiftTest.RoundGroups, 0.05, 0.8));
        }
    }

    // computed, not published: noncentral F of SciPy 1.10.1; n = 12, sigma 1 mrad, power 0.8
    [Theory]
    [InlineData(20, "2.399")]
    [InlineData(40, "4.797")]
    [InlineData(60, "7.196")]
    [InlineData(80, "9.595")]
    [InlineData(100, "11.993")]
    public void Detectable_shift_in_centimetres(double yards, string printed) =>
        new Printed(printed, "SciPy").Matches(ShiftPower.Detectable(12, ShiftTest.RoundGroups, 0.05, 0.8) * 1e-3 * yards.Yards.Centimeters);

    [Theory] // large samples: n = 2 lambda / delta² with lambda of the noncentral chi-square; SciPy 1.10.1
    [InlineData(ShiftTest.RoundGroups, 0.8, 9.6347)]
    [InlineData(ShiftTest.OneAxis, 0.8, 7.8489)]
    [InlineData(ShiftTest.RoundGroups, 0.9, 12.6539)]
    [InlineData(ShiftTest.OneAxis, 0.9, 10.5074)]
    public void Many_arrows_follow_the_large_sample_rule(ShiftTest test, double power, double lambda) =>
        Assert.Equal(2 * lambda / (0.02 * 0.02), ShiftPower.Arrows(0.02, test, 0.05, power)!.Value, 4.0);

    [Fact]
    public void No_shift_is_shown_as_often_as_a_false_alarm() =>
        Assert.Equal(0.07, ShiftPower.Of(9, 0, ShiftTest.AnyShape, 0.07), 1e-12);

    [Fact] // independent: the test itself, on simulated groups; reference simulation 0.56876 with standard error 0.00078
    public void Simulated_groups_are_told_apart_as_often_as_stated()
    {
        const int n = 6, repeats = 20_000;
        var simulated = new Simulated(6);
        int told = 0;
        for (int i = 0; i < repeats; i++)
        {
            Moments a = simulated.Group(n, 1).Moments, b = simulated.Group(n, 1).Moments;
            double nu = 4 * (n - 1), s2 = (a.SumRight + a.SumUp + b.SumRight + b.SumUp) / nu;
            double right = a.MeanRight - b.MeanRight + 1.5, up = a.MeanUp - b.MeanUp;
            told += Math.Pow(1 + (((right * right) + (up * up)) / (nu * s2 * 2.0 / n)), -nu / 2) < 0.05 ? 1 : 0;
        }

        Assert.Equal(ShiftPower.Of(n, 1.5, ShiftTest.RoundGroups, 0.05), told / (double)repeats, 4 * Math.Sqrt(0.57 * 0.43 / repeats));
    }

    [Theory]
    [InlineData(ShiftKind.Constant, 20.0)]
    [InlineData(ShiftKind.WithDistance, null)]
    [InlineData(ShiftKind.WithSquare, 80.0)]
    public void The_best_distance_is_near_anywhere_or_far(ShiftKind kind, double? yards) =>
        Assert.Equal(yards, new PlannedShift(3.Centimetres, 40.Yards, kind).BestDistance(20.Yards, 80.Yards, 1.Milliradians, Length.Zero)?.Yards);

    [Fact] // a coarse reading hurts most close up, so even an angle then shows best far out
    public void A_reading_floor_sends_an_angle_out() =>
        Assert.Equal(80, new PlannedShift(3.Centimetres, 40.Yards, ShiftKind.WithDistance).BestDistance(20.Yards, 80.Yards, 1.Milliradians, 5.Millimetres)!.Value.Yards, 1e-12);

    [Fact]
    public void Too_many_arrows_are_not_promised() =>
        Assert.Null(ShiftPower.Arrows(1e-4, ShiftTest.RoundGroups, 0.05, 0.8));

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        var shift = new PlannedShift(3.Centimetres, 40.Yards, ShiftKind.Constant);
        Assert.Contains("arrows must be from 2", Assert.Throws<ArgumentOutOfRangeException>(() => ShiftPower.Of(1, 1, ShiftTest.RoundGroups, 0.05)).Message, StringComparison.Ordinal);
        Assert.Contains("shift must be", Assert.Throws<ArgumentOutOfRangeException>(() => ShiftPower.Of(5, double.NaN, ShiftTest.RoundGroups, 0.05)).Message, StringComparison.Ordinal);
        Assert.Contains("power must be above falseAlarm", Assert.Throws<ArgumentOutOfRangeException>(() => ShiftPower.Arrows(1, ShiftTest.RoundGroups, 0.5, 0.4)).Message, StringComparison.Ordinal);
        Assert.Contains("test must be", Assert.Throws<ArgumentOutOfRangeException>(() => ShiftPower.Of(5, 1, (ShiftTest)9, 0.05)).Message, StringComparison.Ordinal);
        Assert.Contains("sigma must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => shift.InSigmas(40.Yards, Angle.Zero, Length.Zero)).Message, StringComparison.Ordinal);
        Assert.Contains("reading must be", Assert.Throws<ArgumentOutOfRangeException>(() => shift.InSigmas(40.Yards, 1.Milliradians, (-1).Millimetres)).Message, StringComparison.Ordinal);
        Assert.Contains("distance must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => shift.At(Length.Zero)).Message, StringComparison.Ordinal);
        Assert.Contains("nearest must be", Assert.Throws<ArgumentOutOfRangeException>(() => shift.BestDistance(80.Yards, 20.Yards, 1.Milliradians, Length.Zero)).Message, StringComparison.Ordinal);
    }
}
