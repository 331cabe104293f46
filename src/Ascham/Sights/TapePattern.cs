namespace Ascham.Sights;

using Ascham.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

/// <summary>A pattern of tape errors fitted to what the stations measured: slide, scale about the shortest mark, bend.</summary>
/// <remarks>
/// Travel from printed to right mark = slide + scale (t − t₁) + bend 4u(1 − u), where t is the printed position, t₁ that of the
/// shortest mark and u = (t − t₁)/(t_last − t₁). Degrees of freedom of a variance that is part estimated (scatter) and part
/// given (distance, setting) follow Welch (1947) and Satterthwaite, Biometrics Bulletin 2 (1946) 110-114.
/// </remarks>
sealed class TapePattern
{
    readonly double first, span, scatterFreedom;
    readonly Matrix<double> scatter;
    readonly GeneralisedLeastSquares.Solution solution;
    readonly double inflation;

    TapePattern(int terms, double first, double span, GeneralisedLeastSquares.Solution solution, Matrix<double> scatter, double scatterFreedom, double inflation)
    {
        (Terms, this.first, this.span, this.solution, this.scatter, this.scatterFreedom, this.inflation) = (terms, first, span, solution, scatter, scatterFreedom, inflation);
    }

    /// <summary>1: slide alone; 2: slide and scale; 3: bend as well.</summary>
    internal int Terms { get; }

    internal double ChiSquare => solution.ChiSquare;

    internal int FreeObservations => solution.FreeObservations;

    /// <summary>Fits the pattern.</summary>
    /// <param name="tape">The printed tape; sets the shortest mark and the span.</param>
    /// <param name="at">Printed positions of the stations, m; shape (n).</param>
    /// <param name="error">Measured travel from printed to right, m; shape (n).</param>
    /// <param name="covariance">Of those, all sources, m²; shape (n, n).</param>
    /// <param name="scatter">The part of it that the arrows' scatter gave, m²; shape (n, n).</param>
    /// <param name="scatterFreedom">Degrees of freedom of that part.</param>
    /// <param name="terms">1, 2 or 3.</param>
    /// <param name="admitMisfit">Widen the errors when the stations depart from the pattern by more than their own errors (R. T. Birge, Phys. Rev. 40 (1932) 207).</param>
    internal static TapePattern Fit(Tape tape, double[] at, Vector<double> error, Matrix<double> covariance, Matrix<double> scatter, double scatterFreedom, int terms, bool admitMisfit = false)
    {
        double first = tape.Shortest.Position.Meters, span = tape.Longest.Position.Meters - first;
        var design = Matrix<double>.Build.Dense(at.Length, terms, (i, j) => Basis(j, at[i], first, span));
        var solution = GeneralisedLeastSquares.Fit(design, error, covariance);
        double misfit = admitMisfit && solution.FreeObservations > 0 ? Math.Max(1, solution.ChiSquare / solution.FreeObservations) : 1;
        return new(terms, first, span, solution, scatter, scatterFreedom, misfit);
    }

    /// <summary>Value, standard error and degrees of freedom of one term: 0 slide (m), 1 scale (1), 2 bend at mid-tape (m).</summary>
    internal (double Value, double Error, double Freedom) Term(int index) =>
        Combination(Vector<double>.Build.Dense(Terms, j => j == index ? 1 : 0));

    /// <summary>Value, standard error and degrees of freedom of the tape's error at a printed position, m.</summary>
    internal (double Value, double Error, double Freedom) At(double position) =>
        Combination(Vector<double>.Build.Dense(Terms, j => Basis(j, position, first, span)));

    /// <summary>Value, standard error and degrees of freedom of what the scale term moves at the last mark, m.</summary>
    internal (double Value, double Error, double Freedom) ScaleAtLongest() =>
        Combination(Vector<double>.Build.Dense(Terms, j => j == 1 ? span : 0));

    /// <summary>Two-sided probability of a term at least this far from zero when the truth is zero.</summary>
    internal double Significance(int index)
    {
        var (value, error, freedom) = Term(index);
        return 2 * StudentT.CDF(0, 1, freedom, -Math.Abs(value) / error);
    }

    (double Value, double Error, double Freedom) Combination(Vector<double> weights)
    {
        var gain = solution.Gain.TransposeThisAndMultiply(weights);
        double variance = weights * solution.Covariance * weights, scattered = gain * scatter * gain;
        double freedom = scatterFreedom * Math.Pow(variance / scattered, 2);
        return (weights * solution.Coefficients, Math.Sqrt(variance * inflation), Math.Min(freedom, 1e6));
    }

    static double Basis(int term, double position, double first, double span)
    {
        double u = (position - first) / span;
        return term switch { 0 => 1, 1 => position - first, _ => 4 * u * (1 - u) };
    }
}
