namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.Integration;

/// <summary>The law of s over sigma: chi with nu degrees of freedom over the root of nu.</summary>
static class ScaledChi
{
    /// <summary>Mean of a smooth function of s over sigma, up to an edge beyond which the function is zero.</summary>
    /// <remarks>Gauss and Legendre, 64 points on the nine standard deviations (0.7/√nu each) about one that hold all but 1e-17 of the law; the law is cut there on both sides.</remarks>
    internal static double Mean(Func<double, double> f, double nu, double edge)
    {
        double reach = 9 / Math.Sqrt(2 * nu), low = Math.Max(0, 1 - reach), high = Math.Min(edge, 1 + reach + (9 / nu));
        double constant = Math.Log(2) + (nu / 2 * Math.Log(nu / 2)) - SpecialFunctions.GammaLn(nu / 2);
        double Density(double x) => Math.Exp(constant + ((nu - 1) * Math.Log(x)) - (nu * x * x / 2));
        return high > low ? GaussLegendreRule.Integrate(x => f(x) * Density(x), low, high, 64) : 0;
    }
}
