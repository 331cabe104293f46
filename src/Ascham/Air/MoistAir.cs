namespace Ascham.Air;

/// <summary>Density of moist air. SI units; humidity as a fraction.</summary>
static class MoistAir
{
    const double VapourGasConstant = 461.523; // J/(kg K): 8314.472/18.01528

    /// <summary>Saturation pressure over water by the Magnus form, in Pa.</summary>
    /// <remarks>WMO-No. 8 (from memory); -45 °C to +60 °C.</remarks>
    internal static double SaturationPressure(double celsius) => 611.2 * Math.Exp(17.62 * celsius / (243.12 + celsius));

    /// <summary>Two ideal gases side by side.</summary>
    internal static double IdealDensity(double kelvin, double pascal, double vapourPascal)
        => (pascal - vapourPascal) / (StandardAtmosphere.GasConstant * kelvin) + vapourPascal / (VapourGasConstant * kelvin);

    /// <summary>CIPM-2007: A. Picard, R. S. Davis, M. Gläser, K. Fujii, Metrologia 45 (2008) 149-155, doi:10.1088/0026-1394/45/2/004.</summary>
    internal static double Cipm2007Density(double kelvin, double pascal, double humidity, double carbonDioxide)
    {
        const double GasConstant = 8.314472;   // J/(mol K), CODATA 2006
        const double VapourMass = 18.01528e-3; // kg/mol
        double airMass = 28.96546e-3 + 12.011e-3 * (carbonDioxide - 400e-6);
        double celsius = kelvin - 273.15;
        double saturation = Math.Exp(1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6343.1645 / kelvin);
        double enhancement = 1.00062 + 3.14e-8 * pascal + 5.6e-7 * celsius * celsius;
        double vapour = humidity * enhancement * saturation / pascal;
        double compressibility = Compressibility(kelvin, celsius, pascal, vapour);
        return pascal * airMass / (compressibility * GasConstant * kelvin) * (1 - vapour * (1 - VapourMass / airMass));
    }

    static double Compressibility(double kelvin, double celsius, double pascal, double vapour)
    {
        double ratio = pascal / kelvin;
        double first = 1.58123e-6 - 2.9331e-8 * celsius + 1.1043e-10 * celsius * celsius
            + (5.707e-6 - 2.051e-8 * celsius) * vapour
            + (1.9898e-4 - 2.376e-6 * celsius) * vapour * vapour;
        double second = 1.83e-11 - 0.765e-8 * vapour * vapour;
        return 1 - ratio * first + ratio * ratio * second;
    }
}
