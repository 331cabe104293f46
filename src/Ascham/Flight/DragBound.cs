namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Drag that was not measured, or not well: the least, the likely and the most of it.</summary>
/// <remarks>Fly all three (<see cref="PointMass.AtBounds"/>): a result without its bounds would hide what nobody knows.</remarks>
/// <param name="Low">The least drag.</param>
/// <param name="Likely">The one to use where one must be chosen.</param>
/// <param name="High">The most drag.</param>
/// <param name="HowObtained">In a few words.</param>
public sealed record DragBound(Drag Low, Drag Likely, Drag High, string HowObtained)
{
    /// <summary>What a build-up may be off by when the state of the air is right: 0.20, no better than that.</summary>
    /// <remarks>Held against the measured arrows of Ortiz, Miyazaki et al. (2020) and Miyazaki et al., whose vane sizes are not printed; see docs/models/arrows.md.</remarks>
    public const double BuildUpUncertainty = 0.20;

    /// <summary>Both states of the air along the shaft: the least the parts may add up to less 20 %, turbulent, the most plus 20 %.</summary>
    /// <remarks>Least and most as in <see cref="DragBuildUp.LeastAt"/> and <see cref="DragBuildUp.MostAt"/>; the 20 % stand for what those leave out.</remarks>
    /// <param name="buildUp">The parts of the arrow.</param>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Turbulent as the likely one: the usual state behind ordinary points and for any arrow not flying quite straight.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static DragBound FromBuildUp(DragBuildUp buildUp, Mass mass)
    {
        Drag turbulent = Drag.FromBuildUp(buildUp, BoundaryLayer.Turbulent, mass);
        return new(
            Bound(buildUp.LeastCurve, 1 - BuildUpUncertainty),
            turbulent,
            Bound(buildUp.MostCurve, 1 + BuildUpUncertainty),
            "built up from the parts: all laminar less 20 %, turbulent shaft, turbulent with its curvature plus 20 %");

        Drag Bound(BuildUpCurve curve, double factor) => Drag.Of(curve, buildUp.ShaftDiameter.Meters, mass).Times(factor);
    }

    /// <summary>From the mass alone: k = 0.0015 1/m, between 0.00025 and 0.0034, times 26 g over the mass, in air of 1.225 kg/m³.</summary>
    /// <remarks>The bounds of <see cref="FromBuildUp"/> over shafts of 4.2 to 9.3 mm with small and large vanes (computed): wide, because nothing else is known. Drag area differs far less between arrows than the drag coefficient.</remarks>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Drag that follows the density of the air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive.</exception>
    public static DragBound FromMass(Mass mass)
    {
        const double Density = 1.225, UsualMass = 0.026; // kg/m³, kg
        Drag Usual(double k) => Drag.FromArea(Area.FromSquareMeters(2 * UsualMass * k / Density), mass);
        return new(Usual(0.00025), Usual(0.0015), Usual(0.0034), "from the mass alone: the bounds of built-up arrows");
    }

    /// <summary>From a measured constant: its interval.</summary>
    /// <param name="k">The constant with its interval; the lower end, where negative, is taken as no drag.</param>
    /// <param name="measuredIn">The air of the measurement.</param>
    /// <returns>Drag that follows the density of the air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The estimate itself is not positive, or above 0.1 1/m: it tells nothing about drag.</exception>
    public static DragBound FromMeasured(Estimate<ReciprocalLength> k, Air measuredIn)
    {
        ArgumentNullException.ThrowIfNull(k);
        Require.Positive(k.Value.InverseMeters, "1/m", nameof(k));
        return new(
            Drag.FromConstant(k.Low > ReciprocalLength.Zero ? k.Low : ReciprocalLength.Zero, measuredIn),
            Drag.FromConstant(k.Value, measuredIn),
            Drag.FromConstant(k.High, measuredIn),
            k.HowObtained);
    }
}

/// <summary>The same arrow with the least, the likely and the most drag, on one face.</summary>
/// <param name="LowDrag">With the least drag.</param>
/// <param name="Likely">With the likely drag.</param>
/// <param name="HighDrag">With the most drag.</param>
/// <param name="Inclination">Of the line of sight to which the face is square.</param>
/// <param name="HowObtained">How the drag was obtained.</param>
public sealed record FlightBound(FlightState LowDrag, FlightState Likely, FlightState HighDrag, Angle Inclination, string HowObtained)
{
    /// <summary>How much higher the arrow strikes with the least drag than with the most.</summary>
    public Length HeightSpread => LowDrag.AboveLine(Inclination) - HighDrag.AboveLine(Inclination);

    /// <summary>How much longer it flies with the most drag than with the least.</summary>
    public Duration TimeSpread => HighDrag.Time - LowDrag.Time;
}
