namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using MathNet.Numerics.LinearAlgebra;

/// <summary>A linear set of NIST StRD through the least-squares room.</summary>
static class StrdLine
{
    internal static readonly string[] Sets = ["Norris", "Pontius", "NoInt1", "NoInt2", "Longley", "Filip", "Wampler1", "Wampler2", "Wampler3", "Wampler4", "Wampler5"];

    /// <summary>Digits of the worst coefficient, of the worst standard error and of the residual standard deviation.</summary>
    internal static (double Coefficient, double Error, double Residual) Digits(string set)
    {
        double[][] rows = [.. Certified.Rows(set).Select(r => r.Select(Certified.Number).ToArray())];
        var certified = Certified.Values("linear_certified", set);
        // Coefficients B0 to Bp of powers of x, or of the columns where there are several; without B0 there is no constant.
        int[] terms = [.. Enumerable.Range(0, 11).Where(j => certified.ContainsKey($"B{j}"))];
        bool columns = rows[0].Length > 2;
        var design = Matrix<double>.Build.Dense(rows.Length, terms.Length, (i, j) => terms[j] == 0 ? 1 : columns ? rows[i][terms[j]] : Power(rows[i][1], terms[j]));
        var fit = GeneralisedLeastSquares.Fit(design, Vector<double>.Build.DenseOfEnumerable(rows.Select(r => r[0])), Matrix<double>.Build.DenseIdentity(rows.Length));
        double sd = Math.Sqrt(fit.ChiSquare / fit.FreeObservations);
        var each = Enumerable.Range(0, terms.Length);
        return (each.Min(j => Certified.Digits(fit.Coefficients[j], certified[$"B{terms[j]}"])),
            each.Min(j => Certified.Digits(sd * Math.Sqrt(fit.Covariance[j, j]), certified[$"se_B{terms[j]}"])), Certified.Digits(sd, certified["residual_sd"]));
    }

    static double Power(double x, int exponent) => Enumerable.Repeat(x, exponent).Aggregate(1.0, (product, factor) => product * factor);
}
