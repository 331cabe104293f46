namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

/// <summary>Fisher's F, central and noncentral: what a test finds when there is something to find.</summary>
static class NoncentralF
{
    /// <summary>Probability that F exceeds a value.</summary>
    /// <param name="f">The value; negative counts as zero.</param>
    /// <param name="nu1">Degrees of freedom of the numerator; positive.</param>
    /// <param name="nu2">Degrees of freedom of the denominator; positive.</param>
    /// <param name="lambda">Noncentrality: the sum of squared means over the variance; zero for the central F.</param>
    /// <remarks>
    /// Poisson mixture of incomplete beta functions, summed both ways from the largest weight so that a large lambda does not underflow; all terms are positive.
    /// Johnson, Kotz and Balakrishnan, <i>Continuous Univariate Distributions</i> 2, chapter 30.
    /// </remarks>
    internal static double Survival(double f, double nu1, double nu2, double lambda = 0)
    {
        double rest = nu2 / ((nu1 * Math.Max(0, f)) + nu2), half = lambda / 2;
        double Tail(double j) => SpecialFunctions.BetaRegularized(nu2 / 2, (nu1 / 2) + j, rest);
        double mode = Math.Floor(half);
        double largest = half > 0 ? Math.Exp((mode * Math.Log(half)) - half - SpecialFunctions.GammaLn(mode + 1)) : 1;
        double sum = largest * Tail(mode);
        for (double j = mode + 1, weight = largest * half / j; weight > 1e-18; j++, weight *= half / j)
        {
            sum += weight * Tail(j);
        }

        for (double j = mode - 1, weight = largest * mode / half; j >= 0 && weight > 1e-18; weight *= j / half, j--)
        {
            sum += weight * Tail(j);
        }

        return Math.Min(1, sum);
    }

    /// <summary>Value that the central F exceeds with a probability.</summary>
    /// <param name="tail">The probability, between 0 and 1.</param>
    /// <param name="nu1">Degrees of freedom of the numerator; positive.</param>
    /// <param name="nu2">Degrees of freedom of the denominator; positive.</param>
    /// <remarks>Solved in ln F, where the survival function is almost straight, so that neither heavy tails nor tiny probabilities leave the bracket.</remarks>
    internal static double UpperQuantile(double tail, double nu1, double nu2) =>
        tail > 0.5
            ? 1 / UpperQuantile(1 - tail, nu2, nu1)
            : Math.Exp(Brent.FindRoot(logF => Math.Log(Math.Max(double.Epsilon, Survival(Math.Exp(logF), nu1, nu2))) - Math.Log(tail), -40, 80, 1e-13, 300));
}
