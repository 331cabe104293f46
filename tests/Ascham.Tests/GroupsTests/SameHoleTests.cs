namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class SameHoleTests
{
    [Theory] // arrows a group for 80 % at alpha .05; computed by quadrature with SciPy 1.10
    [InlineData(0.5, 95, 138, 84)]
    [InlineData(0.75, 43, 62, 38)]
    [InlineData(1, 24, 35, 22)]
    [InlineData(1.5, 11, 16, 10)]
    [InlineData(2, 7, 9, 6)]
    public void Arrows_needed_agree_with_an_independent_computation(double within, int atZero, int atThird, int inSigmas)
    {
        Assert.Equal(atZero, SameHole.ArrowsNeeded(within, 0, 0.8, 0.9));
        Assert.Equal(atThird, SameHole.ArrowsNeeded(within, within / 3, 0.8, 0.9));
        Assert.Equal(inSigmas, SameHoleInSigmas.ArrowsNeeded(within, 0, 0.8, 0.9));
    }

    [Theory] // simulated 400 000 times with seed 99; size at the edge, chance at zero, chance at a third of the radius
    [InlineData(6, 1.5, 0.02436, 0.33581, 0.25163)]
    [InlineData(10, 1, 0.01689, 0.15686, 0.12296)]
    [InlineData(15, 0.75, 0.01153, 0.081892, 0.06676)]
    [InlineData(20, 0.75, 0.019723, 0.22742, 0.17463)]
    [InlineData(20, 1, 0.03037, 0.67396, 0.49629)]
    [InlineData(30, 1, 0.034513, 0.91282, 0.72963)]
    [InlineData(60, 0.5, 0.02569, 0.44649, 0.32938)]
    [InlineData(100, 0.5, 0.032455, 0.83065, 0.63408)]
    public void Chance_of_a_yes_agrees_with_a_simulation(int n, double within, double size, double atZero, double atThird)
    {
        // Four standard errors of a frequency in 400 000.
        static double Allowed(double p) => 4 * Math.Sqrt(p * (1 - p) / 4e5);
        Assert.Equal(size, SameHole.ChanceOfYes(n, within, within, 0.9), Allowed(size));
        Assert.Equal(atZero, SameHole.ChanceOfYes(n, within, 0, 0.9), Allowed(atZero));
        Assert.Equal(atThird, SameHole.ChanceOfYes(n, within, within / 3, 0.9), Allowed(atThird));
    }

    [Fact] // independent quadrature, SciPy 1.10
    public void Chance_of_a_yes_agrees_with_a_quadrature()
    {
        new Printed("0.030416", "SciPy").Matches(SameHole.ChanceOfYes(20, 1, 1, 0.9));
        new Printed("0.672996", "SciPy").Matches(SameHole.ChanceOfYes(20, 1, 0, 0.9));
    }

    [Theory] // critical F and chance at zero; computed with SciPy 1.10
    [InlineData(6, 0.5, "0.07463528", "0.07166084")]
    [InlineData(6, 1.5, "0.7536516", "0.5164511")]
    [InlineData(12, 1, "0.6253698", "0.4602485")]
    [InlineData(24, 0.75, "0.7693684", "0.5337369")]
    [InlineData(40, 1.5, "12.94979", "0.9999937")]
    [InlineData(60, 1, "7.674152", "0.9994097")]
    public void Noncentral_form_agrees_with_an_independent_computation(int n, double within, string critical, string chance)
    {
        new Printed(critical, "SciPy").Matches(SameHoleInSigmas.Critical(n, within, 0.9));
        new Printed(chance, "SciPy").Matches(SameHoleInSigmas.ChanceOfYes(n, within, 0, 0.9));
        Assert.Equal(0.05, SameHoleInSigmas.ChanceOfYes(n, within, within, 0.9), 1e-9);
    }

    [Fact] // large-n rule of thumb: n = 2((z.95 + sqrt(-2 ln .2))/Delta)²
    public void Many_arrows_follow_the_rule_of_thumb() =>
        Assert.Equal(2 * Math.Pow((1.644854 + Math.Sqrt(-2 * Math.Log(0.2))) / 0.05, 2), SameHole.ArrowsNeeded(0.05, 0, 0.8, 0.9), 15.0);

    [Fact]
    public void The_three_answers_are_given_where_they_are_earned()
    {
        Group g = new Simulated(11).Group(40, 1), near = CentreShiftTests.Moved(new Simulated(12).Group(40, 1), 0.1, 0), far = CentreShiftTests.Moved(near, 4, 0);

        Assert.Equal(Verdict.Yes, Judge(g, near, 1.5).Verdict);
        Assert.Equal(Verdict.No, Judge(g, far, 1.5).Verdict);
        SameHole open = Judge(g, near, 0.1);
        Assert.Equal(Verdict.CannotTell, open.Verdict);
        Assert.InRange(open.ArrowsToDecide!.Value, 1500, 4000); // sigma 1 m, radius 0.1 m: 2 (3.44/0.1)²
        Assert.Equal(Verdict.Yes, SameHoleInSigmas.Judge(g, near, 1.5, 0.9).Verdict);
        Assert.Equal(Verdict.No, SameHoleInSigmas.Judge(g, far, 1.5, 0.9).Verdict);
    }

    [Fact]
    public void One_arrow_each_cannot_tell_and_says_why()
    {
        Group one = Group.Of(Simulated.Of((0, 0)));
        SameHole answer = Judge(one, one, 1);
        Assert.Equal(Verdict.CannotTell, answer.Verdict);
        Assert.Null(answer.Distance);
        Assert.Contains("Shoot at least two arrows", answer.Reason, StringComparison.Ordinal);
        Assert.Equal("cannot tell", answer.Verdict.Text());
    }

    [Fact]
    public void All_arrows_in_one_hole_as_recorded_cannot_tell()
    {
        Group hole = Group.Of(Simulated.Of((1, 1), (1, 1), (1, 1)));
        Assert.Contains("Record them finer", Judge(hole, hole, 1).Reason, StringComparison.Ordinal);
        Assert.Equal(Verdict.CannotTell, SameHoleInSigmas.Judge(hole, hole, 1, 0.9).Verdict);
    }

    [Fact]
    public void A_group_of_called_flyers_alone_cannot_tell()
    {
        Group flyers = Group.Of([Simulated.Shot(1, 0, 0, called: true), Simulated.Shot(2, 1, 1, called: true)]), sound = Group.Of([Simulated.Shot(3, 0, 0), Simulated.Shot(4, 1, 1)]);
        Assert.Contains("WithCalled", Judge(flyers, sound, 1).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_of_two_distances_are_refused()
    {
        Group near = Group.Of(Simulated.Of((0, 0), (1, 1)), Length.FromMeters(20)), far = Group.Of(Simulated.Of((0, 0), (1, 1)), Length.FromMeters(50));
        Assert.Contains("one distance", Assert.Throws<ArgumentException>(() => Judge(near, far, 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_radius_that_is_not_positive_is_refused()
    {
        Group g = new Simulated(1).Group(4, 1);
        Assert.Contains("within", Assert.Throws<ArgumentOutOfRangeException>(() => Judge(g, g, 0)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SameHoleInSigmas.Judge(g, g, double.NaN, 0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => SameHole.ArrowsNeeded(1, 1, 0.8, 0.9));
        Assert.Throws<ArgumentException>(() => Simulated.At(double.NaN, 0));
    }

    static SameHole Judge(Group a, Group b, double within) => SameHole.Judge(a, b, Length.FromMeters(within), SpreadModel.Recommended, 0.9);
}
