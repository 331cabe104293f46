namespace Ascham.Causes;

/// <summary>The observations about the most probable sizes of a hypothesis.</summary>
/// <param name="Sizes">θ̂, of the hypothesis alone.</param>
/// <param name="Residual">y − h(θ̂) + F(θ̂ − μ); shape (rows).</param>
/// <param name="Columns">F, column by column; shape (sizes × rows).</param>
sealed record Linear(double[] Sizes, double[] Residual, double[] Columns)
{
    /// <summary>Flies the hypothesis.</summary>
    /// <returns><see langword="null"/> when an arrow does not get to its face.</returns>
    internal static Linear? At(Observations seen, Hypothesis hypothesis, double[] sizes, double[] value)
    {
        int n = seen.Count, k = sizes.Length;
        double[] columns = new double[k * n], residual = [.. value];
        if (k == 0)
        {
            return new([], residual, columns);
        }

        double[] predicted = new double[n], slopes = new double[n * CauseText.Sizes], all = new double[CauseText.Sizes];
        for (int a = 0; a < k; a++)
        {
            all[hypothesis.Sizes[a]] = sizes[a];
        }

        if (!seen.Predict(all, predicted, slopes))
        {
            return null;
        }

        for (int i = 0; i < n; i++)
        {
            residual[i] -= predicted[i];
            for (int a = 0; a < k; a++)
            {
                double slope = columns[a * n + i] = slopes[i * CauseText.Sizes + hypothesis.Sizes[a]];
                residual[i] += slope * (sizes[a] - hypothesis.Means[a]);
            }
        }

        return new([.. sizes], residual, columns);
    }
}

/// <summary>Sizes of a hypothesis at one scatter.</summary>
/// <param name="LogLikelihood">Marginal, but for half the logarithm of the determinant of the noise.</param>
/// <param name="Mean">Of the sizes less their prior means.</param>
/// <param name="Covariance">Shape (sizes × sizes).</param>
readonly record struct Posterior(double LogLikelihood, double[] Mean, double[] Covariance);

/// <summary>A hypothesis with the weight that the evidence gives it.</summary>
sealed class Weighed(Hypothesis hypothesis, Linear at)
{
    readonly List<(double Share, Posterior Sizes)> parts = [];

    internal Hypothesis Hypothesis { get; } = hypothesis;

    internal Linear At { get; } = at;

    /// <summary>Logarithm of odds times marginal likelihood; comparable between hypotheses of one evidence.</summary>
    internal double Log { get; private set; }

    /// <summary>Of all hypotheses; set when all are weighed.</summary>
    internal double Probability { get; set; }

    /// <summary>Its sizes at every node of the scatter, with the share of each.</summary>
    internal IReadOnlyList<(double Share, Posterior Sizes)> Parts => parts;

    /// <summary>Its sizes at the middle of the grid.</summary>
    internal Posterior Middle => parts[ScatterNodes.Middle].Sizes;

    internal void Add(double log, Posterior sizes) => parts.Add((log, sizes));

    /// <summary>Sums over the nodes; from then on they hold shares.</summary>
    internal void Finish(double logOdds)
    {
        double top = parts.Max(p => p.Share), sum = parts.Sum(p => Math.Exp(p.Share - top));
        for (int i = 0; i < parts.Count; i++)
        {
            parts[i] = parts[i] with { Share = Math.Exp(parts[i].Share - top) / sum };
        }

        Log = logOdds + top + Math.Log(sum);
    }
}
