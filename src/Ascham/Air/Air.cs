namespace Ascham.Air;

using Ascham.Quantities;
using UnitsNet;

/// <summary>The air an arrow flies through: its state and what follows from it.</summary>
/// <remarks>
/// Built by a named factory; there is no default air. Viscosity is that of dry air by Sutherland's law as in the
/// U.S. Standard Atmosphere 1976; humidity lowers it by less than 1 % (from memory) and is left out.
/// Speed of sound takes a ratio of specific heats of 1.4, exact for the standard atmosphere and within 0.2 % for moist air (from memory).
/// </remarks>
public sealed record Air
{
    const double HeatRatio = 1.4;

    // U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562), eq. 51. Its Table 2 prints 110 K, its tables use 110.4 K.
    const double SutherlandBeta = 1.458e-6; // kg/(m s K^0.5)
    const double SutherlandTemperature = 110.4; // K

    Air(double kelvin, double pascal, double humidity, double density)
    {
        (KelvinSi, PascalSi, HumiditySi, DensitySi) = (kelvin, pascal, humidity, density);
        ViscositySi = SutherlandBeta * kelvin * Math.Sqrt(kelvin) / (kelvin + SutherlandTemperature);
    }

    /// <summary>Mass per volume.</summary>
    public Density Density => Density.FromKilogramsPerCubicMeter(DensitySi);

    /// <summary>Dynamic viscosity, mu.</summary>
    public DynamicViscosity DynamicViscosity => DynamicViscosity.FromPascalSeconds(ViscositySi);

    /// <summary>Kinematic viscosity, nu = mu/rho.</summary>
    public KinematicViscosity KinematicViscosity => KinematicViscosity.FromSquareMetersPerSecond(ViscositySi / DensitySi);

    /// <summary>Speed of sound.</summary>
    public Speed SpeedOfSound => Speed.FromMetersPerSecond(Math.Sqrt(HeatRatio * PascalSi / DensitySi));

    /// <summary>Temperature.</summary>
    public Temperature Temperature => Temperature.FromKelvins(KelvinSi);

    /// <summary>Pressure at the place, not reduced to sea level.</summary>
    public Pressure Pressure => Pressure.FromPascals(PascalSi);

    /// <summary>Relative humidity, 0 to 100 %.</summary>
    public Ratio RelativeHumidity => Ratio.FromDecimalFractions(HumiditySi);

    internal double DensitySi { get; }

    internal double ViscositySi { get; }

    double KelvinSi { get; }

    double PascalSi { get; }

    double HumiditySi { get; }

    /// <summary>Dry air of the standard atmosphere (ISO 2533:1975).</summary>
    /// <param name="geopotentialAltitude">-2 km to 11 km above sea level; within 0.2 % of the geometric altitude there.</param>
    /// <returns>The standard air at that altitude. Real air departs from it by several per cent; prefer <see cref="Moist"/> with measured values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is outside its range.</exception>
    public static Air StandardAt(Length geopotentialAltitude)
    {
        double h = Require.InRange(geopotentialAltitude.Meters, -2000, 11000, "m", nameof(geopotentialAltitude));
        double kelvin = StandardAtmosphere.Temperature(h), pascal = StandardAtmosphere.Pressure(kelvin);
        return new(kelvin, pascal, 0, pascal / (StandardAtmosphere.GasConstant * kelvin));
    }

    /// <summary>Dry air of the standard atmosphere at a height above sea level as a tape would measure it.</summary>
    /// <param name="altitude">Geometric altitude, -1.9 km to 11 km.</param>
    /// <returns>The standard air at that altitude.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is outside its range.</exception>
    public static Air StandardAtGeometric(Length altitude)
        => StandardAt(Length.FromMeters(StandardAtmosphere.Geopotential(Require.InRange(altitude.Meters, -1900, 11000, "m", nameof(altitude)))));

    /// <summary>Moist air as an ideal mixture of dry air and water vapour: the usual choice.</summary>
    /// <remarks>Within 0.05 % of <see cref="MoistCipm2007"/> over that formula's range (computed); far below what is known of any arrow's drag.</remarks>
    /// <param name="temperature">-45 °C to +60 °C.</param>
    /// <param name="station">Pressure at the place, not reduced to sea level: 300 hPa to 1100 hPa. Weather reports usually give the reduced one.</param>
    /// <param name="relativeHumidity">0 to 100 %.</param>
    /// <returns>The air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Air Moist(Temperature temperature, Pressure station, Ratio relativeHumidity)
    {
        double celsius = Require.InRange(temperature.DegreesCelsius, -45, 60, "°C", nameof(temperature)), kelvin = temperature.Kelvins;
        double pascal = Require.InRange(station.Pascals, 30000, 110000, "Pa", nameof(station));
        double humidity = Require.InRange(relativeHumidity.DecimalFractions, 0, 1, "", nameof(relativeHumidity));
        double vapour = humidity * MoistAir.SaturationPressure(celsius);
        return new(kelvin, pascal, humidity, MoistAir.IdealDensity(kelvin, pascal, vapour));
    }

    /// <summary>Moist air by the CIPM-2007 formula, for comparison and for laboratory work.</summary>
    /// <param name="temperature">15 °C to 27 °C.</param>
    /// <param name="station">Pressure at the place: 600 hPa to 1100 hPa.</param>
    /// <param name="relativeHumidity">0 to 100 %.</param>
    /// <param name="carbonDioxide">Mole fraction of carbon dioxide, 0 to 1 %; the formula's own 400 µmol/mol when not given (+100 µmol/mol is +0.004 % in density).</param>
    /// <returns>The air; relative standard uncertainty of the formula 2.2e-5 (from memory).</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range stated for the formula; use <see cref="Moist"/> there.</exception>
    public static Air MoistCipm2007(Temperature temperature, Pressure station, Ratio relativeHumidity, Ratio? carbonDioxide = null)
    {
        const double Rounding = 1e-9; // a bound given in another unit may fall this much outside
        double kelvin = temperature.Kelvins, pascal = station.Pascals;
        Require.InRange(kelvin, 288.15 - Rounding, 300.15 + Rounding, "K", nameof(temperature));
        Require.InRange(pascal, 60000 - Rounding, 110000 + Rounding, "Pa", nameof(station));
        double humidity = Require.InRange(relativeHumidity.DecimalFractions, 0, 1, "", nameof(relativeHumidity));
        double carbon = Require.InRange(carbonDioxide?.DecimalFractions ?? 400e-6, 0, 0.01, "", nameof(carbonDioxide));
        return new(kelvin, pascal, humidity, MoistAir.Cipm2007Density(kelvin, pascal, humidity, carbon));
    }
}
