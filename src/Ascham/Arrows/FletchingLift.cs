namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <remarks>Lift: J. S. and J. A. Barrowman, "The Theoretical Prediction of the Center of Pressure", NARAM-8 (1966). Sizes in SI units.</remarks>
public sealed partial record Fletching
{
    /// <summary>Area of one vane, one side.</summary>
    public Area VaneArea => Area.FromSquareMeters(0.5 * (Root + Tip) * Span);

    double Root => RootChord.Meters;

    double Tip => TipChord.Meters;

    double Span => Height.Meters;

    double Share => Effectiveness.DecimalFractions;

    /// <summary>The whole fletching as a lifting part.</summary>
    /// <param name="shaftDiameter">Of the shaft between the vanes; positive.</param>
    /// <param name="carryOver">How the shaft adds to the lift.</param>
    /// <returns>Its lift and where it acts; the lift the shaft gains is taken to act there too.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    public LiftingPart Lift(Length shaftDiameter, CarryOver carryOver)
    {
        double radius = 0.5 * Require.Positive(shaftDiameter.Meters, "m", nameof(shaftDiameter));
        double growth = 1 + radius / (Span + radius);
        double factor = carryOver switch
        {
            CarryOver.None => 1,
            CarryOver.OntoVanes => growth,
            CarryOver.OntoVanesAndShaft => growth * growth,
            _ => throw new ArgumentOutOfRangeException(nameof(carryOver), carryOver, "carryOver must be one of the three named rules."),
        };
        return new("vanes", Share * factor * InPlane(Count) * LiftOfOne, CentreFromTip);
    }

    /// <summary>Lift per dynamic pressure and radian of one vane square to the flow, m²; 2 pi s² / (1 + sqrt(1 + (2 l/(c_r + c_t))²)).</summary>
    double LiftOfOne
    {
        get
        {
            double back = Sweep.Meters + 0.5 * (Tip - Root); // of the middle of the outer edge behind the middle of the root
            double middleLine = Math.Sqrt(Span * Span + back * back), ratio = 2 * middleLine / (Root + Tip);
            return 2 * Math.PI * Span * Span / (1 + Math.Sqrt(1 + ratio * ratio));
        }
    }

    double CentreFromTip => FromTip.Meters
        + Sweep.Meters / 3 * (Root + 2 * Tip) / (Root + Tip)
        + (Root + Tip - Root * Tip / (Root + Tip)) / 6;

    // N vanes at any roll count as N/2 in the plane of the angle; more than four shade each other.
    // Shading: J. S. Barrowman as printed in the technical documentation of S. Niskanen's thesis (2009), for 5 to 8.
    static double InPlane(int count) => 0.5 * count * count switch { 5 => 0.948, 6 => 0.913, 7 => 0.854, 8 => 0.810, _ => 1 };
}
