namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>Causes ranked by what the evidence says of them.</summary>
/// <remarks>
/// <para><b>Model.</b> One joint table over nothing, each cause, each pair and something else, which sums to one; a cause's probability is the sum over the
/// entries that hold it, so that these may add up to more than one. Marginal likelihoods about the flight model, see docs/models/causes.md.</para>
/// <para><b>Limits.</b> Calibrated where the priors are right; how far off they are where not: docs/validation/causes.md. Two causes at once at most.</para>
/// </remarks>
public sealed class Ranking
{
    const double Apart = 3; // odds that two causes must be expected to reach to count as told apart
    const double Considerable = 0.05;
    const double Unusual = 4; // prior standard deviations: beyond that a blunder is likelier than the cause

    readonly Weighed[] weighed;

    Ranking(Evidence evidence, CausePriors priors, Weighing weighing, Observations seen, Weighed[] weighed, double level)
    {
        this.weighed = weighed;
        (Evidence, Priors, Weighing, Seen) = (evidence, priors, weighing, seen);
        Nothing = weighed[0].Probability;
        NoneFits = weighed.Where(w => w.Hypothesis.SomethingElse).Sum(w => w.Probability);
        Causes = [.. priors.Causes.Select(c => RankedCause.Of(c.Cause, weighed, level)).OrderByDescending(c => c.Probability)];
        Table = [.. weighed.Select(w => new RankedHypothesis(w.Hypothesis.Causes, w.Hypothesis.SomethingElse, w.Probability)).OrderByDescending(h => h.Probability)];
        Missing = [.. evidence.Missing(), .. Doubtful()];
        ConfusedWith = Causes[0].Probability > Nothing ? [.. ConfusedWithBest(weighing, seen)] : [];
    }

    /// <summary>Every cause considered, the most probable first.</summary>
    public IReadOnlyList<RankedCause> Causes { get; }

    /// <summary>Probability that nothing changed beyond an ordinary day.</summary>
    public double Nothing { get; }

    /// <summary>Probability that something changed which none of the causes explains.</summary>
    public double NoneFits { get; }

    /// <summary>The joint table, the most probable entry first; sums to one.</summary>
    public IReadOnlyList<RankedHypothesis> Table { get; }

    /// <summary>Causes of some probability that this evidence cannot tell from the most probable one.</summary>
    public IReadOnlyList<Cause> ConfusedWith { get; }

    /// <summary>Why no cause may be named, whatever its probability; empty when one may.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>Key of the most probable answer: <c>nothing</c>, <c>none_fits</c>, or a cause's.</summary>
    public string Best => Math.Max(Nothing, NoneFits) < Causes[0].Probability ? Causes[0].Cause.Key() : Nothing >= NoneFits ? "nothing" : "none_fits";

    /// <summary>Its probability.</summary>
    public double BestProbability => Math.Max(Math.Max(Nothing, NoneFits), Causes[0].Probability);

    /// <summary>Probability that the most probable cause or one that cannot be told from it is at work; where nothing, or something else, is the most probable answer, its own.</summary>
    public double BestSetProbability => Best is "nothing" or "none_fits" ? BestProbability : weighed
        .Where(w => w.Hypothesis.Causes.Any(c => c == Causes[0].Cause || ConfusedWith.Contains(c))).Sum(w => w.Probability);

    internal Evidence Evidence { get; }

    internal CausePriors Priors { get; }

    internal Weighing Weighing { get; }

    internal Observations Seen { get; }

    internal IReadOnlyList<Weighed> Weighed => weighed;

    /// <summary>Ranks the causes.</summary>
    /// <param name="evidence">What is known.</param>
    /// <param name="priors">What is believed before it; <see cref="CausePriors.Usual"/> must be named.</param>
    /// <param name="level">Level of the intervals of sizes, between 0 and 1.</param>
    /// <returns>The ranking.</returns>
    /// <exception cref="ArgumentException">The evidence holds no station, or something in it is not as it should be; the message says what.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or outside its range.</exception>
    public static Ranking Of(Evidence evidence, CausePriors priors, double level = 0.90)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(priors);
        Require.Level(level);
        evidence.Check();
        priors.Check();
        var seen = new Observations(evidence, priors);
        var weighing = new Weighing(seen);
        Weighed[] weighed = [.. Hypothesis.All(priors, [.. Enumerable.Range(0, evidence.Stations.Count).Where(i => evidence.Stations[i].Now)]).Select(weighing.Weigh)];
        double top = weighed.Max(w => w.Log), sum = weighed.Sum(w => Math.Exp(w.Log - top));
        foreach (Weighed w in weighed)
        {
            w.Probability = Math.Exp(w.Log - top) / sum;
        }

        return new(evidence, priors, weighing, seen, weighed, level);
    }

    /// <summary>Tells whether a cause, or that nothing changed, may be named.</summary>
    /// <param name="confidence">The probability asked for, between 0 and 1.</param>
    /// <returns><see langword="false"/> when something is missing or no answer is probable enough.</returns>
    public bool IsSettled(double confidence) => Missing.Count == 0 && BestProbability >= Require.Level(confidence);

    // What speaks against naming the most probable answer although it is probable.
    IEnumerable<string> Doubtful()
    {
        if (Best == "none_fits")
        {
            yield return (NoneFits > 0.5 ? "None of the causes explains this evidence" : "Nothing stands out, and none of the causes explains this evidence well")
                + ": something else is at work, one station was shot with a wrong setting, or two pieces of evidence contradict each other. Shoot and measure again what disagrees.";
        }

        CausePrior best = Priors.Causes.First(c => c.Cause == Causes[0].Cause);
        foreach (var (size, prior) in Causes[0].Sizes.Zip(best.Sizes))
        {
            if (Best == best.Cause.Key() && Math.Abs(size.Value.Value - prior.Mean) > Unusual * prior.Sd)
            {
                yield return FormattableString.Invariant($"{best.Cause.Key()} would have to be {size.Value.Value:G3} {size.Size.Unit()}, far beyond what it usually is: look for a blunder first, such as a sight left at another mark.");
            }
        }
    }

    // A rival is not told apart when, were the best cause true at its size, the odds against the rival would be expected to stay small.
    IEnumerable<Cause> ConfusedWithBest(Weighing weighing, Observations seen)
    {
        Cause best = Causes[0].Cause;
        Weighed Alone(Cause cause) => weighed.First(w => w.Hypothesis.Causes is [var only] && only == cause);
        return Causes.Skip(1).Where(c => c.Probability >= Considerable && weighing.ExpectedLogOdds(Alone(best), Alone(c.Cause)) < Math.Log(Apart)).Select(c => c.Cause);
    }
}

/// <summary>One entry of the joint table.</summary>
/// <param name="Causes">At work; empty for nothing and for something else.</param>
/// <param name="SomethingElse">Whether it is the catch-all.</param>
/// <param name="Probability">Of all entries.</param>
public sealed record RankedHypothesis(IReadOnlyList<Cause> Causes, bool SomethingElse, double Probability);
