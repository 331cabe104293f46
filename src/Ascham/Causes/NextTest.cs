namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>Plans what to shoot, read or look for next, by how much it is expected to tell.</summary>
/// <remarks>
/// <para><b>Model.</b> Expected information about the joint table of hypotheses, in nats: 0.69 halves two equal candidates. Each test is priced in minutes and arrows.
/// One test ahead at a time; what two tests tell together may be more.</para>
/// <para><b>Limits.</b> At the middle of what is believed of scatter; entries of the table below 2 in 1000 are left out.</para>
/// <para><b>Source.</b> Lindley (1956), Ann. Math. Statist. 27, 986-1005.</para>
/// </remarks>
public static class NextTest
{
    const double Considered = 2e-3;
    const int AtMost = 40; // hypotheses

    /// <summary>Plans.</summary>
    /// <param name="ranking">What is known so far.</param>
    /// <param name="costs">What tests cost and which may be done: nothing is proposed beyond the longest safe distance.</param>
    /// <param name="confidence">Probability at which a cause counts as found, between 0 and 1.</param>
    /// <returns>The tests, the most telling per minute first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A cost is not positive, or the confidence not between 0 and 1.</exception>
    public static TestPlan Plan(Ranking ranking, TestCosts costs, double confidence = 0.90)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        ArgumentNullException.ThrowIfNull(costs);
        costs.Check();
        Require.Level(confidence);
        Weighed[] kept = [.. ranking.Weighed.Where(w => w.Probability >= Considered).OrderByDescending(w => w.Probability).Take(AtMost)];
        double sum = kept.Sum(w => w.Probability);
        double[] probabilities = [.. kept.Select(w => w.Probability / sum)];
        TestCandidate[] candidates = [.. costs.Candidates().Where(c => !ranking.Evidence.Readings.Any(r => r.Now && r.Kind == c.Reading))]; // read already: reading again tells nothing new
        var outlook = new Outlook(ranking, kept, candidates, costs);
        RankedTest[] tests = [.. candidates.Select(c => new RankedTest(c, Expected(c, outlook, kept, probabilities, ranking)))];
        double left = -probabilities.Sum(p => p * Math.Log(p));
        return new([.. tests.OrderByDescending(t => t.PerMinute)], left, ranking.IsSettled(confidence));
    }

    static double Expected(TestCandidate test, Outlook outlook, Weighed[] kept, double[] probabilities, Ranking ranking)
    {
        if (test.Sign is { } sign)
        {
            return ranking.Evidence.Signs.Any(s => s.Kind == sign) || ranking.Priors.Signs.FirstOrDefault(r => r.Kind == sign) is not { } rate
                ? 0 // looked for already, or says nothing
                : Information.OfSign(probabilities, [.. kept.Select(w => rate.When(w.Hypothesis.Causes))]);
        }

        var (means, covariances, d) = outlook.Of(test);
        return Information.Of(probabilities, means, covariances, d);
    }
}

/// <summary>Tests ranked by what they are expected to tell.</summary>
/// <param name="Tests">The most telling per minute first.</param>
/// <param name="Left">Information still wanting, nats: the entropy of the joint table.</param>
/// <param name="Settled">Whether a cause, or nothing, may be named already.</param>
public sealed record TestPlan(IReadOnlyList<RankedTest> Tests, double Left, bool Settled)
{
    const double Worthless = 0.02; // nats

    /// <summary>The best of them per minute; <see langword="null"/> when all is settled or no test tells anything worth its time.</summary>
    public RankedTest? Best => Settled ? null : Tests.FirstOrDefault(t => t.Information >= Worthless);

    /// <summary>The best that needs arrows, per arrow; <see langword="null"/> when another arrow is worth nothing.</summary>
    public RankedTest? BestArrows => Settled
        ? null
        : Tests.Where(t => t.Test.Arrows > 0 && t.Information >= Worthless).OrderByDescending(t => t.PerArrow).FirstOrDefault();
}

/// <summary>One test with what it is expected to tell.</summary>
/// <param name="Test">The test.</param>
/// <param name="Information">Expected, nats.</param>
public sealed record RankedTest(TestCandidate Test, double Information)
{
    /// <summary>Nats per minute.</summary>
    public double PerMinute => Information / Test.Minutes;

    /// <summary>Nats per arrow; infinite for a test without arrows that tells anything.</summary>
    public double PerArrow => Information > 0 ? Information / Test.Arrows : 0;
}
