namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How many arrows struck each cell of a square about the aim point.</summary>
public sealed class StrikeHistogram
{
    readonly long[] counts;
    readonly double half, perCell;

    internal StrikeHistogram(double halfWidth, int cells) => (half, perCell, Cells, counts) = (halfWidth, cells / (2 * halfWidth), cells, new long[cells * cells]);

    /// <summary>Cells along each side.</summary>
    public int Cells { get; }

    /// <summary>Half the side of the square.</summary>
    public Length HalfWidth => Length.FromMeters(half);

    /// <summary>Arrows that reached the face outside the square.</summary>
    public long Outside { get; private set; }

    /// <summary>Arrows in one cell.</summary>
    /// <param name="column">From 0 at the left to <see cref="Cells"/> - 1.</param>
    /// <param name="row">From 0 at the bottom to <see cref="Cells"/> - 1.</param>
    /// <returns>The number of arrows.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such cell.</exception>
    public long this[int column, int row]
    {
        get
        {
            Require.InRange(column, 0, Cells - 1, "", nameof(column));
            Require.InRange(row, 0, Cells - 1, "", nameof(row));
            return counts[row * Cells + column];
        }
    }

    /// <summary>Arrows in all cells: row after row from the bottom, each from the left; that of a column and a row at row × <see cref="Cells"/> + column.</summary>
    public ReadOnlySpan<long> Counts => counts;

    internal void Add(BatchChunk chunk, int face, int arrows)
    {
        ReadOnlySpan<double> rights = chunk.Right(face)[..arrows], ups = chunk.Up(face)[..arrows];
        for (int i = 0; i < rights.Length; i++)
        {
            double column = (rights[i] + half) * perCell, row = (ups[i] + half) * perCell;
            if (column >= 0 && column < Cells && row >= 0 && row < Cells)
            {
                counts[(int)row * Cells + (int)column]++;
            }
            else if (!double.IsNaN(column))
            {
                Outside++;
            }
        }
    }

    internal void Add(StrikeHistogram other)
    {
        Outside += other.Outside;
        for (int i = 0; i < counts.Length; i++)
        {
            counts[i] += other.counts[i];
        }
    }
}
