namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Shape of a point as far as its pressure drag goes; a coefficient on the cross-section of the shaft.</summary>
/// <remarks>S. F. Hoerner, Fluid-Dynamic Drag, p. 3-12, as printed in S. Niskanen's thesis (2009). Second-hand. What a point does to the state of the air along the shaft matters far more: see <see cref="Transition"/>.</remarks>
public sealed record PointShape
{
    PointShape(double coefficient) => Coefficient = coefficient;

    /// <summary>Runs smoothly into the shaft: ogive, bullet, streamlined. Printed as 0 to 0.01; 0 here.</summary>
    public static PointShape Smooth { get; } = new(0);

    /// <summary>A half sphere: 0.01.</summary>
    public static PointShape HalfSphere { get; } = new(0.01);

    /// <summary>A flat face, such as a blunt or a shaft without point: 0.8.</summary>
    public static PointShape Flat { get; } = new(0.8);

    /// <summary>A flat face with rounded edge: 0.2.</summary>
    public static PointShape FlatRounded { get; } = new(0.2);

    /// <summary>Drag coefficient on the cross-section of the shaft.</summary>
    public double Coefficient { get; }

    /// <summary>A cone that meets the shaft at an edge: 0.8 sin² of its half angle.</summary>
    /// <param name="halfAngle">Between axis and surface; 0° to 90°.</param>
    /// <returns>The shape.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside its range.</exception>
    public static PointShape Cone(Angle halfAngle)
    {
        double sin = Math.Sin(Require.InRange(halfAngle.Degrees, 0, 90, "degrees", nameof(halfAngle)) * Math.PI / 180);
        return new(0.8 * sin * sin);
    }
}
