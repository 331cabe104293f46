namespace Ascham.Tests.NumericsTests;

using Ascham.Numerics;
using Xunit;

public class SobolTests
{
    static readonly Sobol Points = new();

    [Fact] // published: the first points of Joe and Kuo's direction numbers, in the order of the Gray code, as their notes and SciPy print them
    public void Published_first_points()
    {
        double[][] printed =
        [
            [0, 0, 0, 0], [0.5, 0.5, 0.5, 0.5], [0.75, 0.25, 0.25, 0.25], [0.25, 0.75, 0.75, 0.75],
            [0.375, 0.375, 0.625, 0.875], [0.875, 0.875, 0.125, 0.375], [0.625, 0.125, 0.875, 0.625], [0.125, 0.625, 0.375, 0.125],
        ];
        for (int i = 0; i < printed.Length; i++)
        {
            for (int dimension = 0; dimension < 4; dimension++)
            {
                Assert.Equal(printed[i][dimension], At(dimension, (ulong)(i ^ (i >> 1))));
            }
        }
    }

    [Fact] // the property that defines a sequence of this kind: each dimension by itself fills every cell of a binary grid once
    public void Each_dimension_fills_every_cell_once()
    {
        const int N = 1024;
        for (int dimension = 0; dimension < Sobol.MostDimensions; dimension++)
        {
            Assert.Equal(N, Enumerable.Range(3 * N, N).Select(i => (int)(N * At(dimension, (ulong)i))).Distinct().Count());
        }
    }

    [Fact] // published: property A (Sobol' 1976) holds for these numbers: of any 2^d points from a multiple on, one falls in each of the 2^d halvings of the cube
    public void Every_orthant_of_the_cube_gets_one_point()
    {
        const int D = Sobol.MostDimensions;
        for (int block = 0; block < 3; block++)
        {
            var orthants = Enumerable.Range(block << D, 1 << D).Select(i => Enumerable.Range(0, D).Sum(d => At(d, (ulong)i) < 0.5 ? 0 : 1 << d));
            Assert.Equal(1 << D, orthants.Distinct().Count());
        }
    }

    [Fact] // the first two dimensions are a (0, m, 2)-net: every box of area 2^-m holds one of 2^m points
    public void The_first_two_dimensions_fill_boxes_of_every_shape()
    {
        const int M = 8;
        for (int across = 0; across <= M; across++)
        {
            var boxes = Enumerable.Range(0, 1 << M).Select(i => ((int)((1 << across) * At(0, (ulong)i)), (int)((1 << (M - across)) * At(1, (ulong)i))));
            Assert.Equal(1 << M, boxes.Distinct().Count());
        }
    }

    [Fact]
    public void A_block_is_its_points_shifted()
    {
        double[] block = new double[Sobol.Block];
        const ulong Shift = 0x9ABCDEF012345678;
        Points.Fill(4, 5 * Sobol.Block, Shift, block);
        for (int i = 0; i < block.Length; i++)
        {
            ulong bits = Points.At(4, (ulong)(5 * Sobol.Block + i)) ^ Shift;
            Assert.Equal(((bits >> 12) + 0.5) / Math.Pow(2, 52), block[i]);
        }
    }

    static double At(int dimension, ulong number) => Points.At(dimension, number) / Math.Pow(2, 64);
}
