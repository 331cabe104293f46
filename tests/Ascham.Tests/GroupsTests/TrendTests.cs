namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

public class TrendTests
{
    // Computed, not published (NumPy, SciPy, statsmodels): twelve arrows of a tiring archer.
    static readonly double[] Tiring = [1.2, .4, .9, -.3, .1, -.8, .2, -1.1, -.6, -1.4, -.9, -1.9];

    [Fact]
    public void The_worked_string_agrees_with_the_reference()
    {
        Trend<Length> trend = Trend.Of([String(Tiring)], Axis.Vertical, TrendAgainst.ShotOrder, 0.95);

        Matches("-.2307692308", trend.Slope.Value.Meters);
        Matches(".0379050653", trend.Slope.StandardError.Meters);
        Matches("-6.088084", trend.Slope.Value / trend.Slope.StandardError);
        Matches(".000117529", trend.Probability);
        Matches(".4532786543", trend.Residual.Sample.Meters);
        Assert.Equal(10, trend.Residual.DegreesOfFreedom);
        Matches("-.225", trend.RankSlope!.Value.Meters);
        Matches("-.328571", trend.RankSlope.Low.Meters);
        Matches("-.15", trend.RankSlope.High.Meters);
        Matches(".8407446", trend.Steps!.Ratio);
        Assert.Equal(-48, trend.Rank.Score);
        Matches("212.666667", trend.Rank.Variance);
        Matches("-3.2229098", trend.Rank.Z);
        Matches(".000498884", trend.Rank.Probability);
        Assert.True(trend.Rank.Exact);
    }

    [Fact] // intercept 1.15 with standard error 0.2789737: the line passes the mean, 6.5 places along
    public void The_worked_string_has_the_reference_intercept()
    {
        Trend<Length> trend = Trend.Of([String(Tiring)], Axis.Vertical, TrendAgainst.ShotOrder, 0.95);
        Matches("1.15", Tiring.Average() - (6.5 * trend.Slope.Value.Meters));
        Matches(".2789737", double.Hypot(trend.Residual.Sample.Meters / Math.Sqrt(12), 6.5 * trend.Slope.StandardError.Meters));
    }

    [Fact] // relation: every string has its own level, so lifting one string changes nothing
    public void Moving_the_sight_between_strings_changes_nothing()
    {
        double[] first = Tiring[..5], second = Tiring[5..], lifted = [.. second.Select(y => y + 7)];
        Trend<Length> a = Trend.Of([String(first), String(second)], Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
        Trend<Length> b = Trend.Of([String(first), String(lifted)], Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
        Assert.Equal(a.Slope.Value.Meters, b.Slope.Value.Meters, 1e-12);
        Assert.Equal(a.Steps!.Ratio, b.Steps!.Ratio, 1e-12);
        Assert.Equal(a.Rank, b.Rank);
        Assert.Equal(a.Runs, b.Runs);
    }

    [Fact] // by hand: two strings 0, 1, 3 have slope 3/2 each and together
    public void The_order_starts_anew_with_every_string()
    {
        Trend<Length> trend = Trend.Of([String(0, 1, 3), String(0, 1, 3)], Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
        Assert.Equal(1.5, trend.Slope.Value.Meters, 1e-12);
        Assert.Equal(3, trend.Residual.DegreesOfFreedom);
        Assert.Equal((6, 6), (trend.Rank.Score, trend.Rank.Pairs));
        Assert.Equal(2.0 / 36, trend.Rank.Probability, 1e-12); // one order of six in each string, both ways
    }

    [Fact] // relation: the mirror image has the opposite slope and the same probabilities
    public void Turning_the_string_upside_down_flips_the_slope() =>
        Gen.Double[-1, 1].Array[5, 14].Where(y => y.Distinct().Count() == y.Length).Sample(y =>
        {
            Trend<Length> a = Trend.Of([String(y)], Axis.Vertical, TrendAgainst.ShotOrder, 0.8), b = Trend.Of([String([.. y.Select(v => -v)])], Axis.Vertical, TrendAgainst.ShotOrder, 0.8);
            Assert.Equal(a.Slope.Low.Meters, -b.Slope.High.Meters, 1e-9);
            Assert.Equal(a.Probability, b.Probability, 1e-9);
            Assert.Equal(a.RankSlope!.Low.Meters, -b.RankSlope!.High.Meters, 1e-9);
            Assert.Equal(a.Rank.Probability, b.Rank.Probability, 1e-9);
            Assert.Equal(a.Runs!.Probability, b.Runs!.Probability, 1e-9);
        }, iter: 100);

    [Fact] // relation: offsets over distance
    public void Angles_are_offsets_over_distance()
    {
        Group near = String(20, Tiring), far = String(40, [.. Tiring.Select(y => 2 * y)]);
        Trend<Angle> trend = Trend.OfAngles([near, far], Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
        Matches("-.2307692308", trend.Slope.Value.Radians * 20);
        Assert.Contains("one distance", Assert.Throws<ArgumentException>(() => Trend.Of([near, far], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Hold_times_take_the_place_of_the_order()
    {
        double[] hold = [5, 3, 8, 4, 6];
        Shot[] shots = [.. hold.Select((h, i) => Simulated.Shot(i + 1, 0, (-0.02 * h) + (0.001 * (i % 2))) with { Hold = Duration.FromSeconds(h) }), Simulated.Shot(6, 0, 0.5)];
        Trend<Length> trend = Trend.Of([Group.Of(shots)], Axis.Vertical, TrendAgainst.HoldTime, 0.9);
        Assert.Equal(-0.02, trend.Slope.Value.Meters, 1e-3);
        Assert.Equal(1, trend.LeftOut); // the sixth has no hold time
        Assert.Equal(-10, trend.Rank.Score);
    }

    [Fact] // a called flyer is set aside but was shot: the arrow after it was still the third
    public void Called_flyers_and_misses_hold_their_places()
    {
        Shot[] shots = [Simulated.Shot(3, 0, 0), Simulated.Shot(4, 0, 9, called: true), Simulated.Shot(5, 0, -2), Simulated.Shot(6, 0, -3.1)];
        Assert.Equal([1, 3, 4], StringSeries.Of([Group.Of(shots)], Axis.Vertical, TrendAgainst.ShotOrder, false, false).Series[0].Against);
        Assert.Equal([1, 2, 3, 4], StringSeries.Of([Group.Of(shots).WithCalled()], Axis.Vertical, TrendAgainst.ShotOrder, false, false).Series[0].Against);
    }

    [Fact]
    public void The_order_of_the_list_does_not_matter()
    {
        Shot[] shots = [.. Tiring.Select((y, i) => Simulated.Shot(i + 1, 0, y))];
        Assert.Equal(
            Trend.Of([Group.Of(shots)], Axis.Vertical, TrendAgainst.ShotOrder, 0.9).Slope,
            Trend.Of([Group.Of(shots.Reverse())], Axis.Vertical, TrendAgainst.ShotOrder, 0.9).Slope);
    }

    [Fact]
    public void What_cannot_tell_says_so()
    {
        Assert.Contains("three arrows in a string", CannotTell(String(1, 2)), StringComparison.Ordinal);
        Assert.Contains("three arrows in a string", CannotTell(String(1)), StringComparison.Ordinal);
        Assert.Contains("all alike", CannotTell(String(2, 2, 2, 2)), StringComparison.Ordinal);
        Assert.Contains("exactly on a line", CannotTell(String(1, 2, 3, 4)), StringComparison.Ordinal);
        Assert.Throws<MissedArrowsException>(() => Trend.Of([Group.Of([Simulated.Shot(1, 0, 0), Simulated.Lost(2, Miss.Low), Simulated.Shot(3, 0, 1)])], Axis.Vertical, TrendAgainst.ShotOrder, 0.9));
        static string CannotTell(Group g) => Assert.Throws<CannotTellException>(() => Trend.Of([g], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)).Message;
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Assert.Contains("at least one string", Assert.Throws<ArgumentException>(() => Trend.Of([], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)).Message, StringComparison.Ordinal);
        Assert.Contains("must all have a distance", Assert.Throws<ArgumentException>(() => Trend.OfAngles([Group.Of(Simulated.Of((0, 0)))], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)).Message, StringComparison.Ordinal);
        Assert.Contains("level must be", Assert.Throws<ArgumentOutOfRangeException>(() => Trend.Of([String(Tiring)], Axis.Vertical, TrendAgainst.ShotOrder, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("one session", Assert.Throws<ArgumentException>(() => Trend.Of(
            [Group.Of([Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0, 1, session: "autumn"), Simulated.Shot(3, 0, 1)])], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)).Message, StringComparison.Ordinal);
    }

    [Fact] // coverage of both slopes, three strings of six, no trend planted or one; 4 standard errors of 0.9 in 1000 are 0.038
    public void Slopes_are_covered_as_stated()
    {
        const int repeats = 1000;
        var simulated = new Simulated(41);
        int least = 0, rank = 0, alarms = 0;
        for (int k = 0; k < repeats; k++)
        {
            Group[] strings = [.. Enumerable.Range(0, 3).Select(s => String([.. Enumerable.Range(0, 6).Select(i => s + (0.3 * i) + simulated.Normal())]))];
            Trend<Length> trend = Trend.Of(strings, Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
            least += trend.Slope.Low.Meters <= 0.3 && 0.3 <= trend.Slope.High.Meters ? 1 : 0;
            rank += trend.RankSlope!.Low.Meters <= 0.3 && 0.3 <= trend.RankSlope.High.Meters ? 1 : 0;
            alarms += MannKendall.Of(Enumerable.Range(0, 8).Select(_ => simulated.Normal())).Probability <= 0.1 ? 1 : 0;
        }

        Assert.InRange(least / (double)repeats, 0.862, 0.938);
        Assert.InRange(rank / (double)repeats, 0.862, 0.95); // pairs come in whole numbers: at least as often as stated
        Assert.InRange(alarms / (double)repeats, 0.04, 0.138);
    }

    [Fact] // von Neumann's ratio: probabilities are even when shots are independent
    public void Steps_give_false_alarms_as_often_as_stated()
    {
        const int repeats = 3000;
        var simulated = new Simulated(43);
        int[] low = new int[3];
        double sigma = 0;
        for (int k = 0; k < repeats; k++)
        {
            StringSeries[] strings = [.. new[] { 5, 7, 3 }.Select(n => new StringSeries(new double[n], [.. Enumerable.Range(0, n).Select(_ => simulated.Normal())]))];
            var steps = SuccessiveDifferences<double>.From(strings, 0.9, x => x)!;
            foreach (var (share, i) in new[] { (0.05, 0), (0.5, 1), (0.95, 2) })
            {
                low[i] += steps.LowerProbability <= share ? 1 : 0;
            }

            sigma += steps.Sigma.Estimate.Value / repeats;
        }

        Assert.Equal(0.05, low[0] / (double)repeats, 0.017); // 4 standard errors
        Assert.Equal(0.5, low[1] / (double)repeats, 0.037);
        Assert.Equal(0.95, low[2] / (double)repeats, 0.017);
        Assert.Equal(1, sigma, 0.02);
    }

    [Fact] // a drift of three sigmas over the string widens s but hardly the sigma from steps
    public void Steps_see_through_a_drift()
    {
        var simulated = new Simulated(44);
        double[] drifting = [.. Enumerable.Range(0, 200).Select(i => (0.015 * i) + simulated.Normal())];
        Trend<Length> trend = Trend.Of([String(drifting)], Axis.Vertical, TrendAgainst.ShotOrder, 0.9);
        Assert.Equal(1, trend.Steps!.Sigma.Sample.Meters, 0.15);
        Assert.InRange(Group.Of(drifting.Select(y => Simulated.At(0, y))).Dispersion(Axis.Vertical, 0.9).Sample.Meters, 1.2, 1.6);
        Assert.True(trend.Steps.LowerProbability < 0.001);
    }

    static void Matches(string printed, double actual) => new Printed(printed, "NumPy, SciPy, statsmodels").Matches(actual);

    static Group String(params double[] heights) => String(20, heights);

    static Group String(double distance, double[] heights) => Group.Of(heights.Select((y, i) => Simulated.Shot(i + 1, 0.1 * (i % 3), y, distance)));
}
