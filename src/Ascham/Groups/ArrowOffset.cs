namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

/// <summary>Where one numbered arrow strikes, from the mean of all of them: shrunken, so that it may be believed.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <param name="Arrow">The number written on it.</param>
/// <param name="Shots">Counted shots of it.</param>
/// <param name="Right">Offset to the right; null when only heights were asked for.</param>
/// <param name="Up">Offset upwards; null when only the other axis was asked for.</param>
/// <param name="Kept">Share of its plain mean that is believed, 0 to 1; the rest is the archer's scatter.</param>
/// <remarks>
/// <para><b>Model.</b> Value: best linear unbiased prediction with the estimated variances. Interval: averaged over what the shots leave open about those variances,
/// so it stays wide when the value is shrunk to nothing.</para>
/// <para><b>Source.</b> Henderson (1975), <i>Biometrics</i> 31, 423; Robinson (1991), That BLUP is a good thing, <i>Statist. Sci.</i> 6.</para>
/// </remarks>
public sealed record ArrowOffset<T>(string Arrow, int Shots, Estimate<T>? Right, Estimate<T>? Up, double Kept);

/// <summary>Shrunken offsets of all arrows of a fit.</summary>
sealed class ArrowShrinkage(ArrowFit fit, double level)
{
    readonly double best = ArrowVariance.Ratio(fit);
    // A node of no weight only costs time.
    readonly (double Ratio, double Weight)[] likely = [.. ArrowVariance.Likely(fit).Where(l => l.Weight > 1e-10)];

    internal double Kept(int arrow)
    {
        double all = 0, kept = 0;
        for (int j = 0; j < fit.Eigenvalues.Length; j++)
        {
            double square = fit.Vectors[arrow, j] * fit.Vectors[arrow, j];
            (all, kept) = (all + square, kept + (square * best * fit.Eigenvalues[j] / (1 + (best * fit.Eigenvalues[j]))));
        }

        return kept / all;
    }

    /// <summary>Prediction and interval of one arrow along one axis.</summary>
    internal Estimate<double> Offset(int arrow, int axis)
    {
        int freedom = fit.FreedomBetween + fit.FreedomWithin;
        double value = At(arrow, axis, best).Mean;
        (double Mean, double Scale, double Weight)[] mixture = [.. likely.Select(l =>
        {
            var (mean, variance) = At(arrow, axis, l.Ratio);
            return (mean, Math.Sqrt(variance * ArrowVariance.SquaresAt(fit, l.Ratio) / freedom), l.Weight);
        })];
        double centre = mixture.Sum(m => m.Weight * m.Mean);
        double error = Math.Sqrt(mixture.Sum(m => m.Weight * ((m.Scale * m.Scale) + ((m.Mean - centre) * (m.Mean - centre)))));
        double Below(double x) => mixture.Sum(m => m.Weight * StudentT.CDF(m.Mean, m.Scale, freedom, x));
        double Quantile(double share)
        {
            double near = centre, far = centre + (error * Math.Sign(share - Below(centre)));
            while (far != near && (Below(far) - share) * (far - centre) < 0)
            {
                (near, far) = (far, far + (2 * (far - near)));
            }

            return far == near ? centre : Brent.FindRoot(x => Below(x) - share, Math.Min(near, far), Math.Max(near, far), 1e-9 * error, 100);
        }

        double low = Quantile((1 - level) / 2), high = Quantile((1 + level) / 2);
        return new(value, error, Math.Min(low, value), Math.Max(high, value), level, fit.Shots[arrow], "shrunken mean of the arrow, variances averaged over");
    }

    // Prediction of b less the mean of all b at a ratio, and its variance over sigma².
    (double Mean, double Variance) At(int arrow, int axis, double ratio)
    {
        double mean = 0, variance = 0;
        for (int j = 0; j < fit.Eigenvalues.Length; j++)
        {
            double v = fit.Vectors[arrow, j], weight = ratio / (1 + (fit.Eigenvalues[j] * ratio));
            mean += v * weight * fit.Vectors.Column(j).DotProduct(fit.Sums.Column(axis));
            variance += v * v * weight;
        }

        return (mean, variance);
    }
}
