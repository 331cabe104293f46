namespace Ascham.Air;

/// <summary>The standard atmosphere below 11 km: ISO 2533:1975, the same there as the U.S. Standard Atmosphere 1976. SI units.</summary>
static class StandardAtmosphere
{
    const double SeaLevelTemperature = 288.15; // K, exact by definition
    const double SeaLevelPressure = 101325;    // Pa, exact by definition
    const double LapseRate = 0.0065;           // K per geopotential metre, exact by definition
    const double Gravity = 9.80665;            // m/s^2, exact by definition
    const double EarthRadius = 6356766;        // m, nominal

    /// <summary>Specific gas constant of dry air in J/(kg K), as printed in ISO 2533: 8314.32/28.964420.</summary>
    /// <remarks>The 1976 report rounds the molar mass to 28.9644, which would give 287.05307; its printed tables agree with both.</remarks>
    internal const double GasConstant = 287.05287;

    /// <summary>Temperature at a geopotential altitude.</summary>
    internal static double Temperature(double geopotential) => SeaLevelTemperature - LapseRate * geopotential;

    /// <summary>Pressure where the standard temperature is this.</summary>
    internal static double Pressure(double kelvin)
        => SeaLevelPressure * Math.Pow(kelvin / SeaLevelTemperature, Gravity / (LapseRate * GasConstant));

    /// <summary>Geopotential altitude of a geometric one.</summary>
    internal static double Geopotential(double geometric) => EarthRadius * geometric / (EarthRadius + geometric);
}
