namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How many arrows, drawn how, and what to keep of them.</summary>
public sealed record BatchOptions
{
    /// <summary>Number of arrows, at least 2; a multiple of 4096 when they are evenly spread.</summary>
    public required long Arrows { get; init; }

    /// <summary>Any number; the same one gives the same arrows.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Level of the intervals, between 0 and 1: how often such intervals contain what infinitely many arrows would give.</summary>
    public required double Level { get; init; }

    /// <summary>Chance or evenly spread.</summary>
    public Sampling Sampling { get; init; }

    /// <summary>Radius of a circle about the aim point; the share of arrows inside is counted when given.</summary>
    public Length? Circle { get; init; }

    /// <summary>Half the side of a square about the aim point in which strikes are counted by cells; none when not given.</summary>
    public Length? HistogramHalfWidth { get; init; }

    /// <summary>Cells along each side of that square, 1 to 4096.</summary>
    public int HistogramCells { get; init; } = 256;

    /// <summary>Most threads at work; all cores when not given. The results do not depend on it.</summary>
    public int? Threads { get; init; }

    internal BatchOptions Checked()
    {
        long multiple = Sampling == Sampling.EvenlySpread ? BatchDraws.Repetitions * BatchChunk.Arrows : 1;
        if (Arrows < 2 || Arrows % multiple != 0)
        {
            string allowed = multiple == 1 ? "at least 2" : $"a multiple of {multiple} when they are evenly spread";
            throw new ArgumentOutOfRangeException(nameof(Arrows), Arrows, FormattableString.Invariant($"Arrows must be {allowed}; it was {Arrows}."));
        }

        Require.Level(Level, nameof(Level));
        if (Circle is { } circle)
        {
            Require.Positive(circle.Meters, "m", nameof(Circle));
        }

        if (HistogramHalfWidth is { } half)
        {
            Require.Positive(half.Meters, "m", nameof(HistogramHalfWidth));
        }

        Require.InRange(HistogramCells, 1, 4096, "", nameof(HistogramCells));
        CheckThreads(Threads);
        return this;
    }

    internal static void CheckThreads(int? threads) => Require.InRange(threads ?? 1, 1, int.MaxValue, "", nameof(Threads));
}
