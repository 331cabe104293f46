namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class CentreTests
{
    // Computed worked example: impacts drawn with seed 20240615 and rounded to 0.1; results from NumPy 1.24 and SciPy 1.10.
    static readonly Group G1 = Group.Of(Simulated.Of((-1.7, 1.1), (-1.8, -3.8), (2.7, 0.1), (-0.7, -2.5), (-1.8, 1.3), (-0.4, 0)));
    static readonly Group G2 = Group.Of(Simulated.Of((-1.2, -4.0), (-0.7, -2.4), (5.5, -1.3), (1.4, -1.6), (4.4, -4.0), (1.7, 0)));

    [Fact]
    public void Worked_example_gives_the_computed_centre_disc_and_ellipse()
    {
        Centre centre = G1.Centre(0.95);

        new Printed("-0.6166667", "computed, NumPy").Matches(centre.Right.Value.Meters);
        new Printed("-0.6333333", "computed, NumPy").Matches(centre.Up.Value.Meters);
        new Printed("2.2256910178", "computed, SciPy").Matches(centre.Disc.Radius.Meters);
        new Printed("3.56489848", "computed, SciPy").Matches(centre.Ellipse!.SemiMajor.Meters);
        new Printed("2.87273227", "computed, SciPy").Matches(centre.Ellipse.SemiMinor.Meters);
        new Printed("71.596055", "computed, NumPy").Matches(centre.Ellipse.Orientation.Degrees);
        new Printed("1.903199061", "by hand, sqrt(36.22166667/10)").Matches(G1.Dispersion(0.95).BothAxes.Sample.Meters);
    }

    [Fact]
    public void Worked_example_of_two_groups_gives_the_computed_shift_and_pooled_s()
    {
        new Printed("-2.4666667", "computed, NumPy").Matches((G1.Centre(0.95).Right.Value - G2.Centre(0.95).Right.Value).Meters);
        new Printed("1.5833333", "computed, NumPy").Matches((G1.Centre(0.95).Up.Value - G2.Centre(0.95).Up.Value).Meters);
        new Printed("2.0567571563", "computed, NumPy").Matches(Dispersion.Pooled([G1, G2], 0.95).BothAxes.Sample.Meters);
    }

    [Theory] // disc radius over s, 95 %; computed independently with SciPy 1.10 from F with 2 and 2(n - 1) degrees of freedom
    [InlineData(2, "4.358899")]
    [InlineData(3, "2.151631")]
    [InlineData(6, "1.169447")]
    [InlineData(12, "0.757557")]
    [InlineData(36, "0.416845")]
    public void Radius_over_s_agrees_with_an_independent_computation(int n, string printed)
    {
        Group group = new Simulated(n).Group(n, 1);
        new Printed(printed, "SciPy").Matches(group.Centre(0.95).Disc.Radius / group.Dispersion(0.95).BothAxes.Sample);
    }

    [Theory] // half axis over root of eigenvalue, 95 %, SciPy 1.10; a cross of points has S = identity times (n/2)/(n - 1)
    [InlineData(4, "3.774917")]
    [InlineData(8, "1.224792")]
    [InlineData(12, "0.867285")]
    public void Half_axis_over_spread_agrees_with_an_independent_computation(int n, string printed)
    {
        (double, double)[] cross = [(1, 0), (-1, 0), (0, 1.5), (0, -1.5)];
        Group group = Group.Of(Simulated.Of([.. Enumerable.Repeat(cross, n / 4).SelectMany(c => c)]));
        ConfidenceEllipse ellipse = group.Centre(0.95).Ellipse!;

        new Printed(printed, "SciPy").Matches(ellipse.SemiMajor / group.Dispersion(0.95).Vertical.Sample);
        new Printed(printed, "SciPy").Matches(ellipse.SemiMinor / group.Dispersion(0.95).Horizontal.Sample);
        Assert.Equal(90, ellipse.Orientation.Degrees, 1e-9);
    }

    // Stata's hotelling, quoted in the tests of statsmodels 0.13.5: paired differences, T2 9.69806763285025, F(2, 10) 4.408212560386478, p .0423949782937231.
    // The ellipse of level 1 - p must pass through no difference at all.
    [Fact]
    public void Ellipse_at_one_minus_the_published_p_passes_through_the_hypothesis()
    {
        Group differences = Group.Of(Paired().Select(p => Simulated.At(p.A1 - p.B1, p.A2 - p.B2)).ToArray());

        Assert.True(Outside(differences.Centre(1 - (0.0423949782937231 * (1 + 1e-6))).Ellipse!));
        Assert.False(Outside(differences.Centre(1 - (0.0423949782937231 * (1 - 1e-6))).Ellipse!));

        static bool Outside(ConfidenceEllipse ellipse) => !ellipse.Contains(Simulated.At(0, 0));
    }

    // The same source: the two samples stacked, n = 24, against (21, 21): T2 125.2791095890415, p 1.25062334808e-09.
    [Fact]
    public void Ellipse_far_out_passes_through_the_hypothesis_too()
    {
        Group stacked = Group.Of(Paired().SelectMany(p => Simulated.Of((p.A1, p.A2), (p.B1, p.B2))).ToArray());

        Assert.False(stacked.Centre(1 - (1.25062334808e-09 * 1.001)).Ellipse!.Contains(Simulated.At(21, 21)));
        Assert.True(stacked.Centre(1 - (1.25062334808e-09 * 0.999)).Ellipse!.Contains(Simulated.At(21, 21)));
    }

    [Fact]
    public void Two_impacts_give_a_disc_but_no_ellipse()
    {
        Centre centre = Group.Of(Simulated.Of((0, 0), (1, 2))).Centre(0.9);
        Assert.Null(centre.Ellipse);
        // nu = 2, n = 2: radius = s sqrt(1/alpha - 1), by hand; s² = 2.5/2.
        Assert.Equal(Math.Sqrt(1.25 * 9), centre.Disc.Radius.Meters, 1e-12);
    }

    [Fact]
    public void Impacts_on_one_line_give_no_ellipse() =>
        Assert.Null(Group.Of(Simulated.Of((0.1, 0.3), (0.2, 0.6), (0.3, 0.9), (0.7, 2.1))).Centre(0.9).Ellipse);

    [Fact]
    public void Answers_come_in_the_unit_of_the_impacts()
    {
        Group inches = Group.Of([new Impact(Length.FromInches(1), Length.FromInches(2)), new Impact(Length.FromInches(0), Length.FromInches(-1))]);
        Assert.Equal(UnitsNet.Units.LengthUnit.Inch, inches.Centre(0.9).Up.Value.Unit);
        Assert.Equal(UnitsNet.Units.LengthUnit.Inch, inches.Dispersion(0.9).BothAxes.Estimate.Low.Unit);
    }

    static List<(double A1, double A2, double B1, double B2)> Paired() =>
        [.. from line in File.ReadLines(House.Path("tests/authorities/hotelling/paired-n12.csv")).Skip(2)
            let v = line.Split(',').Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray()
            select (v[0], v[1], v[2], v[3])];
}
