namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>Where the differences between arrows come from.</summary>
public enum Sampling
{
    /// <summary>Chance: errors fall as one over the square root of the number of arrows.</summary>
    Random,

    /// <summary>Points spread more evenly than chance spreads them: means and standard deviations settle with a fortieth of the arrows or fewer; shares inside a circle gain less.</summary>
    EvenlySpread,
}

/// <summary>Fills the draws of one chunk of arrows. The numbers depend on seed and chunk alone.</summary>
sealed class BatchDraws(BatchInput[] inputs, Sampling sampling, ulong seed)
{
    /// <summary>Chunks take part in this many independent repetitions in turn, so that the spread between these shows the error of a result.</summary>
    internal const int Repetitions = 16;

    readonly Sobol? sobol = sampling == Sampling.EvenlySpread ? new() : null;

    /// <summary>Fills the rows of the inputs that differ; the others stay as they are.</summary>
    /// <param name="chunk">From 0.</param>
    /// <param name="rows">One row of <see cref="BatchChunk.Arrows"/> numbers per input.</param>
    internal void Fill(long chunk, Span<double> rows)
    {
        Xoshiro random = Xoshiro.ForChunk(seed, (ulong)chunk);
        for (int input = 0, dimension = 0; input < inputs.Length; input++)
        {
            DeviationShape shape = inputs[input].Shape;
            Span<double> row = rows.Slice(input * BatchChunk.Arrows, BatchChunk.Arrows);
            if (shape != DeviationShape.None && sobol is not null)
            {
                FillEvenly(sobol, chunk, dimension++, shape, row);
            }
            else if (shape is DeviationShape.Normal or DeviationShape.LogNormal)
            {
                Variates.FillNormal(ref random, row);
            }
            else if (shape == DeviationShape.Uniform)
            {
                Variates.FillEven(ref random, row);
            }

            inputs[input].Shift(row);
        }
    }

    void FillEvenly(Sobol points, long chunk, int dimension, DeviationShape shape, Span<double> row)
    {
        var (block, repetition) = Math.DivRem(chunk, Repetitions);
        ulong shift = Xoshiro.SplitMix(Xoshiro.SplitMix(seed) ^ (ulong)(repetition * Sobol.MostDimensions + dimension));
        points.Fill(dimension, (ulong)block * Sobol.Block, shift, row);
        if (shape is DeviationShape.Normal or DeviationShape.LogNormal)
        {
            InverseNormal.Apply(row);
            return;
        }

        foreach (ref double u in row)
        {
            u = 2 * u - 1;
        }
    }
}
