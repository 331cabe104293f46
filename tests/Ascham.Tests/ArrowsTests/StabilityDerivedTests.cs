namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

/// <summary>Derived, independent, not published: one arrow worked elsewhere; and relations.</summary>
public class StabilityDerivedTests
{
    const string Worked = "worked elsewhere from the same equations";

    static readonly Gen<Fletching> AnyVanes = Gen.Select(
        Gen.Int[3, 8], Gen.Double[0.01, 0.12], Gen.Double[0, 0.08], Gen.Double[0.004, 0.03], Gen.Double[0, 0.05], Gen.Double[0.6, 1], Gen.Double[-4, 4],
        (count, root, tip, height, sweep, share, offset) => ExampleArrow.Vanes with
        {
            Count = count,
            RootChord = Length.FromMeters(root),
            TipChord = Length.FromMeters(tip),
            Height = Length.FromMeters(height),
            Sweep = Length.FromMeters(sweep),
            Effectiveness = Ratio.FromDecimalFractions(share),
            Offset = Angle.FromDegrees(offset),
        });

    static Length Shaft => Length.FromMeters(ExampleArrow.Diameter);

    [Fact]
    public void The_worked_arrow_has_its_slopes_and_centres()
    {
        new Printed("21.6794", Worked).Matches(ExampleArrow.Vanes.Lift(Shaft, CarryOver.None).Slope(Shaft));
        LiftingPart vanes = ExampleArrow.Vanes.Lift(Shaft, CarryOver.OntoVanes);
        new Printed("26.1301", Worked).Matches(vanes.Slope(Shaft));
        new Printed("0.65938", Worked).Matches(vanes.Position.Meters);

        Stability whole = ExampleArrow.Stability;
        new Printed("28.1301", Worked).Matches(whole.Slope);
        new Printed("0.61344", Worked).Matches(whole.CentreOfPressure.Meters);
        new Printed("0.31985", Worked).Matches(whole.Margin.Meters, slack: 1.5); // its printed parts were rounded first

        StabilitySi si = whole.Si;
        new Printed("8.9973", Worked).Matches(si.Sum1 / ExampleArrow.CrossSection, slack: 2); // the balance point was used with more digits than it is printed with
        new Printed("3.6532", Worked).Matches(si.Sum2 / ExampleArrow.CrossSection, slack: 3); // and again
    }

    [Theory]
    [InlineData(1, "2.1")]
    [InlineData(2, "4.0")]
    [InlineData(3, "5.9")]
    [InlineData(5, "9.5")]
    [InlineData(8, "14.3")]
    public void The_shaft_across_the_flow_adds_its_share_of_the_moment(double degrees, string percent)
    {
        StabilitySi si = ExampleArrow.Stability.Si;
        double alpha = degrees * Math.PI / 180, sine = Math.Sin(alpha), across = si.Across * si.AcrossArm * sine * sine;
        new Printed(percent, Worked).Matches(100 * across / (across + si.Sum1 * alpha));
    }

    [Theory]
    [InlineData(1, "148.85")]
    [InlineData(2, "297.71")]
    [InlineData(3, "446.56")]
    public void Offset_vanes_turn_the_worked_arrow(double degrees, string radiansPerSecond)
    {
        Fletching offset = ExampleArrow.Vanes with { Offset = Angle.FromDegrees(degrees) };
        new Printed(radiansPerSecond, Worked).Matches(ExampleArrow.Speed * offset.SettledSpinPerLength(Shaft).InverseMeters);
    }

    [Fact]
    public void Roll_is_the_sum_over_strips() => AnyVanes.Sample(vanes =>
    {
        // Strip by strip: lift slope of the whole vane spread over its area, local angle offset - spin xi / V.
        double r = 0.5 * ExampleArrow.Diameter, s = vanes.Height.Meters, first = 0, second = 0, inverse = 0;
        const int Strips = 4000;
        for (int i = 0; i < Strips; i++)
        {
            double part = (i + 0.5) / Strips, xi = r + part * s, strip = (vanes.RootChord.Meters * (1 - part) + vanes.TipChord.Meters * part) * s / Strips;
            first += strip * xi;
            second += strip * xi * xi;
            inverse += strip / (xi * xi);
        }

        double perVane = vanes.Lift(Shaft, CarryOver.None).LiftPerRadian.SquareMeters / (0.5 * vanes.Count * Shading(vanes.Count));
        double slope = vanes.Count * perVane / vanes.VaneArea.SquareMeters * (1 + r * r * r * inverse / first);
        (double turning, double damping) = vanes.Roll(Shaft);
        Assert.Equal(vanes.Offset.Radians * slope * first, turning, 1e-5 * slope * first);
        Assert.Equal(1, damping / (slope * second), 1e-5);
        Assert.Equal(vanes.SettledSpinPerLength(Shaft).InverseMeters, turning / damping, 1e-9);

        static double Shading(int count) => count switch { 5 => 0.948, 6 => 0.913, 7 => 0.854, 8 => 0.810, _ => 1 };
    });

    [Fact]
    public void Coefficients_do_not_know_the_size_of_the_arrow() => Gen.Select(AnyVanes, Gen.Double[0.1, 10]).Sample((vanes, scale) =>
    {
        Fletching large = vanes with
        {
            RootChord = scale * vanes.RootChord,
            TipChord = scale * vanes.TipChord,
            Height = scale * vanes.Height,
            Sweep = scale * vanes.Sweep,
            FromTip = scale * vanes.FromTip,
        };
        LiftingPart a = vanes.Lift(Shaft, CarryOver.OntoVanes), b = large.Lift(scale * Shaft, CarryOver.OntoVanes);
        Assert.Equal(a.Slope(Shaft), b.Slope(scale * Shaft), 1e-9 * a.Slope(Shaft));
        Assert.Equal(scale * a.Position.Meters, b.Position.Meters, 1e-9);
        Assert.Equal(vanes.RollDamping(Shaft), large.RollDamping(scale * Shaft), 1e-9 * Math.Abs(vanes.RollDamping(Shaft)));
    });

    [Fact]
    public void The_centre_of_a_vane_lies_on_the_vane() => AnyVanes.Sample(vanes =>
    {
        double behind = vanes.Lift(Shaft, CarryOver.None).Position.Meters - vanes.FromTip.Meters;
        return behind > 0 && behind < Math.Max(vanes.RootChord.Meters, vanes.Sweep.Meters + vanes.TipChord.Meters);
    });

    [Fact]
    public void A_cone_cut_in_two_is_the_same_cone()
    {
        LiftingPart whole = LiftingPart.ConePoint(Length.FromMeters(1), Length.FromMeters(0.2));
        LiftingPart front = LiftingPart.ConePoint(Length.FromMeters(0.4), Length.FromMeters(0.08));
        LiftingPart back = LiftingPart.Taper(Length.FromMeters(0.4), Length.FromMeters(0.6), Length.FromMeters(0.08), Length.FromMeters(0.2));
        double sum = front.LiftSi + back.LiftSi;
        Assert.Equal(whole.LiftSi, sum, 1e-15);
        Assert.Equal(whole.PositionSi, (front.LiftSi * front.PositionSi + back.LiftSi * back.PositionSi) / sum, 1e-12);
    }

    [Fact]
    public void A_bare_shaft_is_said_to_be_unstable()
    {
        Stability bare = ExampleArrow.Stability with { Fletching = null };
        Assert.False(bare.IsStable);
        Assert.True(bare.Margin < Length.Zero);
        Assert.Equal(2, bare.Slope, 1e-12);
        Assert.Same(bare, bare.With(Ratio.FromPercent(60)));
    }

    [Fact]
    public void Weaker_vanes_lift_in_proportion_and_turn_alike()
    {
        Fletching weak = ExampleArrow.Vanes with { Effectiveness = Ratio.FromPercent(60), Offset = Angle.FromDegrees(2) }, full = weak with { Effectiveness = Ratio.FromPercent(100) };
        Assert.Equal(0.6, weak.Lift(Shaft, CarryOver.OntoVanes).LiftSi / full.Lift(Shaft, CarryOver.OntoVanes).LiftSi, 1e-12);
        Assert.Equal(full.SettledSpinPerLength(Shaft), weak.SettledSpinPerLength(Shaft));
    }

    [Fact]
    public void Parts_that_cannot_be_are_refused_by_name()
    {
        Assert.Equal("Count", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes with { Count = 2 }).ParamName);
        Assert.Equal("Height", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes with { Height = Length.FromMillimeters(-12) }).ParamName);
        Assert.Equal("Effectiveness", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes with { Effectiveness = Ratio.FromPercent(120) }).ParamName);
        Assert.Equal("Effectiveness", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes with { Effectiveness = Ratio.Zero }).ParamName);
        Assert.Equal("Offset", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes with { Offset = Angle.FromDegrees(45) }).ParamName);
        Assert.Equal("ShaftDiameter", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Stability with { ShaftDiameter = Length.Zero }).ParamName);
        Assert.Equal("CrossflowConstant", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Stability with { CrossflowConstant = double.NaN }).ParamName);
        Assert.Equal("carryOver", Assert.Throws<ArgumentOutOfRangeException>(() => ExampleArrow.Vanes.Lift(Shaft, (CarryOver)9)).ParamName);
        Assert.Contains("no lift of its own", Assert.Throws<ArgumentOutOfRangeException>(() => LiftingPart.Taper(Length.Zero, Shaft, Shaft, Shaft)).Message);
        Assert.Equal("length", Assert.Throws<ArgumentOutOfRangeException>(() => LiftingPart.OgivePoint(Length.FromMillimeters(1), Shaft)).ParamName);
    }
}
