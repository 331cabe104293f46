namespace Ascham.Flight;

/// <summary>Shares the chunks of a batch out among threads.</summary>
/// <remarks>
/// The unit of work is a run of chunks of one repetition. What a run adds up depends on nothing else, and runs are put
/// together in their own order, so that the result is the same whoever worked on which.
/// </remarks>
sealed class BatchRun(BatchPlan plan, BatchDraws draws, long arrows)
{
    const int ChunksPerRun = 64;

    long Chunks => (arrows + BatchChunk.Arrows - 1) / BatchChunk.Arrows;

    /// <summary>Number of runs; run r is of repetition r modulo <see cref="BatchDraws.Repetitions"/>.</summary>
    internal int Runs
    {
        get
        {
            const long Together = (long)ChunksPerRun * BatchDraws.Repetitions;
            return checked((int)((Chunks + Together - 1) / Together * BatchDraws.Repetitions));
        }
    }

    /// <summary>Flies all chunks.</summary>
    /// <typeparam name="TWork">What a thread keeps to itself.</typeparam>
    /// <param name="threads">Most threads; all cores when <see langword="null"/>.</param>
    /// <param name="begin">Makes what a thread keeps.</param>
    /// <param name="take">Takes a chunk just flown: what the thread keeps, the workspace, the run, the chunk, its number of arrows.</param>
    /// <param name="end">Collects what a thread kept; one at a time.</param>
    /// <param name="progress">Told the share done, from 0 to 1, after each run.</param>
    /// <param name="cancellation">Looked at before each chunk.</param>
    internal void Go<TWork>(
        int? threads, Func<TWork> begin, Action<TWork, BatchChunk, int, long, int> take, Action<TWork> end, IProgress<double>? progress, CancellationToken cancellation)
    {
        int done = 0;
        object turn = new();
        var options = new ParallelOptions { MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount, CancellationToken = cancellation };
        Parallel.For(
            0, Runs, options,
            () => (Kept: begin(), Chunk: new BatchChunk(plan, draws)),
            (run, _, own) =>
            {
                FlyRun(run, own.Chunk, (chunk, count) => take(own.Kept, own.Chunk, run, chunk, count), cancellation);
                lock (turn)
                {
                    progress?.Report(++done / (double)Runs);
                }

                return own;
            },
            own =>
            {
                lock (turn)
                {
                    end(own.Kept);
                }
            });
    }

    void FlyRun(int run, BatchChunk workspace, Action<long, int> take, CancellationToken cancellation)
    {
        var (part, repetition) = Math.DivRem(run, BatchDraws.Repetitions);
        for (int i = 0; i < ChunksPerRun; i++)
        {
            long chunk = ((long)part * ChunksPerRun + i) * BatchDraws.Repetitions + repetition, left = arrows - chunk * BatchChunk.Arrows;
            if (left <= 0)
            {
                return;
            }

            cancellation.ThrowIfCancellationRequested();
            int count = (int)Math.Min(left, BatchChunk.Arrows);
            workspace.Fly(chunk, count);
            take(chunk, count);
        }
    }
}
