namespace Ascham.Groups;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;

/// <summary>The share of hits behind a count of hits, without any assumption of how arrows scatter.</summary>
/// <remarks>
/// <para><b>Model.</b> Each arrow hits with the same probability, whatever the arrow before did. Interval of C. J. Clopper and E. S. Pearson: each end fails at most (1 − level)/2 of the time.</para>
/// <para><b>Limits.</b> It is cautious, the more so the fewer the arrows: the true share lies inside more often than stated. All hits of five still leave a share of 55 % possible (90 % interval).</para>
/// <para><b>Source.</b> C. J. Clopper, E. S. Pearson (1934), The use of confidence or fiducial limits illustrated in the case of the binomial, <i>Biometrika</i> 26, 404-413.</para>
/// </remarks>
public static class HitShare
{
    const int MostArrows = 1_000_000;

    /// <summary>Estimates the long-run share of hits.</summary>
    /// <param name="hits">Arrows that hit; 0 to <paramref name="arrows"/>.</param>
    /// <param name="arrows">Arrows shot, all of them; 1 to 1,000,000.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>Hits over arrows, with its interval; the standard error is that of (hits + 1)/(arrows + 2), so that it is not zero when all hit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Estimate<double> Of(int hits, int arrows, double level)
    {
        Require.InRange(arrows, 1, MostArrows, "arrows");
        Require.InRange(hits, 0, arrows, "hits");
        double tail = (1 - Require.Level(level)) / 2, guess = (hits + 1) / (arrows + 2.0);
        double low = hits == 0 ? 0 : hits == arrows ? Math.Pow(tail, 1.0 / arrows) : Beta.InvCDF(hits, arrows - hits + 1, tail);
        double high = hits == arrows ? 1 : hits == 0 ? 1 - Math.Pow(tail, 1.0 / arrows) : Beta.InvCDF(hits + 1, arrows - hits, 1 - tail);
        return new(hits / (double)arrows, Math.Sqrt(guess * (1 - guess) / arrows), low, high, level, arrows, "hits over arrows, Clopper and Pearson's interval");
    }
}
