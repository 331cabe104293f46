namespace Ascham.Numerics;

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

/// <summary>Fills spans with random numbers, sixteen at a time. Nothing is allocated.</summary>
static class Variates
{
    /// <summary>Lengths must be multiples of this.</summary>
    internal const int Together = 16;

    /// <summary>Standard normal numbers.</summary>
    /// <remarks>G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29 (1958) 610-611: radius and angle of a round normal spread. The tail ends at 8.57.</remarks>
    internal static void FillNormal(ref Xoshiro random, Span<double> normals)
    {
        Xoshiro mine = random; // in registers while the loop runs
        for (; normals.Length >= Together; normals = normals[Together..])
        {
            Vector256<ulong> low = mine.Next(), high = mine.Next();
            Lanes radius = Lanes.SquareRoot(-2.0 * Elementary.Log(new(AboveZero(mine.Next()), AboveZero(mine.Next()))));

            // An angle within 45 degrees, then one of four quarter turns, from bits that the angle does not use.
            var (sin, cos) = Elementary.SinCos((Math.PI / 2) * new Lanes(AboveZero(low) - Half, AboveZero(high) - Half));
            Lanes across = radius * sin, along = radius * cos;
            QuarterTurns(low, along.Low, across.Low, normals);
            QuarterTurns(high, along.High, across.High, normals[8..]);
        }

        random = mine;
    }

    /// <summary>Numbers spread evenly over (-1, 1).</summary>
    internal static void FillEven(ref Xoshiro random, Span<double> numbers)
    {
        Xoshiro mine = random;
        for (; numbers.Length >= 4; numbers = numbers[4..])
        {
            (AboveZero(mine.Next()) * Vector256.Create(2.0) - Vector256<double>.One).CopyTo(numbers);
        }

        random = mine;
    }

    /// <summary>A number in (0, 1) from the upper 52 bits: the middle of one of 2^52 cells.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector256<double> AboveZero(Vector256<ulong> bits)
        => ((bits >>> 12) | Vector256.Create(0x3FF0000000000000UL)).AsDouble() - Vector256.Create(1 - 1 / 9007199254740992.0);

    static Vector256<double> Half => Vector256.Create(0.5);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static void QuarterTurns(Vector256<ulong> bits, Vector256<double> x, Vector256<double> y, Span<double> to)
    {
        Vector256<ulong> top = Vector256.Create(1UL << 63), quarter = Vector256<ulong>.Zero - (bits & Vector256<ulong>.One), half = (bits << 62) & top;
        Vector256<double> first = Vector256.ConditionalSelect(quarter.AsDouble(), y, x), second = Vector256.ConditionalSelect(quarter.AsDouble(), x, y);
        (first.AsUInt64() ^ half).AsDouble().CopyTo(to);
        (second.AsUInt64() ^ half ^ (quarter & top)).AsDouble().CopyTo(to[4..]);
    }
}
