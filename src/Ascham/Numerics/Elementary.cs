namespace Ascham.Numerics;

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

/// <summary>Logarithm, exponential, sine and cosine, with the same bits on every machine.</summary>
/// <remarks>
/// Plain power series on a reduced range: no coefficients fitted by others, and only operations that IEEE 754 rounds
/// exactly. The general library's own need not agree between machines, and take twice as long on vectors.
/// Accuracy: 2 units in the last place (see ElementaryTests).
/// </remarks>
static class Elementary
{
    // ln 2 in two parts, the first with 20 zero bits at its end, so that its product with an exponent is exact.
    const double Log2High = 6.93147180369123816490e-01, Log2Low = 1.90821492927058770002e-10; // fdlibm 5.3, e_log.c

    static ReadOnlySpan<double> LogTerms => [2 / 21.0, 2 / 19.0, 2 / 17.0, 2 / 15.0, 2 / 13.0, 2 / 11.0, 2 / 9.0, 2 / 7.0, 2 / 5.0, 2 / 3.0];

    // 1/14! to 1/2!.
    static ReadOnlySpan<double> ExpTerms =>
        [1 / 87178291200.0, 1 / 6227020800.0, 1 / 479001600.0, 1 / 39916800.0, 1 / 3628800.0, 1 / 362880.0, 1 / 40320.0, 1 / 5040.0, 1 / 720.0, 1 / 120.0, 1 / 24.0, 1 / 6.0, 1 / 2.0];

    // -1/15! to -1/3!, and 1/16! to -1/2!.
    static ReadOnlySpan<double> SineTerms =>
        [-1 / 1307674368000.0, 1 / 6227020800.0, -1 / 39916800.0, 1 / 362880.0, -1 / 5040.0, 1 / 120.0, -1 / 6.0];

    static ReadOnlySpan<double> CosineTerms =>
        [1 / 20922789888000.0, -1 / 87178291200.0, 1 / 479001600.0, -1 / 3628800.0, 1 / 40320.0, -1 / 720.0, 1 / 24.0, -1 / 2.0];

    /// <summary>Natural logarithm of positive numbers; not of subnormal ones, infinity or not-a-number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Lanes Log(Lanes x)
    {
        var (lowExponent, lowPart) = Split(x.Low);
        var (highExponent, highPart) = Split(x.High);
        Lanes exponent = new(lowExponent, highExponent), m = new(lowPart, highPart);

        // ln m = 2 atanh(z), z = (m - 1)/(m + 1), |z| < 0.1716: 2 z (1 + z²/3 + z⁴/5 + ...); and 2 z = f - z f.
        Lanes f = m - Lanes.Of(1), z = f / (m + Lanes.Of(1)), z2 = z * z;
        Lanes tail = Lanes.MultiplyAdd(z * z2, Series(LogTerms, z2), Log2Low * exponent);
        return Lanes.MultiplyAdd(exponent, Lanes.Of(Log2High), f - (z * f - tail));
    }

    /// <summary>Exponential of numbers within 700 of zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Lanes Exp(Lanes x)
    {
        // x = n ln 2 + r with |r| < 0.35, so exp x = 2^n exp r; n by rounding to a whole number, 2^n from its bits.
        var n = new Lanes(Vector256.Round(x.Low * (1 / Math.Log(2))), Vector256.Round(x.High * (1 / Math.Log(2))));
        Lanes r = x - Log2High * n - Log2Low * n;
        Lanes grown = Lanes.MultiplyAdd(r * r, Series(ExpTerms, r), r) + Lanes.Of(1);
        return grown * new Lanes(PowerOfTwo(n.Low), PowerOfTwo(n.High));
    }

    /// <summary>Sine and cosine of angles within 45 degrees of zero, in radians.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static (T Sin, T Cos) SinCos<T>(T x)
        where T : struct, IReal<T>
    {
        T x2 = x * x;
        return (T.MultiplyAdd(x2 * x, Series(SineTerms, x2), x), T.MultiplyAdd(x2, Series(CosineTerms, x2), T.Of(1)));
    }

    /// <summary>A polynomial, highest term first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Series<T>(ReadOnlySpan<double> terms, T x)
        where T : struct, IReal<T>
    {
        T sum = T.Of(terms[0]);
        for (int i = 1; i < terms.Length; i++)
        {
            sum = T.MultiplyAdd(sum, x, T.Of(terms[i]));
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Vector256<double> PowerOfTwo(Vector256<double> n)
    {
        // In the lowest bits of 2^52 + 2^51 + n + 1023, moved to where an exponent stands.
        Vector256<ulong> bits = (n + Vector256.Create(6755399441055744.0 + 1023)).AsUInt64();
        return (bits << 52).AsDouble();
    }

    /// <summary>x = 2^exponent m with m in [sqrt(1/2), sqrt(2)).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static (Vector256<double> Exponent, Vector256<double> M) Split(Vector256<double> x)
    {
        // Shifted so that the exponent field steps at sqrt(1/2), then read as a number by setting it below 2^52.
        const ulong RootHalf = 0x3FE6A09E667F3BCD, One = 0x3FF0000000000000, TwoTo52 = 0x4330000000000000;
        Vector256<ulong> shifted = x.AsUInt64() + Vector256.Create(One - RootHalf);
        Vector256<double> exponent = ((shifted >>> 52) | Vector256.Create(TwoTo52)).AsDouble() - Vector256.Create(4503599627370496.0 + 1023);
        return (exponent, ((shifted & Vector256.Create(0x000FFFFFFFFFFFFFUL)) + Vector256.Create(RootHalf)).AsDouble());
    }
}
