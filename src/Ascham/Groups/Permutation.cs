namespace Ascham.Groups;

using Ascham.Quantities;

/// <summary>What a permutation test compares.</summary>
public enum PermutationStatistic
{
    /// <summary>Distance between the centres.</summary>
    Distance,

    /// <summary>Hotelling's T², which measures the shift against the shape of the groups.</summary>
    Hotelling,
}

/// <summary>How many of the ways to deal the same impacts into two groups separate them as much as the way they were shot.</summary>
/// <param name="Probability">Share of the deals with a difference at least as large; the deal as shot counts among them, so it is never zero.</param>
/// <param name="Smallest">The smallest probability that so many arrows can reach.</param>
/// <param name="Deals">Deals looked at.</param>
/// <param name="Exact">Whether these were all deals there are.</param>
/// <remarks>
/// <para><b>Model.</b> If nothing shifted, every deal is equally likely. No normal law is needed, but the two groups must be alike in spread too: a difference of spread alone can give a small probability.</para>
/// <para><b>Limits.</b> With three arrows each the smallest probability is 0.1: no answer at 5 % is possible. Use it with four arrows or more a group.</para>
/// <para><b>Source.</b> R. A. Fisher, <i>The Design of Experiments</i>; E. J. G. Pitman (1937), Suppl. J. R. Statist. Soc. 4, 119-130. Sampled deals count the one as shot too:
/// B. Phipson, G. K. Smyth (2010), Statist. Appl. Genet. Mol. Biol. 9, 39.</para>
/// </remarks>
public sealed record Permutation(double Probability, double Smallest, long Deals, bool Exact)
{
    // A deal ties with the one as shot when only rounding separates them.
    const double Tie = 1e-9;

    /// <summary>Tests whether two groups of impacts differ in centre.</summary>
    /// <param name="first">One group.</param>
    /// <param name="second">The other; same distance, where both are given.</param>
    /// <param name="statistic">What to compare.</param>
    /// <param name="limit">All deals are looked at when there are no more than this; otherwise this many are drawn. 100 to 10 000 000; 100 000 takes well under a second.</param>
    /// <param name="seed">Seed of the draw; the same seed gives the same answer. Not used when all deals are looked at.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The groups were shot at different distances.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="limit"/> is out of range.</exception>
    /// <exception cref="CannotTellException">A group has no counted impact, an arrow missed, or all impacts are recorded on one line (Hotelling) or in one place.</exception>
    public static Permutation Test(Group first, Group second, PermutationStatistic statistic, int limit, int seed)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Require.InRange(limit, 100, 10_000_000, "");
        Groups.Dispersion.AtOneDistance([first, second]);
        if (first.Missed + second.Missed > 0)
        {
            throw new MissedArrowsException(first.Missed + second.Missed, first.Moments.Count + second.Moments.Count);
        }

        if (Math.Min(first.Moments.Count, second.Moments.Count) == 0)
        {
            throw new CannotTellException("One group has no counted impact, so there is nothing to compare. Count the called flyers too (WithCalled), or shoot again.");
        }

        var marks = Marks.Of(first, second, statistic);
        double deals = MathNet.Numerics.SpecialFunctions.Binomial(marks.Count, marks.First);
        // Distances do not tell the two halves of an even deal apart, so each deal then has a twin.
        double smallest = (first.Moments.Count == second.Moments.Count ? 2 : 1) / deals;
        double asShot = Marks.Measure(marks.FirstRight, marks.FirstUp) * (1 - Tie);
        if (deals <= limit)
        {
            long at = marks.CountAll(asShot, 0, marks.First, 0, 0);
            return new(at / deals, smallest, (long)deals, true);
        }

        long drawn = marks.CountDrawn(asShot, limit, new Random(seed));
        return new((drawn + 1.0) / (limit + 1.0), Math.Max(smallest, 1 / (limit + 1.0)), limit, false);
    }

    // Impacts about their common mean, so that the sum of one group tells the difference of means: it is the sum times (1/n1 + 1/n2).
    // Whitened by the common scatter, which no deal changes, the squared length of the sum grows with Hotelling's T².
    sealed record Marks(double[] Right, double[] Up, int First)
    {
        internal int Count => Right.Length;

        internal double FirstRight => Right.Take(First).Sum();

        internal double FirstUp => Up.Take(First).Sum();

        internal static Marks Of(Group first, Group second, PermutationStatistic statistic)
        {
            Impact[] all = [.. first.Impacts, .. second.Impacts];
            Moments common = Moments.Of(all);
            var scatter = Symmetric.ScatterOf(common);
            if (scatter.Trace == 0)
            {
                throw new CannotTellException("All impacts are recorded in one place, so no deal differs from another. Record them finer, or shoot more arrows.");
            }

            double[] right = [.. all.Select(i => i.Right.Meters - common.MeanRight)], up = [.. all.Select(i => i.Up.Meters - common.MeanUp)];
            return statistic == PermutationStatistic.Distance ? new(right, up, first.Moments.Count) : Whitened(right, up, scatter, first.Moments.Count);
        }

        static Marks Whitened(double[] right, double[] up, Symmetric scatter, int first)
        {
            if (scatter.Flat)
            {
                throw new CannotTellException("All impacts are recorded on one line, so Hotelling's statistic is not defined. Compare distances instead, or record them finer.");
            }

            double root = Math.Sqrt(scatter.Right), slope = scatter.Cross / scatter.Right, rest = Math.Sqrt(scatter.Determinant / scatter.Right);
            double[] across = [.. right.Select(r => r / root)], along = [.. right.Zip(up, (r, u) => (u - (slope * r)) / rest)];
            return new(across, along, first);
        }

        internal static double Measure(double right, double up) => (right * right) + (up * up);

        internal long CountAll(double asShot, int from, int left, double right, double up)
        {
            if (left == 0)
            {
                return Measure(right, up) >= asShot ? 1 : 0;
            }

            long count = 0;
            for (int i = from; i <= Count - left; i++)
            {
                count += CountAll(asShot, i + 1, left - 1, right + Right[i], up + Up[i]);
            }

            return count;
        }

        internal long CountDrawn(double asShot, int draws, Random random)
        {
            int[] order = [.. Enumerable.Range(0, Count)];
            long count = 0;
            for (int k = 0; k < draws; k++)
            {
                double right = 0, up = 0;
                for (int i = 0; i < First; i++)
                {
                    int j = random.Next(i, Count);
                    (order[i], order[j]) = (order[j], order[i]);
                    right += Right[order[i]];
                    up += Up[order[i]];
                }

                count += Measure(right, up) >= asShot ? 1 : 0;
            }

            return count;
        }
    }
}
