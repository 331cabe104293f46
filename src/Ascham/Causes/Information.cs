namespace Ascham.Causes;

using Ascham.Numerics;
using static System.Math;

/// <summary>How much a test not yet made is expected to tell which of several explanations holds, in nats.</summary>
static class Information
{
    const int Points = 64; // for each explanation

    /// <summary>Of a test whose outcome is normal under each explanation.</summary>
    /// <param name="probabilities">Of the explanations; shape (h), summing to one.</param>
    /// <param name="means">Expected outcome under each; shape (h × d).</param>
    /// <param name="covariances">Of the outcome under each; shape (h × d × d), positive definite.</param>
    /// <param name="d">Numbers in an outcome.</param>
    /// <param name="points">Normal points for each explanation.</param>
    /// <remarks>
    /// EIG = Σ p ∫ N ln(N / Σ p N): the outer integral by seeded normal points, drawn in pairs of opposite sign, the same for every test.
    /// Source: Lindley (1956), Ann. Math. Statist. 27, 986-1005; Box and Hill (1967), Technometrics 9, 57-71.
    /// </remarks>
    internal static double Of(ReadOnlySpan<double> probabilities, ReadOnlySpan<double> means, ReadOnlySpan<double> covariances, int d, int points = Points)
    {
        int count = probabilities.Length;
        double[] l = [.. covariances], logs = new double[count];
        for (int h = 0; h < count; h++)
        {
            if (!SmallCholesky.TryFactor(l.AsSpan(h * d * d, d * d), d, out double determinant))
            {
                throw new ArgumentException("A predicted outcome without any error.", nameof(covariances));
            }

            logs[h] = Log(probabilities[h]) - determinant / 2;
        }

        double[] normals = Normals((points + 1) / 2 * d);
        double sum = 0;
        Span<double> y = stackalloc double[d], off = stackalloc double[d];
        for (int i = 0; i < points; i++)
        {
            Span<double> z = normals.AsSpan(i / 2 * d, d);
            Turn(z);

            for (int h = 0; h < count; h++)
            {
                Outcome(l.AsSpan(h * d * d, d * d), means.Slice(h * d, d), z, y);
                sum += probabilities[h] * (logs[h] - Log(probabilities[h]) - Square(z) / 2 - LogMixture(logs, means, l, y, off));
            }
        }

        return Max(0, sum / points);
    }

    /// <summary>Of a test that is answered by yes or no.</summary>
    /// <param name="probabilities">Of the explanations.</param>
    /// <param name="yes">Probability of yes under each.</param>
    internal static double OfSign(ReadOnlySpan<double> probabilities, ReadOnlySpan<double> yes)
    {
        double all = 0, within = 0;
        for (int h = 0; h < probabilities.Length; h++)
        {
            all += probabilities[h] * yes[h];
            within += probabilities[h] * Entropy(yes[h]);
        }

        return Max(0, Entropy(all) - within);
    }

    static double LogMixture(double[] logs, ReadOnlySpan<double> means, double[] l, ReadOnlySpan<double> y, Span<double> off)
    {
        int d = y.Length;
        double top = double.NegativeInfinity, sum = 0;
        for (int h = 0; h < logs.Length; h++)
        {
            for (int i = 0; i < d; i++)
            {
                off[i] = y[i] - means[h * d + i];
            }

            SmallCholesky.Forward(l.AsSpan(h * d * d, d * d), d, off);
            double log = logs[h] - Square(off) / 2;
            sum = log > top ? sum * Exp(top - log) + 1 : sum + Exp(log - top);
            top = Max(top, log);
        }

        return top + Log(sum);
    }

    static void Outcome(ReadOnlySpan<double> l, ReadOnlySpan<double> mean, ReadOnlySpan<double> z, Span<double> y)
    {
        int d = y.Length;
        for (int i = 0; i < d; i++)
        {
            y[i] = mean[i];
            for (int j = 0; j <= i; j++)
            {
                y[i] += l[i * d + j] * z[j];
            }
        }
    }

    static double[] Normals(int count)
    {
        double[] normals = new double[(count + Variates.Together - 1) / Variates.Together * Variates.Together];
        Xoshiro random = Xoshiro.ForChunk(20, 0);
        Variates.FillNormal(ref random, normals);
        return normals;
    }

    static void Turn(Span<double> z)
    {
        for (int i = 0; i < z.Length; i++)
        {
            z[i] = -z[i];
        }
    }

    static double Square(ReadOnlySpan<double> x)
    {
        double sum = 0;
        foreach (double value in x)
        {
            sum += value * value;
        }

        return sum;
    }

    static double Entropy(double p) => p is > 0 and < 1 ? -p * Log(p) - (1 - p) * Log(1 - p) : 0;
}
