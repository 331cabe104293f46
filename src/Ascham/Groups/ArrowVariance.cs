namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

/// <summary>How much of the scatter is the arrows', how much the archer's.</summary>
static class ArrowVariance
{
    /// <summary>tau² over sigma² by restricted maximum likelihood; zero when the arrows differ no more than chance makes them.</summary>
    internal static double Ratio(ArrowFit fit)
    {
        double[] d = fit.Eigenvalues, w = fit.Squares;
        int freedom = fit.FreedomBetween + fit.FreedomWithin;
        // slope of the restricted likelihood in the ratio, sigma² at its best
        double Slope(double ratio)
        {
            double squares = fit.Within, pull = 0, cost = 0;
            for (int i = 0; i < d.Length; i++)
            {
                double wide = 1 + (d[i] * ratio);
                (squares, pull, cost) = (squares + (w[i] / wide), pull + (d[i] * w[i] / (wide * wide)), cost + (d[i] / wide));
            }

            return (freedom * pull / squares) - (fit.Axes * cost);
        }

        if (Slope(0) <= 0)
        {
            return 0;
        }

        double high = 1 / d.Max();
        while (Slope(high) > 0)
        {
            high *= 2;
        }

        return Brent.FindRoot(Slope, 0, high, 1e-15 * high, 500);
    }

    /// <summary>sigma² that goes with a ratio.</summary>
    internal static double SigmaSquare(ArrowFit fit, double ratio) => SquaresAt(fit, ratio) / (fit.FreedomBetween + fit.FreedomWithin);

    /// <summary>Sum of squares when arrows of that ratio are allowed for.</summary>
    internal static double SquaresAt(ArrowFit fit, double ratio) => fit.Within + fit.Eigenvalues.Zip(fit.Squares, (d, w) => w / (1 + (d * ratio))).Sum();

    /// <summary>Exact interval of the ratio (Wald 1947): where the squares between, scaled down, stand to those within as F says.</summary>
    internal static (double Low, double High) RatioInterval(ArrowFit fit, double level)
    {
        double between = fit.FreedomBetween, within = fit.FreedomWithin;
        double Scaled(double ratio) => (SquaresAt(fit, ratio) - fit.Within) / between / fit.MeanSquareWithin;
        double Where(double f) => Solve(ratio => Scaled(ratio) - f, 1 / fit.Eigenvalues.Max());
        return (Where(NoncentralF.UpperQuantile((1 - level) / 2, between, within)), Where(NoncentralF.UpperQuantile((1 + level) / 2, between, within)));
    }

    /// <summary>Generalised interval of tau²: the squares between follow chi-square once sigma² is drawn from the squares within.</summary>
    /// <remarks>Weerahandi (1993), <i>J. Am. Statist. Assoc.</i> 88, 899. Chi-square within is taken at 64 even steps of its probability.</remarks>
    internal static (double Low, double High) TauSquareInterval(ArrowFit fit, double level)
    {
        double[] sigmaSquares = [.. Enumerable.Range(0, 64).Select(i => fit.Within / ChiSquared.InvCDF(fit.FreedomWithin, (i + 0.5) / 64))];
        double Above(double tauSquare) => sigmaSquares.Average(
            s2 => ChiSquared.CDF(fit.FreedomBetween, fit.Eigenvalues.Zip(fit.Squares, (d, w) => w / (s2 + (d * tauSquare))).Sum()));
        double Where(double share) => Solve(t => Above(t) - share, fit.MeanSquareWithin / fit.Eigenvalues.Max());
        return (Where((1 + level) / 2), Where((1 - level) / 2));
    }

    /// <summary>Nodes of the ratio's root, each weighted by the restricted likelihood with every root beforehand equally likely.</summary>
    internal static (double Ratio, double Weight)[] Likely(ArrowFit fit)
    {
        double scale = 1 / Math.Sqrt(fit.Eigenvalues.Average()), freedom = fit.FreedomBetween + fit.FreedomWithin;
        var rule = new GaussLegendreRule(0, 1, 40);
        // u in (0, 1) stands for a root of scale·u/(1 − u): the tail is heavy with few arrows
        (double Ratio, double Log)[] nodes = [.. rule.Abscissas.Zip(rule.Weights, (u, weight) =>
        {
            double root = 2 * scale * u / (1 - u), ratio = root * root;
            double log = Math.Log(weight / ((1 - u) * (1 - u))) - (freedom / 2 * Math.Log(SquaresAt(fit, ratio) / fit.Within))
                - (fit.Axes / 2.0 * fit.Eigenvalues.Sum(d => Math.Log(1 + (d * ratio))));
            return (ratio, log);
        })];
        double most = nodes.Max(n => n.Log), all = nodes.Sum(n => Math.Exp(n.Log - most));
        return [.. nodes.Select(n => (n.Ratio, Math.Exp(n.Log - most) / all))];
    }

    // Root of a falling function on zero and above; zero when it starts below.
    static double Solve(Func<double, double> falling, double scale)
    {
        if (falling(0) <= 0)
        {
            return 0;
        }

        double high = scale;
        while (falling(high) > 0)
        {
            high *= 4;
        }

        return Brent.FindRoot(falling, 0, high, 1e-13 * high, 500);
    }
}
