namespace Ascham.Groups;

using MathNet.Numerics;
using MathNet.Numerics.Distributions;

/// <summary>Wald and Wolfowitz's test of runs: few long runs on one side of the middle mean drift, many short ones mean alternation.</summary>
/// <remarks>
/// <para><b>Model.</b> Without either, all arrangements of the sides are equally likely. Each string has its own middle, its median; an arrow on the median takes no
/// part. Runs, their means and variances are added over strings.</para>
/// <para><b>Accuracy.</b> Exact when no string has more than forty arrows off its median; otherwise normal without continuity correction.
/// Strings of six or fewer show next to nothing.</para>
/// <para><b>Source.</b> Wald and Wolfowitz (1940), <i>Ann. Math. Statist.</i> 11; NIST/SEMATECH e-Handbook 1.3.5.13.</para>
/// </remarks>
/// <param name="Runs">Number of runs.</param>
/// <param name="Expected">Its mean when neither drift nor alternation is there.</param>
/// <param name="StandardDeviation">Its standard deviation then.</param>
/// <param name="FewerProbability">How often there would be so few runs, or fewer: small for drift.</param>
/// <param name="MoreProbability">How often there would be so many runs, or more: small for alternation.</param>
/// <param name="Exact">Whether the probabilities are counted rather than taken from the normal law.</param>
public sealed record RunsTest(int Runs, double Expected, double StandardDeviation, double FewerProbability, double MoreProbability, bool Exact)
{
    /// <summary>Longest string whose arrangements are counted out.</summary>
    public const int LongestExact = 40;

    /// <summary>The number of runs in standard deviations from its mean; negative for drift. Zero where nothing else was possible.</summary>
    public double Z => StandardDeviation > 0 ? (Runs - Expected) / StandardDeviation : 0;

    /// <summary>Twice the smaller of the two probabilities, at most 1.</summary>
    public double Probability => Math.Min(1, 2 * Math.Min(FewerProbability, MoreProbability));

    /// <summary>Tests the sides of one string, in shot order.</summary>
    /// <param name="sides">True on one side, false on the other; at least one.</param>
    /// <returns>The test.</returns>
    /// <exception cref="CannotTellException">No arrow on one of the sides.</exception>
    public static RunsTest OfSides(IEnumerable<bool> sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        return Of([[.. sides]]) ?? throw new CannotTellException("Runs tell nothing: all arrows lie on one side.");
    }

    /// <summary>Tests numbers in the order they came, about their median.</summary>
    /// <param name="values">Two numbers or more; none NaN.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">A number is NaN.</exception>
    /// <exception cref="CannotTellException">All lie on the median.</exception>
    public static RunsTest AboutMedian(IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        double[] all = [.. values];
        return all.Any(double.IsNaN)
            ? throw new ArgumentException("values must be numbers; one was NaN.", nameof(values))
            : Of([Sides(all)]) ?? throw new CannotTellException("Runs tell nothing: all values lie on the median.");
    }

    /// <summary>Adds strings, each about its own median; <see langword="null"/> when no string has arrows on both sides.</summary>
    internal static RunsTest? Of(StringSeries[] strings) => Of(strings.Select(s => Sides(s.Offset)));

    static RunsTest? Of(IEnumerable<bool[]> strings)
    {
        (int Above, int Below, int Runs)[] told = [.. strings.Select(s => (s.Count(x => x), s.Count(x => !x), CountRuns(s))).Where(s => s.Item1 > 0 && s.Item2 > 0)];
        if (told.Length == 0)
        {
            return null;
        }

        int runs = told.Sum(s => s.Runs);
        double expected = told.Sum(s => Mean(s.Above, s.Below)), sd = Math.Sqrt(told.Sum(s => Variance(s.Above, s.Below)));
        if (told.Any(s => s.Above + s.Below > LongestExact))
        {
            double z = (runs - expected) / sd;
            return new(runs, expected, sd, Normal.CDF(0, 1, z), Normal.CDF(0, 1, -z), false);
        }

        double[] chance = told.Select(s => Chance(s.Above, s.Below)).Aggregate(Convolve);
        return new(runs, expected, sd, Math.Min(1, chance.Take(runs + 1).Sum()), Math.Min(1, chance.Skip(runs).Sum()), true);
    }

    static double Mean(double a, double b) => (2 * a * b / (a + b)) + 1;

    static double Variance(double a, double b) => 2 * a * b * ((2 * a * b) - a - b) / ((a + b) * (a + b) * (a + b - 1));

    // Chance of each number of runs: compositions of both sides into blocks that alternate.
    static double[] Chance(int a, int b)
    {
        double all = SpecialFunctions.Binomial(a + b, a);
        double Blocks(int n, int blocks) => blocks < 1 || blocks > n ? 0 : SpecialFunctions.Binomial(n - 1, blocks - 1);
        double[] chance = new double[a + b + 1];
        for (int r = 2; r <= a + b; r++)
        {
            int half = r / 2;
            chance[r] = r % 2 == 0
                ? 2 * Blocks(a, half) * Blocks(b, half) / all
                : ((Blocks(a, half + 1) * Blocks(b, half)) + (Blocks(a, half) * Blocks(b, half + 1))) / all;
        }

        return chance;
    }

    static double[] Convolve(double[] a, double[] b)
    {
        double[] sum = new double[a.Length + b.Length - 1];
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < b.Length; j++)
            {
                sum[i + j] += a[i] * b[j];
            }
        }

        return sum;
    }

    static bool[] Sides(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int n = sorted.Length;
        double median = n == 0 ? 0 : sorted[(n - 1) / 2] + ((sorted[n / 2] - sorted[(n - 1) / 2]) / 2);
        return [.. values.Where(v => v != median).Select(v => v > median)];
    }

    static int CountRuns(bool[] sides) => sides.Length == 0 ? 0 : 1 + sides.Skip(1).Zip(sides, (now, before) => now != before ? 1 : 0).Sum();
}
