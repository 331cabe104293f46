namespace Ascham.Groups;

using MathNet.Numerics;
using MathNet.Numerics.Integration;

/// <summary>The law of roundness: Mauchly's W = 4 det S/(tr S)² of a normal sample whose true axes have a given ratio of sigmas.</summary>
/// <remarks>
/// For a round group P(W ≤ w) = w^((nu − 1)/2), nu the degrees of freedom of one axis. For any other, the joint density of the two sample eigenvalues (Muirhead, <i>Aspects of Multivariate
/// Statistical Theory</i>, section 9.4, with the hypergeometric function of two matrices written as a Bessel function) integrates over the trace to a Legendre function: with t = √W,
/// κ = (r² − 1)/(r² + 1) and q = 1 − κ²(1 − t²), the density of t is (nu − 1)t^(nu−2) · ((1 − κ²)/q)^(nu/2) · P_(nu−1)(1/√q).
/// </remarks>
static class ShapeLaw
{
    /// <summary>Probability that W is at most a value.</summary>
    /// <param name="w">W, from 0 to 1.</param>
    /// <param name="degrees">Degrees of freedom of one axis; 2 or more.</param>
    /// <param name="ratio">True ratio of the sigmas of the axes, major over minor; 1 or more.</param>
    internal static double Cdf(double w, int degrees, double ratio)
    {
        if (ratio == 1)
        {
            return Math.Pow(w, (degrees - 1) / 2.0);
        }

        double square = ratio * ratio, kappa = (square - 1) / (square + 1);
        double Density(double t) => t <= 0 && degrees > 2 ? 0 : Math.Exp(LogDensity(t, degrees, kappa));
        return Math.Min(1, GaussKronrodRule.Integrate(Density, 0, Math.Sqrt(w), out _, out _, 1e-9, 12, 31));
    }

    static double LogDensity(double t, int degrees, double kappa)
    {
        double q = 1 - (kappa * kappa * (1 - (t * t)));
        double power = degrees > 2 ? (degrees - 2) * Math.Log(t) : 0;
        return Math.Log(degrees - 1) + power + (degrees / 2.0 * Math.Log((1 - (kappa * kappa)) / q)) + LogLegendre(degrees - 1, 1 / Math.Sqrt(q));
    }

    /// <summary>Logarithm of the Legendre polynomial at one or beyond.</summary>
    /// <remarks>Ratios of successive polynomials, so that nothing overflows; beyond degree 2000 the uniform Bessel form (NIST DLMF 14.15.13), good to 1/degree².</remarks>
    internal static double LogLegendre(int degree, double x)
    {
        if (degree > 2000)
        {
            double eta = Math.Acosh(x), z = (degree + 0.5) * eta;
            double logBessel = z < 30 ? Math.Log(SpecialFunctions.BesselI0(z)) : z - (Math.Log(2 * Math.PI * z) / 2) + Math.Log(1 + (1 / (8 * z)) + (9 / (128 * z * z)) + (75 / (1024 * z * z * z)));
            return logBessel + (eta < 1e-6 ? 0 : Math.Log(eta / Math.Sinh(eta)) / 2);
        }

        double sum = 0, growth = x;
        for (int k = 1; k <= degree; k++)
        {
            sum += Math.Log(growth);
            growth = ((((2 * k) + 1) * x) - (k / growth)) / (k + 1);
        }

        return sum;
    }
}
