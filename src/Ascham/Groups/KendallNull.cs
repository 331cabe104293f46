namespace Ascham.Groups;

using MathNet.Numerics.Distributions;

/// <summary>Kendall's score when there is no trend.</summary>
static class KendallNull
{
    /// <summary>How often the score of strings without ties is at least as large in size, all orders being equally likely.</summary>
    internal static double TwoSided(int[] lengths, int score)
    {
        double[] chance = Inversions(lengths);
        int pairs = chance.Length - 1, size = Math.Abs(score);
        double sum = 0;
        for (int k = 0; k <= pairs; k++)
        {
            sum += Math.Abs(pairs - (2 * k)) >= size ? chance[k] : 0;
        }

        return Math.Min(1, sum);
    }

    /// <summary>Largest size of score that is still within what chance gives at a level: the bound that Theil and Sen's interval is cut at.</summary>
    /// <returns>The size; <see langword="null"/> when even the largest score is not rare enough.</returns>
    internal static double? Within(StringSeries[] strings, MannKendall test, double level)
    {
        if (!test.Exact)
        {
            double size = Normal.InvCDF(0, 1, (1 + level) / 2) * Math.Sqrt(test.Variance);
            return size < test.Pairs ? size : null;
        }

        double[] chance = Inversions([.. strings.Select(s => s.Count)]);
        double outside = 0;
        for (int k = 0; ; k++)
        {
            // both ends together; the law is even
            outside += 2 * chance[k];
            if (outside > 1 - level || (2 * k) + 1 >= test.Pairs)
            {
                return k > 0 ? test.Pairs - (2 * k) : null;
            }
        }
    }

    /// <summary>Kendall's variance of the score of one string, ties on either side allowed for.</summary>
    /// <remarks>Kendall, <i>Rank Correlation Methods</i>, chapter 4; without ties n(n − 1)(2n + 5)/18.</remarks>
    internal static double Variance(StringSeries s)
    {
        double n = s.Count;
        if (n < 2)
        {
            return 0;
        }

        double[] x = Ties(s.Against), y = Ties(s.Offset);
        double Sum(double[] ties, Func<double, double> term) => ties.Sum(term);
        double plain = (n * (n - 1) * ((2 * n) + 5)) - Sum(x, Whole) - Sum(y, Whole);
        double pairs = Sum(x, Pairs) * Sum(y, Pairs) / (2 * n * (n - 1));
        double triples = n > 2 ? Sum(x, Triples) * Sum(y, Triples) / (9 * n * (n - 1) * (n - 2)) : 0;
        return Math.Max(0, (plain / 18) + pairs + triples);

        static double Whole(double t) => t * (t - 1) * ((2 * t) + 5);
        static double Pairs(double t) => t * (t - 1);
        static double Triples(double t) => t * (t - 1) * (t - 2);
    }

    // Each next arrow falls in any place among those before it: 0 to i inversions, equally likely.
    static double[] Inversions(int[] lengths)
    {
        double[] chance = [1];
        foreach (int n in lengths)
        {
            for (int i = 1; i < n; i++)
            {
                double[] wider = new double[chance.Length + i];
                for (int k = 0; k < chance.Length; k++)
                {
                    for (int add = 0; add <= i; add++)
                    {
                        wider[k + add] += chance[k] / (i + 1);
                    }
                }

                chance = wider;
            }
        }

        return chance;
    }

    static double[] Ties(double[] values) => [.. values.GroupBy(v => v).Select(g => (double)g.Count())];
}
