namespace Ascham.Notebooks.Tests;

using UnitsNet;
using Xunit;

public class ErrorBudgetTests
{
    sealed record Case(double A, double B);

    static ErrorBudget<Case> Budget(double level = 0.90) => new(new(3, 5),
        [new("a", "± 0.3", (c, z) => c with { A = c.A + 0.3 * z }), new("b", "± 0.4", (c, z) => c with { B = c.B + 0.4 * z })], level);

    [Fact]
    public void Errors_of_a_sum_add_as_squares()
    {
        var sum = Budget().Of(c => c.A + c.B)!;
        Assert.Equal((8, 0.5), (sum.Value, Math.Round(sum.StandardError, 12)));   // 0.3, 0.4, 0.5
        Assert.Equal(8 + 0.5 * 1.6448536, sum.High, 1e-6);                        // normal quantile of 95 %, printed to 7 decimals in any table
        Assert.Equal(8 - 0.5 * 1.6448536, sum.Low, 1e-6);
    }

    [Fact]
    public void Relative_errors_of_a_product_add_as_squares_to_first_order()
    {
        var product = Budget().Of(c => c.A * c.B)!;
        Assert.Equal(15 * Math.Sqrt(0.01 + 0.0064), product.StandardError, 1e-9);
    }

    [Fact]
    public void The_interval_of_a_normal_sum_holds_it_as_often_as_it_says()
    {
        // Coverage: the truth is the sum of two normal errors about the central value.
        var random = new Random(4);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var sum = Budget(0.80).Of(c => c.A - 2 * c.B)!;
        int held = Enumerable.Range(0, 4000).Count(_ => 3 + 0.3 * Normal() - 2 * (5 + 0.4 * Normal()) is var truth && truth >= sum.Low && truth <= sum.High);
        Assert.InRange(held / 4000.0, 0.78, 0.82);   // three standard errors of the count are 0.019
    }

    [Fact]
    public void Effects_are_signed_and_in_the_order_of_the_unknowns() =>
        Assert.Equal([0.3, -0.8], Budget().Effects(c => c.A - 2 * c.B).Select(e => Math.Round(e.Effect, 12)));

    [Fact]
    public void What_cannot_be_told_at_one_end_of_an_unknown_is_not_told_at_all()
    {
        Assert.Null(Budget().Of(c => c.B > 5.3 ? double.NaN : c.B));
        Assert.Null(Budget().Of(_ => double.NaN));
    }

    [Fact]
    public void Lengths_keep_their_interval() =>
        Assert.Equal(Budget().Of(c => c.A)!.High, Budget().Of(c => Length.FromInches(c.A))!.High.Inches, 1e-9);

    [Fact]
    public void A_level_that_is_none_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Budget(90));
}
