namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using CsCheck;
using Xunit;

public class GradientTests
{
    [Fact]
    public void A_formula_gives_the_derivatives_that_single_ones_give_one_by_one() =>
        Gen.Double[0.2, 4].Array[Gradient.Inputs].Sample(x =>
        {
            Gradient all = Formula([.. x.Select(Gradient.Input)]);
            for (int i = 0; i < x.Length; i++)
            {
                Dual one = Formula([.. x.Select((v, j) => new Dual(v, i == j ? 1 : 0))]);
                Assert.Equal(one.Value, all.Value, 1e-12 * (1 + Math.Abs(one.Value)));
                Assert.Equal(one.Slope, all[i], 1e-12 * (1 + Math.Abs(one.Slope)));
            }
        });

    [Fact]
    public void Exponential_and_logarithm_follow_their_rules_by_hand() => Gen.Double[0.1, 5].Sample(x =>
    {
        Gradient a = Gradient.Input(x, 5);
        Assert.Equal(Math.Exp(x), Gradient.Exp(a)[5], 1e-12 * Math.Exp(x));
        Assert.Equal(1 / x, Gradient.Log(a)[5], 1e-12 / x);
        Assert.Equal(1 / x, Dual.Log(new(x, 1)).Slope, 1e-12 / x);
        Assert.Equal(2 * Math.Exp(x), Dual.Exp(new(x, 2)).Slope, 1e-12 * Math.Exp(x));
    });

    static T Formula<T>(T[] x)
        where T : struct, ITranscendental<T>
        => T.SquareRoot(x[0] * x[1] + x[2]) / x[3] + T.Exp(-0.5 * x[4]) * x[5] - T.Log(x[6]) * x[7] + T.Of(2);
}
