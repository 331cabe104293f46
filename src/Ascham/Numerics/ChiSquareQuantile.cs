namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.Distributions;

/// <summary>Quantiles of chi-square by the thousand.</summary>
static class ChiSquareQuantile
{
    /// <summary>Value below which a share lies.</summary>
    /// <remarks>
    /// Newton's method on the logarithm of the smaller tail against ln x, where both are nearly straight; it starts from Wilson and Hilferty (1931), or from the first
    /// term of the series in the far lower tail. Some ten times faster than a general root finder.
    /// </remarks>
    internal static double At(double nu, double share)
    {
        double cube = 1 - (2 / (9 * nu)) + (Normal.InvCDF(0, 1, share) * Math.Sqrt(2 / (9 * nu)));
        double series = 2 * Math.Exp(2 / nu * (Math.Log(share) + SpecialFunctions.GammaLn((nu / 2) + 1)));
        double x = cube > 0.3 ? nu * cube * cube * cube : series;
        for (int i = 0; i < 20; i++)
        {
            bool lower = share < 0.5;
            double tail = lower ? SpecialFunctions.GammaLowerRegularized(nu / 2, x / 2) : SpecialFunctions.GammaUpperRegularized(nu / 2, x / 2);
            double density = Math.Exp((nu / 2 * Math.Log(x / 2)) - (x / 2) - SpecialFunctions.GammaLn(nu / 2));
            double step = (lower ? 1 : -1) * Math.Log((lower ? share : 1 - share) / tail) * tail / density;
            x *= Math.Exp(Math.Clamp(step, -2, 2));
            if (Math.Abs(step) < 1e-9)
            {
                break;
            }
        }

        return x;
    }
}
