namespace Ascham.Air;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Acceleration of gravity at a place; it points straight down.</summary>
/// <remarks>Over the whole earth it varies by 0.5 %, about 11 mm of drop at 60 yd for a fast arrow.</remarks>
public readonly record struct Gravity
{
    // WGS 84 (NGA.STND.0036_1.0.0_WGS84, 2014), normal gravity, eqs. 4-1 and 4-3.
    const double AtEquator = 9.7803253359;            // m/s^2
    const double Somigliana = 0.00193185265;          // 1
    const double EccentricitySquared = 0.00669437999014;
    const double SemiMajorAxis = 6378137.0;           // m, exact by definition
    const double Flattening = 1 / 298.257223563;      // exact by definition
    const double CentrifugalRatio = 0.00344978650684; // omega^2 a^2 b / GM

    Gravity(double metresPerSecondSquared) => Si = metresPerSecondSquared;

    /// <summary>The conventional standard value, 9.80665 m/s², exact by definition (3rd CGPM, 1901).</summary>
    public static Gravity Standard { get; } = new(9.80665);

    /// <summary>The acceleration; positive downwards.</summary>
    public Acceleration Acceleration => Acceleration.FromMetersPerSecondSquared(Si);

    /// <summary>In m/s².</summary>
    internal double Si { get; }

    /// <summary>Normal gravity of the WGS 84 ellipsoid. Leaves out local anomalies, below 0.0005 m/s² nearly everywhere on land.</summary>
    /// <param name="latitude">Geodetic latitude, -90° to +90°; the sign does not matter.</param>
    /// <param name="height">Height above the ellipsoid, -1 km to 20 km; height above sea level is within 110 m of it, worth 0.0003 m/s².</param>
    /// <returns>Gravity there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Gravity At(Angle latitude, Length height)
    {
        double phi = Require.InRange(latitude.Degrees, -90, 90, "degrees", nameof(latitude)) * Math.PI / 180;
        double h = Require.InRange(height.Meters, -1000, 20000, "m", nameof(height));
        double sin2 = Math.Sin(phi) * Math.Sin(phi);
        double surface = AtEquator * (1 + Somigliana * sin2) / Math.Sqrt(1 - EccentricitySquared * sin2);
        double linear = 2 / SemiMajorAxis * (1 + Flattening + CentrifugalRatio - 2 * Flattening * sin2);
        return new(surface * (1 - linear * h + 3 * h * h / (SemiMajorAxis * SemiMajorAxis)));
    }

    /// <summary>Measured or otherwise known local value.</summary>
    /// <param name="acceleration">Positive downwards, 1 to 30 m/s².</param>
    /// <returns>That gravity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is outside its range.</exception>
    public static Gravity Of(Acceleration acceleration)
        => new(Require.InRange(acceleration.MetersPerSecondSquared, 1, 30, "m/s²", nameof(acceleration)));

    /// <summary>Writes the value, for example <c>9.80665 m/s²</c>.</summary>
    /// <returns>Text in the invariant culture.</returns>
    public override string ToString() => FormattableString.Invariant($"{Si:0.#####} m/s²");
}
