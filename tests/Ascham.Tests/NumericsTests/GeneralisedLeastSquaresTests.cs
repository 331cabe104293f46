namespace Ascham.Tests.NumericsTests;

using System.Globalization;
using Ascham.Numerics;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

public class GeneralisedLeastSquaresTests
{
    // Published: NIST/ITL Statistical Reference Datasets, linear regression (files under tests/authorities/strd).
    // Digits: what scaled QR in double precision reaches on each set, less a digit of safety.
    [Theory]
    [InlineData("Norris", 1, 11)]
    [InlineData("Pontius", 2, 11)]
    [InlineData("Longley", 0, 9)]
    [InlineData("Filip", 10, 6)]
    public void Coefficients_and_standard_errors_match_the_certified_ones(string set, int degree, int digits)
    {
        double[][] rows = [.. Rows(set).Select(r => r.Select(Number).ToArray())];
        int columns = degree > 0 ? degree + 1 : rows[0].Length;
        var design = Matrix<double>.Build.Dense(rows.Length, columns, (i, j) => degree > 0 ? Math.Pow(rows[i][1], j) : j == 0 ? 1 : rows[i][j]);
        var y = Vector<double>.Build.Dense([.. rows.Select(r => r[0])]);

        var fit = GeneralisedLeastSquares.Fit(design, y, Matrix<double>.Build.DenseIdentity(rows.Length));

        double residualSd = Math.Sqrt(fit.ChiSquare / fit.FreeObservations);
        var certified = Certified(set);
        Assert.All(Enumerable.Range(0, columns), j =>
        {
            Assert.InRange(MatchingDigits(fit.Coefficients[j], certified[$"B{j}"]), digits, 99);
            Assert.InRange(MatchingDigits(residualSd * Math.Sqrt(fit.Covariance[j, j]), certified[$"se_B{j}"]), digits - 1, 99);
        });
        Assert.InRange(MatchingDigits(residualSd, certified["residual_sd"]), digits, 99);
    }

    [Fact] // independent: the textbook normal equations, on a well-conditioned design
    public void Correlated_errors_give_the_normal_equations_answer() =>
        Gen.Double[-1, 1].Array[30].Sample(u =>
        {
            var x = Matrix<double>.Build.Dense(6, 2, (i, j) => j == 0 ? 1 : i + u[i]);
            var half = Matrix<double>.Build.Dense(6, 6, (i, j) => i == j ? 2 : 0.3 * u[(6 * i + j) % 30]);
            var v = half * half.Transpose();
            var y = Vector<double>.Build.Dense(6, i => u[12 + i]);

            var fit = GeneralisedLeastSquares.Fit(x, y, v);

            var vi = v.Inverse();
            var covariance = (x.Transpose() * vi * x).Inverse();
            var expected = covariance * x.Transpose() * vi * y;
            Assert.True((fit.Coefficients - expected).L2Norm() < 1e-10);
            Assert.True((fit.Covariance - covariance).FrobeniusNorm() < 1e-10);
            Assert.True((fit.Gain * y - expected).L2Norm() < 1e-10);
        });

    [Fact]
    public void Columns_that_depend_on_each_other_are_refused()
    {
        var x = Matrix<double>.Build.Dense(4, 2, (i, j) => (j + 1) * (i + 1));
        var y = Vector<double>.Build.Dense(4, 1);
        var exception = Assert.Throws<ArgumentException>(() => GeneralisedLeastSquares.Fit(x, y, Matrix<double>.Build.DenseIdentity(4)));
        Assert.Contains("depend on each other", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_covariance_without_error_is_refused()
    {
        var x = Matrix<double>.Build.Dense(3, 1, 1);
        var exception = Assert.Throws<ArgumentException>(() => GeneralisedLeastSquares.Fit(x, Vector<double>.Build.Dense(3), Matrix<double>.Build.Dense(3, 3)));
        Assert.Contains("not positive definite", exception.Message, StringComparison.Ordinal);
    }

    static double MatchingDigits(double actual, double expected) =>
        actual == expected ? 15 : -Math.Log10(Math.Abs(actual - expected) / Math.Abs(expected));

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    static IEnumerable<string[]> Rows(string set) =>
        File.ReadLines(House.Path($"tests/authorities/strd/{set}.csv")).Where(l => !l.StartsWith('#')).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));

    static Dictionary<string, double> Certified(string set) =>
        Rows("linear_certified").Where(r => r[0] == set).ToDictionary(r => r[1], r => Number(r[2]));
}
