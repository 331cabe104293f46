namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Tests.AirTests;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

/// <summary>Stability coefficients against printed examples and tables; rockets, since none are printed for arrows.</summary>
public class StabilityPublishedTests
{
    const string Examples = "stability-barrowman.csv";

    // The examples were worked by slide rule.
    const double OnePercent = 0.01;

    public static TheoryData<int> ExampleRows => AuthorityFile.Rows(Examples);

    [Theory, MemberData(nameof(ExampleRows))]
    public void Printed_examples_are_met_to_one_percent(int row)
    {
        var file = new AuthorityFile(Examples);
        Length In(string column) => Length.FromInches(file.Value(row, column));
        Length reference = In("reference");
        var fins = new Fletching
        {
            Count = (int)file.Value(row, "count"),
            RootChord = In("root"),
            TipChord = In("tip"),
            Height = In("span"),
            Sweep = In("sweep"),
            FromTip = In("front"),
            Effectiveness = Ratio.FromPercent(100),
        };
        LiftingPart lift = fins.Lift(In("shaft"), CarryOver.OntoVanes);
        Near(file.Cell(row, "fins_slope")!, lift.Slope(reference));
        Near(file.Cell(row, "fins_centre")!, lift.Position.Inches);

        if (file.Cell(row, "total_slope") is { } slope)
        {
            Stability whole = new()
            {
                ShaftDiameter = In("shaft"),
                TotalLength = In("front") + In("root"),
                BalancePoint = In("front") * 0.5,
                Point = LiftingPart.OgivePoint(In("nose"), reference),
                Fletching = fins,
                CarryOver = CarryOver.OntoVanes,
                CrossflowConstant = 0,
            };
            Near(slope, whole.Slope);
            Near(file.Cell(row, "total_centre")!, whole.CentreOfPressure.Inches);
            Assert.True(whole.IsStable);
        }
    }

    [Fact]
    public void Printed_tapers_are_met()
    {
        // NARAM-8 (1966) p. 44, Testbed II: narrows from 0.976 to 0.736 in over 1.375 in from 9.75 in, on a reference of 0.976 in.
        LiftingPart narrowing = LiftingPart.Taper(Length.FromInches(9.75), Length.FromInches(1.375), Length.FromInches(0.976), Length.FromInches(0.736));
        Near(new("-0.86", "NARAM-8 p. 44"), narrowing.Slope(Length.FromInches(0.976)));

        // The print, 10.47 in, has the diameters the wrong way round in eq. 44; the equation itself gives 0.655 in behind the front.
        Assert.Equal(9.75 + 0.655, narrowing.Position.Inches, 5e-4);

        // TIR-33 (1970) p. 24, the six-finned example: a cone 4.15 in long with its tip 0.8 in ahead of the real one; a shoulder from 0.908 to 1.34 in.
        LiftingPart cone = LiftingPart.ConePoint(Length.FromInches(4.15), Length.FromInches(0.908));
        Near(new("2.0", "TIR-33 p. 24"), cone.Slope(Length.FromInches(0.908)));
        Near(new("1.97", "TIR-33 p. 24"), cone.Position.Inches - 0.8);
        LiftingPart shoulder = LiftingPart.Taper(Length.FromInches(4.15 + 5.25), Length.FromInches(1), Length.FromInches(0.908), Length.FromInches(1.34));
        Near(new("2.36", "TIR-33 p. 24"), shoulder.Slope(Length.FromInches(0.908)));
        Near(new("9.13", "TIR-33 p. 24"), shoulder.Position.Inches - 0.8);
    }

    [Theory]
    [InlineData(5, "2.326")]
    [InlineData(6, "2.794")]
    [InlineData(7, "3.261")]
    [InlineData(8, "3.729")]
    [InlineData(9, "4.196")]
    [InlineData(10, "4.663")]
    public void Ogive_points_push_where_the_table_says(double lengthOverDiameter, string printed) =>
        // Two thousandths: the table follows a straight-line fit, the shape is integrated here.
        new Printed(printed, "NARAM-8 (1966), table of ogives").Matches(
            LiftingPart.OgivePoint(Length.FromMeters(lengthOverDiameter), Length.FromMeters(1)).Position.Meters, slack: 4);

    [Theory]
    [InlineData(0.1, "1.076973", "0.133027")]
    [InlineData(0.2, "1.161639", "0.278361")]
    [InlineData(0.3, "1.252764", "0.437236")]
    public void Carry_over_onto_vanes_and_shaft_is_the_whole_of_slender_body_theory(double tau, string onVanes, string onShaft)
    {
        // NACA Report 1307 (1957), eqs. 14 and 21, evaluated elsewhere; their sum is (1 + tau)².
        double sum = new Printed(onVanes, "eq. 14").Value + new Printed(onShaft, "eq. 21").Value;
        Fletching vanes = Vanes with { Height = Length.FromMeters(0.5 * (1 / tau - 1)) }; // tau = r/(s + r) with r = 0.5
        double Slope(CarryOver carryOver) => vanes.Lift(Length.FromMeters(1), carryOver).Slope(Length.FromMeters(1));
        Assert.Equal(sum, Slope(CarryOver.OntoVanesAndShaft) / Slope(CarryOver.None), 1.1e-6);
        Assert.Equal(1 + tau, Slope(CarryOver.OntoVanes) / Slope(CarryOver.None), 1e-12);
    }

    [Fact]
    public void Roll_damping_of_the_basic_finner_is_as_printed()
    {
        // Four square fins, chord = height = shaft diameter. J. S. Barrowman, MS thesis (1967; NASA/TM-2001-209983),
        // figs. 5-6 and 5-7, theory at Mach 0.07: -34.21, read from the curve to 0.3.
        Length one = Length.FromMeters(1);
        Fletching finner = Vanes with { Count = 4, RootChord = one, TipChord = one, Height = one, Sweep = Length.Zero };
        Assert.Equal(-34.21, finner.RollDamping(one), 0.03 * 34.21);

        // The two-dimensional slope 2 pi would give 69.33: half of that and less is what low aspect leaves.
        Assert.InRange(finner.RollDamping(one), -0.5 * 69.33, -0.45 * 69.33);
    }

    [Fact]
    public void The_slope_of_slender_vanes_tends_to_half_a_turn_of_span_squared()
    {
        // R. T. Jones, NACA Report 835 (1946): a slender wing lifts (pi/2) span² per radian and dynamic pressure. Two vanes opposite
        // each other, without a shaft, are a wing of span 2s; four at any roll count as two in the plane.
        Fletching slender = Vanes with { Count = 4, RootChord = Length.FromMeters(1000), TipChord = Length.FromMeters(1000), Height = Length.FromMeters(1), Sweep = Length.Zero };
        Assert.Equal(0.5 * Math.PI * 4, slender.Lift(Length.FromMeters(1), CarryOver.None).LiftPerRadian.SquareMeters, 1e-5);
    }

    static Fletching Vanes => new()
    {
        Count = 3,
        RootChord = Length.FromMeters(2),
        TipChord = Length.FromMeters(1),
        Height = Length.FromMeters(1),
        Sweep = Length.FromMeters(1),
        FromTip = Length.FromMeters(10),
        Effectiveness = Ratio.FromPercent(100),
    };

    static void Near(Printed printed, double actual) =>
        Assert.True(Math.Abs(actual - printed.Value) <= OnePercent * Math.Abs(printed.Value), $"{printed.Source}: printed {printed.Text}, computed {actual:R}.");
}
