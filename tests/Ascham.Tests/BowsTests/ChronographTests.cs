namespace Ascham.Tests.BowsTests;

using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using Ascham.Tests.GroupsTests;
using CsCheck;
using UnitsNet;
using Xunit;
using static Ascham.Tests.BowsTests.BowExample;

public class ChronographTests
{
    static readonly Chronograph Exact = new() { ScaleSd = Ratio.Zero, Resolution = Speed.Zero };

    [Fact] // Published: Student's t of 4 degrees, 0.95 point 2.132, NIST/SEMATECH e-Handbook 1.3.6.7.2
    public void Without_an_error_of_its_own_the_mean_has_the_interval_of_student()
    {
        var mean = Exact.Mean(Read(281, 279, 280, 282, 278), Ninety);
        Assert.Equal(280, mean.Value.FeetPerSecond, 1e-9);
        Assert.Equal(Math.Sqrt(2.5 / 5), mean.StandardError.FeetPerSecond, 1e-9);
        new Printed("2.132", "NIST t table, 4 degrees of freedom").Matches((mean.High - mean.Value) / mean.StandardError);
    }

    [Fact] // Independent: effective degrees of freedom by hand, JCGM 100:2008, G.4: u = 1, s²/n = 0.5, so 4/(0.25) = 16
    public void With_an_error_of_its_own_the_degrees_of_freedom_are_those_of_welch()
    {
        var half = new Chronograph { ScaleSd = Ratio.FromDecimalFractions(Math.Sqrt(0.5) / 280), Resolution = Speed.Zero };
        var mean = half.Mean(Read(281, 279, 280, 282, 278), Ninety);
        Assert.Equal(1, mean.StandardError.FeetPerSecond, 1e-9);
        new Printed("1.746", "NIST t table, 16 degrees of freedom").Matches((mean.High - mean.Value) / mean.StandardError);
    }

    [Theory] // Coverage: shots scatter by 1.2 ft/s, the instrument by 0.4 % from one to the next
    [InlineData(3, 0.4)]
    [InlineData(5, 0.1)]
    [InlineData(10, 0.4)]
    public void The_interval_of_the_mean_holds_the_truth_as_often_as_stated(int shots, double percent)
    {
        const int Outings = 3000;
        var random = new Simulated(20260404);
        var instrument = new Chronograph { ScaleSd = Ratio.FromPercent(percent), Resolution = Speed.FromFeetPerSecond(0.1) };
        int held = Enumerable.Range(0, Outings).Count(_ =>
        {
            double scale = 1 + percent / 100 * random.Normal();
            var mean = instrument.Mean(Read([.. Enumerable.Range(0, shots).Select(_ => Math.Round(scale * (280 + 1.2 * random.Normal()), 1))]), Ninety);
            return mean.Low.FeetPerSecond <= 280 && 280 <= mean.High.FeetPerSecond;
        });
        Assert.InRange(held / (double)Outings, Ninety - 0.022, Ninety + 0.022); // 4 standard errors
    }

    [Fact] // Relation
    public void The_order_of_the_readings_does_not_matter() =>
        Gen.Shuffle(new[] { 281.0, 279, 280, 283 }).Sample(order =>
            Assert.Equal(Exact.Mean(Read(281, 279, 280, 283), Ninety).High.FeetPerSecond, Exact.Mean(Read(order), Ninety).High.FeetPerSecond, 1e-9));

    [Fact]
    public void Readings_that_agree_to_the_digit_are_no_surer_than_a_step_of_the_display()
    {
        var coarse = Exact with { Resolution = Speed.FromFeetPerSecond(1) };
        Assert.Equal(1 / Math.Sqrt(12 * 4), coarse.Mean(Read(280, 280, 280, 280), Ninety).StandardError.FeetPerSecond, 1e-9);
        Assert.Throws<InvalidOperationException>(() => Exact.Mean(Read(280, 280), Ninety));
        Assert.Contains("two readings or more", Assert.Throws<ArgumentOutOfRangeException>(() => Exact.Mean(Read(280), Ninety)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Exact.Mean(Read(280, 0), Ninety));
    }

    [Fact] // Independent: squares of the three errors by hand
    public void One_reading_carries_the_spread_of_shots_the_step_and_the_instrument()
    {
        var one = new Chronograph { ScaleSd = Ratio.FromPercent(0.5), Resolution = Speed.FromFeetPerSecond(1) }.OneReading(Speed.FromFeetPerSecond(280), Speed.FromFeetPerSecond(1.2), Ninety);
        Assert.Equal(Math.Sqrt(1.44 + 1 / 12.0 + 1.96), one.StandardError.FeetPerSecond, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Exact.OneReading(Speed.FromFeetPerSecond(280), Speed.FromFeetPerSecond(-1), Ninety));
    }

    [Fact]
    public void A_reading_is_flagged_when_it_leaves_the_energy_model_by_more_than_both_errors()
    {
        var expected = Model.SpeedAt(Load(425, 66), Ninety);
        Estimate<Speed> At(double off) => Exact.Mean(Read([.. new[] { -1.0, 0, 1, 0.5, -0.5 }.Select(x => expected.Value.FeetPerSecond + off + x)]), Ninety);
        SpeedCheck fine = SpeedCheck.Of(At(1), expected), wrong = SpeedCheck.Of(At(-8), expected);
        Assert.False(fine.Disagrees);
        Assert.Contains("which the errors explain", fine.Text, StringComparison.Ordinal);
        Assert.True(wrong.Disagrees);
        Assert.StartsWith("The reading is 8.0 ft/s (2.44 m/s) below", wrong.Text, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => SpeedCheck.Of(At(0), Model.SpeedAt(Load(425, 66), 0.8)));
    }

    [Theory] // Independent: 82.5 ft lbf launched; nothing gives more than it stores
    [InlineData(99.5, false)]
    [InlineData(81, false)]
    [InlineData(72, true)]
    public void A_bow_that_would_launch_more_than_it_stores_is_flagged(double storedFootPounds, bool impossible)
    {
        Estimate<Energy> Known(double footPounds, double sd) => Bounds.Normal(footPounds, sd, Ninety, 1, "").Map(e => Energy.FromFootPounds(e));
        EnergyBudget budget = EnergyBudget.Of(Known(82.5, 1), Known(storedFootPounds, 2));
        Assert.Equal(82.5 / storedFootPounds, budget.LaunchedShare.Value.DecimalFractions, 1e-9);
        Assert.Equal(impossible, budget.IsImpossible);
        Assert.Contains(impossible ? "measure the draw curve" : "of the stored energy.", budget.Text, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => EnergyBudget.Of(Known(82.5, 1), Known(90, 1) with { Level = 0.8 }));
    }

    [Fact] // Coverage: a sound reading is flagged one time in ten at 90 %
    public void Sound_readings_are_flagged_as_seldom_as_stated()
    {
        const int Outings = 3000;
        var random = new Simulated(20260505);
        int flagged = Enumerable.Range(0, Outings).Count(_ =>
        {
            double truth = 280, told = truth + 1.5 * random.Normal();
            var expected = Bounds.Normal(told, 1.5, Ninety, 1, "").Map(v => Speed.FromFeetPerSecond(v));
            var measured = Exact.Mean(Read([.. Enumerable.Range(0, 5).Select(_ => truth + 1.2 * random.Normal())]), Ninety);
            return SpeedCheck.Of(measured, expected).Disagrees;
        });
        Assert.InRange(flagged / (double)Outings, 0.1 - 0.022, 0.1 + 0.022);
    }

    static Speed[] Read(params double[] feetPerSecond) => [.. feetPerSecond.Select(v => Speed.FromFeetPerSecond(v))];
}
