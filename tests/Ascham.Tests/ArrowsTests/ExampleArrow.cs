namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using UnitsNet;

/// <summary>An invented hunting arrow, 26.0 g, 6.2 mm, three vanes, of which the numbers were worked elsewhere.</summary>
static class ExampleArrow
{
    public const double Mass = 0.026, Inertia = 1.704531e-3, Density = 1.225, Speed = 85, Diameter = 0.0062;

    public static double CrossSection => 0.25 * Math.PI * Diameter * Diameter;

    public static Fletching Vanes => new()
    {
        Count = 3,
        RootChord = Length.FromMillimeters(50),
        TipChord = Length.FromMillimeters(30),
        Height = Length.FromMillimeters(12),
        Sweep = Length.FromMillimeters(20),
        FromTip = Length.FromMillimeters(640),
        Effectiveness = Ratio.FromPercent(100),
    };

    public static Stability Stability => new()
    {
        ShaftDiameter = Length.FromMeters(Diameter),
        TotalLength = Length.FromMillimeters(720),
        BalancePoint = Length.FromMillimeters(293.6),
        Point = LiftingPart.ConePoint(Length.FromMillimeters(20), Length.FromMeters(Diameter)),
        Fletching = Vanes,
        CarryOver = CarryOver.OntoVanes,
        CrossflowConstant = 1.1,
    };
}
