namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

public class NonlinearLeastSquaresTests
{
    public static TheoryData<string> Sets => [.. StrdModel.All.Select(m => m.Set)];

    // Published: NIST/ITL Statistical Reference Datasets, nonlinear regression, certified to eleven digits (files under tests/authorities/strd/nonlinear).
    [Theory]
    [MemberData(nameof(Sets))]
    public void Both_starts_reach_ten_of_the_eleven_certified_digits(string set)
    {
        StrdModel model = StrdModel.All.Single(m => m.Set == set);
        foreach (int start in new[] { 1, 2 })
        {
            var digits = model.Digits(start);
            Assert.NotNull(digits);
            Assert.InRange(digits.Value.Parameter, 10, 16);
            Assert.InRange(digits.Value.Error, 10, 16);
            Assert.InRange(digits.Value.Residual, 10, 16);
        }
    }

    [Fact] // relation: a straight model is solved at once, to the digits of the linear fit
    public void A_straight_line_gives_the_linear_answer()
    {
        var x = Matrix<double>.Build.Dense(5, 2, (i, j) => j == 0 ? 1 : i);
        var y = Vector<double>.Build.DenseOfArray([1, 3, 2, 5, 4]);
        var found = NonlinearLeastSquares.Fit(Vector<double>.Build.DenseOfArray([9, -3]), b => (x, y - (x * b)));
        Assert.Equal(1.4, found![0], 1e-13); // by hand
        Assert.Equal(0.8, found[1], 1e-13);
    }

    [Fact]
    public void Where_there_is_no_least_none_is_given()
    {
        var start = Vector<double>.Build.DenseOfArray([1]);
        Assert.Null(NonlinearLeastSquares.Fit(start, _ => null));
        Assert.Null(NonlinearLeastSquares.Fit(start, b => (Matrix<double>.Build.Dense(2, 1, double.NaN), Vector<double>.Build.Dense(2, 1))));
        // the residual exp(-b) falls for ever
        Assert.Null(NonlinearLeastSquares.Fit(start, b => (Matrix<double>.Build.Dense(1, 1, Math.Exp(-b[0])), Vector<double>.Build.Dense(1, Math.Exp(-b[0])))));
        // a parameter without effect
        Assert.Null(NonlinearLeastSquares.Fit(start, b => (Matrix<double>.Build.Dense(2, 1), Vector<double>.Build.Dense(2, 1))));
    }
}
