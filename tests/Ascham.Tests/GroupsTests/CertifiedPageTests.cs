namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Numerics;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using Xunit;

/// <summary>Writes the digits reached on the NIST StRD sets to docs/validation/nist-strd.md.</summary>
public class CertifiedPageTests
{
    // Certified mean and standard deviation: NIST StRD, univariate summary statistics.
    static readonly (string Set, double Mean, double Sd)[] Univariate =
    [
        ("NumAcc1", 10000002, 1), ("NumAcc2", 1.2, 0.1), ("NumAcc3", 1000000.2, 0.1), ("NumAcc4", 10000000.2, 0.1),
        ("Michelso", 299.852400000000, 0.0790105478190518), ("Mavro", 2.00185600000000, 0.000429123454003053), ("Lew", -177.435000000000, 277.332168044316),
        ("Lottery", 518.958715596330, 291.699727470969), ("PiDigits", 4.53480000000000, 2.86733906028871),
    ];

    static readonly (string Set, int Degree)[] Linear = [("Norris", 1), ("Pontius", 2), ("Longley", 0), ("Filip", 10)];

    [Fact(Explicit = true)] // run with -explicit after a change of sums or of least squares
    public void Write_the_table() => File.WriteAllText(House.Path("docs/validation/nist-strd.md"), $"""
        # NIST Statistical Reference Datasets: digits reached

        Written by `CertifiedPageTests` (tests). Log relative error against the certified values, at most 15.9; `CertifiedTests` and `GeneralisedLeastSquaresTests` ask for a floor per set.
        NumAcc3 and NumAcc4 lose their digits when the data are turned into binary numbers.

        ## Univariate, through `Group`

        | set | mean | standard deviation |
        |---|---|---|
        {string.Join("\n", Univariate.Select(u => Summary(u.Set, u.Mean, u.Sd)))}

        ## Linear, through the least-squares room

        | set | worst coefficient | worst standard error | residual standard deviation |
        |---|---|---|---|
        {string.Join("\n", Linear.Select(l => Regression(l.Set, l.Degree)))}

        Not in this table: the linear sets Wampler and NoInt, the nonlinear sets (the library has no general nonlinear fit), and of the analysis-of-variance sets all but SiRstv (`NumberedArrowsTests`).

        """.ReplaceLineEndings("\n"));

    static string Summary(string set, double mean, double sd)
    {
        double[] values = [.. File.ReadLines(House.Path($"tests/authorities/strd/univariate/{set}.csv")).Skip(2).Select(Number)];
        Group group = Group.Of(values.Select(y => new Impact(Length.Zero, Length.FromMeters(y))).ToArray());
        return $"| {set} | {Digits(group.Centre(Axis.Vertical, 0.9).Value.Meters, mean)} | {Digits(group.Dispersion(Axis.Vertical, 0.9).Sample.Meters, sd)} |";
    }

    static string Regression(string set, int degree)
    {
        double[][] rows = [.. Rows(set).Select(r => r.Select(Number).ToArray())];
        var certified = Rows("linear_certified").Where(r => r[0] == set).ToDictionary(r => r[1], r => Number(r[2]));
        int columns = degree > 0 ? degree + 1 : rows[0].Length;
        var design = Matrix<double>.Build.Dense(rows.Length, columns, (i, j) => degree > 0 ? Math.Pow(rows[i][1], j) : j == 0 ? 1 : rows[i][j]);
        var fit = GeneralisedLeastSquares.Fit(design, Vector<double>.Build.Dense([.. rows.Select(r => r[0])]), Matrix<double>.Build.DenseIdentity(rows.Length));
        double sd = Math.Sqrt(fit.ChiSquare / fit.FreeObservations);
        double b = Enumerable.Range(0, columns).Min(j => Lre(fit.Coefficients[j], certified[$"B{j}"])), e = Enumerable.Range(0, columns).Min(j => Lre(sd * Math.Sqrt(fit.Covariance[j, j]), certified[$"se_B{j}"]));
        return string.Create(CultureInfo.InvariantCulture, $"| {set} | {b:F1} | {e:F1} | {Digits(sd, certified["residual_sd"])} |");
    }

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    static IEnumerable<string[]> Rows(string set) =>
        File.ReadLines(House.Path($"tests/authorities/strd/{set}.csv")).Where(l => !l.StartsWith('#')).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','));

    static double Lre(double actual, double certified) => actual == certified ? 15.9 : Math.Min(15.9, -Math.Log10(Math.Abs(actual - certified) / Math.Abs(certified)));

    static string Digits(double actual, double certified) => Lre(actual, certified).ToString("F1", CultureInfo.InvariantCulture);
}
