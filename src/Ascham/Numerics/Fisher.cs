namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

/// <summary>Fisher's F: tails that keep their digits far out, and quantiles found from them.</summary>
/// <remarks>MathNet's own quantile searches a fixed interval and loses the far tail, so both are written from the incomplete beta function.</remarks>
static class Fisher
{
    /// <summary>Probability of a larger F.</summary>
    internal static double Survival(double f, double first, double second) =>
        f <= 0 ? 1 : SpecialFunctions.BetaRegularized(second / 2, first / 2, second / (second + (first * f)));

    /// <summary>Probability of a smaller F.</summary>
    internal static double Cdf(double f, double first, double second) => f <= 0 ? 0 : Survival(1 / f, second, first);

    /// <summary>The F exceeded with a probability.</summary>
    /// <param name="tail">Probability above, between 0 and 1.</param>
    /// <param name="first">Degrees of freedom of the numerator; positive.</param>
    /// <param name="second">Degrees of freedom of the denominator; positive.</param>
    internal static double Quantile(double tail, double first, double second)
    {
        if (first == 2)
        {
            return Quantiles.FisherTwo(second, 1 - tail);
        }

        // The smaller tail keeps its digits, so the root is sought in its logarithm.
        bool upper = tail <= 0.5;
        double wanted = Math.Log(upper ? tail : 1 - tail);
        double Excess(double logF)
        {
            double f = Math.Exp(logF);
            return Math.Log(Math.Max(double.Epsilon, upper ? Survival(f, first, second) : Cdf(f, first, second))) - wanted;
        }

        return Math.Exp(Brent.FindRootExpand(Excess, -1, 1, 1e-13, 200, 1.6, 60));
    }
}
