namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Tests.ArrowsTests;
using MathNet.Numerics.RootFinding;
using UnitsNet;

/// <summary>Drags that follow the speed, for tests.</summary>
static class AnyDrag
{
    internal static readonly Air Standard = Air.StandardAt(Length.Zero);

    /// <summary>Air of 1.2 kg/m³ and 1.5e-5 m²/s, found by its temperature and pressure.</summary>
    internal static readonly Air Round = WithDensityAndViscosity(1.2, 1.5e-5);

    internal static readonly Mass Mass = Mass.FromGrams(26);

    internal static readonly Length Diameter = Length.FromMillimeters(6.2);

    /// <summary>Swings between the states as wildly as published measurements would allow.</summary>
    internal static readonly DragTable Wild = DragTable.Of([(3e3, 2.2), (8e3, 1.6), (1.2e4, 1.5), (1.6e4, 1.9), (2.0e4, 2.6), (2.6e4, 2.5), (4e4, 2.3), (7e4, 2.0)]);

    internal static Drag Named(string name) => name switch
    {
        "laminar" => Drag.FromBuildUp(DragBuildUpTests.Hunting, BoundaryLayer.Laminar, Mass),
        "turbulent" => Drag.FromBuildUp(DragBuildUpTests.Hunting, BoundaryLayer.Turbulent, Mass),
        "ordinary point" => Drag.FromBuildUp(DragBuildUpTests.Hunting, Transition.OrdinaryPoint, Mass),
        "streamlined point" => Drag.FromBuildUp(DragBuildUpTests.Hunting, Transition.StreamlinedPoint, Mass),
        "sharp" => Drag.FromBuildUp(DragBuildUpTests.Hunting, new Transition { Centre = 2.5e4, Width = 500 }, Mass),
        "table" => Drag.FromTable(Wild, Diameter, Mass),
        "tanh" => Drag.Of(new TanhCurve(), 5.9e-3, Mass.FromGrams(25.9)),
        "constant" => Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015)),
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    internal static PointMassSi Flight(string name) => PointMassSi.Of(Named(name), name == "tanh" ? Round : Standard, 9.80665);

    static Air WithDensityAndViscosity(double density, double kinematic)
    {
        Air At(double kelvin, double pascal) => Air.Moist(Temperature.FromKelvins(kelvin), Pressure.FromPascals(pascal), Ratio.Zero);
        double kelvin = Brent.FindRoot(t => At(t, 1e5).ViscositySi / (density * kinematic) - 1, 250, 320, 1e-15, 200);
        return At(kelvin, 1e5 * density / At(kelvin, 1e5).DensitySi);
    }
}

/// <summary>1.8 + 0.4 (1 + tanh((Re - 2e4)/2e3)): a law of the tests' own.</summary>
readonly struct TanhCurve : IReynoldsCurve
{
    public double Low => 0;

    public double High => 1e6;

    // 1 + tanh x is 2/(1 + exp(-2x)).
    public T At<T>(T reynolds)
        where T : struct, ITranscendental<T>
        => T.Of(1.8) + T.Of(0.8) / (T.Of(1) + T.Exp(1e-3 * (T.Of(2e4) - reynolds)));

    public double Room(double reynolds, bool? falling) => 0.4 * Math.Sqrt((reynolds - 2e4) * (reynolds - 2e4) + Math.PI * Math.PI * 1e6);
}
