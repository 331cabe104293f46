namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Ascham.Tests.Checks;
using CsCheck;
using Xunit;

public class FisherTests
{
    [Theory]
    // Published p values of Hotelling tests; two variables and more all end in this law.
    [InlineData(2.904546290, 3, 17, "0.06493", "Johnson and Wichern, example 5.2 (sweat), second-hand")]
    [InlineData(59.91609589041116, 2, 22, "1.25062334808e-09", "Stata, quoted in the tests of statsmodels 0.13.5")]
    [InlineData(4.408212560386478, 2, 10, "0.0423949782937231", "Stata, quoted in the tests of statsmodels 0.13.5", 20)] // printed beyond what a double holds
    [InlineData(0.594263379, 4, 43, "0.668665917", "Stata, quoted in the tests of statsmodels 0.13.5")]
    [InlineData(2.942446955, 4, 26, "0.039369144", "computed, SciPy 1.10; F of HypothesisTests.jl, spouse data")]
    public void Upper_tail_agrees_with_printed_values(double f, double first, double second, string printed, string source, double slack = 1) =>
        new Printed(printed, source).Matches(Fisher.Survival(f, first, second), slack);

    [Fact] // crit of G*Power's example, quoted in the tests of statsmodels 0.13.5: F(9, 190), alpha .1592
    public void Quantile_agrees_with_the_printed_critical_value() =>
        new Printed("1.4762", "G*Power, quoted in statsmodels").Matches(Fisher.Quantile(0.1592, 9, 190), 2); // alpha itself is rounded to four decimals

    [Fact]
    public void Quantile_undoes_the_tail_far_out_on_both_sides() =>
        Gen.Select(Gen.Double[-9, 9], Gen.Int[1, 200], Gen.Int[1, 200]).Sample((logit, a, b) =>
        {
            double tail = 1 / (1 + Math.Exp(logit)), f = Fisher.Quantile(tail, a, b);
            return Math.Abs(Fisher.Survival(f, a, b) - tail) < 1e-10 * tail && Math.Abs(Fisher.Cdf(f, a, b) - (1 - tail)) < 1e-10 * (1 - tail);
        });

    [Fact] // F with 2 degrees of freedom has a closed form
    public void Quantile_with_two_degrees_agrees_with_the_general_search() =>
        Assert.Equal(0.01, Fisher.Survival(Fisher.Quantile(0.01, 2, 17), 2, 17), 1e-14);
}
