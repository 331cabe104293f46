namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Tests.Checks;
using Xunit;

public class OutlierCheckTests
{
    [Theory] // one-sided 5 % as published (Grubbs tables, second-hand); the rest computed with SciPy 1.10: one-sided .05 and .01, two-sided .05 and .01
    [InlineData(3, "1.15", "1.15312", "1.15464", "1.15430", "1.15468")]
    [InlineData(4, "1.46", "1.46250", "1.49250", "1.48125", "1.49625")]
    [InlineData(5, "1.67", "1.67139", "1.74886", "1.71504", "1.76368")]
    [InlineData(6, "1.82", "1.82212", "1.94425", "1.88715", "1.97282")]
    [InlineData(7, "1.94", "1.93813", "2.09730", "2.01997", "2.13911")]
    [InlineData(8, "2.03", "2.03165", "2.22083", "2.12665", "2.27437")]
    [InlineData(9, "2.11", "2.10956", "2.32315", "2.21500", "2.38681")]
    [InlineData(10, "2.18", "2.17607", "2.40972", "2.28995", "2.48208")]
    [InlineData(15, "2.41", "2.40904", "2.70486", "2.54831", "2.80611")]
    [InlineData(20, "2.56", "2.55658", "2.88382", "2.70825", "3.00080")]
    [InlineData(30, "2.75", "2.74513", "3.10290", "2.90847", "3.23608")]
    public void Limits_along_one_axis_agree_with_the_tables(int n, string published, string one05, string one01, string two05, string two01)
    {
        new Printed(published, "Grubbs, one-sided 5 %, second-hand").Matches(OutlierCheck.GrubbsLimit(n, 0.05));
        new Printed(one05, "SciPy").Matches(OutlierCheck.GrubbsLimit(n, 0.05));
        new Printed(one01, "SciPy").Matches(OutlierCheck.GrubbsLimit(n, 0.01));
        new Printed(two05, "SciPy").Matches(OutlierCheck.GrubbsLimit(n, 0.025));
        new Printed(two01, "SciPy").Matches(OutlierCheck.GrubbsLimit(n, 0.005));
    }

    // NIST/SEMATECH e-Handbook 1.3.5.17.1 (uranium readings of Tietjen and Moore): G 2.4687, one-sided critical value 2.032 at 5 %.
    [Fact]
    public void Example_of_the_handbook_is_reproduced()
    {
        double[] readings = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
        Group group = Group.Of(readings.Select((r, k) => Simulated.At(k, r)).ToArray());
        OutlierCheck check = OutlierCheck.Along(group, Axis.Vertical, 0.10);
        new Printed("2.4687", "NIST/SEMATECH 1.3.5.17.1").Matches(check.Statistic, 1.5); // 2.46876 computed: the handbook cuts rather than rounds
        new Printed("2.032", "NIST/SEMATECH 1.3.5.17.1").Matches(check.Limit);
        Assert.Equal([7], check.Beyond);
        Assert.Equal(Verdict.Yes, check.StandsOut);
    }

    [Theory] // r/s and squared Mahalanobis distance; computed with SciPy 1.10
    [InlineData(4, "1.99922", "2.06761", "2.24965")]
    [InlineData(5, "2.24079", "2.36509", "3.16800")]
    [InlineData(6, "2.41154", "2.57868", "3.99540")]
    [InlineData(8, "2.64433", "2.86870", "5.32063")]
    [InlineData(9, "2.72931", "2.97327", "5.85166")]
    [InlineData(10, "2.80110", "3.06080", "6.31742")]
    [InlineData(12, "2.91701", "3.20031", "7.10023")]
    [InlineData(15, "3.04656", "3.35318", "8.01644")]
    [InlineData(18, "3.14386", "3.46567", "8.73094")]
    [InlineData(20, "3.19702", "3.52625", "9.13025")]
    [InlineData(24, "3.28432", "3.62431", "9.79866")]
    [InlineData(30, "3.38397", "3.73409", "10.57970")]
    public void Limits_on_the_face_agree_with_an_independent_computation(int n, string round05, string round01, string any05)
    {
        new Printed(round05, "SciPy").Matches(OutlierCheck.RoundLimit(n, 0.05));
        new Printed(round01, "SciPy").Matches(OutlierCheck.RoundLimit(n, 0.01));
        new Printed(any05, "SciPy").Matches(OutlierCheck.AnyShapeLimit(n, 0.05));
    }

    [Fact]
    public void Limit_of_three_arrows_agrees_too()
    {
        new Printed("1.61933", "SciPy").Matches(OutlierCheck.RoundLimit(3, 0.05));
        new Printed("1.63027", "SciPy").Matches(OutlierCheck.RoundLimit(3, 0.01));
    }

    [Fact] // an arrow on the limit has the significance for its probability
    public void Probability_at_the_limit_is_the_significance()
    {
        Group group = Group.Of([.. new Simulated(4).Group(8, 1.5).Impacts, Simulated.At(3, 3)]);
        foreach (Func<double, OutlierCheck> test in new Func<double, OutlierCheck>[] { a => OutlierCheck.Round(group, a), a => OutlierCheck.AnyShape(group, a), a => OutlierCheck.Along(group, Axis.Horizontal, a) })
        {
            OutlierCheck first = test(0.05);
            Assert.InRange(first.Probability, 1e-6, 0.9999999);
            OutlierCheck at = test(first.Probability);
            Assert.Equal(at.Statistic, at.Limit, 1e-9);
        }
    }

    [Fact]
    public void Turning_the_face_changes_neither_rule_on_the_face()
    {
        Group group = new Simulated(6).Group(8, 2);
        Group turned = Group.Of(group.Impacts.Select(i => Simulated.At((0.6 * i.Right.Meters) - (0.8 * i.Up.Meters), (0.8 * i.Right.Meters) + (0.6 * i.Up.Meters))).ToArray());
        Assert.Equal(OutlierCheck.Round(group, 0.05).Probability, OutlierCheck.Round(turned, 0.05).Probability, 1e-10);
        Assert.Equal(OutlierCheck.AnyShape(group, 0.05).Probability, OutlierCheck.AnyShape(turned, 0.05).Probability, 1e-10);
    }

    [Fact] // r/s can never pass (n - 1) sqrt(2/n): 1.633 with three arrows
    public void Three_arrows_bound_the_ratio()
    {
        Group far = Group.Of(Simulated.Of((0, 0), (0.001, 0), (0, 1000)));
        Assert.InRange(OutlierCheck.Round(far, 0.05).Statistic, 1.6329, 1.6330);
        Assert.InRange(OutlierCheck.ChanceToFlag(6, 3, 0.05), 0.05, 0.4);
    }

    [Fact]
    public void Bad_groups_cannot_tell()
    {
        Group two = Group.Of(Simulated.Of((0, 0), (1, 1))), hole = Group.Of(Simulated.Of((1, 1), (1, 1), (1, 1), (1, 1))), line = Group.Of(Simulated.Of((0, 0), (1, 1), (2, 2), (5, 5)));
        Assert.Contains("at least 3", Assert.Throws<CannotTellException>(() => OutlierCheck.Round(two, 0.05)).Message, StringComparison.Ordinal);
        Assert.Throws<CannotTellException>(() => OutlierCheck.Round(hole, 0.05));
        Assert.Throws<CannotTellException>(() => OutlierCheck.AnyShape(line, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => OutlierCheck.Round(line, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => OutlierCheck.ChanceToFlag(6, double.NaN, 0.05));
    }
}
