namespace Ascham.Causes;

using Ascham.Numerics;
using static System.Math;

/// <summary>What noisy numbers say of a few normal unknowns: r = F δ + e with δ normal about zero and e normal.</summary>
/// <remarks>Closed form; the log of the marginal likelihood equals Savage and Dickey's ratio where models are nested.</remarks>
static class NormalEvidence
{
    /// <summary>Solves.</summary>
    /// <param name="residual">r; shape (n).</param>
    /// <param name="columns">F, column by column; shape (k × n).</param>
    /// <param name="sds">Prior standard deviations of δ; shape (k).</param>
    /// <param name="l">Cholesky factor of the covariance of e; shape (n × n).</param>
    internal static Posterior Solve(ReadOnlySpan<double> residual, ReadOnlySpan<double> columns, ReadOnlySpan<double> sds, ReadOnlySpan<double> l)
    {
        int n = residual.Length, k = sds.Length;
        double[] w = [.. residual], f = [.. columns], information = new double[k * k], mean = new double[k];
        SmallCholesky.Forward(l, n, w);
        double log = -n * Log(2 * PI) / 2 - Dot(w, w) / 2;
        for (int a = 0; a < k; a++)
        {
            Span<double> column = f.AsSpan(a * n, n);
            SmallCholesky.Forward(l, n, column);
            mean[a] = Dot(column, w);
            log -= Log(sds[a]);
            for (int b = 0; b <= a; b++)
            {
                information[a * k + b] = Dot(column, f.AsSpan(b * n, n)) + (a == b ? 1 / (sds[a] * sds[a]) : 0);
            }
        }

        SmallCholesky.TryFactor(information, k, out double determinant); // sound: a prior's information is on its diagonal
        SmallCholesky.Forward(information, k, mean);
        log += Dot(mean, mean) / 2 - determinant / 2;
        SmallCholesky.Backward(information, k, mean);
        return new(log, mean, Inverse(information, k));
    }

    static double[] Inverse(double[] factor, int k)
    {
        double[] inverse = new double[k * k];
        for (int a = 0; a < k; a++)
        {
            Span<double> column = inverse.AsSpan(a * k, k);
            column[a] = 1;
            SmallCholesky.Forward(factor, k, column);
            SmallCholesky.Backward(factor, k, column);
        }

        return inverse;
    }

    static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }
}
