namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using MathNet.Numerics.Distributions;
using Xunit;

public class VariatesTests
{
    const int N = 1 << 20;

    static readonly double[] Normal = Draw(Variates.FillNormal), Even = Draw(Variates.FillEven);

    delegate void Fill(ref Xoshiro random, Span<double> numbers);

    [Theory] // exact moments of the standard normal: 0, 1, 0, 3, 0, 15, 0, 105; the variance of the mean of x^p is (m(2p) - m(p)²)/n
    [InlineData(1, 0, 1)]
    [InlineData(2, 1, 3)]
    [InlineData(3, 0, 15)]
    [InlineData(4, 3, 105)]
    [InlineData(6, 15, 10395)]
    public void Moments_are_those_of_the_normal(int power, double moment, double twice) =>
        Assert.InRange(Normal.Average(x => Math.Pow(x, power)), moment - Allowed(moment, twice), moment + Allowed(moment, twice));

    [Theory]
    [InlineData(-3.5)]
    [InlineData(-2)]
    [InlineData(-0.6)]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(4.2)]
    public void Tails_are_those_of_the_normal(double x)
    {
        double exact = MathNet.Numerics.Distributions.Normal.CDF(0, 1, x), allowed = 4 * Math.Sqrt(exact * (1 - exact) / N);
        Assert.InRange(Normal.Count(v => v < x) / (double)N, exact - allowed, exact + allowed);
    }

    [Fact] // a chi-square over 64 cells of equal chance
    public void Cells_of_equal_chance_are_equally_full()
    {
        double[] normal = Cells(Normal.Select(x => MathNet.Numerics.Distributions.Normal.CDF(0, 1, x))), even = Cells(Even.Select(x => 0.5 * (x + 1)));
        double low = ChiSquared.InvCDF(63, 1e-4), high = ChiSquared.InvCDF(63, 1 - 1e-4);
        Assert.InRange(normal.Sum(c => (c - N / 64.0) * (c - N / 64.0) / (N / 64.0)), low, high);
        Assert.InRange(even.Sum(c => (c - N / 64.0) * (c - N / 64.0) / (N / 64.0)), low, high);
    }

    [Fact]
    public void Numbers_that_are_made_together_are_not_related()
    {
        // Each group of sixteen is eight pairs of radius and angle; every lag inside a group, and squares as well.
        for (int lag = 1; lag < 16; lag++)
        {
            double plain = 0, squares = 0;
            for (int i = 0; i + lag < N; i++)
            {
                plain += Normal[i] * Normal[i + lag];
                squares += (Normal[i] * Normal[i] - 1) * (Normal[i + lag] * Normal[i + lag] - 1);
            }

            Assert.InRange(plain / N, -4.5 / Math.Sqrt(N), 4.5 / Math.Sqrt(N));
            Assert.InRange(squares / N, -4.5 * 2 / Math.Sqrt(N), 4.5 * 2 / Math.Sqrt(N));
        }
    }

    [Fact]
    public void Every_bit_pattern_gives_a_number_inside_the_interval()
    {
        Assert.Equal(Math.Pow(2, -53), Variates.AboveZero(System.Runtime.Intrinsics.Vector256.Create(0UL))[0]);
        Assert.Equal(1 - Math.Pow(2, -53), Variates.AboveZero(System.Runtime.Intrinsics.Vector256.Create(ulong.MaxValue))[3]);
    }

    static double Allowed(double moment, double twice) => 4 * Math.Sqrt((twice - moment * moment) / N);

    static double[] Cells(IEnumerable<double> chances)
    {
        double[] cells = new double[64];
        foreach (double p in chances)
        {
            cells[(int)(64 * p)]++;
        }

        return cells;
    }

    static double[] Draw(Fill fill)
    {
        double[] all = new double[N];
        Xoshiro random = Xoshiro.ForChunk(1, 0);
        fill(ref random, all);
        return all;
    }
}
