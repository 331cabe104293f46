namespace Ascham.Numerics;

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

/// <summary>Four independent xoshiro256++ generators side by side.</summary>
/// <remarks>
/// D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators", ACM Trans. Math. Softw. 47 (2021) 36;
/// seeded as they advise, by SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014). Both are in the public domain.
/// A generator belongs to one chunk of work and is seeded by the counter of that chunk, so the numbers depend on
/// the seed and the chunk alone, never on which thread ran it or in what order. Two chunks share numbers only if their
/// states fall on the same stretch of a period of 2^256.
/// </remarks>
struct Xoshiro
{
    Vector256<ulong> s0, s1, s2, s3;

    Xoshiro(Vector256<ulong> s0, Vector256<ulong> s1, Vector256<ulong> s2, Vector256<ulong> s3)
        => (this.s0, this.s1, this.s2, this.s3) = (s0, s1, s2, s3);

    /// <summary>The generators of one chunk.</summary>
    internal static Xoshiro ForChunk(ulong seed, ulong chunk)
    {
        // Hashed twice: seeds and chunks that differ by one bit give states that differ in half of theirs.
        ulong state = SplitMix(SplitMix(seed) ^ chunk);
        Vector256<ulong> Next() => Vector256.Create(Step(ref state), Step(ref state), Step(ref state), Step(ref state));
        return new(Next(), Next(), Next(), Next());
    }

    /// <summary>Four generators of which each starts from the same given state.</summary>
    internal static Xoshiro FromState(ulong s0, ulong s1, ulong s2, ulong s3)
        => new(Vector256.Create(s0), Vector256.Create(s1), Vector256.Create(s2), Vector256.Create(s3));

    /// <summary>The next 64 bits of each.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector256<ulong> Next()
    {
        Vector256<ulong> result = RotateLeft(s0 + s3, 23) + s0, shifted = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= shifted;
        s3 = RotateLeft(s3, 45);
        return result;
    }

    /// <summary>A hash of 64 bits: one step of SplitMix64 from that state.</summary>
    internal static ulong SplitMix(ulong state) => Step(ref state);

    static ulong Step(ref ulong state)
    {
        ulong z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Vector256<ulong> RotateLeft(Vector256<ulong> x, int bits) => (x << bits) | (x >>> (64 - bits));
}
