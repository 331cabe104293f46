namespace Ascham.Numerics;

using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

/// <summary>F and chi-square when there is something to find: the laws behind power, equivalence and effect sizes.</summary>
/// <remarks>
/// Poisson mixtures of the central laws, summed outwards from the largest weight. The number of terms grows with the root of the noncentrality; beyond
/// 100 000 the root of a noncentral chi-square is taken as normal, which then is right to a few millionths.
/// Johnson, Kotz and Balakrishnan, <i>Continuous Univariate Distributions</i>, volume 2, chapters 29 and 30.
/// </remarks>
static class NoncentralFisher
{
    const double Large = 1e5;

    /// <summary>Probability of a smaller F.</summary>
    internal static double Cdf(double f, double first, double second, double noncentrality)
    {
        if (noncentrality > Large && f > 0)
        {
            return Far(noncentrality, first, root => SpecialFunctions.GammaUpperRegularized(second / 2, second * root * root / (2 * first * f)));
        }

        double x = first * f / (second + (first * f));
        return f <= 0 ? 0 : Mixture(noncentrality, j => SpecialFunctions.BetaRegularized((first / 2) + j, second / 2, x));
    }

    /// <summary>Probability of a larger F.</summary>
    internal static double Survival(double f, double first, double second, double noncentrality)
    {
        if (noncentrality > Large)
        {
            return 1 - Cdf(f, first, second, noncentrality);
        }

        double x = second / (second + (first * f));
        return f <= 0 ? 1 : Mixture(noncentrality, j => SpecialFunctions.BetaRegularized(second / 2, (first / 2) + j, x));
    }

    /// <summary>The F below which a share of the law lies.</summary>
    internal static double Quantile(double share, double first, double second, double noncentrality)
    {
        double Excess(double logF) => Math.Log(Math.Max(double.Epsilon, Cdf(Math.Exp(logF), first, second, noncentrality))) - Math.Log(share);
        return Math.Exp(Brent.FindRootExpand(Excess, -1, 1, 1e-12, 200, 1.6, 60));
    }

    /// <summary>The noncentrality at which the F seen has a given probability of not being exceeded; zero when none is small enough.</summary>
    /// <remarks>Ends of an exact interval: Steiger (2004), Psychological Methods 9, 164-182.</remarks>
    internal static double Noncentrality(double f, double first, double second, double share)
    {
        if (Cdf(f, first, second, 0) <= share)
        {
            return 0;
        }

        double high = 1;
        for (; Cdf(f, first, second, high) > share; high *= 2)
        {
        }

        return Brent.FindRoot(lambda => Cdf(f, first, second, lambda) - share, 0, high, 1e-12 * high, 200);
    }

    /// <summary>Probability of a smaller chi-square.</summary>
    internal static double ChiSquareCdf(double x, double degrees, double noncentrality) =>
        x <= 0 ? 0
        : noncentrality > Large ? SpecialFunctions.Erfc((Root(noncentrality, degrees) - Math.Sqrt(x)) / Math.Sqrt(2)) / 2
        : Mixture(noncentrality, j => SpecialFunctions.GammaLowerRegularized((degrees / 2) + j, x / 2));

    /// <summary>Probability of a larger chi-square; with two degrees of freedom it is Marcum's Q at the roots of noncentrality and x.</summary>
    internal static double ChiSquareSurvival(double x, double degrees, double noncentrality) =>
        x <= 0 ? 1
        : noncentrality > Large ? SpecialFunctions.Erfc((Math.Sqrt(x) - Root(noncentrality, degrees)) / Math.Sqrt(2)) / 2
        : Mixture(noncentrality, j => SpecialFunctions.GammaUpperRegularized((degrees / 2) + j, x / 2));

    // Mean of the root of a noncentral chi-square far from zero; its variance is then one.
    static double Root(double noncentrality, double degrees) => Math.Sqrt(noncentrality + degrees - 1);

    static double Far(double noncentrality, double first, Func<double, double> given)
    {
        double middle = Root(noncentrality, first);
        return GaussLegendreRule.Integrate(z => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI) * given(middle + z), -9, 9, 64);
    }

    static double Mixture(double noncentrality, Func<int, double> term)
    {
        double mean = noncentrality / 2;
        int peak = (int)Math.Floor(mean);
        double atPeak = mean == 0 ? 1 : Math.Exp((peak * Math.Log(mean)) - mean - SpecialFunctions.GammaLn(peak + 1));
        double total = 0, weight = atPeak;
        for (int j = peak; weight > 1e-17 * atPeak; j++)
        {
            total += weight * term(j);
            weight *= mean / (j + 1);
        }

        weight = atPeak;
        for (int j = peak; j > 0 && weight > 1e-17 * atPeak; j--)
        {
            weight *= j / mean;
            total += weight * term(j - 1);
        }

        return total;
    }
}
