namespace Ascham.Flight;

using UnitsNet;

public sealed partial record FlightBatch
{
    /// <summary>Flies the arrows and keeps what describes them, not the arrows.</summary>
    /// <param name="options">How many, drawn how, and what to keep.</param>
    /// <param name="progress">Told the share done, from 0 to 1; <see langword="null"/> for none.</param>
    /// <param name="cancellation">Stops the work within a fraction of a millisecond per thread.</param>
    /// <returns>Per face: means, standard deviations, share inside the circle, histogram.</returns>
    /// <exception cref="ArgumentException">An input is missing, or out of its range.</exception>
    /// <exception cref="OutOfReachException">The arrow without differences does not reach a face.</exception>
    /// <exception cref="DragUnknownException">It leaves the speeds at which its drag is known.</exception>
    /// <exception cref="InvalidOperationException">Fewer than two arrows reach a face.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public BatchResult Summarise(BatchOptions options, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.Checked();
        BatchPlan plan = ReachingPlan();
        var run = new BatchRun(plan, new(plan.Inputs, options.Sampling, options.Seed), options.Arrows);
        int faces = Faces.Count;
        Strike<double>[] nominal = [.. Enumerable.Range(0, faces).Select(plan.Nominal)];
        var sums = new FaceSums[run.Runs * faces];
        double radius = options.Circle?.Meters ?? 0;
        StrikeHistogram[]? NewHistograms() => options.HistogramHalfWidth is { } half
            ? [.. Enumerable.Range(0, faces).Select(_ => new StrikeHistogram(half.Meters, options.HistogramCells))]
            : null;

        StrikeHistogram[]? histograms = NewHistograms();
        run.Go(
            options.Threads,
            NewHistograms,
            (own, chunk, runNumber, _, count) =>
            {
                for (int face = 0; face < faces; face++)
                {
                    sums[runNumber * faces + face].Add(chunk, face, nominal[face], radius);
                    own?[face].Add(chunk, face, count);
                }
            },
            own =>
            {
                for (int face = 0; own is not null && face < faces; face++)
                {
                    histograms![face].Add(own[face]);
                }
            },
            progress, cancellation);

        return new(options.Arrows, options.Seed, options.Sampling, [.. Enumerable.Range(0, faces).Select(Face)]);

        FaceResult Face(int face)
        {
            var repetitions = new FaceSums[BatchDraws.Repetitions];
            for (int i = 0; i < run.Runs; i++)
            {
                repetitions[i % BatchDraws.Repetitions].Add(sums[i * faces + face]);
            }

            double arrived = repetitions.Sum(s => s.Arrived);
            return arrived >= 2
                ? new FaceEstimates(repetitions, nominal[face], options.Arrows, options).Result(Faces[face], histograms?[face])
                : throw new InvalidOperationException(FormattableString.Invariant(
                    $"Of {options.Arrows} arrows {arrived} reach the face at {Faces[face].Meters:0.##} m within the speeds at which their drag is known; a spread needs two. Check the deviations, and how far the drag table goes."));
        }
    }

    /// <summary>Flies arrows and keeps each of them.</summary>
    /// <param name="strikes">Filled from its first arrow to its last.</param>
    /// <param name="seed">Any number; the same one gives the same arrows.</param>
    /// <param name="sampling">Chance or evenly spread.</param>
    /// <param name="threads">Most threads at work; all cores when <see langword="null"/>.</param>
    /// <param name="progress">Told the share done, from 0 to 1; <see langword="null"/> for none.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">An input is missing or out of its range, or the strikes are of another number of faces.</exception>
    /// <exception cref="OutOfReachException">The arrow without differences does not reach a face.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Fly(
        BatchStrikes strikes, ulong seed, Sampling sampling = Sampling.Random, int? threads = null, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(strikes);
        BatchOptions.CheckThreads(threads);
        BatchPlan plan = ReachingPlan();
        if (strikes.Faces != Faces.Count)
        {
            throw new ArgumentException($"The strikes are kept for {strikes.Faces} faces, and the batch has {Faces.Count}.", nameof(strikes));
        }

        var run = new BatchRun(plan, new(plan.Inputs, sampling, seed), strikes.Arrows);
        run.Go(threads, () => strikes, (into, chunk, _, number, count) => into.Keep(chunk, number, count), _ => { }, progress, cancellation);
    }

    /// <summary>A plan whose arrow without differences reaches every face; otherwise says how far it does.</summary>
    BatchPlan ReachingPlan()
    {
        BatchPlan plan = Plan();
        foreach (Length face in Faces)
        {
            Flight.AtSlant(Launch, face, Inclination);
        }

        return plan;
    }
}
