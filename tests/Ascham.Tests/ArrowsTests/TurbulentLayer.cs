namespace Ascham.Tests.ArrowsTests;

/// <summary>Turbulent friction along a cylinder by the momentum integral, independent of the library's formulas.</summary>
/// <remarks>
/// u+ as a function of z = a+ ln(1 + y/a) by Spalding's single formula (kappa 0.41, B 5.0) up to the edge of the layer, without wake; per circumference
/// dM/dx = 1/L², M = (1/L) integral of u+ (L - u+) r/a dy+ over Re, L = U/u*. A plate is the cylinder of infinite radius.
/// </remarks>
static class TurbulentLayer
{
    const double Kappa = 0.41, Constant = 5.0;

    /// <summary>Mean friction coefficient.</summary>
    /// <param name="reynoldsOfRadius">Infinite for a plate.</param>
    /// <param name="reynoldsOfLength">Of the length.</param>
    public static double Friction(double reynoldsOfRadius, double reynoldsOfLength)
    {
        double x = 0, lost = 0;
        for (double l = 8; ; l += 0.05)
        {
            double next = Momentum(l, reynoldsOfRadius / l) / l;
            double step = l * l * (next - lost);
            if (x + step > reynoldsOfLength)
            {
                return 2 * (lost + (reynoldsOfLength - x) / step * (next - lost)) / reynoldsOfLength;
            }

            (x, lost) = (x + step, next);
        }
    }

    static double Momentum(double edge, double radius)
    {
        const int Steps = 800;
        double sum = 0, h = edge / Steps;
        for (int i = 1; i < Steps; i++) // zero at both ends
        {
            double u = i * h, k = Kappa * u, damp = Math.Exp(-Kappa * Constant), grown = Math.Exp(k);
            double z = u + damp * (grown - 1 - k - k * k / 2 - k * k * k / 6), slope = 1 + Kappa * damp * (grown - 1 - k - k * k / 2);
            sum += u * (edge - u) * Math.Exp(2 * z / radius) * slope;
        }

        return h * sum;
    }
}
