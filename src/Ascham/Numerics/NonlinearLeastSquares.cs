namespace Ascham.Numerics;

using MathNet.Numerics.LinearAlgebra;

/// <summary>Least squares through a model that bends.</summary>
/// <remarks>
/// <para><b>Model.</b> Levenberg and Marquardt: Gauss-Newton steps, shortened while they do not gain, each by QR of the slopes with scaled columns. Where the sum of squares is
/// too flat to be compared any longer, plain Gauss-Newton steps go on as long as they shrink, which brings the last digits.</para>
/// <para><b>Accuracy.</b> Digits reached on the NIST StRD sets: docs/validation/nist-strd.md.</para>
/// <para><b>Source.</b> J. J. Moré (1978), Lecture Notes in Mathematics 630, 105-116; shortening of H. B. Nielsen (1999), IMM-REP-1999-05. Both from memory.</para>
/// </remarks>
static class NonlinearLeastSquares
{
    const int MostPolish = 100;

    // Relative size of a plain step below which it must shrink or the last digit is reached.
    const double Settled = 1e-9;

    /// <summary>The model at parameters: slopes, shape (n, p), and observed less fitted, shape (n), both over the standard errors; null where the model has no answer.</summary>
    internal delegate (Matrix<double> Slopes, Vector<double> Residuals)? Linearisation(Vector<double> parameters);

    /// <summary>Finds the parameters of the least sum of squares near a start.</summary>
    /// <param name="start">Shape (p), not all zero; the model must have an answer there.</param>
    /// <param name="at">The model.</param>
    /// <param name="mostSteps">Steps tried before giving up: tens from a fair start, thousands from a wild one.</param>
    /// <returns>The parameters; null when no least was found, or none that single numbers could settle.</returns>
    internal static Vector<double>? Fit(Vector<double> start, Linearisation at, int mostSteps = 200)
    {
        var here = start;
        if (Told(at, here) is not { } now)
        {
            return null;
        }

        var scale = now.Slopes.ColumnNorms(2);
        double damping = 1e-3, grow = 2;
        for (int i = 0; i < mostSteps; i++)
        {
            scale = scale.PointwiseMaximum(now.Slopes.ColumnNorms(2));
            if (scale.Minimum() == 0)
            {
                return null; // a parameter without any effect
            }

            var step = Step(now, scale, damping);
            double before = now.Residuals.DotProduct(now.Residuals);
            var left = now.Residuals - (now.Slopes * step);
            double promised = before - left.DotProduct(left);
            // A step longer than the way from zero trusts the slopes too far.
            var next = step.PointwiseMultiply(scale).L2Norm() > here.PointwiseMultiply(scale).L2Norm() ? null : Told(at, here + step);
            double gained = next is { } n ? before - n.Residuals.DotProduct(n.Residuals) : double.NegativeInfinity;
            if (gained > 0)
            {
                (here, now, grow) = (here + step, next!.Value, 2);
                damping *= Math.Max(1.0 / 3, 1 - Math.Pow((2 * gained / promised) - 1, 3));
            }
            else
            {
                (damping, grow) = (damping * grow, 2 * grow);
            }

            if (promised <= 1e-10 * before && Relative(step, here) < 1e-3)
            {
                return Polished(here, at);
            }
        }

        return null;
    }

    static Vector<double>? Polished(Vector<double> here, Linearisation at)
    {
        double last = double.PositiveInfinity;
        for (int i = 0; i < MostPolish && Told(at, here) is { } now; i++)
        {
            var step = Step(now, now.Slopes.ColumnNorms(2), 0);
            double size = Relative(step, here);
            if (size < Settled && size >= last)
            {
                return here;
            }

            (here, last) = (here + step, size);
        }

        return last < Settled ? here : null;
    }

    // Slopes times step nearest the residuals; damped, step also near zero in the scale of each column.
    static Vector<double> Step((Matrix<double> Slopes, Vector<double> Residuals) now, Vector<double> scale, double damping)
    {
        int p = scale.Count;
        var scaled = now.Slopes * Matrix<double>.Build.DiagonalOfDiagonalVector(1 / scale);
        var (slopes, residuals) = damping == 0
            ? (scaled, now.Residuals)
            : (scaled.Stack(Math.Sqrt(damping) * Matrix<double>.Build.DenseIdentity(p)), Vector<double>.Build.DenseOfEnumerable(now.Residuals.Concat(new double[p])));
        return slopes.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Solve(residuals) / scale;
    }

    static (Matrix<double> Slopes, Vector<double> Residuals)? Told(Linearisation at, Vector<double> parameters) =>
        at(parameters) is { } told && double.IsFinite(told.Residuals.L2Norm()) && double.IsFinite(told.Slopes.FrobeniusNorm()) ? told : null;

    static double Relative(Vector<double> step, Vector<double> here) => step.Zip(here, (s, h) => Math.Abs(s) / (Math.Abs(h) + Math.Abs(s) + double.Epsilon)).Max();
}
