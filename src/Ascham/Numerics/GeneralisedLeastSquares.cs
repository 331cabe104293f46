namespace Ascham.Numerics;

using MathNet.Numerics.LinearAlgebra;

/// <summary>Least squares for observations whose errors have a known covariance.</summary>
/// <remarks>
/// <para><b>Model.</b> y = X b + e with cov(e) = V. Whitened by the Cholesky factor of V, columns scaled, solved by QR and refined:
/// normal equations lose all digits on ill-conditioned designs (NIST StRD Filip).</para>
/// <para><b>Source.</b> A. C. Aitken, Proc. R. Soc. Edinburgh 55 (1935) 42-48; JCGM 100:2008 for the meaning of a known covariance.</para>
/// </remarks>
static class GeneralisedLeastSquares
{
    /// <summary>What a fit found.</summary>
    /// <param name="Coefficients">b; shape (p).</param>
    /// <param name="Covariance">(XᵀV⁻¹X)⁻¹, not rescaled by the residuals; shape (p, p).</param>
    /// <param name="Gain">Row j says how coefficient j weighs the observations: b = Gain y; shape (p, n).</param>
    /// <param name="Residuals">y − X b; shape (n).</param>
    /// <param name="ChiSquare">rᵀV⁻¹r.</param>
    internal sealed record Solution(Vector<double> Coefficients, Matrix<double> Covariance, Matrix<double> Gain, Vector<double> Residuals, double ChiSquare)
    {
        /// <summary>Observations less coefficients.</summary>
        internal int FreeObservations => Residuals.Count - Coefficients.Count;
    }

    /// <summary>Fits.</summary>
    /// <param name="design">X; shape (n, p), n at least p, of full rank.</param>
    /// <param name="observed">y; shape (n).</param>
    /// <param name="covariance">V; shape (n, n), symmetric and positive definite.</param>
    /// <exception cref="ArgumentException">The design has less than full rank, or the covariance is not positive definite.</exception>
    internal static Solution Fit(Matrix<double> design, Vector<double> observed, Matrix<double> covariance)
    {
        var root = CholeskyFactor(covariance);
        var x = root.Solve(design);
        var y = root.Solve(observed);

        var scale = x.ColumnNorms(2);
        if (scale.Any(s => !(s > 0)))
        {
            throw new ArgumentException("A column of the design is zero, so its coefficient cannot be found.", nameof(design));
        }

        var unscale = Matrix<double>.Build.DiagonalOfDiagonalVector(1 / scale);
        var qr = (x * unscale).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        if (qr.R.Diagonal().AbsoluteMinimum() < 1e-13 * qr.R.Diagonal().AbsoluteMaximum())
        {
            throw new ArgumentException("The columns of the design depend on each other, so the coefficients cannot be told apart.", nameof(design));
        }

        var inverse = unscale * qr.R.Inverse();
        var coefficients = inverse * qr.Q.TransposeThisAndMultiply(y);
        var white = Left(y, x, coefficients);
        // What rounding left out of the residuals is fitted again (Golub 1965, iterative refinement): twice settles it.
        for (int i = 0; i < 2; i++)
        {
            coefficients += inverse * qr.Q.TransposeThisAndMultiply(white);
            white = Left(y, x, coefficients);
        }

        var gain = root.TransposeSolve(qr.Q * inverse.Transpose()).Transpose();
        return new(coefficients, inverse.TransposeAndMultiply(inverse), gain, observed - design * coefficients, white.DotProduct(white));
    }

    // y − X b in twice the precision: the terms cancel almost wholly where columns are nearly alike.
    static Vector<double> Left(Vector<double> y, Matrix<double> x, Vector<double> b) => Vector<double>.Build.Dense(y.Count, i =>
    {
        LongSum left = default;
        left.Add(y[i]);
        for (int j = 0; j < b.Count; j++)
        {
            left.AddProduct(-x[i, j], b[j]);
        }

        return left.Value;
    });

    static LowerTriangle CholeskyFactor(Matrix<double> covariance)
    {
        try
        {
            return new LowerTriangle(covariance.Cholesky().Factor);
        }
        catch (ArgumentException exception)
        {
            throw new ArgumentException("The covariance of the observations is not positive definite: an observation has no error, or two share all of theirs.", nameof(covariance), exception);
        }
    }

    readonly struct LowerTriangle(Matrix<double> factor)
    {
        readonly Matrix<double> inverse = factor.Inverse();

        internal Matrix<double> Solve(Matrix<double> right) => inverse * right;

        internal Vector<double> Solve(Vector<double> right) => inverse * right;

        internal Matrix<double> TransposeSolve(Matrix<double> right) => inverse.TransposeThisAndMultiply(right);
    }
}
