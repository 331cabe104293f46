namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.LinearAlgebra;

/// <summary>What is thought likely of the arrows before they are shot.</summary>
/// <param name="Probability">Probability that one of the arrows is odd, between 0 and 1.</param>
/// <param name="OffsetInSigmas">How far off an odd arrow is likely to be: standard deviation of its offset along each axis over the archer's sigma; positive.</param>
/// <param name="OrdinaryInSigmas">How much ordinary arrows differ: standard deviation of their offsets along each axis over the archer's sigma; zero or more.</param>
/// <remarks>
/// <para><b>Model.</b> At most one odd arrow, each equally likely to be it; offsets normal; the archer's sigma unknown on a logarithmic scale. The probabilities are
/// calibrated when the three numbers are right (docs/validation/odd-arrow.md); try half and double to see how much hangs on them.</para>
/// <para><b>Source.</b> Box and Tiao (1968), A Bayesian approach to some outlier problems, <i>Biometrika</i> 55, 119.</para>
/// </remarks>
public sealed record OddArrowPrior(double Probability, double OffsetInSigmas, double OrdinaryInSigmas)
{
    /// <summary>Probability of each arrow being the odd one, and of none, after the shots.</summary>
    internal (IReadOnlyDictionary<string, double> Arrows, double None) Weigh(ArrowFit fit)
    {
        Require.Level(Probability);
        Require.Positive(OffsetInSigmas, "");
        Require.NotNegative(OrdinaryInSigmas, "");
        int k = fit.Names.Length;
        double none = LogLikelihood(fit, -1);
        double[] logs = [.. Enumerable.Range(0, k).Select(i => LogLikelihood(fit, i))];
        double most = Math.Max(none, logs.Max());
        double noneWeight = (1 - Probability) * Math.Exp(none - most);
        double[] weights = [.. logs.Select(l => Probability / k * Math.Exp(l - most))];
        double all = noneWeight + weights.Sum();
        return (fit.Names.Zip(weights, (name, weight) => (name, weight / all)).ToDictionary(p => p.name, p => p.Item2), noneWeight / all);
    }

    // Sums q have covariance sigma² (C + C D C), D the prior variances over sigma²; sigma² is integrated out.
    double LogLikelihood(ArrowFit fit, int odd)
    {
        int k = fit.Names.Length;
        Vector<double> prior = Vector<double>.Build.Dense(k, i => (OrdinaryInSigmas * OrdinaryInSigmas) + (i == odd ? OffsetInSigmas * OffsetInSigmas : 0));
        Matrix<double> scaled = Matrix<double>.Build.DiagonalOfDiagonalVector(prior), whole = Matrix<double>.Build.DenseIdentity(k) + (scaled * fit.Information);
        var factors = whole.LU();
        // The determinant itself would overflow with many arrows shot often.
        double squares = fit.Within + fit.Squares.Sum() - fit.Sums.TransposeThisAndMultiply(factors.Solve(scaled * fit.Sums)).Trace();
        return (-fit.Axes / 2.0 * factors.U.Diagonal().Sum(u => Math.Log(Math.Abs(u)))) - ((fit.FreedomBetween + fit.FreedomWithin) / 2.0 * Math.Log(squares));
    }
}
