namespace Ascham.Flight;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Turns the sums of a face, kept by repetition, into estimates.</summary>
/// <remarks>
/// The error of a result is seen in the spread between the sixteen repetitions, which are independent however their arrows
/// were drawn. With too few arrows for repetitions of one size, the errors are those of a normal sample.
/// </remarks>
sealed class FaceEstimates(FaceSums[] repetitions, Strike<double> about, long arrows, BatchOptions options)
{
    // From here on repetitions differ by less than a tenth in size.
    const long EnoughForRepetitions = 10L * BatchDraws.Repetitions * BatchChunk.Arrows;

    readonly FaceSums all = Together(repetitions);

    internal FaceResult Result(Length distance, StrikeHistogram? histogram) => new()
    {
        Distance = distance,
        Arrived = (long)all.Arrived,
        MeanRight = Mean(s => s.Right, s => s.RightRight, about.Right).Map(si => Length.FromMeters(si)),
        MeanUp = Mean(s => s.Up, s => s.UpUp, about.Up).Map(si => Length.FromMeters(si)),
        SdRight = Sd(s => s.Right, s => s.RightRight).Map(si => Length.FromMeters(si)),
        SdUp = Sd(s => s.Up, s => s.UpUp).Map(si => Length.FromMeters(si)),
        Correlation = CorrelationOf(),
        MeanTime = Mean(s => s.Time, s => s.TimeTime, about.Time).Map(si => Duration.FromSeconds(si)),
        MeanSpeed = Mean(s => s.Speed, s => s.SpeedSpeed, about.Speed).Map(si => Speed.FromMetersPerSecond(si)),
        SdSpeed = Sd(s => s.Speed, s => s.SpeedSpeed).Map(si => Speed.FromMetersPerSecond(si)),
        Within = options.Circle is null ? null : Share(),
        Histogram = histogram,
    };

    Estimate<double> Mean(Func<FaceSums, double> sum, Func<FaceSums, double> squares, double from)
    {
        double Of(FaceSums s) => from + sum(s) / s.Arrived;
        return Symmetric(Of, s => Math.Sqrt(Variance(s, sum, squares) / s.Arrived), double.NegativeInfinity, double.PositiveInfinity);
    }

    Estimate<double> Sd(Func<FaceSums, double> sum, Func<FaceSums, double> squares)
    {
        double Of(FaceSums s) => Math.Sqrt(Variance(s, sum, squares));
        return Symmetric(Of, s => Of(s) / Math.Sqrt(2 * (s.Arrived - 1)), 0, double.PositiveInfinity);
    }

    Estimate<double> CorrelationOf()
    {
        static double Of(FaceSums s)
        {
            double product = Variance(s, t => t.Right, t => t.RightRight) * Variance(s, t => t.Up, t => t.UpUp);
            return product > 0 ? (s.RightUp - s.Right * s.Up / s.Arrived) / (s.Arrived - 1) / Math.Sqrt(product) : 0;
        }

        return Symmetric(Of, s => (1 - Of(s) * Of(s)) / Math.Sqrt(s.Arrived - 1), -1, 1);
    }

    Estimate<double> Symmetric(Func<FaceSums, double> value, Func<FaceSums, double> normalError, double least, double most)
    {
        double estimate = value(all), error = Repeated ? ErrorBetween(value) : normalError(all);
        double reach = Multiplier * error;
        return new(estimate, error, Math.Max(least, estimate - reach), Math.Min(most, estimate + reach), options.Level, (int)Math.Min(int.MaxValue, all.Arrived), How);
    }

    /// <summary>E. B. Wilson, J. Am. Statist. Assoc. 22 (1927) 209-212, with the number of arrows of chance that would leave the error seen.</summary>
    Estimate<double> Share()
    {
        double p = all.Within / arrows, error = Math.Sqrt(p * (1 - p) / arrows), n = arrows;
        if (options.Sampling == Sampling.EvenlySpread && ErrorBetween(s => s.Within / ((double)arrows / BatchDraws.Repetitions)) is > 0 and double seen)
        {
            (n, error) = (Math.Max(arrows, p * (1 - p) / (seen * seen)), Math.Min(seen, error));
        }

        double z = Multiplier, scale = 1 + z * z / n, middle = (p + z * z / (2 * n)) / scale;
        double reach = z / scale * Math.Sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        return new(p, error, Math.Max(0, middle - reach), Math.Min(1, middle + reach), options.Level, (int)Math.Min(int.MaxValue, arrows), How);
    }

    bool Repeated => options.Sampling == Sampling.EvenlySpread || arrows >= EnoughForRepetitions;

    double Multiplier => Repeated ? Quantiles.StudentT(BatchDraws.Repetitions - 1, options.Level) : Quantiles.StudentT(Math.Max(1, all.Arrived - 1), options.Level);

    string How => (options.Sampling == Sampling.EvenlySpread ? "evenly spread arrows" : "arrows drawn by chance")
        + (Repeated ? $", error from {BatchDraws.Repetitions} repetitions" : ", error as of a normal sample");

    double ErrorBetween(Func<FaceSums, double> value)
    {
        double[] values = [.. repetitions.Select(value)];
        double mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1) / values.Length);
    }

    static double Variance(FaceSums s, Func<FaceSums, double> sum, Func<FaceSums, double> squares)
        => Math.Max(0, (squares(s) - sum(s) * sum(s) / s.Arrived) / (s.Arrived - 1));

    static FaceSums Together(FaceSums[] repetitions)
    {
        var all = default(FaceSums);
        foreach (ref readonly FaceSums one in repetitions.AsSpan())
        {
            all.Add(one);
        }

        return all;
    }
}
