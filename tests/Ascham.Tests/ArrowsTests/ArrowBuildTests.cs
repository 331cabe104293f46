namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

public class ArrowBuildTests
{
    const string Worked = "worked by hand from the sums over parts, arrow of 29.0 in";

    [Theory] // Independent: sums over parts
    [InlineData(100, "390.25", "18.2644", "12.981", "1.7366e-3", "10.317")]
    [InlineData(125, "415.25", "18.9318", "15.282", "1.85729e-3", "10.343")]
    [InlineData(150, "440.25", "19.5234", "17.322", "1.9643e-3", "10.331")]
    [InlineData(200, "490.25", "20.5256", "20.778", "2.1455e-3", "10.232")]
    public void The_worked_arrow_has_its_mass_balance_and_inertia(double point, string grains, string balance, string foc, string inertia, string radius)
    {
        ArrowBuild build = BuildGen.Worked(point);
        new Printed(grains, Worked).Matches(build.Mass.Grains);
        new Printed(balance, Worked).Matches(build.BalancePoint.Inches);
        new Printed(foc, Worked).Matches(build.FrontOfCentre.Percent);
        new Printed(inertia, Worked).Matches(build.TransverseInertia.KilogramSquareMeters);
        new Printed(radius, Worked).Matches(build.RadiusOfGyration.Inches);
    }

    [Theory] // Published: balance on a knife edge, ASTM F1435; the algebra 100 (A - L/2)/L
    [InlineData(29, 18.125, "12.50")]
    [InlineData(28, 17, "10.714")]
    public void Front_of_centre_is_that_of_the_trade(double length, double balance, string percent)
    {
        ArrowBuild build = Plain(length) with { MeasuredBalance = balance.Inches };
        new Printed(percent, "100 (A - L/2)/L, ASTM F1435").Matches(build.FrontOfCentre.Percent);
    }

    [Fact]
    public void Measured_totals_override_and_the_difference_is_told()
    {
        ArrowBuild parts = BuildGen.Worked(125), weighed = parts with { WeighedMass = 421.25.Grains, MeasuredBalance = 18.8.Inches };
        Assert.Equal(421.25, weighed.Mass.Grains, 9);
        Assert.Equal(6.0, weighed.MassDifference!.Value.Grains, 9);
        Assert.Equal(18.8 - parts.BalancePoint.Inches, weighed.BalanceDifference!.Value.Inches, 9);
        Assert.Equal(parts.TransverseInertia.KilogramSquareMeters * 421.25 / 415.25, weighed.TransverseInertia.KilogramSquareMeters, 12);
        Assert.Null(parts.MassDifference);
        Assert.Null(parts.BalanceDifference);
    }

    [Fact] // Relation
    public void The_sum_does_not_depend_on_the_order_of_the_parts() =>
        Gen.Select(BuildGen.Any, Gen.Int[0, 100000]).Sample((build, seed) =>
        {
            ArrowPart[] shuffled = [.. build.Parts];
            new Random(seed).Shuffle(shuffled);
            ArrowBuild other = build with { Parts = shuffled };
            return Close(other.Mass.Grains, build.Parts.Sum(p => p.Mass.Grains)) && Close(other.BalancePoint.Inches, build.BalancePoint.Inches);
        });

    [Fact] // Relation
    public void Moving_a_mass_forward_never_lowers_front_of_centre() =>
        Gen.Select(BuildGen.Any, Gen.Double[0, 200], Gen.Double[1, 20], Gen.Double[0, 6]).Sample((build, grains, at, further) =>
            With(build, grains, at + further).FrontOfCentre >= With(build, grains, at).FrontOfCentre);

    [Fact] // Relation
    public void A_point_solved_for_gives_what_was_wanted() =>
        Gen.Select(BuildGen.Any, Gen.Double[80, 300], Gen.Int[0, 3]).Sample((build, grains, measured) =>
        {
            build = build with { WeighedMass = (measured & 1) > 0 ? build.Mass * 1.01 : null, MeasuredBalance = (measured & 2) > 0 ? build.BalancePoint * 0.998 : null };

            ArrowBuild other = build.WithPoint(grains.Grains);
            return Close(build.PointForFrontOfCentre(other.FrontOfCentre).Grains, grains) && Close(build.PointForMass(other.Mass).Grains, grains);
        });

    [Fact] // Independent: 8 gr that the parts lack, drawn anywhere along the arrow
    public void Mass_that_the_parts_lack_widens_front_of_centre_unless_it_was_balanced()
    {
        ArrowBuild parts = BuildGen.Worked(125), weighed = parts with { WeighedMass = parts.Mass + 8.Grains };
        var random = new Random(43);
        double[] drawn = [.. Enumerable.Range(0, 4000).Select(_ => parts.Plus(ArrowPart.At(PartKind.Other, 8.Grains, random.NextDouble() * parts.TotalLength)).FrontOfCentre.Percent)];
        double spread = Math.Sqrt(drawn.Average(x => Math.Pow(x - drawn.Average(), 2)));
        Assert.Equal(spread, weighed.FrontOfCentreWithin(0.Grains, 0.Millimetres, 0.9).StandardError.Percent, 0.03 * spread);
        Assert.True((weighed with { MeasuredBalance = parts.BalancePoint }).FrontOfCentreWithin(0.Grains, 0.Millimetres, 0.9).StandardError < Ratio.FromPercent(1e-9));
    }

    [Fact] // Independent: the interval against drawn errors
    public void Front_of_centre_scatters_as_its_interval_says()
    {
        ArrowBuild build = BuildGen.Worked(125);
        Estimate<Ratio> estimate = build.FrontOfCentreWithin(0.5.Grains, 0.5.Millimetres, 0.9);
        var random = new Random(41);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double[] drawn = [.. Enumerable.Range(0, 4000).Select(_ =>
        {
            var parts = build.Parts.Select(p => (Mass: p.Mass.Grains + 0.5 * Normal(), At: p.Centre.Millimeters + 0.5 * Normal())).ToArray();
            return 100 * (parts.Sum(p => p.Mass * p.At) / parts.Sum(p => p.Mass) / (build.Length.Millimeters + 0.5 * Normal()) - 0.5);
        })];
        double mean = drawn.Average(), sd = Math.Sqrt(drawn.Sum(d => (d - mean) * (d - mean)) / (drawn.Length - 1));
        Assert.InRange(estimate.StandardError.Percent / sd, 0.94, 1.06); // standard error of a standard deviation from 4000: 1.1 %
        Assert.InRange(drawn.Count(d => d >= estimate.Low.Percent && d <= estimate.High.Percent) / 4000.0, 0.88, 0.92);
    }

    [Fact]
    public void A_build_hands_its_mass_and_balance_on()
    {
        ArrowBuild build = BuildGen.Worked(125);
        Arrow arrow = build.ToArrow(5.9.Millimetres);
        Assert.Equal(build.Mass, arrow.Mass);
        Assert.Equal(29, arrow.Length!.Value.Inches, 9);
        Stability stability = build.StabilityWith(5.9.Millimetres, LiftingPart.ConePoint(20.Millimetres, 5.9.Millimetres), null, CarryOver.OntoVanes, 1.1);
        Assert.Equal(29.35 - 18.9318, stability.BalancePoint.Inches, 3);
        Assert.Equal(29.35, stability.TotalLength.Inches, 9);
    }

    [Fact]
    public void Overlapping_parts_are_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => BuildGen.Worked(100) with
        {
            Parts = [ArrowPart.Shaft(8.5, 0.5.Inches, 28.5.Inches), ArrowPart.Over(PartKind.Point, 100.Grains, 28.Inches, 1.5.Inches)],
        });
        Assert.Contains("\"shaft\", 0.5 to 29 in, and \"point\", 28 to 29.5 in, overlap", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_insert_in_the_shaft_and_vanes_on_a_wrap_may_share_a_place() => BuildGen.Any.Sample(build => build.Parts.Count == 6);

    [Fact]
    public void A_part_off_the_shaft_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => With(BuildGen.Worked(100), ArrowPart.Over(PartKind.Wrap, 5.Grains, 28.Inches, 4.Inches)));
        Assert.Contains("\"wrap\"", error.Message, StringComparison.Ordinal);
        Assert.Contains("lies off the shaft", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_balance_point_off_the_arrow_is_refused()
    {
        var error = Assert.Throws<InvalidOperationException>(() => (BuildGen.Worked(100) with { MeasuredBalance = 31.Inches }).FrontOfCentre);
        Assert.Contains("MeasuredBalance must lie on the arrow, from 0 to 745.5 mm", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_arrow_has_one_shaft_and_one_point()
    {
        var error = Assert.Throws<ArgumentException>(() => new ArrowBuild { Parts = [ArrowPart.Shaft(8.5, 0.5.Inches, 28.5.Inches)] });
        Assert.Contains("An arrow has one point; the parts list 0.", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(-5)]
    public void A_front_of_centre_out_of_reach_is_told(double percent) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BuildGen.Worked(100).PointForFrontOfCentre(percent.Percent));

    [Fact]
    public void A_mass_below_the_other_parts_is_told()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => BuildGen.Worked(100).PointForMass(250.Grains));
        Assert.Contains("at least 290.3 gr", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(13000)]
    [InlineData(-1)]
    public void A_part_needs_a_mass(double grains) => Assert.Throws<ArgumentOutOfRangeException>(() => ArrowPart.At(PartKind.Nock, grains.Grains, 0.2.Inches));

    static bool Close(double one, double other) => Math.Abs(one - other) <= 1e-9 * Math.Max(1, Math.Abs(other));

    static ArrowBuild With(ArrowBuild build, ArrowPart more) => build with { Parts = [.. build.Parts, more] };

    static ArrowBuild With(ArrowBuild build, double grains, double at) => With(build, ArrowPart.At(PartKind.Other, grains.Grains, at.Inches));

    static ArrowBuild Plain(double length) => new()
    {
        Parts = [ArrowPart.Shaft(8.5, 0.5.Inches, (length - 0.5).Inches), ArrowPart.At(PartKind.Point, 100.Grains, (length + 0.3).Inches)],
    };

    [Fact]
    public void Another_part_changes_balance_and_mass_as_the_sum_of_parts_does()
    {
        var build = BuildGen.Worked(125);
        var extra = ArrowPart.At(PartKind.Other, Mass.FromGrains(15), Length.FromInches(20)) with { Name = "weight" };
        var (plus, fresh) = (build.Plus(extra), build with { Parts = [.. build.Parts, extra] });
        Assert.Equal(fresh.Mass.Grains, plus.Mass.Grains, 1e-9);
        Assert.Equal(fresh.BalancePoint.Inches, plus.BalancePoint.Inches, 1e-9);
        Assert.Equal(build.BalancePoint.Inches, plus.With(extra, Mass.Zero).BalancePoint.Inches, 1e-9);
    }

    [Fact]
    public void Mass_added_at_the_measured_balance_leaves_it_where_it_is()
    {
        var build = BuildGen.Worked(125) with { MeasuredBalance = Length.FromInches(19.1), WeighedMass = Mass.FromGrains(420) };
        var plus = build.Plus(ArrowPart.At(PartKind.Other, Mass.FromGrains(25), build.BalancePoint) with { Name = "weight" });
        Assert.Equal((445, 19.1), (Math.Round(plus.Mass.Grains, 9), Math.Round(plus.BalancePoint.Inches, 9)));
    }

    [Fact]
    public void A_lighter_shaft_and_a_heavier_point_move_the_balance_forward_at_the_same_mass()
    {
        var build = BuildGen.Worked(125);
        var moved = build.WithPoint(Mass.FromGrains(150)).With(build.Shaft, build.Shaft.Mass - Mass.FromGrains(25));
        Assert.Equal(build.Mass.Grains, moved.Mass.Grains, 1e-9);
        double by = 25 * (build.Point.Centre - build.Shaft.Centre).Inches / build.Mass.Grains;   // lever rule
        Assert.Equal(by, (moved.BalancePoint - build.BalancePoint).Inches, 1e-9);
    }

    [Fact]
    public void A_part_of_another_arrow_cannot_be_changed()
    {
        var error = Assert.Throws<ArgumentException>(() => BuildGen.Worked(125).With(ArrowPart.At(PartKind.Other, Mass.FromGrains(1), Length.Zero) with { Name = "stranger" }, Mass.Zero));
        Assert.Contains("\"stranger\" is not one of this arrow", error.Message, StringComparison.Ordinal);
    }
}
