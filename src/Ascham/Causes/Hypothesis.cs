namespace Ascham.Causes;

using static System.Math;

/// <summary>What is at work: nothing, one cause, two, or something else altogether.</summary>
sealed class Hypothesis
{
    Hypothesis(IReadOnlyList<CausePrior> causes, bool somethingElse, double odds, CausePriors priors, int? oddStation = null)
    {
        OddStation = oddStation;
        Causes = [.. causes.Select(c => c.Cause)];
        (SomethingElse, LogOdds) = (somethingElse, Log(odds));
        SizePrior[] sizes = [.. causes.SelectMany(c => c.Sizes)];
        (Sizes, Means, Sds) = ([.. sizes.Select(s => (int)s.Size)], [.. sizes.Select(s => s.Mean)], [.. sizes.Select(s => s.Sd)]);
        Growth = causes.Sum(c => c.Growth) + (somethingElse ? 0.1 : 0);
        GrowthSd = Sqrt(priors.OrdinaryScatter * priors.OrdinaryScatter + causes.Sum(c => c.GrowthSd * c.GrowthSd) + (somethingElse ? 0.04 : 0));
    }

    internal IReadOnlyList<Cause> Causes { get; }

    internal bool SomethingElse { get; }

    /// <summary>Index of the one station that something else is wrong with; <see langword="null"/> when it may be any of them.</summary>
    internal int? OddStation { get; }

    /// <summary>Logarithm of the odds before the evidence, against nothing at all.</summary>
    internal double LogOdds { get; }

    /// <summary>Index of each size at work.</summary>
    internal int[] Sizes { get; }

    internal double[] Means { get; }

    internal double[] Sds { get; }

    internal int Count => Sizes.Length;

    internal double Growth { get; }

    internal double GrowthSd { get; }

    /// <summary>All of them: nothing first, then each cause, each pair, and something else last.</summary>
    /// <param name="priors">The beliefs.</param>
    /// <param name="stations">Indices of the stations of now: half of what else may be is a blunder at one of them.</param>
    internal static Hypothesis[] All(CausePriors priors, IReadOnlyCollection<int> stations)
    {
        IReadOnlyList<CausePrior> causes = priors.Causes;
        double Odds(CausePrior cause) => cause.Rate / (1 - cause.Rate);
        List<Hypothesis> all = [new([], false, 1, priors)];
        for (int i = 0; i < causes.Count; i++)
        {
            all.Add(new([causes[i]], false, Odds(causes[i]), priors));
        }

        for (int i = 0; i < causes.Count; i++)
        {
            for (int j = i + 1; j < causes.Count; j++)
            {
                all.Add(new([causes[i], causes[j]], false, Odds(causes[i]) * Odds(causes[j]), priors));
            }
        }

        if (priors.SomethingElse > 0)
        {
            all.Add(new([], true, stations.Count > 1 ? priors.SomethingElse / 2 : priors.SomethingElse, priors));
            all.AddRange(stations.Where(_ => stations.Count > 1).Select(s => new Hypothesis([], true, priors.SomethingElse / 2 / stations.Count, priors, s)));
        }

        return [.. all];
    }

    /// <summary>Logarithm of the probability of the signs looked for.</summary>
    internal double LogSigns(Evidence evidence, CausePriors priors)
    {
        double sum = 0;
        foreach (Sign sign in evidence.Signs)
        {
            if (priors.Signs.FirstOrDefault(r => r.Kind == sign.Kind) is { } rate)
            {
                double seen = rate.When(Causes);
                sum += Log(sign.Seen ? seen : 1 - seen);
            }
        }

        return sum;
    }
}
