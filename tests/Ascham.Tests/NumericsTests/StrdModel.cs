namespace Ascham.Tests.NumericsTests;

using System.Globalization;
using Ascham.Numerics;
using MathNet.Numerics.LinearAlgebra;

/// <summary>A nonlinear set of NIST StRD: its model, data, starts and certified values; slopes exact, by evaluating the model on numbers that carry their derivatives.</summary>
sealed record StrdModel(string Set, Func<double, Gradient[], Gradient> Curve)
{
    // Models as printed on the page of each set.
    internal static StrdModel[] All { get; } =
    [
        new("Misra1a", (x, b) => b[0] * (One - Exp(-x * b[1]))),
        new("Misra1b", (x, b) => b[0] * (One - Power(One + (x / 2 * b[1]), -2))),
        new("Chwirut1", (x, b) => Exp(-x * b[0]) / (b[1] + (x * b[2]))),
        new("Chwirut2", (x, b) => Exp(-x * b[0]) / (b[1] + (x * b[2]))),
        new("DanWood", (x, b) => b[0] * Exp(Math.Log(x) * b[1])),
        new("Lanczos3", (x, b) => (b[0] * Exp(-x * b[1])) + (b[2] * Exp(-x * b[3])) + (b[4] * Exp(-x * b[5]))),
        new("MGH09", (x, b) => b[0] * (Number(x * x) + (x * b[1])) / (Number(x * x) + (x * b[2]) + b[3])),
        new("MGH10", (x, b) => b[0] * Exp(b[1] / (Number(x) + b[2]))),
        new("MGH17", (x, b) => b[0] + (b[1] * Exp(-x * b[3])) + (b[2] * Exp(-x * b[4]))),
        new("Eckerle4", (x, b) => b[0] / b[1] * Exp(-0.5 * Square((Number(x) - b[2]) / b[1]))),
        new("BoxBOD", (x, b) => b[0] * (One - Exp(-x * b[1]))),
        new("Rat42", (x, b) => b[0] / (One + Exp(b[1] - (x * b[2])))),
        new("Rat43", (x, b) => b[0] / Exp(Log(One + Exp(b[1] - (x * b[2]))) / b[3])),
        new("Kirby2", (x, b) => Polynomial(x, b[0], b[1], b[2]) / Polynomial(x, One, b[3], b[4])),
        new("Hahn1", (x, b) => Polynomial(x, b[0], b[1], b[2], b[3]) / Polynomial(x, One, b[4], b[5], b[6])),
        new("Thurber", (x, b) => Polynomial(x, b[0], b[1], b[2], b[3]) / Polynomial(x, One, b[4], b[5], b[6])),
        new("Bennett5", (x, b) => b[0] * Exp(Log(b[1] + Number(x)) / (-1 * b[2]))),
    ];

    static Gradient One => Number(1);

    /// <summary>Digits of the worst parameter, of the worst standard error and of the residual standard deviation reached from a start, 1 or 2; null when none was found.</summary>
    internal (double Parameter, double Error, double Residual)? Digits(int start)
    {
        double[][] rows = [.. Certified.Rows($"nonlinear/{Set}").Select(r => r.Select(Certified.Number).ToArray())];
        var y = Vector<double>.Build.DenseOfEnumerable(rows.Select(r => r[0]));
        (Matrix<double>, Vector<double>) At(Vector<double> b)
        {
            Gradient[] parameters = [.. b.Select(Gradient.Input)], curve = [.. rows.Select(r => Curve(r[1], parameters))];
            return (Matrix<double>.Build.Dense(rows.Length, b.Count, (i, j) => curve[i][j]), y - Vector<double>.Build.DenseOfEnumerable(curve.Select(c => c.Value)));
        }

        double[] from = [.. Certified.Rows("nonlinear/starts").Single(r => r[0] == Set)[start].Split(';').Select(Certified.Number)];
        if (NonlinearLeastSquares.Fit(Vector<double>.Build.DenseOfArray(from), b => At(b), 20_000) is not { } found)
        {
            return null;
        }

        var certified = Certified.Values("nonlinear/certified", Set);
        var (slopes, residuals) = At(found);
        var there = GeneralisedLeastSquares.Fit(slopes, residuals, Matrix<double>.Build.DenseIdentity(rows.Length));
        double sd = Math.Sqrt(residuals.DotProduct(residuals) / there.FreeObservations);
        var each = Enumerable.Range(0, found.Count);
        return (each.Min(j => Certified.Digits(found[j], certified[$"b{j + 1}"])),
            each.Min(j => Certified.Digits(sd * Math.Sqrt(there.Covariance[j, j]), certified[$"se_b{j + 1}"])), Certified.Digits(sd, certified["residual_sd"]));
    }

    static Gradient Number(double value) => Gradient.Of(value);

    static Gradient Exp(Gradient a) => Gradient.Exp(a);

    static Gradient Log(Gradient a) => Gradient.Log(a);

    static Gradient Square(Gradient a) => a * a;

    static Gradient Power(Gradient a, int minusTwo) => minusTwo == -2 ? One / (a * a) : throw new ArgumentOutOfRangeException(nameof(minusTwo));

    static Gradient Polynomial(double x, params Gradient[] coefficients) => coefficients.Reverse().Aggregate((sum, c) => (x * sum) + c);
}

/// <summary>Reads the NIST StRD files of tests/authorities and counts digits.</summary>
static class Certified
{
    internal static IEnumerable<string[]> Rows(string set) =>
        File.ReadLines(House.Path($"tests/authorities/strd/{set}.csv")).Where(l => !l.StartsWith('#')).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));

    internal static Dictionary<string, double> Values(string file, string set) => Rows(file).Where(r => r[0] == set).ToDictionary(r => r[1], r => Number(r[2]));

    internal static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>Log relative error; absolute where zero is certified; at most 15.9, what a double can show.</summary>
    internal static double Digits(double actual, double certified) =>
        actual == certified ? 15.9 : Math.Min(15.9, -Math.Log10(Math.Abs(actual - certified) / (certified == 0 ? 1 : Math.Abs(certified))));
}
