namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Whether impacts wander along a string.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <param name="Slope">Change per arrow (or per second of hold), least squares, Student t interval. Times n − 1 it is the drift from first to last arrow.</param>
/// <param name="Probability">How often a slope at least as large in size would come about without a trend.</param>
/// <param name="Residual">Sigma about the lines: what is left when the trend is taken out.</param>
/// <param name="RankSlope">Theil and Sen's slope, the median over pairs, with the interval that belongs to <see cref="Rank"/>; null when the strings are too short for one.</param>
/// <param name="Rank">The distribution-free check.</param>
/// <param name="Runs">Drift or alternation of unknown shape, by runs; null when no string has arrows on both sides of its median.</param>
/// <param name="Steps">Likewise, by steps from arrow to arrow; null when strings are too short.</param>
/// <param name="Strings">Number of strings.</param>
/// <param name="LeftOut">Counted arrows left out because no hold time was recorded.</param>
public sealed record Trend<T>(
    Estimate<T> Slope, double Probability, Sigma<T> Residual, Estimate<T>? RankSlope, MannKendall Rank, RunsTest? Runs, SuccessiveDifferences<T>? Steps, int Strings, int LeftOut);

/// <summary>Trend along strings of arrows: tiring, holding too long, a sight working loose.</summary>
/// <remarks>
/// <para><b>Model.</b> Each string has its own level; one slope is shared by all. Least squares within strings, N − strings − 1 degrees of freedom, beside Mann-Kendall,
/// Theil-Sen, runs and von Neumann's ratio. Shot order is the place within the string: every string starts anew.</para>
/// <para><b>Limits.</b> A trend with shot order does not say why. Arrows shot in the same order each time bring their own differences in: shuffle them.
/// Order and hold time often go together; one slope at a time cannot part them.</para>
/// <para><b>Source.</b> Theil (1950), Sen (1968), <i>J. Am. Statist. Assoc.</i> 63, 1379; others as named at each.</para>
/// </remarks>
public static class Trend
{
    /// <summary>Looks for a trend in strings shot at one distance, as a length on the face.</summary>
    /// <param name="strings">One string or more, each a group of one session without missed arrows.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="against">What the strings are set against.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The trend, in the unit of the first impact per arrow or per second.</returns>
    /// <exception cref="ArgumentException">No string, strings of several distances, or one whose order is not known.</exception>
    /// <exception cref="CannotTellException">Too few arrows, all alike, or an arrow missed: <see cref="MannKendall.Of(IEnumerable{Group}, Axis, TrendAgainst)"/> still tells then.</exception>
    public static Trend<Length> Of(IEnumerable<Group> strings, Axis axis, TrendAgainst against, double level)
    {
        Group[] all = StringSeries.Checked(strings, false);
        Length[] distances = [.. all.Select(g => g.Distance).OfType<Length>()];
        if (distances.Any(d => !ShotCheck.Same(d, distances[0])))
        {
            throw new ArgumentException("strings must be of one distance; OfAngles sets strings of several distances side by side.", nameof(strings));
        }

        return Of(all, axis, against, false, level, all[0].InItsUnit);
    }

    /// <summary>Looks for a trend in strings shot at any distances, as an angle.</summary>
    /// <param name="strings">One string or more, each a group of one session of known distance, without missed arrows.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="against">What the strings are set against.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>The trend, in milliradians per arrow or per second.</returns>
    /// <exception cref="ArgumentException">No string, one without a distance, or one whose order is not known.</exception>
    /// <exception cref="CannotTellException">Too few arrows, all alike, or an arrow missed.</exception>
    public static Trend<Angle> OfAngles(IEnumerable<Group> strings, Axis axis, TrendAgainst against, double level) =>
        Of(StringSeries.Checked(strings, true), axis, against, true, level, radians => Angle.FromRadians(radians).ToUnit(AngleUnit.Milliradian));

    static Trend<T> Of<T>(Group[] strings, Axis axis, TrendAgainst against, bool angles, double level, Func<double, T> unit)
    {
        Require.Level(level);
        var (series, leftOut) = StringSeries.Of(strings, axis, against, angles, censored: false);
        var line = LinesThrough(series);
        MannKendall rank = MannKendall.Of(series);
        double s = Math.Sqrt(line.Residual / line.Freedom), error = s / Math.Sqrt(line.SumXx), half = error * Quantiles.StudentT(line.Freedom, level);
        int count = series.Sum(q => q.Count);
        Estimate<T> slope = new(unit(line.Slope), unit(error), unit(line.Slope - half), unit(line.Slope + half), level, count, "least squares within strings, normal impacts");
        double probability = NoncentralF.Survival(line.Slope * line.Slope / (error * error), 1, line.Freedom);
        return new(
            slope, probability, Sigma<T>.From(s, line.Freedom, count, level, "s/c(nu) about the lines, normal", unit),
            TheilSen.Slope(series, rank, level, unit), rank, RunsTest.Of(series), SuccessiveDifferences<T>.From(series, level, unit), series.Length, leftOut);
    }

    static (double Slope, double SumXx, double Residual, int Freedom) LinesThrough(StringSeries[] series)
    {
        double xx = 0, xy = 0, yy = 0;
        foreach (StringSeries s in series)
        {
            double meanX = Moments.Mean(s.Against), meanY = Moments.Mean(s.Offset);
            for (int i = 0; i < s.Count; i++)
            {
                double x = s.Against[i] - meanX, y = s.Offset[i] - meanY;
                (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
            }
        }

        int freedom = series.Sum(s => Math.Max(0, s.Count - 1)) - 1;
        double slope = xy / xx, residual = series.Sum(s => ResidualOf(s, slope));
        return freedom < 1 || xx == 0 || yy == 0 || residual <= 1e-24 * yy
            ? throw new CannotTellException(freedom < 1 || xx == 0
                ? "A trend cannot be told: it takes three arrows in a string, shot at different places of the order or held for different times."
                : "A trend cannot be told: the impacts are recorded all alike, or exactly on a line. Record them finer.")
            : (slope, xx, residual, freedom);
    }

    static double ResidualOf(StringSeries s, double slope)
    {
        double meanX = Moments.Mean(s.Against), meanY = Moments.Mean(s.Offset);
        return s.Offset.Zip(s.Against, (y, x) => y - meanY - (slope * (x - meanX))).Sum(r => r * r);
    }
}
