namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Xunit;

public class ElementaryTests
{
    [Fact] // independent: the general library
    public void The_logarithm_is_right_to_two_units_in_the_last_place()
    {
        var random = new Random(3);
        for (int i = 0; i < 200_000; i++)
        {
            double x = i % 3 == 0 ? random.NextDouble() : i % 3 == 1 ? Math.Exp(200 * (random.NextDouble() - 0.5)) : 1 + 1e-3 * (random.NextDouble() - 0.5);
            Lanes log = Elementary.Log(Lanes.Of(x));
            Assert.InRange(Math.Abs(log[0] - Math.Log(x)), 0, 2 * Math.BitIncrement(Math.Abs(Math.Log(x))) - 2 * Math.Abs(Math.Log(x)));
            Assert.Equal(log[0], log[7]);
        }
    }

    [Fact]
    public void The_logarithm_of_one_is_zero() => Assert.Equal(0, Elementary.Log(Lanes.Of(1))[5]);

    [Fact] // independent: the general library
    public void The_exponential_is_right_to_two_units_in_the_last_place()
    {
        for (int i = -20_000; i <= 20_000; i++)
        {
            double x = i < 0 ? 0.03 * i : 5e-4 * i, exact = Math.Exp(x);
            Lanes exp = Elementary.Exp(Lanes.Of(x));
            Assert.InRange(Math.Abs(exp[6] - exact), 0, 2 * (Math.BitIncrement(exact) - exact));
            Assert.Equal(exp[0], exp[6]);
        }

        Assert.Equal(1, Elementary.Exp(Lanes.Of(0))[2]);
    }

    [Fact] // independent: the general library
    public void Sine_and_cosine_are_right_to_two_units_in_the_last_place()
    {
        for (int i = -10_000; i <= 10_000; i++)
        {
            double x = Math.PI / 4 * i / 10_000;
            var (sin, cos) = Elementary.SinCos(Lanes.Of(x));
            Assert.InRange(Math.Abs(sin[3] - Math.Sin(x)), 0, 2.3e-16 * Math.Abs(x) + 1e-300);
            Assert.InRange(Math.Abs(cos[4] - Math.Cos(x)), 0, 2.3e-16);
            Assert.Equal(sin[0], Elementary.SinCos(new Real(x)).Sin.Value);
            Assert.Equal(cos[0], Elementary.SinCos(new Real(x)).Cos.Value);
        }
    }
}
