namespace Ascham.Causes;

using Ascham.Numerics;
using static System.Math;

/// <summary>Marginal likelihood of every hypothesis: sizes and nuisances integrated in closed form about the flight at the most probable sizes, scatter over a grid.</summary>
/// <remarks>
/// <para>y = h(θ) + C u + e with θ normal by the prior, u standard normal, e normal with variances that follow the scatter. About θ̂ the model is linear, so that the
/// integral is normal: exact for small effects, Laplace's method for large ones.</para>
/// <para><b>Source.</b> Kass and Raftery (1995), J. Am. Statist. Ass. 90, 773-795.</para>
/// </remarks>
sealed class Weighing
{
    const int Rounds = 4;
    const double Settled = 0.02; // of a posterior standard deviation

    readonly Observations seen;
    readonly ScatterNodes nodes;
    readonly double[] value;
    readonly double[][] factors; // by node: Cholesky factor of the covariance without causes
    readonly double[] logDeterminants;
    readonly Dictionary<int, (double[][], double[])> elseFactors = []; // by the odd station, -1 for any

    internal Weighing(Observations seen)
    {
        this.seen = seen;
        nodes = new(seen.Evidence);
        value = [.. seen.Rows.Select(r => r.Value)];
        (factors, logDeterminants) = Factor([]);
    }

    internal ScatterNodes Nodes => nodes;

    int Rows => value.Length;

    /// <summary>Weighs one hypothesis.</summary>
    /// <param name="hypothesis">The hypothesis.</param>
    internal Weighed Weigh(Hypothesis hypothesis)
    {
        Linear at = Linearised(hypothesis);
        var (l, determinants) = FactorsFor(hypothesis);
        var found = new Weighed(hypothesis, at);
        for (int node = 0; node < ScatterNodes.Count; node++)
        {
            Posterior posterior = Solve(at, hypothesis, l[node]);
            found.Add(posterior.LogLikelihood - determinants[node] / 2 + nodes.LogWeight(node, hypothesis), posterior);
        }

        found.Finish(hypothesis.LogOdds + hypothesis.LogSigns(seen.Evidence, seen.Priors));
        return found;
    }

    (double[][] Factors, double[] LogDeterminants) FactorsFor(Hypothesis hypothesis)
    {
        if (!hypothesis.SomethingElse)
        {
            return (factors, logDeterminants);
        }

        if (!elseFactors.TryGetValue(hypothesis.OddStation ?? -1, out var found))
        {
            elseFactors.Add(hypothesis.OddStation ?? -1, found = Factor([.. SomethingElse.Columns(seen, hypothesis)]));
        }

        return found;
    }

    /// <summary>Covariance of the rows but for the causes, at a node; shape (rows × rows).</summary>
    double[] Covariance(int node, double[][] more)
    {
        int n = Rows;
        double[] v = new double[n * n];
        foreach (double[] column in seen.Shares.Columns.Concat(more))
        {
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j <= i && column[i] != 0; j++)
                {
                    v[i * n + j] += column[i] * column[j];
                }
            }
        }

        var (then, now) = nodes.At(node);
        for (int i = 0; i < n; i++)
        {
            v[i * n + i] += NoiseOf(seen.Rows[i], then, now);
        }

        return v;
    }

    /// <summary>Logarithm of the odds of one hypothesis against a rival that its own most probable sizes would be expected to give, noise aside, and the signs seen.</summary>
    internal double ExpectedLogOdds(Weighed truth, Weighed rival)
    {
        double[] signal = new double[Rows];
        for (int a = 0; a < truth.Hypothesis.Count; a++)
        {
            double size = truth.Hypothesis.Means[a] + truth.Middle.Mean[a];
            for (int i = 0; i < Rows; i++)
            {
                signal[i] += size * truth.At.Columns[a * Rows + i];
            }
        }

        double Log(Weighed of) => Solve(of.At with { Residual = Less(signal, of) }, of.Hypothesis, factors[ScatterNodes.Middle]).LogLikelihood;
        double signs = truth.Hypothesis.LogSigns(seen.Evidence, seen.Priors) - rival.Hypothesis.LogSigns(seen.Evidence, seen.Priors);
        return Log(truth) - Log(rival) + signs;
    }

    // The signal less what the hypothesis expects at its prior mean.
    double[] Less(double[] signal, Weighed of)
    {
        double[] left = [.. signal];
        for (int a = 0; a < of.Hypothesis.Count; a++)
        {
            for (int i = 0; i < Rows; i++)
            {
                left[i] -= of.Hypothesis.Means[a] * of.At.Columns[a * Rows + i];
            }
        }

        return left;
    }

    internal double NoiseOf(in Row row, double then, double now) =>
        row.Fixed + (row.Kind == RowKind.Right ? nodes.Stretch : 1) * (row.ThenPart * then + row.NowPart * now);

    (double[][] Factors, double[] LogDeterminants) Factor(double[][] more)
    {
        double[][] all = new double[ScatterNodes.Count][];
        double[] logs = new double[ScatterNodes.Count];
        for (int node = 0; node < ScatterNodes.Count; node++)
        {
            all[node] = Covariance(node, more);
            if (!SmallCholesky.TryFactor(all[node], Rows, out logs[node]))
            {
                throw new ArgumentException("Two pieces of evidence contradict each other exactly: an error given as zero. Give each reading its error.");
            }
        }

        return (all, logs);
    }

    // Gauss and Newton toward the most probable sizes, at the middle of the grid.
    Linear Linearised(Hypothesis hypothesis)
    {
        double[] factor = FactorsFor(hypothesis).Factors[ScatterNodes.Middle];
        double[] sizes = [.. hypothesis.Means];
        Linear at = Linear.At(seen, hypothesis, sizes, value) ?? Linear.At(seen, hypothesis, new double[sizes.Length], value)
            ?? throw new ArgumentException("The arrow does not reach the stations with causes of their usual size; check distances and the known bow.");
        for (int round = 0; round < Rounds && sizes.Length > 0; round++)
        {
            Posterior posterior = Solve(at, hypothesis, factor);
            double step = 0;
            for (int k = 0; k < sizes.Length; k++)
            {
                double to = hypothesis.Means[k] + posterior.Mean[k];
                step = Max(step, Abs(to - sizes[k]) / Sqrt(posterior.Covariance[k * sizes.Length + k]));
                sizes[k] = to;
            }

            if (step < Settled || Linear.At(seen, hypothesis, sizes, value) is not { } next)
            {
                break;
            }

            at = next;
        }

        return at;
    }

    static Posterior Solve(Linear at, Hypothesis hypothesis, double[] l) => NormalEvidence.Solve(at.Residual, at.Columns, hypothesis.Sds, l);
}
