namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using CsCheck;
using Xunit;

public class LanesTests
{
    static readonly Gen<double[]> Eight = Gen.Double[-1e3, 1e3].Array[Lanes.Count];

    [Fact]
    public void Each_lane_holds_the_bits_of_a_plain_number() => Gen.Select(Eight, Eight, Eight).Sample((a, b, c) =>
    {
        Lanes x = Lanes.From(a), y = Lanes.From(b), z = Lanes.From(c);
        return Same(x + y, i => new Real(a[i]) + new Real(b[i])) && Same(x - y, i => new Real(a[i]) - new Real(b[i]))
            && Same(x * y, i => new Real(a[i]) * new Real(b[i])) && Same(x / y, i => new Real(a[i]) / new Real(b[i]))
            && Same(0.3 * x, i => 0.3 * new Real(a[i])) && Same(Lanes.SquareRoot(x * x), i => Real.SquareRoot(new Real(a[i]) * new Real(a[i])))
            && Same(Lanes.MultiplyAdd(x, y, z), i => Real.MultiplyAdd(new Real(a[i]), new Real(b[i]), new Real(c[i])))
            && Same(Lanes.Lesser(x, y), i => Lesser(new Real(a[i]), new Real(b[i])));
    });

    [Fact]
    public void A_lane_that_is_not_a_number_is_seen()
    {
        double[] numbers = [1, 2, 3, double.NaN, 5, 6, 7, 8];
        Lanes x = Lanes.From(numbers);
        Assert.False(x.AllPositive);
        Assert.True(x.Where(x).Sum == 32);
        Assert.Equal(3, Lanes.Of(1).WhereAtMost(x, Lanes.Of(3)).Sum);
        Assert.True(double.IsNaN(Lanes.Lesser(x, Lanes.Of(0))[3]));
        Assert.True(double.IsNaN(Lesser(new Real(double.NaN), new Real(0)).Value));
        Assert.True(double.IsNaN(Lesser(new Real(0), new Real(double.NaN)).Value));
        double[] back = new double[Lanes.Count];
        x.To(back);
        Assert.Equal(numbers, back);
    }

    static T Lesser<T>(T a, T b)
        where T : struct, IReal<T>
        => T.Lesser(a, b);

    static bool Same(Lanes lanes, Func<int, Real> plain) => Enumerable.Range(0, Lanes.Count).All(i => lanes[i].Equals(plain(i).Value));
}
