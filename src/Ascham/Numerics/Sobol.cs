namespace Ascham.Numerics;

using System.Runtime.Intrinsics;

/// <summary>Points that fill a cube of up to ten dimensions more evenly than chance does.</summary>
/// <remarks>
/// I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967) 86-112, with the direction numbers of S. Joe and F. Y. Kuo,
/// SIAM J. Sci. Comput. 30 (2008) 2635-2654 (their file new-joe-kuo-6.21201). Points are taken in the order of their
/// number, not of its Gray code: each block of 2^m from a multiple of 2^m on holds the same points either way.
/// A digital shift (one exclusive-or with random bits per dimension) makes every single point even on the cube, keeps the
/// evenness of the whole, and lets repeated shifts show the error that is left.
/// </remarks>
sealed class Sobol
{
    /// <summary>Most dimensions.</summary>
    internal const int MostDimensions = 10;

    /// <summary>Points filled at a time; they begin at a multiple of it.</summary>
    internal const int Block = 256;

    const int Bits = 52;

    // Joe and Kuo's table from dimension 2 on: degree s, coefficients a, and the first s odd integers m.
    static readonly (int Degree, int Coefficients, ulong[] M)[] Table =
    [
        (1, 0, [1]), (2, 1, [1, 3]), (3, 1, [1, 3, 1]), (3, 2, [1, 1, 1]), (4, 1, [1, 1, 3, 3]),
        (4, 4, [1, 3, 5, 13]), (5, 2, [1, 1, 5, 5, 17]), (5, 4, [1, 1, 5, 5, 5]), (5, 7, [1, 1, 7, 11, 19]),
    ];

    readonly ulong[][] directions = [.. Enumerable.Range(0, MostDimensions).Select(Directions)];
    readonly ulong[][] within;

    internal Sobol() => within = [.. directions.Select(v => Enumerable.Range(0, Block).Select(i => Point(v, (ulong)i)).ToArray())];

    /// <summary>One dimension of a point, as a fraction of 2^64.</summary>
    internal ulong At(int dimension, ulong number) => Point(directions[dimension], number);

    /// <summary>One dimension of a block of points, shifted, as numbers in (0, 1).</summary>
    /// <param name="dimension">From 0.</param>
    /// <param name="first">Number of the first point, a multiple of <see cref="Block"/>.</param>
    /// <param name="shift">Random bits, the same for all points of one set.</param>
    /// <param name="numbers">A block.</param>
    internal void Fill(int dimension, ulong first, ulong shift, Span<double> numbers)
    {
        var common = Vector256.Create(At(dimension, first) ^ shift);
        for (ReadOnlySpan<ulong> own = within[dimension]; numbers.Length >= 4; numbers = numbers[4..], own = own[4..])
        {
            Variates.AboveZero(Vector256.Create(own) ^ common).CopyTo(numbers);
        }
    }

    static ulong Point(ulong[] directions, ulong number)
    {
        ulong point = 0;
        for (int bit = 0; number != 0; bit++, number >>= 1)
        {
            point ^= (number & 1) != 0 ? directions[bit] : 0;
        }

        return point;
    }

    /// <summary>v_1, v_2, ... as fractions of 2^64, by the recurrence of the primitive polynomial.</summary>
    static ulong[] Directions(int dimension)
    {
        var v = new ulong[Bits];
        var (degree, coefficients, m) = dimension == 0 ? (0, 0, []) : Table[dimension - 1];
        for (int j = 0; j < Bits; j++)
        {
            if (dimension == 0 || j < degree)
            {
                v[j] = (dimension == 0 ? 1 : m[j]) << (63 - j);
                continue;
            }

            v[j] = v[j - degree] ^ (v[j - degree] >> degree);
            for (int i = 1; i < degree; i++)
            {
                v[j] ^= ((coefficients >> (degree - 1 - i)) & 1) != 0 ? v[j - i] : 0;
            }
        }

        return v;
    }
}
