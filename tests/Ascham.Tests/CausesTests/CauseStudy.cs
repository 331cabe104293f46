namespace Ascham.Tests.CausesTests;

using Ascham.Causes;

/// <summary>Many simulated changes, ranked and tallied.</summary>
static class CauseStudy
{
    /// <summary>One case as it came out.</summary>
    internal sealed record Outcome(string Truth, string Answer, double Probability, bool Right, bool SetRight, int Sizes, int Covered, bool Settled, int Arrows);

    internal static Outcome Run(SimulatedCase simulated, CausePriors priors, double level = 0.90)
    {
        Ranking ranking = Ranking.Of(simulated.Evidence(), priors, level);
        string answer = ranking.Best;
        int sizes = 0, covered = 0;
        foreach (RankedCause cause in ranking.Causes.Where(c => simulated.Truth.Contains(c.Cause)))
        {
            foreach (SizeEstimate size in cause.Sizes)
            {
                double truth = simulated.Sizes[(int)size.Size];
                sizes++;
                covered += truth >= size.Value.Low && truth <= size.Value.High ? 1 : 0;
            }
        }

        bool set = simulated.IsRight(answer) || ranking.ConfusedWith.Any(c => simulated.IsRight(c.Key()));
        return new(simulated.TruthText, answer, ranking.BestProbability, simulated.IsRight(answer), set, sizes, covered, ranking.IsSettled(0.90), simulated.Count);
    }

    internal static Outcome[] Run(int first, int count, CausePriors truth, CausePriors priors, bool bare = false, IReadOnlyList<Cause>? forced = null) =>
        [.. Enumerable.Range(first, count).AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(seed => Run(new SimulatedCase(seed, truth, bare, forced), priors))];

    /// <summary>Expected calibration error of the top answer over ten bins, and the bins: count, mean probability, share right.</summary>
    internal static (double Error, (int Count, double Said, double Right)[] Bins) Calibration(IReadOnlyList<Outcome> outcomes)
    {
        var bins = new (int Count, double Said, double Right)[10];
        foreach (Outcome o in outcomes)
        {
            ref var bin = ref bins[Math.Min(9, (int)(10 * o.Probability))];
            bin = (bin.Count + 1, bin.Said + o.Probability, bin.Right + (o.Right ? 1 : 0));
        }

        double error = bins.Sum(b => Math.Abs(b.Said - b.Right)) / outcomes.Count;
        return (error, [.. bins.Select(b => b.Count == 0 ? b : (b.Count, b.Said / b.Count, b.Right / b.Count))]);
    }
}
