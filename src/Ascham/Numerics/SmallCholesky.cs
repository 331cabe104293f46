namespace Ascham.Numerics;

/// <summary>Cholesky factor of a small symmetric positive definite matrix, in place on spans: for loops that solve thousands of them.</summary>
/// <remarks>Row by row, only the lower triangle read and written. Nothing is allocated.</remarks>
static class SmallCholesky
{
    /// <summary>Factors A = L Lᵀ in place.</summary>
    /// <param name="a">A on entry, L in the lower triangle on return; shape (n × n), row by row.</param>
    /// <param name="n">Size.</param>
    /// <param name="logDeterminant">ln |A|.</param>
    /// <returns><see langword="false"/> when A is not positive definite; a NaN in it is not.</returns>
    internal static bool TryFactor(Span<double> a, int n, out double logDeterminant)
    {
        logDeterminant = 0;
        for (int i = 0; i < n; i++)
        {
            Span<double> row = a.Slice(i * n, n);
            for (int j = 0; j < i; j++)
            {
                row[j] = (row[j] - Dot(row, a.Slice(j * n, n), j)) / a[j * n + j];
            }

            double pivot = row[i] - Dot(row, row, i);
            if (!(pivot > 0))
            {
                return false;
            }

            row[i] = Math.Sqrt(pivot);
            logDeterminant += Math.Log(pivot);
        }

        return true;
    }

    /// <summary>Solves L x = b in place.</summary>
    internal static void Forward(ReadOnlySpan<double> l, int n, Span<double> b)
    {
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> row = l.Slice(i * n, n);
            b[i] = (b[i] - Dot(row, b, i)) / row[i];
        }
    }

    /// <summary>Solves Lᵀ x = b in place.</summary>
    internal static void Backward(ReadOnlySpan<double> l, int n, Span<double> b)
    {
        for (int i = n - 1; i >= 0; i--)
        {
            double sum = b[i];
            for (int j = i + 1; j < n; j++)
            {
                sum -= l[j * n + i] * b[j];
            }

            b[i] = sum / l[i * n + i];
        }
    }

    static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int count)
    {
        double sum = 0;
        for (int i = 0; i < count; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }
}
