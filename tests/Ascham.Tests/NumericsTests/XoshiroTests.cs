namespace Ascham.Tests.NumericsTests;

using System.Numerics;
using Ascham.Numerics;
using Xunit;

public class XoshiroTests
{
    [Fact] // published: outputs of the authors' C code from the state 1, 2, 3, 4, as the rand_xoshiro crate lists them
    public void Published_outputs_from_the_state_1_2_3_4()
    {
        Xoshiro random = Xoshiro.FromState(1, 2, 3, 4);
        ulong[] expected =
        [
            41943041, 58720359, 3588806011781223, 3591011842654386, 9228616714210784205,
            9973669472204895162, 14011001112246962877, 12406186145184390807, 15849039046786891736, 10450023813501588000,
        ];
        Assert.All(expected, e => Assert.Equal(e, random.Next()[2]));
    }

    [Fact] // published: test data of a Fortran port (xoshiro-fortran), the state 0, 0, 0, 1, printed in hexadecimal
    public void Published_outputs_from_a_state_of_one_bit()
    {
        Xoshiro random = Xoshiro.FromState(0, 0, 0, 1);
        ulong[] expected =
        [
            0x0000000000800000, 0x0000000000800011, 0x0002200000800011, 0x0002200044000020, 0x00022000448008A1,
            0x01102100802208A0, 0x0114002284200880, 0x0402896644A64095, 0x8A14A0A244ACC891, 0x8C88BA4680B20495,
        ];
        Assert.All(expected, e => Assert.Equal(e, random.Next()[0]));
    }

    [Fact] // independent: the algorithm as printed, on plain integers, from the states that the seeding gives
    public void Four_generators_side_by_side_are_four_plain_ones()
    {
        Xoshiro random = Xoshiro.ForChunk(20240501, 77);
        ulong state = Plain(Plain(20240501) ^ 77);
        ulong[,] s = new ulong[4, 4];
        for (int word = 0; word < 4; word++)
        {
            for (int lane = 0; lane < 4; lane++, state += 0x9E3779B97F4A7C15)
            {
                s[lane, word] = Plain(state);
            }
        }

        for (int i = 0; i < 1000; i++)
        {
            var next = random.Next();
            for (int lane = 0; lane < 4; lane++)
            {
                Assert.Equal(Step(s, lane), next[lane]);
            }
        }
    }

    [Fact] // published: SplitMix64 from 1234567, the values widely used to check ports of it
    public void Published_hashes_of_splitmix()
    {
        Assert.Equal(6457827717110365317UL, Xoshiro.SplitMix(1234567));
        Assert.Equal(3203168211198807973UL, Xoshiro.SplitMix(unchecked(1234567 + 0x9E3779B97F4A7C15)));
    }

    [Fact]
    public void Neighbouring_chunks_and_seeds_differ_in_half_of_their_bits()
    {
        double bits = 0;
        const int N = 2000;
        for (ulong i = 0; i < N; i++)
        {
            var one = Xoshiro.ForChunk(i, 5);
            var other = i % 2 == 0 ? Xoshiro.ForChunk(i, 4) : Xoshiro.ForChunk(i ^ 1, 5);
            bits += BitOperations.PopCount(one.Next()[1] ^ other.Next()[1]);
        }

        Assert.InRange(bits / N, 32 - 4 * 4 / Math.Sqrt(N), 32 + 4 * 4 / Math.Sqrt(N)); // 4 standard errors of a binomial of 64
    }

    static ulong Plain(ulong state)
    {
        ulong z = unchecked(state + 0x9E3779B97F4A7C15);
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EB);
        return z ^ (z >> 31);
    }

    static ulong Step(ulong[,] s, int lane)
    {
        ulong result = unchecked(BitOperations.RotateLeft(s[lane, 0] + s[lane, 3], 23) + s[lane, 0]);
        ulong t = s[lane, 1] << 17;
        s[lane, 2] ^= s[lane, 0];
        s[lane, 3] ^= s[lane, 1];
        s[lane, 1] ^= s[lane, 2];
        s[lane, 0] ^= s[lane, 3];
        s[lane, 2] ^= t;
        s[lane, 3] = BitOperations.RotateLeft(s[lane, 3], 45);
        return result;
    }
}
