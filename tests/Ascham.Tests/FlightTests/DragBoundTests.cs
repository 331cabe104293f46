namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Quantities;
using Ascham.Tests.AirTests;
using Ascham.Tests.ArrowsTests;
using UnitsNet;
using Xunit;

/// <summary>Drag that was not measured is flown with its bounds.</summary>
public class DragBoundTests
{
    static readonly PointMass Flight = new() { Drag = Drag.None, Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Wind.Calm };

    static readonly Launch Launch = new() { Speed = 85.MetresPerSecond, Elevation = 2.Degrees };

    [Fact]
    public void A_build_up_is_bounded_by_its_least_and_most_and_twenty_per_cent()
    {
        DragBuildUp arrow = DragBuildUpTests.Hunting;
        DragBound bound = DragBound.FromBuildUp(arrow, AnyDrag.Mass);
        Air air = AnyDrag.Standard;
        double K(Drag drag) => drag.At(80.MetresPerSecond, air).InverseMeters;
        double reynolds = 80 * arrow.ShaftDiameter.Meters * air.DensitySi / air.ViscositySi;
        double Built(DragComponents parts) => air.DensitySi * parts.DragArea.SquareMeters / (2 * AnyDrag.Mass.Kilograms);
        Assert.Equal(0.8 * Built(arrow.LeastAt(reynolds)), K(bound.Low), 1e-15);
        Assert.Equal(K(AnyDrag.Named("turbulent")), K(bound.Likely), 1e-15);
        Assert.Equal(1.2 * Built(arrow.MostAt(reynolds)), K(bound.High), 1e-15);
        Assert.True(K(bound.Low) < 0.8 * K(AnyDrag.Named("laminar")) && K(bound.High) > 1.2 * K(AnyDrag.Named("turbulent")));

        FlightBound impacts = Flight.AtBounds(Launch, 60.Yards, Angle.Zero, bound);
        Assert.True(impacts.HeightSpread > Length.Zero && impacts.TimeSpread > Duration.Zero);
        Assert.True(impacts.LowDrag.Up > impacts.Likely.Up && impacts.Likely.Up > impacts.HighDrag.Up);
        Assert.Contains("20 %", impacts.HowObtained);
    }

    public static TheoryData<int> Arrows => AuthorityFile.Rows("arrow-drag-constant-derived.csv");

    [Theory, MemberData(nameof(Arrows))]
    public void Who_knows_the_mass_alone_has_bounds_at_least_as_wide_as_who_knows_the_parts(int row)
    {
        var file = new AuthorityFile("arrow-drag-constant-derived.csv");
        Length Mm(string column) => file.Value(row, column).Millimetres;
        var arrow = new DragBuildUp
        {
            ShaftDiameter = Mm("diameter_mm"),
            ShaftLength = 700.Millimetres,
            Point = PointShape.Smooth,
            Vanes = new() { Count = 3, Chord = Mm("chord_mm"), Height = Mm("height_mm"), Thickness = Mm("thickness_mm"), Fullness = 60.Percent, Edge = VaneEdge.Square },
        };
        Mass mass = file.Value(row, "mass_g").Grams;
        DragBound known = DragBound.FromBuildUp(arrow, mass), guessed = DragBound.FromMass(mass);
        double K(Drag drag) => drag.At(85.MetresPerSecond, AnyDrag.Standard).InverseMeters;
        Assert.True(K(guessed.Low) < K(known.Low) && K(known.High) < K(guessed.High));
    }

    [Fact]
    public void A_mass_alone_bounds_drag_by_the_range_of_arrows()
    {
        DragBound bound = DragBound.FromMass(26.Grams);
        Assert.Equal(0.00025, bound.Low.ConstantIn(AnyDrag.Standard).InverseMeters, 1e-7); // standard air has 1.22500 kg/m³
        Assert.Equal(0.0015, bound.Likely.ConstantIn(AnyDrag.Standard).InverseMeters, 1e-7);
        Assert.Equal(0.0034, bound.High.ConstantIn(AnyDrag.Standard).InverseMeters, 1e-7);
        Assert.Equal(0.00075, DragBound.FromMass(52.Grams).Likely.ConstantIn(AnyDrag.Standard).InverseMeters, 1e-7);
        Assert.Throws<ArgumentOutOfRangeException>(() => DragBound.FromMass(0.Grams));
    }

    [Fact]
    public void A_measured_constant_is_bounded_by_its_interval()
    {
        var k = new Estimate<ReciprocalLength>(0.0010.PerMetre, 0.0008.PerMetre, (-0.0003).PerMetre, 0.0023.PerMetre, 0.9, 2, "two speeds");
        DragBound bound = DragBound.FromMeasured(k, AnyDrag.Standard);
        Assert.Equal(0, bound.Low.ConstantIn(AnyDrag.Standard).InverseMeters);
        Assert.Equal(0.0023, bound.High.ConstantIn(AnyDrag.Standard).InverseMeters, 1e-15);
        Assert.Equal("two speeds", bound.HowObtained);
        Assert.Equal("k", Assert.Throws<ArgumentOutOfRangeException>(() => DragBound.FromMeasured(k with { Value = (-0.0001).PerMetre }, AnyDrag.Standard)).ParamName);
    }

    // Plausibility only: an arrow with an accelerometer lost about 8 % of 56.4 m/s (Ortiz et al., MDPI Proceedings 49 (2020) 56). Neither its mass, its vanes
    // nor the distance are printed: the bounds must hold for any usual ones.
    [Theory]
    [InlineData(50, 17)]
    [InlineData(50, 20)]
    [InlineData(70, 17)]
    [InlineData(70, 20)]
    public void The_instrumented_arrow_lost_speed_between_the_bounds(double metres, double grams)
    {
        foreach (DragBuildUp arrow in DragBuildUpTests.ShapesOf(DragBuildUpTests.Hunting with { ShaftDiameter = 5.24.Millimetres, ShaftLength = 650.Millimetres }))
        {
            FlightBound flown = Flight.AtBounds(new() { Speed = 56.4.MetresPerSecond, Elevation = 7.Degrees }, metres.Metres, Angle.Zero, DragBound.FromBuildUp(arrow, grams.Grams));
            double Lost(FlightState s) => 1 - s.Speed / 56.4.MetresPerSecond;
            Assert.InRange(0.08, Lost(flown.LowDrag), Lost(flown.HighDrag));
        }
    }
}
