namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class RangeMeasureTests
{
    [Theory] // figure of merit: d2 of D. C. Montgomery, Introduction to Statistical Quality Control, appendix VI; extreme spread: Grubbs (1964), recalled, small simulation
    [InlineData(2, "1.128")]
    [InlineData(3, "1.693")]
    [InlineData(4, "2.059")]
    [InlineData(5, "2.326")]
    [InlineData(6, "2.534")]
    [InlineData(7, "2.704")]
    [InlineData(8, "2.847")]
    [InlineData(9, "2.970")]
    [InlineData(10, "3.078")]
    [InlineData(15, "3.472")]
    [InlineData(20, "3.735")]
    public void Figure_of_merit_agrees_with_the_printed_d2(int n, string printed) =>
        new Printed(printed, "Montgomery, appendix VI, d2").Matches(Expected(RangeKind.FigureOfMerit, n));

    [Fact] // exact at two arrows, and at three by an integral over shapes of triangles
    public void Extreme_spread_agrees_with_the_exact_values()
    {
        Assert.Equal(Math.Sqrt(Math.PI), Expected(RangeKind.ExtremeSpread, 2), 1e-6);
        // sqrt(2) Gamma(5/2)/Gamma(2) times the mean of sqrt(1 + sin(theta) cos(psi)), psi within 60 degrees, cos(theta) uniform (Kendall).
        double shape = MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
            (u, psi) => Math.Sqrt(1 + (Math.Sqrt(1 - (u * u)) * Math.Cos(psi))), -1, 1, -Math.PI / 3, Math.PI / 3, 128) / 2 / (2 * Math.PI / 3);
        Assert.Equal(Math.Sqrt(2) * MathNet.Numerics.SpecialFunctions.Gamma(2.5) * shape, Expected(RangeKind.ExtremeSpread, 3), 2e-6);
    }

    [Fact] // closed form at every size
    public void Mean_radius_agrees_with_its_closed_form()
    {
        for (int n = 2; n <= 20; n++)
        {
            Assert.Equal(Math.Sqrt(Math.PI / 2 * (n - 1) / n), Expected(RangeKind.MeanRadius, n), 1e-5);
        }
    }

    [Theory] // an independent simulation of 4e8 groups, seed 20240601, standard error 5e-5
    [InlineData(4, 2.793468, 3.034080)]
    [InlineData(6, 3.275252, 3.679238)]
    [InlineData(10, 3.811599, 4.422348)]
    [InlineData(13, 4.063927, 4.778433)]
    [InlineData(20, 4.451269, 5.330673)]
    public void Spread_and_diagonal_agree_with_another_simulation(int n, double spread, double diagonal)
    {
        Assert.Equal(spread, Expected(RangeKind.ExtremeSpread, n), 2e-4);
        Assert.Equal(diagonal, Expected(RangeKind.Diagonal, n), 2e-4);
    }

    [Theory] // means of 4000 measured groups against the table, four standard errors
    [InlineData(RangeKind.ExtremeSpread)]
    [InlineData(RangeKind.Diagonal)]
    [InlineData(RangeKind.FigureOfMerit)]
    [InlineData(RangeKind.MeanRadius)]
    public void Measured_groups_average_to_the_table_and_vary_as_it_says(RangeKind kind)
    {
        var simulated = new Simulated(33);
        double[] seen = [.. Enumerable.Range(0, 4000).Select(_ => RangeMeasure.Of(simulated.Group(7, 1), kind).Value.Meters)];
        var (mean, variation) = RangeTable.Of(kind, 7);
        Assert.Equal(mean, seen.Average(), 4 * variation * mean / Math.Sqrt(4000));
        double sd = Math.Sqrt(seen.Sum(x => (x - seen.Average()) * (x - seen.Average())) / 3999);
        Assert.Equal(variation * mean, sd, 4 * variation * mean / Math.Sqrt(8000));
    }

    [Theory] // quantiles of the extreme spread over sigma, simulated 4e8 times: 5, 25, 75, 95, 99 %
    [InlineData(2, 0.45301, 1.07284, 2.35495, 3.46182, 4.29206)]
    [InlineData(3, 1.06845, 1.76321, 2.97766, 3.98844, 4.75255)]
    [InlineData(5, 1.80368, 2.47989, 3.59281, 4.51374, 5.21704)]
    [InlineData(10, 2.67957, 3.29065, 4.28025, 5.10812, 5.75069)]
    [InlineData(20, 3.43626, 3.98146, 4.87020, 5.62659, 6.22239)]
    public void Interval_of_sigma_from_the_extreme_spread_is_close_to_the_exact_one(int n, double q05, double q25, double q75, double q95, double q99)
    {
        var measure = new RangeMeasure(RangeKind.ExtremeSpread, Length.FromMeters(1), n);
        Estimate<Length> ninety = measure.ToSigma(0.9).Estimate, half = measure.ToSigma(0.5).Estimate, wide = measure.ToSigma(0.98).Estimate;
        Assert.Equal(1, ninety.High.Meters * q05, 0.02);
        Assert.Equal(1, ninety.Low.Meters * q95, 0.02);
        Assert.Equal(1, half.High.Meters * q25, 0.02);
        Assert.Equal(1, half.Low.Meters * q75, 0.02);
        Assert.Equal(1, wide.Low.Meters * q99, 0.05);
    }

    [Fact] // two arrows: the extreme spread is exactly a multiple of chi with two degrees of freedom
    public void Two_arrows_give_the_same_sigma_as_the_pooled_estimate()
    {
        Group two = Group.Of(Simulated.Of((0, 0), (3, 4)));
        Sigma<Length> tape = RangeMeasure.Of(two, RangeKind.ExtremeSpread).ToSigma(0.9), full = two.Dispersion(0.9).BothAxes;
        Assert.Equal(full.Estimate.Value.Meters, tape.Estimate.Value.Meters, 1e-5);
        Assert.Equal(full.Estimate.High.Meters, tape.Estimate.High.Meters, 1e-2);
        Assert.Equal(2, tape.DegreesOfFreedom, 1e-4);
    }

    [Fact]
    public void Measures_of_a_known_group_are_what_a_tape_says()
    {
        Group group = Group.Of(Simulated.Of((0, 0), (3, 4), (3, 0)));
        Assert.Equal(5, Of(RangeKind.ExtremeSpread), 1e-12);
        Assert.Equal(5, Of(RangeKind.Diagonal), 1e-12);
        Assert.Equal(3.5, Of(RangeKind.FigureOfMerit), 1e-12);
        Assert.Equal((double.Hypot(2, 4.0 / 3) + double.Hypot(1, 8.0 / 3) + double.Hypot(1, 4.0 / 3)) / 3, Of(RangeKind.MeanRadius), 1e-12);

        double Of(RangeKind kind) => RangeMeasure.Of(group, kind).Value.Meters;
    }

    [Fact]
    public void Groups_of_different_size_are_never_compared()
    {
        RangeMeasure five = RangeMeasure.Of(new Simulated(1).Group(5, 1), RangeKind.ExtremeSpread), ten = RangeMeasure.Of(new Simulated(2).Group(10, 1), RangeKind.ExtremeSpread);
        Assert.Contains("grow with the number of arrows", Assert.Throws<ArgumentException>(() => five.RatioTo(ten)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => five.RatioTo(RangeMeasure.Of(new Simulated(2).Group(5, 1), RangeKind.Diagonal)));
        Assert.Equal(1, five.RatioTo(five));
    }

    [Fact]
    public void Sizes_without_a_conversion_are_refused()
    {
        Assert.Throws<CannotTellException>(() => RangeMeasure.Of(Group.Of(Simulated.Of((0, 0))), RangeKind.Diagonal));
        Assert.Contains("20", Assert.Throws<ArgumentOutOfRangeException>(() => RangeMeasure.Of(new Simulated(1).Group(21, 1), RangeKind.Diagonal)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new RangeMeasure(RangeKind.Diagonal, Length.Zero, 5).ToSigma(0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Expected((RangeKind)9, 5));
        Assert.Throws<MissedArrowsException>(() => RangeMeasure.Of(Group.Of([Simulated.Shot(1, 0, 0), Simulated.Lost(2, Miss.Low)]), RangeKind.Diagonal));
    }

    static double Expected(RangeKind kind, int n) => RangeMeasure.Expected(kind, n, Length.FromMeters(1)).Meters;
}
