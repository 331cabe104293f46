namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class TwoSpreadsTests
{
    [Theory] // chance at ratios 1.1, 1.25, 1.5, 2 and 3; two-sided, .05; computed with SciPy 1.10
    [InlineData(3, "0.05259", "0.06448", "0.10009", "0.21041", "0.47603")]
    [InlineData(5, "0.05659", "0.08721", "0.18037", "0.44421", "0.83177")]
    [InlineData(6, "0.05865", "0.09907", "0.22181", "0.54518", "0.91038")]
    [InlineData(10, "0.06706", "0.14781", "0.38279", "0.81630", "0.99422")]
    [InlineData(20, "0.08850", "0.27161", "0.69364", "0.98756", "1.00000")]
    [InlineData(30, "0.11034", "0.39039", "0.86474", "0.99939", "1.00000")]
    [InlineData(60, "0.17722", "0.67490", "0.99224", "1.00000", "1.00000")]
    [InlineData(100, "0.26695", "0.87943", "0.99990", "1.00000", "1.00000")]
    [InlineData(200, "0.47562", "0.99351", "1.00000", "1.00000", "1.00000")]
    public void Chance_to_show_agrees_with_an_independent_computation(int n, params string[] printed)
    {
        double[] ratios = [1.1, 1.25, 1.5, 2, 3];
        for (int i = 0; i < ratios.Length; i++)
        {
            new Printed(printed[i], $"SciPy, n = {n}, ratio {ratios[i]}").Matches(TwoSpreads.ChanceToShow(n, ratios[i], 0.05, true));
        }
    }

    [Theory] // arrows a group at .05: 80 % and 90 % either way, 80 % and 90 % one way; computed with SciPy 1.10
    [InlineData(1.1, 434, 580, 342, 473)]
    [InlineData(1.2, 120, 160, 95, 131)]
    [InlineData(1.25, 81, 108, 64, 88)]
    [InlineData(1.3, 59, 78, 47, 64)]
    [InlineData(1.4, 37, 48, 29, 40)]
    [InlineData(1.5, 26, 34, 21, 28)]
    [InlineData(1.75, 15, 19, 12, 16)]
    [InlineData(2, 10, 13, 8, 11)]
    [InlineData(2.5, 7, 8, 6, 7)]
    [InlineData(3, 5, 6, 4, 5)]
    public void Arrows_needed_agree_with_an_independent_computation(double ratio, int either80, int either90, int one80, int one90)
    {
        Assert.Equal(either80, TwoSpreads.ArrowsNeeded(ratio, 0.8, 0.05, true));
        Assert.Equal(either90, TwoSpreads.ArrowsNeeded(ratio, 0.9, 0.05, true));
        Assert.Equal(one80, TwoSpreads.ArrowsNeeded(ratio, 0.8, 0.05, false));
        Assert.Equal(one90, TwoSpreads.ArrowsNeeded(ratio, 0.9, 0.05, false));
    }

    // NIST/SEMATECH e-Handbook 1.3.5.9 (from memory): batches of JAHANMI2.DAT, n 240, s 65.54909 and 61.85425, F 1.123037, upper limit at .025 1.289.
    [Fact]
    public void Example_of_the_handbook_is_reproduced()
    {
        TwoSpreads two = TwoSpreads.Compare(65.54909, 239, 61.85425, 239, 0.95, 480);
        new Printed("1.123037", "NIST/SEMATECH 1.3.5.9").Matches(Math.Pow(65.54909 / 61.85425, 2));
        Assert.Equal(1.123037, 1.2894 * Math.Pow(two.Ratio.Low, 2), 1e-4); // the limit is printed to four digits
        Assert.Equal(Verdict.CannotTell, two.FirstIsWider);
    }

    [Fact]
    public void Probability_and_interval_say_the_same()
    {
        TwoSpreads two = TwoSpreads.Compare(Of(1, 12), Of(2, 15), 0.9);
        double level = 1 - two.Probability;
        Assert.Equal(1, TwoSpreads.Compare(Of(1, 12), Of(2, 15), level).Ratio is var r && r.Value < 1 ? r.High : r.Low, 1e-9);
    }

    [Fact]
    public void Swapping_the_spreads_inverts_the_ratio()
    {
        TwoSpreads there = TwoSpreads.Compare(Of(3, 7), Of(4, 12), 0.9), back = TwoSpreads.Compare(Of(4, 12), Of(3, 7), 0.9);
        Assert.Equal(1 / there.Ratio.High, back.Ratio.Low, 1e-12);
        Assert.Equal(there.Probability, back.Probability, 1e-12);
    }

    [Fact]
    public void The_three_answers_are_given_where_they_are_earned()
    {
        Sigma<Length> narrow = Of(5, 60), alike = Of(6, 60), wide = new Simulated(7).Group(60, 2).Dispersion(Axis.Vertical, 0.9);
        Assert.Equal(Verdict.No, TwoSpreads.Compare(narrow, wide, 0.9).FirstIsWider);
        Assert.Equal(Verdict.Yes, TwoSpreads.Compare(wide, narrow, 0.9).FirstIsWider);
        Assert.Equal(Verdict.CannotTell, TwoSpreads.Compare(narrow, alike, 0.9).FirstIsWider);
        Assert.Equal(Verdict.Yes, TwoSpreads.Compare(narrow, alike, 0.9).AlikeWithin(1.5));
        Assert.Equal(Verdict.No, TwoSpreads.Compare(narrow, wide, 0.9).AlikeWithin(1.2));
        Assert.Equal(Verdict.CannotTell, TwoSpreads.Compare(narrow, alike, 0.9).AlikeWithin(1.05));
    }

    [Fact]
    public void A_ratio_below_one_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoSpreads.ChanceToShow(6, 0.5, 0.05, true));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoSpreads.ChanceToShow(6, double.NaN, 0.05, true));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoSpreads.Compare(Of(1, 5), Of(2, 5), 0.9).AlikeWithin(1));
    }

    static Sigma<Length> Of(int seed, int n) => new Simulated(seed).Group(n, 1).Dispersion(0.9).BothAxes;
}
