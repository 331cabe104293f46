namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;
using static Ascham.Tests.GroupsTests.WorkedExample;

/// <summary>Differences of centres against published and independently computed examples.</summary>
public class CentreShiftTests
{
    const string Computed = "computed, NumPy 1.24 and SciPy 1.10, from the rounded data";

    // Seber (1984), Multivariate Observations, example 3.7, after Yao (1965): summaries second-hand, results computed with SciPy 1.10.
    static readonly Group Yao1 = With(16, 9.82, 15.06, 120, -16.3, 17.8), Yao2 = With(11, 13.05, 22.57, 81.8, 32.1, 53.8);

    // Johnson and Wichern, example 6.4 = Nel and van der Merwe (1986), example 4.1: summaries second-hand, results computed with SciPy 1.10.
    static readonly Group Electric1 = With(45, 204.4, 556.6, 13825.3, 23823.4, 73107.4), Electric2 = With(55, 130, 355, 8632, 19616.7, 55964.5);

    [Fact]
    public void Worked_example_gives_the_computed_shift_and_probabilities()
    {
        CentreShift round = Between(G2, G1, SpreadModel.Round);

        new Printed("-2.4666667", Computed).Matches(round.Right.Value.Meters);
        new Printed("1.5833333", Computed).Matches(round.Up.Value.Meters);
        new Printed("0.0699985734", Computed).Matches(round.Probability);
        new Printed("3.0464117566", Computed).Matches(Square(round.InSigmas!.Value / Math.Sqrt(1.0 / 3)) / 2);
        new Printed("0.095423608", Computed).Matches(Between(G2, G1, SpreadModel.AnyShape).Probability);
        new Printed("0.098665913", Computed).Matches(Between(G2, G1, SpreadModel.AnyShapeUnlike).Probability);
    }

    [Theory]
    [InlineData(SpreadModel.AnyShape, "0.0096226745", Computed)]
    [InlineData(SpreadModel.AnyShapeUnlike, "0.025923543", Computed)]
    [InlineData(SpreadModel.AnyShapeUnlikeJames, "0.022764751", Computed)]
    public void Example_of_Yao_gives_the_computed_probability(SpreadModel model, string probability, string source) =>
        new Printed(probability, source).Matches(Between(Yao1, Yao2, model).Probability);

    [Theory]
    [InlineData(SpreadModel.AnyShape, "0.00063437772")]
    [InlineData(SpreadModel.AnyShapeUnlike, "0.000890041")]
    [InlineData(SpreadModel.AnyShapeUnlikeJames, "0.00084656")]
    public void Example_of_Nel_and_van_der_Merwe_gives_the_computed_probability(SpreadModel model, string probability) =>
        new Printed(probability, Computed).Matches(Between(Electric1, Electric2, model).Probability);

    [Fact]
    public void Statistics_and_critical_values_agree_with_the_examples()
    {
        ShiftLaw pooled = ShiftLaw.Of(SpreadModel.AnyShape, Yao1.Moments, Yao2.Moments);
        ShiftLaw james = ShiftLaw.Of(SpreadModel.AnyShapeUnlikeJames, Yao1.Moments, Yao2.Moments);
        ShiftLaw nel = ShiftLaw.Of(SpreadModel.AnyShapeUnlike, Yao1.Moments, Yao2.Moments);
        new Printed("11.812787", Computed).Matches(pooled.Statistic(3.23, 7.51));
        new Printed("9.4455414", Computed).Matches(nel.Statistic(3.23, 7.51));
        new Printed("7.23", "James's critical value of the example of Yao, recalled").Matches(james.Critical(0.05)); // from memory
        new Printed("7.2308245", Computed).Matches(james.Critical(0.05));

        ShiftLaw electric = ShiftLaw.Of(SpreadModel.AnyShape, Electric1.Moments, Electric2.Moments);
        new Printed("16.066219", Computed).Matches(electric.Statistic(-74.4, -201.6));
        new Printed("6.2440885", Computed).Matches(electric.Critical(0.05));
        new Printed("15.658529", Computed).Matches(ShiftLaw.Of(SpreadModel.AnyShapeUnlike, Electric1.Moments, Electric2.Moments).Statistic(-74.4, -201.6));
        new Printed("6.307261", Computed).Matches(ShiftLaw.Of(SpreadModel.AnyShapeUnlikeJames, Electric1.Moments, Electric2.Moments).Critical(0.05));
    }

    // Stata's hotelling, quoted in the tests of statsmodels 0.13.5.
    [Fact]
    public void One_sample_tests_agree_with_the_published_ones()
    {
        Group stacked = Group.Of(Authority.Paired().SelectMany(p => Simulated.Of((p.A1, p.A2), (p.B1, p.B2))).ToArray());
        Group differences = Group.Of(Authority.Paired().Select(p => Simulated.At(p.A1 - p.B1, p.A2 - p.B2)).ToArray());

        Assert.Equal(1.25062334808e-09, CentreShift.FromAim(stacked, Simulated.At(21, 21), SpreadModel.AnyShape, 0.9).Probability, 1e-18);
        Assert.Equal(0.0423949782937231, CentreShift.FromAim(differences, Simulated.At(0, 0), SpreadModel.AnyShape, 0.9).Probability, 1e-14);
    }

    // R's package equivalence, quoted in the tests of statsmodels 0.13.5; one coordinate. The upper end reaches 0.6 at level 1 - 2p.
    [Fact]
    public void One_coordinate_agrees_with_the_published_equivalence_tests()
    {
        var clinic = Authority.Clinic();
        Group first = Heights(clinic.Where(c => c.Group == 1).Select(c => c.V1)), second = Heights(clinic.Where(c => c.Group == 2).Select(c => c.V1));
        Group paired = Heights(clinic.Where(c => c.Group == 1).Zip(clinic.Where(c => c.Group == 2), (a, b) => a.V1 - b.V1));

        Estimate<Length> pooled = CentreShift.Between(second, first, SpreadModel.AnyShape, 0.9).Up;
        new Printed("0.1646666667", "R equivalence").Matches(pooled.Value.Meters);
        new Printed("0.2531625991", "R equivalence").Matches(pooled.StandardError.Meters);
        new Printed("-0.2659960621", "R equivalence").Matches(pooled.Low.Meters);
        new Printed("0.5953293954", "R equivalence").Matches(pooled.High.Meters);
        Assert.Equal(0.6, CentreShift.Between(second, first, SpreadModel.AnyShape, 1 - (2 * 0.0482731510)).Up.High.Meters, 1e-8);
        Assert.Equal(0.6, CentreShift.Between(second, first, SpreadModel.AnyShapeUnlike, 1 - (2 * 0.0485308398)).Up.High.Meters, 1e-8);
        Assert.Equal(0.6, CentreShift.FromAim(paired, Simulated.At(0, 0), SpreadModel.AnyShape, 1 - (2 * 0.0031668815)).Up.High.Meters, 1e-8);
        new Printed("0.1357514068", "R equivalence").Matches(CentreShift.FromAim(paired, Simulated.At(0, 0), SpreadModel.AnyShape, 0.9).Up.StandardError.Meters);

        Group v2First = Heights(clinic.Where(c => c.Group == 1).Select(c => c.V2)), v2Second = Heights(clinic.Where(c => c.Group == 2).Select(c => c.V2));
        new Printed("0.5626666667", "R equivalence").Matches(CentreShift.Between(v2Second, v2First, SpreadModel.AnyShape, 0.9).Up.Value.Meters);
        Assert.Equal(0.6, CentreShift.Between(v2Second, v2First, SpreadModel.AnyShape, 1 - (2 * 0.4316934769)).Up.High.Meters, 1e-8);
    }

    // The across coordinate of these groups is a bystander; it must spread, or the group says nothing of it.
    static Group Heights(IEnumerable<double> heights) => Group.Of(heights.Select((h, k) => Simulated.At(k % 3, h)).ToArray());

    [Theory] // radius that matters over s at which the pooled test rejects: the confidence disc of one group, computed with SciPy 1.10
    [InlineData(3, 2.151631)]
    [InlineData(12, 0.757557)]
    public void A_point_on_the_edge_of_the_confidence_disc_is_just_rejected(int n, double radius)
    {
        Group group = new Simulated(n).Group(n, 1);
        Centre centre = group.Centre(0.95);
        double s = group.Dispersion(0.95).BothAxes.Sample.Meters;
        Impact edge = Simulated.At(centre.Right.Value.Meters + (radius * s), centre.Up.Value.Meters);
        Assert.Equal(0.05, CentreShift.FromAim(group, edge, SpreadModel.Round, 0.95).Probability, 1e-6);
    }

    [Theory] // the lower end is zero exactly when the test does not reject at the same probability
    [InlineData(SpreadModel.Round)]
    [InlineData(SpreadModel.RoundUnlike)]
    [InlineData(SpreadModel.AnyShape)]
    [InlineData(SpreadModel.AnyShapeUnlike)]
    [InlineData(SpreadModel.AnyShapeUnlikeJames)]
    public void Lower_end_of_the_distance_leaves_zero_where_the_test_rejects(SpreadModel model)
    {
        double p = Between(G2, G1, model).Probability;
        Assert.Equal(0, CentreShift.Between(G2, G1, model, 1 - (2 * p * 0.999)).Distance.Low.Meters);
        Assert.InRange(CentreShift.Between(G2, G1, model, 1 - (2 * p * 1.001)).Distance.Low.Meters, 1e-6, 0.2);
    }

    [Fact] // far apart, the distance is one coordinate: both ends become Student's
    public void Distance_of_far_groups_has_the_Student_interval_of_one_coordinate()
    {
        foreach (double far in new[] { 200.0, 2000, 2e6 })
        {
            CentreShift shift = Between(G1, Moved(G1, far, 0), SpreadModel.Round);
            Assert.Equal(shift.Right.Low.Meters, shift.Distance.Low.Meters, 1.0 / far);
            Assert.Equal(shift.Right.High.Meters, shift.Distance.High.Meters, 1e-9 * far);
        }
    }

    [Theory] // a brute-force walk over directions and over the rim of the ellipse
    [InlineData(SpreadModel.AnyShape)]
    [InlineData(SpreadModel.AnyShapeUnlike)]
    public void Ends_of_the_distance_agree_with_a_walk_around(SpreadModel model)
    {
        Group far = Moved(G1, 9, 4);
        ShiftLaw law = ShiftLaw.Of(model, G2.Moments, far.Moments);
        double right = far.Moments.MeanRight - G2.Moments.MeanRight, up = far.Moments.MeanUp - G2.Moments.MeanUp;
        double highest = 0, nearest = double.MaxValue, k = Math.Sqrt(law.Critical(0.05));
        double a = Math.Sqrt(law.Variance.Larger) * k, b = Math.Sqrt(law.Variance.Smaller) * k;
        var (ts, tc) = Math.SinCos(law.Variance.Direction);
        for (int i = 0; i < 20_000; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / 20_000);
            highest = Math.Max(highest, (c * right) + (s * up) + law.Reach(c, s, 0.05));
            nearest = Math.Min(nearest, double.Hypot(right + (tc * a * c) - (ts * b * s), up + (ts * a * c) + (tc * b * s)));
        }

        Assert.Equal(highest, law.Upper(right, up, 0.05), 1e-6);
        Assert.Equal(nearest, law.Lower(right, up, 0.05), 1e-6);
    }

    [Fact]
    public void Swapping_the_groups_turns_the_shift_around_and_changes_nothing_else()
    {
        CentreShift there = Between(G1, G2, SpreadModel.RoundUnlike), back = Between(G2, G1, SpreadModel.RoundUnlike);
        Assert.Equal(there.Right.Value.Meters, -back.Right.Value.Meters, 1e-12);
        Assert.Equal(there.Distance.High.Meters, back.Distance.High.Meters, 1e-12);
        Assert.Equal(there.Probability, back.Probability, 1e-14);
    }

    [Fact] // the modified Nel and van der Merwe test does not care for the units of the axes
    public void Stretching_one_axis_of_both_groups_leaves_the_probability()
    {
        static Group Stretch(Group g) => Group.Of(g.Impacts.Select(i => Simulated.At(i.Right.Meters, 7 * i.Up.Meters)).ToArray());
        foreach (SpreadModel model in new[] { SpreadModel.AnyShape, SpreadModel.AnyShapeUnlike, SpreadModel.AnyShapeUnlikeJames })
        {
            Assert.Equal(Between(G1, G2, model).Probability, Between(Stretch(G1), Stretch(G2), model).Probability, 1e-12);
        }
    }

    [Fact]
    public void Recommended_model_depends_on_the_number_of_arrows_alone()
    {
        var simulated = new Simulated(5);
        SpreadModel Used(int a, int b) => CentreShift.Between(simulated.Group(a, 1), simulated.Group(b, 1), SpreadModel.Recommended, 0.9).Model;
        Assert.Equal(SpreadModel.Round, Used(1, 4));
        Assert.Equal(SpreadModel.RoundUnlike, Used(11, 40));
        Assert.Equal(SpreadModel.AnyShapeUnlike, Used(12, 40));
    }

    [Fact]
    public void A_shift_not_shown_is_never_a_no()
    {
        Assert.Equal(Verdict.CannotTell, Between(G1, G1, SpreadModel.Round).Shifted);
        Assert.Equal(Verdict.Yes, Between(G1, Moved(G1, 50, 0), SpreadModel.Round).Shifted);
    }

    internal static Group Moved(Group group, double right, double up) =>
        Group.Of(group.Impacts.Select(i => Simulated.At(i.Right.Meters + right, i.Up.Meters + up)).ToArray());

    static CentreShift Between(Group from, Group to, SpreadModel model) => CentreShift.Between(from, to, model, 0.9);

    static double Square(double x) => x * x;
}
