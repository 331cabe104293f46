namespace Ascham.Causes;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

/// <summary>One cause with its probability, and its sizes if it is at work.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Probability">That it is at work, alone or beside another.</param>
/// <param name="Sizes">In the order of <see cref="CauseText.SizesOf"/>, each given that the cause is at work.</param>
public sealed record RankedCause(Cause Cause, double Probability, IReadOnlyList<SizeEstimate> Sizes)
{
    internal static RankedCause Of(Cause cause, IReadOnlyList<Weighed> all, double level)
    {
        Weighed[] mine = [.. all.Where(w => w.Hypothesis.Causes.Contains(cause))];
        return new(cause, mine.Sum(w => w.Probability), [.. cause.SizesOf().Select(s => SizeEstimate.Of(s, mine, level))]);
    }
}

/// <summary>A size of a cause, given that it is at work.</summary>
/// <param name="Size">Which.</param>
/// <param name="Value">In the unit of <see cref="CauseText.Unit"/>: mean of the posterior, interval between equal tails.</param>
public sealed record SizeEstimate(CauseSize Size, Estimate<double> Value)
{
    const double Negligible = 1e-5;

    internal static SizeEstimate Of(CauseSize size, IReadOnlyList<Weighed> weighed, double level)
    {
        List<(double Weight, double Mean, double Sd)> parts = [];
        double total = weighed.Sum(w => w.Probability);
        foreach (Weighed w in weighed)
        {
            Hypothesis h = w.Hypothesis;
            int k = Array.IndexOf(h.Sizes, (int)size);
            foreach (var (share, at) in w.Parts)
            {
                double weight = total > 0 ? w.Probability / total * share : share / weighed.Count;
                if (weight > Negligible)
                {
                    parts.Add((weight, h.Means[k] + at.Mean[k], Math.Sqrt(at.Covariance[k * h.Count + k])));
                }
            }
        }

        double sum = parts.Sum(p => p.Weight), mean = parts.Sum(p => p.Weight * p.Mean) / sum;
        double variance = parts.Sum(p => p.Weight * (p.Sd * p.Sd + (p.Mean - mean) * (p.Mean - mean))) / sum;
        double Below(double x) => parts.Sum(p => p.Weight * Normal.CDF(p.Mean, p.Sd, x)) / sum;
        double At(double share) => Brent.FindRoot(x => Below(x) - share, parts.Min(p => p.Mean - 9 * p.Sd), parts.Max(p => p.Mean + 9 * p.Sd), 1e-9 * Math.Sqrt(variance));
        return new(size, new(mean, Math.Sqrt(variance), At((1 - level) / 2), At((1 + level) / 2), level, 0,
            "posterior given that the cause is at work, over scatter and a second cause; normal prior"));
    }
}
