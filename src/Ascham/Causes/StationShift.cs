namespace Ascham.Causes;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

/// <summary>How far the centre moved at one distance, from when all was well to now.</summary>
/// <param name="Distance">The distance.</param>
/// <param name="Up">Up; negative when lower.</param>
/// <param name="Right">To the right.</param>
/// <param name="AgainstBaseline">Whether against impacts from then; otherwise against the aim point, errors of the tape included.</param>
/// <remarks>Intervals hold scatter, setting and ranging; not the archer's ordinary days, which shift all distances of a session by one angle.</remarks>
public sealed record StationShift(Length Distance, Estimate<Length> Up, Estimate<Length> Right, bool AgainstBaseline)
{
    const double UsualScatter = 1.2; // mrad, where no station holds two arrows: the belief of the ranking; common practice, no source
    const double Same = 0.005; // of the distance

    /// <summary>Works out the shifts at every distance shot now with the sight on its mark and with vanes.</summary>
    /// <param name="evidence">The evidence.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <returns>By distance, the nearest first; empty when all shots were made with the sight set otherwise.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static IReadOnlyList<StationShift> Of(Evidence evidence, double level)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        Require.Level(level);
        StationMean[] on = [.. evidence.Stations.Where(s => !s.Bare && s.SightAngle is null)];
        List<StationShift> shifts = [];
        foreach (StationMean now in on.Where(s => s.Now).OrderBy(s => s.Distance))
        {
            if (shifts.Count > 0 && At(now, shifts[^1].Distance))
            {
                continue; // several sessions of now at one distance are one point
            }

            Side after = Side.Of([.. on.Where(s => s.Now && At(s, now.Distance))], evidence.ScatterNow, evidence.ScatterThen);
            Side? before = on.Any(s => !s.Now && At(s, now.Distance)) ? Side.Of([.. on.Where(s => !s.Now && At(s, now.Distance))], evidence.ScatterThen, evidence.ScatterNow) : null;
            shifts.Add(new(now.Distance,
                Difference(after.Up, before?.Up, level, after.Count + (before?.Count ?? 0)),
                Difference(after.Right, before?.Right, level, after.Count + (before?.Count ?? 0)), before is not null));
        }

        return shifts;
    }

    static bool At(StationMean station, Length distance) => Math.Abs(station.Distance.Meters - distance.Meters) < Same * distance.Meters;

    static Estimate<Length> Difference(Mean after, Mean? before, double level, double arrows)
    {
        double variance = after.Variance + (before?.Variance ?? 0), sd = Math.Sqrt(variance), value = after.Value - (before?.Value ?? 0);
        double half = sd * (after.Freedom > 0 ? StudentT.InvCDF(0, 1, after.Freedom, (1 + level) / 2) : Normal.InvCDF(0, 1, (1 + level) / 2));
        return new(Length.FromMeters(value), Length.FromMeters(sd), Length.FromMeters(value - half), Length.FromMeters(value + half), level, (int)Math.Round(arrows),
            after.Freedom > 0 ? "difference of means; pooled scatter, setting and ranging" : "difference of means; scatter not known, the usual one taken");
    }

    /// <summary>A mean, m, with its variance; the degrees of freedom of its scatter.</summary>
    readonly record struct Mean(double Value, double Variance, double Freedom);

    /// <summary>All stations of one time at one distance.</summary>
    readonly record struct Side(Mean Up, Mean Right, double Count)
    {
        internal static Side Of(StationMean[] stations, WithinScatter scatter, WithinScatter other)
        {
            WithinScatter known = scatter.DegreesOfFreedom > 0 ? scatter : other;
            var (up, right) = known.DegreesOfFreedom > 0 ? (known.Up, known.Right) : (UsualScatter, UsualScatter);
            double arrows = stations.Sum(s => s.Arrows);
            Mean Of(Func<StationMean, Length> value, Func<StationMean, Length> error, double sigma) => new(
                stations.Sum(s => s.Arrows * value(s).Meters) / arrows,
                stations.Sum(s => Square(s.Arrows / arrows) * (Square(sigma * 1e-3 * s.Distance.Meters) / s.Arrows + Square(error(s).Meters))), known.DegreesOfFreedom);
            return new(Of(s => s.Up, s => s.UpSd, up), Of(s => s.Right, s => s.RightSd, right), arrows);
        }

        static double Square(double x) => x * x;
    }
}
