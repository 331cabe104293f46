namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class StaticSpineTests
{
    const string Beam = "EI = F L^3/(48 d), 1.94 lbf on 28 in (ASTM F2031)";

    [Theory] // Published convention, arithmetic worked elsewhere
    [InlineData(250, "10.1847")]
    [InlineData(300, "8.4873")]
    [InlineData(340, "7.4888")]
    [InlineData(350, "7.2748")]
    [InlineData(400, "6.3654")]
    [InlineData(500, "5.0924")]
    [InlineData(600, "4.2436")]
    public void A_spine_number_is_a_stiffness(double number, string stiffness)
    {
        new Printed(stiffness, Beam).Matches(StaticSpine.FromNumber(number).BendingStiffness);
        Assert.Equal(number / 1000, StaticSpine.FromNumber(number).Deflection.Inches, 12);
    }

    [Fact] // Published rule for wood, 26/d, read in a forum of traditional archers
    public void The_older_convention_for_wood_reads_the_same_shaft()
    {
        StaticSpine shaft = StaticSpine.FromNumber(400);
        new Printed("0.33017", "0.825419 x 0.400 in").Matches(shaft.WoodDeflection.Inches);
        new Printed("78.7", "26/0.33017").Matches(shaft.WoodPounds);
        new Printed("0.7875", "26/40 in, 2 lb on 26 in, on the other scale").Matches(StaticSpine.FromWoodDeflection(0.650.Inches).Deflection.Inches);
        Assert.Equal(0.825419, shaft.WoodDeflection / shaft.Deflection, 6);
    }

    [Fact] // Relation
    public void Any_bench_reads_the_same_stiffness() =>
        Assert.Equal(StaticSpine.FromNumber(340).BendingStiffness, StaticSpine.FromBench(1.94.PoundsForce, 28.Inches, 0.34.Inches).BendingStiffness, 12);

    [Fact]
    public void A_spine_of_zero_is_refused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => StaticSpine.FromNumber(0));
        Assert.Contains("number must be from 50 to 3000 thousandths of an inch; it was 0", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => StaticSpine.FromDeflection(Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => StaticSpine.FromBench(1.94.PoundsForce, 28.Inches, 3.Inches));
    }

    [Fact]
    public void A_variation_around_the_shaft_is_seen_only_above_what_opposite_readings_differ_by()
    {
        var clear = SpineVariation.Of([(0.Degrees, 0.340.Inches), (90.Degrees, 0.346.Inches), (180.Degrees, 0.341.Inches), (270.Degrees, 0.345.Inches)]);
        Assert.Equal(0.343, clear.Mean.Inches, 9);
        Assert.Equal(0.006, clear.Range.Inches, 9);
        Assert.Equal(0.001, clear.HalfTurnMismatch!.Value.Inches, 9);
        Assert.Equal(0, clear.Stiffest.Degrees);
        Assert.True(clear.IsSeen);

        var bent = SpineVariation.Of([(0.Degrees, 0.340.Inches), (90.Degrees, 0.343.Inches), (180.Degrees, 0.346.Inches), (270.Degrees, 0.343.Inches)]);
        Assert.False(bent.IsSeen);
        Assert.Null(SpineVariation.Of([(0.Degrees, 0.340.Inches), (90.Degrees, 0.343.Inches)]).IsSeen);
        Assert.Throws<ArgumentException>(() => SpineVariation.Of([(0.Degrees, 0.340.Inches)]));
    }
}
