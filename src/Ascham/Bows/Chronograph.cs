namespace Ascham.Bows;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>An instrument that reads the speed of an arrow, and how far it may be trusted.</summary>
/// <remarks>
/// Where it stands does not matter here: a reading belongs to its own place. What the air took on the way there is given back by
/// <c>LaunchReading</c> of the room Flight, which knows drag.
/// </remarks>
public sealed record Chronograph
{
    /// <summary>Relative standard deviation of the instrument as a whole, common to all its readings; 0 to 10 %. A stated limit of ±1 % is 0.58 %: the limit over √3.</summary>
    public required Ratio ScaleSd
    {
        get;
        init
        {
            Require.InRange(value.DecimalFractions, 0, 0.1, "", nameof(ScaleSd));
            field = value;
        }
    }

    /// <summary>Step of its display; 0 to 10 m/s. Readings that agree to the digit are not taken as more alike than a step allows.</summary>
    public required Speed Resolution
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, 0, 10, "m/s", nameof(Resolution));
            field = value;
        }
    }

    /// <summary>Mean of several readings of the same arrow from the same bow, with its interval, the instrument's error included.</summary>
    /// <remarks>
    /// u² = s²/n + (scale × mean)², with s at least step/√12; effective degrees of freedom u⁴/((s²/n)²/(n − 1)), the instrument's own taken as
    /// infinite (B. L. Welch, Biometrika 34 (1947) 28-35; F. E. Satterthwaite 1946; JCGM 100:2008, G.4). More shots do not shrink the instrument's part.
    /// </remarks>
    /// <param name="readings">Two or more, in any order.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The mean speed at the chronograph.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two readings, one outside 0 to 200 m/s, or a level outside its range.</exception>
    /// <exception cref="InvalidOperationException">All readings agree and neither resolution nor scale error is stated: how sure the mean is cannot be told.</exception>
    public Estimate<Speed> Mean(IEnumerable<Speed> readings, double level)
    {
        Require.Level(level);
        (double mean, double sd, int n) = Summary(readings);
        double least = Resolution.MetersPerSecond / Math.Sqrt(12), spread = Math.Max(sd, least), random = spread * spread / n;
        double instrument = Math.Pow(ScaleSd.DecimalFractions * mean, 2), variance = random + instrument;
        if (!(variance > 0))
        {
            throw new InvalidOperationException("How sure the mean is cannot be told: all readings agree, and neither Resolution nor ScaleSd of the chronograph is above zero.");
        }

        double freedom = random > 0 ? variance * variance * (n - 1) / (random * random) : double.PositiveInfinity;
        double multiplier = freedom < 1e6 ? Quantiles.StudentT(freedom, level) : Bounds.Multiplier(level);
        return Bounds.About(mean, Math.Sqrt(variance), multiplier, level, n, "mean of readings, with the instrument's own error").Map(v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>One single reading with its interval, when it is known from elsewhere how much shots differ.</summary>
    /// <param name="reading">The reading; positive, up to 200 m/s.</param>
    /// <param name="shotSd">Standard deviation from shot to shot, of this bow and archer; 0 to 50 m/s.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The speed the bow gives on average, as far as one shot tells.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public Estimate<Speed> OneReading(Speed reading, Speed shotSd, double level)
    {
        double v = Require.InRange(reading.MetersPerSecond, double.Epsilon, 200, "m/s", nameof(reading));
        double spread = Require.InRange(shotSd.MetersPerSecond, 0, 50, "m/s", nameof(shotSd)), step = Resolution.MetersPerSecond / Math.Sqrt(12);
        double error = Math.Sqrt(spread * spread + step * step + Math.Pow(ScaleSd.DecimalFractions * v, 2));
        return Bounds.Normal(v, error, level, 1, "one reading, spread of shots known, with the instrument's own error").Map(x => Speed.FromMetersPerSecond(x));
    }

    internal static (double Mean, double Sd, int Count) Summary(IEnumerable<Speed> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        double[] v = [.. readings.Select(r => Require.InRange(r.MetersPerSecond, double.Epsilon, 200, "m/s", nameof(readings)))];
        if (v.Length < 2)
        {
            throw new ArgumentOutOfRangeException(nameof(readings), v.Length, FormattableString.Invariant($"A mean with an interval needs two readings or more; there were {v.Length}. Shoot again."));
        }

        double mean = v.Average();
        return (mean, Math.Sqrt(v.Sum(x => (x - mean) * (x - mean)) / (v.Length - 1)), v.Length);
    }
}
