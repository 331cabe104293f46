namespace Ascham.Sights;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

/// <summary>Stations turned into measured errors of a printed tape, with their covariance.</summary>
sealed class TapeEvidence
{
    readonly IReadOnlyList<TapeStation> stations;
    readonly SightModel model;
    readonly Tape tape;
    readonly double[] at;
    readonly Vector<double> error;
    readonly Matrix<double> covariance, scatter;
    readonly double scatterFreedom, shortest, longest;

    TapeEvidence(Tape tape, IReadOnlyList<TapeStation> stations, SightModel model)
    {
        (this.tape, this.stations, this.model) = (tape, stations, model);
        at = [.. stations.Select(s => tape.PositionAt(s.Distance).Meters)];
        error = Vector<double>.Build.Dense(stations.Count, i => model.CentringPosition(stations[i]) - at[i]);
        scatter = Matrix<double>.Build.DenseOfDiagonalArray([.. stations.Select(s => Square(s.MeanUpSd.Meters * model.PositionPerHeight(s.Distance)))]);
        covariance = scatter.Clone();
        for (int i = 0; i < stations.Count; i++)
        {
            covariance[i, i] += Square(stations[i].DistanceSd.Meters * model.ErrorPerDistance(stations[i]));
            for (int j = 0; j < stations.Count; j++)
            {
                covariance[i, j] += stations[i].SettingKey == stations[j].SettingKey ? stations[i].SettingSd.Meters * stations[j].SettingSd.Meters : 0;
            }
        }

        scatterFreedom = stations.Min(s => s.ScatterFreedom);
        shortest = stations.Min(s => s.Distance.Meters);
        longest = stations.Max(s => s.Distance.Meters);
        Distances = stations.Select(s => Math.Round(s.Distance.Meters, 2)).Distinct().Count();
    }

    /// <summary>Number of different distances, to a centimetre.</summary>
    internal int Distances { get; }

    internal ScaleDirection Increases => model.Geometry.Increases;

    internal static TapeEvidence Of(Tape tape, IReadOnlyList<TapeStation> stations, SightModel model)
    {
        foreach (var s in stations)
        {
            Require.Finite(s.Setting.Meters, "m", "station's setting");
            Require.Finite(s.MeanUp.Meters, "m", "station's mean height");
            Require.Positive(s.MeanUpSd.Meters, "m", "station's standard error");
            Require.Positive(s.ScatterFreedom, "", "station's degrees of freedom");
            Require.NotNegative(s.DistanceSd.Meters, "m", "station's distance_sd");
            Require.NotNegative(s.SettingSd.Meters, "m", "station's setting_sd");
        }

        if (stations.FirstOrDefault(s => !tape.Covers(s.Distance)) is { } off)
        {
            throw new ArgumentException($"A station stands at {off.Distance}, but the tape runs from {tape.Shortest.Distance} to {tape.Longest.Distance}.", nameof(stations));
        }

        return stations.Count > 0
            ? new TapeEvidence(tape, stations, model)
            : throw new ArgumentException("No station was given; a tape is checked at three distances at the least, better at five.", nameof(stations));
    }

    internal TapePattern Fit(int terms, bool admitMisfit = false) =>
        TapePattern.Fit(tape, at, error, covariance, scatter, scatterFreedom, terms, admitMisfit);

    /// <summary>Probability of stations at least this far from a pattern when it holds.</summary>
    internal double MisfitProbability(TapePattern pattern) => pattern.FreeObservations == 0
        ? 1
        : 1 - FisherSnedecor.CDF(pattern.FreeObservations, OverallFreedom(), pattern.ChiSquare / pattern.FreeObservations);

    /// <summary>Probability of slide and scale at least this far from zero, together, when the tape is sound.</summary>
    internal double DifferenceProbability(TapePattern line)
    {
        double explained = error * covariance.Cholesky().Solve(error) - line.ChiSquare;
        return 1 - FisherSnedecor.CDF(2, OverallFreedom(), Math.Max(0, explained) / 2);
    }

    /// <summary>One-sided upper bound of a mark's error on the target, m.</summary>
    internal double Bound(Mark mark, TapePattern pattern, double confidence)
    {
        var (value, standardError, freedom) = pattern.At(mark.Position.Meters);
        return (Math.Abs(value) + Quantiles.StudentT(freedom, 2 * confidence - 1) * standardError) / Math.Abs(model.PositionPerHeight(mark.Distance));
    }

    internal TapeError ErrorAt(Mark mark, TapePattern pattern, double confidence)
    {
        var onTape = Length(pattern.At(mark.Position.Meters), confidence, pattern.Terms switch { 1 => "slide alone", 2 => "slide and scale", _ => "slide, scale and bend" });
        return new()
        {
            Distance = mark.Distance,
            Printed = mark.Position,
            OnTape = onTape,
            InDistance = InDistance(mark.Distance, onTape),
            OnTarget = Scaled(onTape, 1 / model.PositionPerHeight(mark.Distance)),
            Corrected = onTape with { Value = mark.Position + onTape.Value, Low = mark.Position + onTape.Low, High = mark.Position + onTape.High },
            Extrapolated = mark.Distance.Meters < shortest * (1 - 1e-6) || mark.Distance.Meters > longest * (1 + 1e-6),
        };
    }

    // Close in the scale is curved, so each end of the interval is solved for; the standard error is of first order.
    Estimate<Length>? InDistance(Length distance, Estimate<Length> onTape)
    {
        double travel = model.ScaleTravel(distance);
        double Shot(Length error) => model.DistanceFor(travel - error.Meters, distance.Meters) - distance.Meters;
        var (value, one, other) = (Shot(onTape.Value), Shot(onTape.Low), Shot(onTape.High));
        double slope = model.PositionPerDistance(distance);
        return double.IsNaN(value + one + other)
            ? null
            : new(Length(value), Length(Math.Abs(onTape.StandardError.Meters / slope)), Length(Math.Min(one, other)), Length(Math.Max(one, other)), onTape.Level, onTape.Count, onTape.HowObtained);

        Length Length(double metres) => UnitsNet.Length.FromMeters(metres).ToUnit(distance.Unit);
    }

    internal StationError[] StationErrors(double confidence) =>
    [
        .. stations.Select((station, i) =>
        {
            var onTape = Length((error[i], Math.Sqrt(covariance[i, i]), scatterFreedom * Square(covariance[i, i] / scatter[i, i])), confidence, "one station: scatter, distance and setting") with { Count = station.Arrows };
            return new StationError(station, onTape, Scaled(onTape, 1 / model.PositionPerHeight(station.Distance)));
        }),
    ];

    internal Estimate<Length> Length((double Value, double Error, double Freedom) found, double level, string how) =>
        Estimate(found, level, how, v => UnitsNet.Length.FromMeters(v));

    internal Estimate<T> Estimate<T>((double Value, double Error, double Freedom) found, double level, string how, Func<double, T> unit)
    {
        double half = Quantiles.StudentT(found.Freedom, level) * found.Error;
        return new(unit(found.Value), unit(found.Error), unit(found.Value - half), unit(found.Value + half), level, stations.Sum(s => s.Arrows), how);
    }

    double OverallFreedom() => Math.Min(1e6, scatterFreedom * Square(covariance.Trace() / scatter.Trace()));

    static Estimate<Length> Scaled(Estimate<Length> estimate, double factor)
    {
        var (a, b) = (estimate.Low * factor, estimate.High * factor);
        return estimate with { Value = estimate.Value * factor, StandardError = estimate.StandardError * Math.Abs(factor), Low = factor < 0 ? b : a, High = factor < 0 ? a : b };
    }

    static double Square(double x) => x * x;
}
