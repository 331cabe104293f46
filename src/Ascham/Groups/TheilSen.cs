namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;

/// <summary>The median slope over pairs of arrows within strings.</summary>
static class TheilSen
{
    /// <summary>The slope with the interval cut where Kendall's score of the detrended strings leaves what chance gives.</summary>
    /// <returns>The estimate; <see langword="null"/> when no interval reaches the level.</returns>
    /// <remarks>The standard error is the width of the interval over that of a normal one at the same level.</remarks>
    internal static Estimate<T>? Slope<T>(StringSeries[] strings, MannKendall rank, double level, Func<double, T> unit)
    {
        double[] slopes = [.. strings.SelectMany(Pairs).Order()];
        if (slopes.Length == 0 || KendallNull.Within(strings, rank, level) is not { } within)
        {
            return null;
        }

        int n = slopes.Length, below = (int)Math.Round((n - within) / 2) - 1, above = (int)Math.Round((n + within) / 2);
        if (below < 0 || above > n - 1)
        {
            return null;
        }

        double median = (slopes[(n - 1) / 2] + slopes[n / 2]) / 2, error = (slopes[above] - slopes[below]) / (2 * Normal.InvCDF(0, 1, (1 + level) / 2));
        return new(unit(median), unit(error), unit(slopes[below]), unit(slopes[above]), level, strings.Sum(s => s.Count), "Theil and Sen's median slope, distribution-free");
    }

    static IEnumerable<double> Pairs(StringSeries s)
    {
        for (int i = 0; i < s.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (s.Against[i] != s.Against[j])
                {
                    yield return (s.Offset[i] - s.Offset[j]) / (s.Against[i] - s.Against[j]);
                }
            }
        }
    }
}
