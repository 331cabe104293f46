namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using Xunit;
using static Ascham.Tests.GroupsTests.WorkedExample;

public class GroupShapeTests
{
    [Theory] // Mauchly for two coordinates: closed form, and simulated a million times with seed 1
    [InlineData(5, 0.3, "0.164317")]
    [InlineData(10, 0.5, "0.0625")]
    [InlineData(20, 0.7, "0.040354")]
    public void Probability_agrees_with_the_computed_one(int n, double w, string printed) =>
        new Printed(printed, "computed").Matches(ShapeLaw.Cdf(w, n - 1, 1));

    [Theory] // ratio 1.5 at .05: Mauchly and upright axes; computed with SciPy 1.10, Mauchly by simulation
    [InlineData(12, 0.170, "0.2425")]
    [InlineData(36, 0.543, "0.6567")]
    [InlineData(60, 0.790, "0.8705")]
    public void Chance_to_show_agrees_with_an_independent_computation(int n, double mauchly, string upright)
    {
        Assert.Equal(mauchly, GroupShape.ChanceToShow(n, 1.5, 0.05), 0.0025); // simulated elsewhere, printed to three decimals
        new Printed(upright, "SciPy").Matches(GroupShape.ChanceToShowUpright(n, 1.5, 0.05));
    }

    [Theory] // the law of W for stretched groups, derived here, against simulated groups
    [InlineData(3, 2)]
    [InlineData(6, 3)]
    [InlineData(12, 1.5)]
    public void Law_of_stretched_groups_agrees_with_simulated_ones(int n, double ratio)
    {
        var simulated = new Simulated(40 + n);
        double[] seen = [.. Enumerable.Range(0, 10_000).Select(_ => Mauchly(simulated.Group(n, ratio).Moments)).Order()];
        foreach (double share in new[] { 0.05, 0.25, 0.5, 0.75, 0.95 })
        {
            // Four standard errors of a frequency in 10 000 at the middle.
            Assert.Equal(share, ShapeLaw.Cdf(seen[(int)(share * seen.Length)], n - 1, ratio), 0.02);
        }
    }

    [Theory]
    [InlineData(2, 3)]
    [InlineData(5, 1.2)]
    [InlineData(40, 4)]
    [InlineData(1999, 1.1)]
    [InlineData(4000, 1.3)]
    public void Law_of_stretched_groups_adds_up_to_one(int degrees, double ratio)
    {
        Assert.Equal(1, ShapeLaw.Cdf(1, degrees, ratio), degrees > 2000 ? 1e-6 : 1e-9);
        Assert.InRange(ShapeLaw.Cdf(0.9, degrees, ratio), 0, 1);
    }

    [Fact] // independent: the polynomial written out; and the two forms where they meet
    public void Legendre_agrees_with_the_polynomial_and_with_its_far_form()
    {
        double x = 1.7, p4 = ((35 * Math.Pow(x, 4)) - (30 * x * x) + 3) / 8;
        Assert.Equal(Math.Log(p4), ShapeLaw.LogLegendre(4, x), 1e-14);
        foreach (double at in new[] { 1, 1.000001, 1.0005, 1.2, 3 })
        {
            double two = ShapeLaw.LogLegendre(2000, at), slope = two - ShapeLaw.LogLegendre(1999, at);
            Assert.Equal(two + slope, ShapeLaw.LogLegendre(2001, at), 1e-3 * Math.Max(1e-3, slope) + 1e-6);
        }
    }

    [Theory]
    [InlineData(6, 1)]
    [InlineData(6, 2)]
    [InlineData(12, 1.5)]
    public void Interval_of_the_axis_ratio_holds_the_truth_as_often_as_stated(int n, double ratio)
    {
        const int groups = 1500;
        var simulated = new Simulated(70 + n);
        int below = 0, above = 0;
        for (int k = 0; k < groups; k++)
        {
            double p = ShapeLaw.Cdf(Mauchly(simulated.Group(n, ratio).Moments), n - 1, ratio); // the interval is where this lies between .05 and .95
            below += p < 0.05 ? 1 : 0;
            above += p > 0.95 ? 1 : 0;
        }

        // Four standard errors of a frequency of 0.05 in 1500.
        Assert.Equal(0.05, below / (double)groups, 0.023);
        Assert.Equal(0.05, above / (double)groups, 0.023);
    }

    [Fact]
    public void Worked_example_gives_the_computed_axes()
    {
        GroupShape shape = GroupShape.Of(G1, 0.9);
        // S = [[3.0056667, .4613333], [.4613333, 4.2386667]], by hand.
        new Printed("71.596055", "computed, NumPy").Matches(shape.Orientation.Degrees);
        Assert.Equal(3.0056667 + 4.2386667, Math.Pow(shape.MajorSigma.Meters, 2) + Math.Pow(shape.MinorSigma.Meters, 2), 1e-6);
        Assert.Equal((3.0056667 * 4.2386667) - (0.4613333 * 0.4613333), Math.Pow(shape.MajorSigma.Meters * shape.MinorSigma.Meters, 2), 1e-5);
        Assert.Equal(1, shape.AxisRatio.Low);
        Assert.Equal(Verdict.CannotTell, shape.Stretched);
        Assert.Equal(Math.Sqrt(4.2386667 / 3.0056667), shape.UpOverRight.Ratio.Value, 1e-6);
    }

    [Fact] // the ends of the interval are where the law says so
    public void Ends_of_the_interval_have_their_probability()
    {
        Group group = new Simulated(3).Group(20, 2.5);
        GroupShape shape = GroupShape.Of(group, 0.9);
        double w = Mauchly(group.Moments);
        Assert.Equal(0.05, ShapeLaw.Cdf(w, 19, shape.AxisRatio.Low), 1e-6);
        Assert.Equal(0.95, ShapeLaw.Cdf(w, 19, shape.AxisRatio.High), 1e-6);
        Assert.Equal(Verdict.Yes, shape.Stretched);
        Assert.Equal(Verdict.No, shape.RoundWithin(1.05));
    }

    [Fact]
    public void Many_arrows_of_a_round_group_earn_the_word_round() =>
        Assert.Equal(Verdict.Yes, GroupShape.Pooled(Enumerable.Range(0, 40).Select(k => new Simulated(k).Group(6, 1)), 0.9).RoundWithin(1.5));

    [Theory] // multipliers of the larger sigma; computed by quadrature with SciPy 1.10; the first agrees with Harter (1960), J. Am. Statist. Assoc. 55, 723, as recalled
    [InlineData(0, "0.6744898", "1.6448536", "1.9599640", "2.5758293")]
    [InlineData(0.1, "0.6819851", "1.6479116", "1.9625296", "2.5777809")]
    [InlineData(0.2, "0.7058539", "1.6573135", "1.9704075", "2.5837662")]
    [InlineData(0.3, "0.7499351", "1.6738287", "1.9841962", "2.5942092")]
    [InlineData(0.4, "0.8078527", "1.6991831", "2.0051372", "2.6099507")]
    [InlineData(0.5, "0.8704174", "1.7370799", "2.0358587", "2.6325668")]
    [InlineData(0.6, "0.9336514", "1.7915223", "2.0813045", "2.6653323")]
    [InlineData(0.7, "0.9962067", "1.8625297", "2.1459811", "2.7150540")]
    [InlineData(0.8, "1.0576926", "1.9471581", "2.2302873", "2.7906913")]
    [InlineData(0.9, "1.1180657", "2.0423599", "2.3317980", "2.8974348")]
    [InlineData(1, "1.1774100", "2.1459660", "2.4477468", "3.0348543")]
    public void Radius_holding_a_share_agrees_with_an_independent_computation(double c, params string[] printed)
    {
        double[] shares = [0.5, 0.9, 0.95, 0.99];
        for (int i = 0; i < shares.Length; i++)
        {
            new Printed(printed[i], $"SciPy, c = {c}").Matches(EllipticalRadius.Of(c, shares[i]));
        }
    }

    [Fact]
    public void Too_few_arrows_or_a_line_cannot_tell()
    {
        Assert.Throws<CannotTellException>(() => GroupShape.Of(Group.Of(Simulated.Of((0, 0), (1, 2))), 0.9));
        Assert.Throws<CannotTellException>(() => GroupShape.Of(Group.Of(Simulated.Of((0, 0), (1, 2), (2, 4))), 0.9));
        Assert.Throws<CannotTellException>(() => GroupShape.Of(Group.Of(Simulated.Of((1, 1))), 0.9));
        Assert.Throws<MissedArrowsException>(() => GroupShape.Of(Group.Of([Simulated.Shot(1, 0, 0), Simulated.Shot(2, 1, 0), Simulated.Lost(3, Miss.Low)]), 0.9));
    }

    static double Mauchly(Moments m)
    {
        var s = Symmetric.ScatterOf(m);
        return 4 * s.Determinant / (s.Trace * s.Trace);
    }
}
