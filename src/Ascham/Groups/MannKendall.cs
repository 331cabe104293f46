namespace Ascham.Groups;

using MathNet.Numerics.Distributions;

/// <summary>Mann and Kendall's test of a trend: in how many pairs of arrows the later lies above, less those where it lies below.</summary>
/// <remarks>
/// <para><b>Model.</b> Without a trend all orders within a string are equally likely. No normal law is assumed, and one wild arrow cannot make a trend.
/// Pairs are formed within a string only; the scores of strings are added, and their variances.</para>
/// <para><b>Accuracy.</b> Exact when no string has ties and none is longer than twelve; otherwise Z = (S − sign S)/√Var with Kendall's variance for ties.</para>
/// <para><b>Source.</b> Mann (1945), <i>Econometrica</i> 13; Kendall, <i>Rank Correlation Methods</i>; Hirsch, Slack and Smith (1982), <i>Water Resour. Res.</i> 18, for several strings.</para>
/// </remarks>
/// <param name="Score">S: pairs that rise less pairs that fall.</param>
/// <param name="Pairs">Number of pairs compared, ties included.</param>
/// <param name="Variance">Variance of the score without a trend.</param>
/// <param name="Z">The score in standard deviations, corrected for continuity.</param>
/// <param name="Probability">How often a score at least as large in size would come about without a trend.</param>
/// <param name="Exact">Whether the probability is counted rather than taken from the normal law.</param>
public sealed record MannKendall(int Score, int Pairs, double Variance, double Z, double Probability, bool Exact)
{
    /// <summary>Longest string whose orders are counted out.</summary>
    public const int LongestExact = 12;

    /// <summary>Tests numbers in the order they came.</summary>
    /// <param name="values">Three numbers or more; none NaN.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">A number is NaN.</exception>
    /// <exception cref="CannotTellException">Fewer than three numbers, or all alike.</exception>
    public static MannKendall Of(IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        double[] all = [.. values];
        return all.Any(double.IsNaN)
            ? throw new ArgumentException("values must be numbers; one was NaN.", nameof(values))
            : Of([new StringSeries([.. Enumerable.Range(1, all.Length).Select(i => (double)i)], all)]);
    }

    /// <summary>Tests strings of arrows along one axis. Arrows missed low or high (left or right) take part, as lying beyond all that struck.</summary>
    /// <param name="strings">One string or more, each a group of one session; every string starts anew.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="against">What the strings are set against.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">No string, or a string whose order is not known.</exception>
    /// <exception cref="CannotTellException">No string of three arrows, all alike, or an arrow missed to a side that says nothing of this axis.</exception>
    public static MannKendall Of(IEnumerable<Group> strings, Axis axis, TrendAgainst against) =>
        Of(StringSeries.Of(StringSeries.Checked(strings, false), axis, against, false, censored: true).Series);

    internal static MannKendall Of(StringSeries[] strings)
    {
        int score = 0, pairs = 0;
        double variance = 0;
        bool exact = true;
        foreach (StringSeries s in strings)
        {
            var (part, ties) = ScoreOf(s);
            score += part;
            pairs += s.Count * (s.Count - 1) / 2;
            variance += KendallNull.Variance(s);
            exact &= !ties && s.Count <= LongestExact;
        }

        if (strings.Max(s => s.Count) < 3 || variance == 0)
        {
            throw new CannotTellException("A trend cannot be told: it takes a string of three arrows or more that differ. Shoot longer strings, or record them finer.");
        }

        double z = (score - Math.Sign(score)) / Math.Sqrt(variance);
        double probability = exact ? KendallNull.TwoSided([.. strings.Select(s => s.Count)], score) : Math.Min(1, 2 * Normal.CDF(0, 1, -Math.Abs(z)));
        return new(score, pairs, variance, z, probability, exact);
    }

    static (int Score, bool Ties) ScoreOf(StringSeries s)
    {
        int score = 0;
        bool ties = false;
        for (int i = 0; i < s.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                int sign = s.Against[i].CompareTo(s.Against[j]) * s.Offset[i].CompareTo(s.Offset[j]);
                score += sign;
                ties |= sign == 0;
            }
        }

        return (score, ties);
    }
}
