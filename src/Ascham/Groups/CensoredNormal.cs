namespace Ascham.Groups;

using MathNet.Numerics.RootFinding;

/// <summary>Arrows known only to lie beyond an edge.</summary>
/// <param name="Side">+1 below the edge, −1 above it.</param>
/// <param name="Edge">The edge, in the unit of the values.</param>
/// <param name="Count">Number of arrows.</param>
readonly record struct Beyond(int Side, double Edge, int Count = 1)
{
    /// <summary>The argument of Phi in the likelihood of one such arrow.</summary>
    internal double Argument(double mean, double sigma) => Side * (Edge - mean) / sigma;
}

/// <summary>One normal sample, some of it known only to lie beyond an edge.</summary>
/// <param name="Values">Values seen; at least one.</param>
/// <param name="Censored">The others.</param>
sealed record CensoredSample(double[] Values, Beyond[] Censored)
{
    internal int Count { get; } = Values.Length;

    internal double Mean { get; } = Moments.Mean(Values);

    internal double SumOfSquares { get; } = SquaresAbout(Moments.Mean(Values), Values);

    static double SquaresAbout(double mean, double[] values) => values.Sum(v => (v - mean) * (v - mean));
}

/// <summary>Several normal samples with their own means and one sigma, some values censored.</summary>
/// <param name="Sigma">Sigma, with the degrees of freedom spent on the means given back.</param>
/// <param name="DegreesOfFreedom">Half the information on ln sigma; values less samples when nothing is censored.</param>
/// <param name="Means">Maximum-likelihood means at that sigma.</param>
/// <param name="Own">Variance of each mean if sigma were known.</param>
/// <param name="Drift">d mean / d ln sigma: zero for a sample without censoring.</param>
/// <remarks>
/// <para>Steps 1 to 5 of docs/models/groups.md. The means are profiled out, and sigma maximises the profile likelihood less half the log of the
/// information on the means (Cox and Reid 1987, J. R. Statist. Soc. B 49, 1-39). Without censoring that is exactly s² = SS/(N − k).</para>
/// <para>The likelihood of a mean is log-concave, and so has one maximum (Burridge 1981, J. R. Statist. Soc. B 43, 41-45).</para>
/// </remarks>
sealed record CensoredNormal(double Sigma, double DegreesOfFreedom, double[] Means, double[] Own, double[] Drift)
{
    /// <summary>Sampling covariance of two means, by partitioned inversion of the observed information.</summary>
    internal double Covariance(int i, int j) => (i == j ? Own[i] : 0) + (Drift[i] * Drift[j] / (2 * DegreesOfFreedom));

    /// <summary>Fits the samples; null when no sample has two different values, so that sigma has no bound.</summary>
    internal static CensoredNormal? Fit(IReadOnlyList<CensoredSample> samples)
    {
        int degrees = samples.Sum(s => s.Count - 1);
        double squares = samples.Sum(s => s.SumOfSquares);
        if (degrees == 0 || squares == 0)
        {
            return null;
        }

        double plain = Math.Log(squares / degrees) / 2;
        bool censored = samples.Any(s => s.Censored.Length > 0);
        double logSigma = censored ? Root(t => Score(samples, t), plain) : plain;
        double nu = censored ? -(Score(samples, logSigma + 1e-4) - Score(samples, logSigma - 1e-4)) / 2e-4 / 2 : degrees;

        double sigma = Math.Exp(logSigma);
        Profile[] at = [.. samples.Select(s => Profile.At(s, sigma))];
        return new(sigma, nu, [.. at.Select(p => p.Mean)], [.. at.Select(p => sigma * sigma / p.Weight)], [.. at.Select(p => p.Drift)]);
    }

    /// <summary>Derivative of the adjusted profile likelihood by ln sigma.</summary>
    internal static double Score(IReadOnlyList<CensoredSample> samples, double logSigma) =>
        samples.Sum(s => Profile.At(s, Math.Exp(logSigma)).Score);

    // The score falls from +infinity to below zero as sigma grows, so widening steps always bracket the root.
    static double Root(Func<double, double> score, double start)
    {
        double low = start - 0.5, high = start + 0.5;
        for (; score(low) < 0; low -= 0.5)
        {
        }

        for (; score(high) > 0; high += 0.5)
        {
        }

        return Brent.FindRoot(score, low, high, 1e-13, 200);
    }

    /// <summary>One sample at a given sigma, its mean at the maximum.</summary>
    /// <param name="Mean">The mean.</param>
    /// <param name="Weight">Information on the mean times sigma²: values plus the weights of the censored.</param>
    /// <param name="Drift">d mean / d ln sigma.</param>
    /// <param name="Score">This sample's share of the score.</param>
    internal readonly record struct Profile(double Mean, double Weight, double Drift, double Score)
    {
        internal static Profile At(CensoredSample sample, double sigma)
        {
            int n = sample.Count;
            double mean = MeanAt(sample, sigma), off = (sample.Mean - mean) / sigma;
            double score = (sample.SumOfSquares / sigma / sigma) + (n * off * off) - n + 1, byLogSigma = -n * off, weight = n;
            foreach (Beyond beyond in sample.Censored)
            {
                double a = beyond.Argument(mean, sigma), w = NormalTail.Weight(a);
                weight += beyond.Count * w;
                score -= beyond.Count * a * NormalTail.Hazard(a);
                byLogSigma -= beyond.Count * beyond.Side * w * a;
            }

            double drift = sigma * byLogSigma / weight, change = 0;
            foreach (Beyond beyond in sample.Censored)
            {
                double a = beyond.Argument(mean, sigma);
                change += beyond.Count * NormalTail.WeightSlope(a) * (-a - (beyond.Side * drift / sigma));
            }

            return new(mean, weight, drift, score - (change / weight / 2));
        }

        // Newton; the information lies between n and n + m, so a step with n + m never overshoots and is the way back when Newton does not gain.
        static double MeanAt(CensoredSample sample, double sigma)
        {
            double mean = sample.Mean;
            if (sample.Censored.Length == 0)
            {
                return mean;
            }

            int all = sample.Count + sample.Censored.Sum(c => c.Count);
            var (pull, weight) = Pull(sample, mean, sigma);
            for (int k = 0; k < 200 && Math.Abs(pull) > 1e-14 * sample.Count; k++)
            {
                double next = mean + (sigma * pull / weight);
                var (pullThere, weightThere) = Pull(sample, next, sigma);
                if (Math.Abs(pullThere) >= Math.Abs(pull))
                {
                    next = mean + (sigma * pull / all);
                    (pullThere, weightThere) = Pull(sample, next, sigma);
                }

                if (next == mean)
                {
                    break;
                }

                (mean, pull, weight) = (next, pullThere, weightThere);
            }

            return mean;
        }

        // Derivative of the log-likelihood by the mean, times sigma; and the information on the mean, times sigma².
        static (double Pull, double Weight) Pull(CensoredSample sample, double mean, double sigma)
        {
            double pull = sample.Count * (sample.Mean - mean) / sigma, weight = sample.Count;
            foreach (Beyond beyond in sample.Censored)
            {
                double a = beyond.Argument(mean, sigma), hazard = NormalTail.Hazard(a);
                pull -= beyond.Count * beyond.Side * hazard;
                weight += beyond.Count * hazard * (hazard + a);
            }

            return (pull, weight);
        }
    }
}
