namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using CsCheck;
using MathNet.Numerics.Interpolation;
using Xunit;

public class MonotoneCubicTests
{
    // Gaps and heights of six points.
    static readonly Gen<(double[] X, double[] Y)> Points = Gen.Select(Gen.Double[0.1, 3].Array[6], Gen.Double[-2, 2].Array[6]).Select((gaps, y) =>
    {
        double x = 0;
        return (gaps.Select(g => x += g).ToArray(), y);
    });

    [Fact]
    public void It_is_the_monotone_interpolant_of_a_general_library_inside() => Points.Sample((x, y) =>
    {
        // MathNet's Pchip takes the same inner slopes; at the outermost points its rule differs, and so do the outer pieces.
        var ours = new MonotoneCubic(x, y);
        CubicSpline other = CubicSpline.InterpolatePchipSorted(x, y);
        for (double at = x[1]; at <= x[^2]; at += 0.07)
        {
            Assert.Equal(other.Interpolate(at), ours.At(new Real(at)).Value, 1e-10);
        }
    });

    [Fact]
    public void It_never_swings_past_its_points() => Gen.Select(Points, Gen.Double[0, 1], Gen.Int[0, 4]).Sample((p, share, i) =>
    {
        double at = new MonotoneCubic(p.X, p.Y).At(new Real(p.X[i] + share * (p.X[i + 1] - p.X[i]))).Value;
        Assert.InRange(at, Math.Min(p.Y[i], p.Y[i + 1]) - 1e-12, Math.Max(p.Y[i], p.Y[i + 1]) + 1e-12);
    });

    [Fact]
    public void A_straight_line_stays_straight() => Gen.Double[0, 9].Sample(at =>
        Assert.Equal(3 - 0.5 * at, new MonotoneCubic([0, 1, 4, 9], [3, 2.5, 1, -1.5]).At(new Real(at)).Value, 1e-12));

    [Fact]
    public void Its_slope_is_that_of_its_values() => Gen.Select(Points, Gen.Double[0.01, 0.99]).Sample((p, share) =>
    {
        var curve = new MonotoneCubic(p.X, p.Y);
        double at = p.X[0] + share * (p.X[^1] - p.X[0]), h = 1e-6;
        double difference = (curve.At(new Real(at + h)).Value - curve.At(new Real(at - h)).Value) / (2 * h);
        Assert.Equal(difference, curve.At(new Dual(at, 1)).Slope, 1e-4 * (1 + Math.Abs(difference)));
    });

    [Theory]
    [InlineData(1.5, true, 0.2)] // a fifth of a piece of 1
    [InlineData(1.1, true, 0.1)] // to the knot
    [InlineData(1.001, true, 0.01)] // across it
    [InlineData(1.1, false, 0.2)]
    [InlineData(1.95, false, 0.05)]
    [InlineData(1.05, null, 0.05)]
    public void A_step_goes_to_the_next_knot_or_across_a_near_one(double at, bool? falling, double room) =>
        Assert.Equal(room, new MonotoneCubic([0, 1, 2, 3], [0, 1, 0, 1]).Room(at, falling), 1e-12);
}
