namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

/// <summary>Constants of normal samples: small-sample factor, and multipliers of intervals.</summary>
static class Quantiles
{
    /// <summary>Expected value of s over sigma, c(nu), where nu s²/sigma² follows chi-square with nu degrees of freedom.</summary>
    /// <remarks>The control-chart constant c4 with N = nu + 1. NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.</remarks>
    internal static double C4(double nu) =>
        Math.Sqrt(2 / nu) * Math.Exp(SpecialFunctions.GammaLn((nu + 1) / 2) - SpecialFunctions.GammaLn(nu / 2));

    /// <summary>Multipliers of s that bound sigma at a level: sqrt(nu / chi-square quantile).</summary>
    internal static (double Low, double High) SigmaMultipliers(double nu, double level) =>
        (Math.Sqrt(nu / ChiSquared.InvCDF(nu, (1 + level) / 2)), Math.Sqrt(nu / ChiSquared.InvCDF(nu, (1 - level) / 2)));

    /// <summary>Two-sided Student t multiplier at a level.</summary>
    /// <remarks>Solved in ln t, because MathNet's own quantile searches only |t| below 800 and fails at nu = 1 beyond 99.9 %.</remarks>
    internal static double StudentT(double nu, double level)
    {
        double tail = Math.Log(1 - level);
        double Excess(double logT)
        {
            double t = Math.Exp(logT);
            return Math.Log(SpecialFunctions.BetaRegularized(nu / 2, 0.5, nu / (nu + (t * t)))) - tail;
        }

        return Math.Exp(Brent.FindRoot(Excess, -25, 45, 1e-13, 200));
    }

    /// <summary>Quantile at a level of Fisher's F with 2 and nu degrees of freedom, in closed form.</summary>
    /// <remarks>Its survival function is (1 + 2F/nu)^(−nu/2).</remarks>
    internal static double FisherTwo(double nu, double level) => nu / 2 * (Math.Pow(1 - level, -2 / nu) - 1);
}
