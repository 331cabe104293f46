namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <remarks>
/// Roll by strips: each strip of a vane at distance xi from the axis meets the air at offset - spin xi / V and lifts with
/// the slope of the whole vane, the same for the turning and for the damping. The two-dimensional slope 2 pi, often taken
/// for the damping, is far too large for blades this short.
/// </remarks>
public sealed partial record Fletching
{
    /// <summary>Radians the arrow turns per metre once its spin has settled; positive clockwise seen by the archer.</summary>
    /// <param name="shaftDiameter">Of the shaft between the vanes; positive.</param>
    /// <returns>Spin over speed through the air. An upper bound: the vanes' own friction is left out. Independent of <see cref="Effectiveness"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    public ReciprocalLength SettledSpinPerLength(Length shaftDiameter)
    {
        double radius = Radius(shaftDiameter);
        return ReciprocalLength.FromInverseMeters(Offset.Radians * FirstMoment(radius) / SecondMoment(radius));
    }

    /// <summary>Roll damping coefficient C_lp: roll moment over (dynamic pressure, shaft area, shaft diameter), per spin times diameter over twice the speed.</summary>
    /// <param name="shaftDiameter">Of the shaft between the vanes; positive.</param>
    /// <returns>Negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    public double RollDamping(Length shaftDiameter)
    {
        double d = 2 * Radius(shaftDiameter), area = 0.25 * Math.PI * d * d;
        return -2 * Roll(shaftDiameter).Damping / (area * d * d);
    }

    /// <summary>Roll moment over dynamic pressure: turning (m³) and damping per spin over speed (m⁴).</summary>
    internal (double Turning, double Damping) Roll(Length shaftDiameter)
    {
        double radius = Radius(shaftDiameter);
        double slope = Count * Share * RollGrowth(radius) * LiftOfOne / VaneArea.SquareMeters;
        return (Offset.Radians * slope * FirstMoment(radius), slope * SecondMoment(radius));
    }

    // Integrals over the height of the vane of chord times distance from the axis, and of chord times its square.
    double FirstMoment(double r) => (Root + Tip) / 2 * r * Span + (Root + 2 * Tip) / 6 * Span * Span;

    double SecondMoment(double r) => (Root + Tip) / 2 * r * r * Span + (Root + 2 * Tip) / 3 * r * Span * Span + (Root + 3 * Tip) / 12 * Span * Span * Span;

    // The shaft between rolling vanes adds r³ times the integral of chord over distance squared, relative to the first moment:
    // J. S. Barrowman, MS thesis (1967; NASA/TM-2001-209983), roll damping in the presence of the body.
    double RollGrowth(double r)
    {
        double taper = (Tip - Root) / Span, outer = r + Span; // chord = root + taper (xi - r)
        double inverse = (Root - taper * r) * (1 / r - 1 / outer) + taper * Math.Log(outer / r);
        return 1 + r * r * r * inverse / FirstMoment(r);
    }

    static double Radius(Length shaftDiameter) => 0.5 * Require.Positive(shaftDiameter.Meters, "m", nameof(shaftDiameter));
}
