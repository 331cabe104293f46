namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class NumberedArrowsTests
{
    // Davies (1947): mean squares and variances published with lme4 (REML 1764.05 and 2451.25); F, probability and predictions computed, SciPy and statsmodels.
    [Fact]
    public void Dyestuff_agrees_with_the_published_fit()
    {
        NumberedArrows<Length> fit = Read("arrows/dyestuff.csv");
        Printed("1764.05", Square(fit.Tau.Value));
        Printed("2451.25", Square(fit.Scatter.Sample));
        Printed("4.5982662", fit.F);
        Printed("11271.5", fit.F * Square(fit.Scatter.Sample));
        Printed(".00439753", fit.Probability);
        Assert.Equal((5, 24), (fit.FreedomBetween, fit.FreedomWithin));
        string[] predictions = ["-17.607", ".391", "28.562", "-23.085", "56.733", "-44.995"];
        Assert.All(fit.Arrows.Zip(predictions), pair => Printed(pair.Second, pair.First.Up!.Value.Meters));
        Assert.All(fit.Arrows, arrow => Printed("0.78252673", arrow.Kept));
        Assert.All(fit.Arrows, arrow => Assert.Null(arrow.Right));
        // standard error of the grand mean of six arrows shot five times each
        Printed("19.383412", Math.Sqrt((Square(fit.Tau.Value) / 6) + (Square(fit.Scatter.Sample) / 30)));
    }

    // Box and Tiao (1973): data; values computed, SciPy and statsmodels. The analysis of variance gives −1.3219128 here, so tau is zero.
    [Fact]
    public void Dyestuff2_has_no_difference_between_batches()
    {
        NumberedArrows<Length> fit = Read("arrows/dyestuff2.csv");
        Printed(".55776712", fit.F);
        Assert.Equal(0, fit.Tau.Value.Meters);
        Assert.True(fit.Tau.High.Meters > 1); // and yet the batches may differ
        // At the boundary the restricted likelihood pools everything: sigma² 13.80631, its root 3.71568.
        double pooled = Square(fit.Scatter.Sample) * ((fit.F * 5) + 24) / 29;
        Printed("13.80631", pooled);
        Printed("3.71568", Math.Sqrt(pooled));
        Assert.All(fit.Arrows, arrow => Assert.Equal(0, arrow.Up!.Value.Meters));
        Assert.All(fit.Arrows, arrow => Assert.True(arrow.Up!.Low.Meters < -0.2 && arrow.Up.High.Meters > 0.2));
    }

    // Montgomery, Design and Analysis of Experiments, random effects: 1.90, 6.96, share 0.79 and interval 0.385 to 0.982 as recalled; digits computed, SciPy.
    [Fact]
    public void Looms_agree_with_the_book()
    {
        NumberedArrows<Length> fit = Read("arrows/looms.csv", level: 0.95);
        Printed("15.681319", fit.F);
        Printed(".000187792", fit.Probability);
        Printed("29.729167", fit.F * Square(fit.Scatter.Sample));
        Printed("1.8958333", Square(fit.Scatter.Sample));
        Printed("6.9583333", Square(fit.Tau.Value));
        Printed(".785882", fit.Share.Value);
        Printed(".385074", fit.Share.Low);
        Printed(".982442", fit.Share.High);
        Assert.All(fit.Arrows, arrow => Printed(".93622985", arrow.Kept));
    }

    // NIST StRD, analysis of variance, SiRstv: certified F; variances and predictions computed, statsmodels.
    [Fact]
    public void SiRstv_agrees_with_the_certified_values()
    {
        NumberedArrows<Length> fit = Read("strd/anova/SiRstv.csv");
        Assert.Equal(1.18046237440255, fit.F, 1e-12 * 1.18); // twelve digits; the data keep thirteen
        Printed("1.04076068334656E-01", fit.Scatter.Sample.Meters, 40); // certified residual standard deviation; 40: thirteen digits
        Printed("2.16636560000000E-01", Square(fit.Scatter.Sample) * fit.FreedomWithin, 100); // certified sum of squares within
        Printed("5.11462616000000E-02", fit.F * Square(fit.Scatter.Sample) * fit.FreedomBetween, 100); // and between
        Printed(".000390947", Square(fit.Tau.Value));
        Printed(".0348352", fit.Share.Value);
        Assert.All(fit.Arrows.Zip([".008244", ".008430", "-.003384", "-.006270", "-.007019"]), pair => Printed(pair.Second, pair.First.Up!.Value.Meters));
    }

    // Computed, not published: NumPy and SciPy; made-up plane data, seed 55, item 4 odd.
    [Fact]
    public void Plane_data_agree_with_the_reference()
    {
        NumberedArrows<Length> fit = NumberedArrows.Of([Plane()], 0.9);
        Assert.Equal((10, 48), (fit.FreedomBetween, fit.FreedomWithin));
        Printed("33.956167", fit.F * Square(fit.Scatter.Sample));
        Printed("4.795", Square(fit.Scatter.Sample));
        Printed("7.081578", fit.F);
        Printed("1.03099e-6", fit.Probability);
        Printed("5.832233", Square(fit.Tau.Value));
        Printed("2.189749", fit.Scatter.Sample.Meters);
        Printed(".858789", fit.Arrows[0].Kept);
    }

    [Fact] // unequal numbers: three arrows shot 2, 3 and 5 times along one axis; the restricted likelihood written out and searched
    public void Unequal_numbers_have_the_largest_restricted_likelihood()
    {
        double[][] y = [[1.0, 2.5], [4.0, 3.2, 5.1], [0.1, -0.4, 1.2, 0.3, -1.0]];
        NumberedArrows<Length> fit = NumberedArrows.Of([End(y)], Axis.Vertical, 0.9);
        double tau2 = Square(fit.Tau.Value), sigma2 = tau2 * (1 - fit.Share.Value) / fit.Share.Value, best = Restricted(y, tau2, sigma2);
        foreach (var (a, b) in new[] { (1.001, 1.0), (0.999, 1.0), (1.0, 1.001), (1.0, 0.999), (1.3, 0.9) })
        {
            Assert.True(Restricted(y, tau2 * a, sigma2 * b) < best);
        }
    }

    [Fact] // unequal numbers: prediction is the shrunken distance from the generalised mean, less the mean of all predictions, which is zero
    public void Unequal_numbers_shrink_each_arrow_by_its_own_shots()
    {
        double[][] y = [[1.0, 2.5], [4.0, 3.2, 5.1], [0.1, -0.4, 1.2, 0.3, -1.0]];
        NumberedArrows<Length> fit = NumberedArrows.Of([End(y)], Axis.Vertical, 0.9);
        double tau2 = Square(fit.Tau.Value), sigma2 = tau2 * (1 - fit.Share.Value) / fit.Share.Value;
        double[] weight = [.. y.Select(v => 1 / (tau2 + (sigma2 / v.Length)))];
        double mean = y.Zip(weight, (v, w) => w * v.Average()).Sum() / weight.Sum();
        Assert.All(fit.Arrows.Zip(y), pair => Assert.Equal(tau2 / (tau2 + (sigma2 / pair.Second.Length)) * (pair.Second.Average() - mean), pair.First.Up!.Value.Meters, 1e-9));
    }

    [Fact] // relation: the sight may be moved between ends
    public void Moving_the_sight_between_ends_changes_nothing()
    {
        var simulated = new Simulated(51);
        Shot[] one = [.. Shots(simulated, 0, 5)], two = [.. Shots(simulated, 1, 5)];
        Shot[] moved = [.. two.Select(s => s with { Impact = new(s.Impact!.Value.Right + 3.Metres, s.Impact.Value.Up - 7.Metres) })];
        NumberedArrows<Length> a = NumberedArrows.Of([Group.Of(one), Group.Of(two)], 0.9), b = NumberedArrows.Of([Group.Of(one), Group.Of(moved)], 0.9);
        Assert.Equal(a.F, b.F, 1e-9);
        Assert.Equal(a.Tau.High.Meters, b.Tau.High.Meters, 1e-9);
        Assert.Equal(a.Arrows[2].Right!.Low.Meters, b.Arrows[2].Right!.Low.Meters, 1e-6);
        // each end shot once by each arrow: two-way layout, (k − 1)(ends − 1) degrees of freedom an axis
        Assert.Equal((8, 8), (a.FreedomBetween, a.FreedomWithin));
    }

    [Fact]
    public void Angles_are_offsets_over_distance()
    {
        var simulated = new Simulated(52);
        Shot[] near = [.. Shots(simulated, 0, 4), .. Shots(simulated, 0, 4)];
        Shot[] far = [.. near.Select(s => s with { Distance = 40.Metres, Impact = new(s.Impact!.Value.Right * 2, s.Impact.Value.Up * 2) })];
        NumberedArrows<Angle> angles = NumberedArrows.OfAngles([Group.Of(near), Group.Of(far)], 0.9);
        Assert.Equal(NumberedArrows.Of([Group.Of(near), Group.Of(near)], 0.9).Scatter.Sample.Meters / 20, angles.Scatter.Sample.Radians, 1e-12);
        Assert.Throws<ArgumentException>(() => NumberedArrows.Of([Group.Of(near), Group.Of(far)], 0.9));
    }

    [Fact]
    public void What_cannot_tell_says_so()
    {
        Assert.Contains("three numbered arrows", CannotTell(End([[1, 2], [3, 4]])), StringComparison.Ordinal);
        Assert.Contains("more than once", CannotTell(End([[1], [2], [3]])), StringComparison.Ordinal);
        Assert.Contains("own same hole", CannotTell(End([[1, 1], [2, 2], [3, 3]])), StringComparison.Ordinal);
        Assert.Contains("three numbered arrows", CannotTell(Group.Of(Simulated.Of((0, 0), (0, 1)))), StringComparison.Ordinal);
        Shot[] apart = [.. Shots(new Simulated(53), 0, 4), .. Shots(new Simulated(54), 0, 4)];
        Assert.Contains("Mix them", Assert.Throws<CannotTellException>(() => NumberedArrows.Of(
            [Group.Of(apart.Where(s => s.Arrow is "1" or "2")), Group.Of(apart.Where(s => s.Arrow is "3" or "4"))], 0.9)).Message, StringComparison.Ordinal);
        Assert.Throws<MissedArrowsException>(() => NumberedArrows.Of([Group.Of([.. apart, Simulated.Lost(9, Miss.Low)])], 0.9));
        static string CannotTell(Group g) => Assert.Throws<CannotTellException>(() => NumberedArrows.Of([g], Axis.Vertical, 0.9)).Message;
    }

    [Fact]
    public void Shots_without_a_number_and_called_flyers_are_left_out_and_counted()
    {
        Shot[] shots = [.. Shots(new Simulated(55), 0, 4), .. Shots(new Simulated(56), 0, 4)];
        shots[7] = shots[7] with { Arrow = null };
        shots[6] = shots[6] with { Called = true };
        Assert.Equal(1, NumberedArrows.Of([Group.Of(shots)], 0.9).LeftOut);
        Assert.Equal(6, NumberedArrows.Of([Group.Of(shots)], 0.9).Arrows.Sum(a => a.Shots));
        Assert.Equal(7, NumberedArrows.Of([Group.Of(shots).WithCalled()], 0.9).Arrows.Sum(a => a.Shots));
    }

    [Theory] // coverage of 90 % intervals; balanced and not; 4 standard errors of 0.9 in 600 are 0.049
    [InlineData(0.0)]
    [InlineData(0.7)]
    public void Intervals_are_covered_as_stated(double tau)
    {
        ArrowStudyRow row = ArrowStudyRow.Run(6, 4, tau, 600, 700);
        Assert.InRange(row.Scatter, 0.85, 0.95);
        Assert.InRange(row.Tau, tau > 0 ? 0.85 : 0.9, tau > 0 ? 0.95 : 1); // at zero the interval is cut there: at least as often
        Assert.InRange(row.Share, tau > 0 ? 0.85 : 0.9, tau > 0 ? 0.95 : 1);
        Assert.InRange(row.Offset, 0.85, tau > 0 ? 0.95 : 1);
    }

    internal static Group End(double[][] heights)
    {
        List<Shot> shots = [];
        for (int arrow = 0; arrow < heights.Length; arrow++)
        {
            shots.AddRange(heights[arrow].Select(y => Simulated.Shot(shots.Count + 1, 0, y) with { Arrow = $"{arrow + 1}" }));
        }

        return Group.Of(shots.Select((s, i) => s with { Number = i + 1 }));
    }

    internal static Group Plane() => Group.Of(Rows("arrows/plane.csv").Select((row, i) => Simulated.Shot(i + 1, Number(row[2]), Number(row[3])) with { Arrow = row[0] }));

    static IEnumerable<Shot> Shots(Simulated simulated, int end, int arrows) =>
        Enumerable.Range(1, arrows).Select(a => Simulated.Shot((end * arrows) + a, simulated.Normal(), simulated.Normal(), session: $"end {end}") with { Arrow = $"{a}" });

    static NumberedArrows<Length> Read(string name, double level = 0.9) => NumberedArrows.Of(
        [Group.Of(Rows(name).Select((row, i) => Simulated.Shot(i + 1, 0, Number(row[1])) with { Arrow = row[0] }))], Axis.Vertical, level);

    static IEnumerable<string[]> Rows(string name) =>
        File.ReadAllLines(House.Path($"tests/authorities/{name}")).Where(l => !l.StartsWith('#') && l.Length > 0).Skip(1).Select(l => l.Split(','));

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    static double Square(Length length) => length.Meters * length.Meters;

    static void Printed(string text, double actual, double slack = 1) => new Printed(text, "reference").Matches(actual, slack);

    // ln of the restricted likelihood of one-way data, written out arrow by arrow.
    static double Restricted(double[][] y, double tau2, double sigma2)
    {
        double weights = 0, weighted = 0, log = 0, squares = 0;
        foreach (double[] v in y)
        {
            double w = 1 / (tau2 + (sigma2 / v.Length)), mean = v.Average();
            (weights, weighted) = (weights + w, weighted + (w * mean));
            log += ((v.Length - 1) * Math.Log(sigma2)) - Math.Log(w);
            squares += v.Sum(x => (x - mean) * (x - mean)) / sigma2;
        }

        double centre = weighted / weights;
        squares += y.Sum(v => (v.Average() - centre) * (v.Average() - centre) / (tau2 + (sigma2 / v.Length)));
        return -(log + Math.Log(weights) + squares) / 2;
    }
}
