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
    const double OutOfTheRunning = 12; // nats below the best: a probability below 1 in 100,000

    readonly Observations seen;
    readonly ScatterNodes nodes;
    readonly double[] value;
    readonly double[][] factors; // by node: Cholesky factor of the covariance without causes
    readonly double[] logDeterminants;
    (double[][], double[])? elseFactors;

    internal Weighing(Observations seen)
    {
        this.seen = seen;
        nodes = new(seen.Evidence);
        value = [.. seen.Rows.Select(r => r.Value)];
        (factors, logDeterminants) = Factor(nothing: true);
    }

    internal ScatterNodes Nodes => nodes;

    int Rows => value.Length;

    /// <summary>Weighs every hypothesis.</summary>
    /// <remarks>All at the middle of the grid first; those out of the running there are not worth the rest of it.</remarks>
    /// <param name="hypotheses">Nothing first.</param>
    internal Weighed[] Weigh(IReadOnlyList<Hypothesis> hypotheses)
    {
        Weighed[] rough = [.. hypotheses.Select(h => Weigh(h, Linearised(h), ScatterNodes.Middle, ScatterNodes.Middle))];
        double bar = rough.Max(w => w.Log) - OutOfTheRunning;
        Weighed nothing = Whole(rough[0]);
        double rest = nothing.Log - rough[0].Log; // what the whole grid adds, about the same for all
        return [nothing, .. rough.Skip(1).Select(w => w.Log < bar ? w.Raised(rest) : Whole(w))];
    }

    Weighed Whole(Weighed rough) => Weigh(rough.Hypothesis, rough.At, 0, ScatterNodes.Count - 1);

    Weighed Weigh(Hypothesis hypothesis, Linear at, int first, int last)
    {
        var (l, determinants) = FactorsFor(hypothesis);
        var found = new Weighed(hypothesis, at);
        for (int node = first; node <= last; node++)
        {
            Posterior posterior = Solve(at, hypothesis, l[node]);
            found.Add(node, posterior.LogLikelihood - determinants[node] / 2 + nodes.LogWeight(node, hypothesis), posterior);
        }

        found.Finish(hypothesis.LogOdds + hypothesis.LogSigns(seen.Evidence, seen.Priors));
        return found;
    }

    (double[][] Factors, double[] LogDeterminants) FactorsFor(Hypothesis hypothesis) =>
        hypothesis.SomethingElse ? elseFactors ??= Factor(nothing: false) : (factors, logDeterminants);

    /// <summary>Covariance of the rows but for the causes, at a node; shape (rows × rows).</summary>
    internal double[] Covariance(int node, bool nothing)
    {
        int n = Rows;
        double[] v = new double[n * n];
        foreach (double[] column in nothing ? seen.Shares.Columns : [.. seen.Shares.Columns, .. SomethingElse.Columns(seen)])
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

    /// <summary>Logarithm of the odds of one hypothesis against a rival that its own most probable sizes would be expected to give, noise aside.</summary>
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
        return Log(truth) - Log(rival);
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

    (double[][] Factors, double[] LogDeterminants) Factor(bool nothing)
    {
        double[][] all = new double[ScatterNodes.Count][];
        double[] logs = new double[ScatterNodes.Count];
        for (int node = 0; node < ScatterNodes.Count; node++)
        {
            all[node] = Covariance(node, nothing);
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
