namespace Ascham.Recordings;

using System.Globalization;
using Ascham.Air;
using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

/// <summary>Speed, and drag, from the time between the sounds of release and impact.</summary>
/// <remarks>
/// Equations and the budget of errors: docs/models/recordings.md. Intervals take every stated error as normal. <c>spread</c> is the standard deviation of the launch speed from shot to
/// shot: state it to ask for the bow's mean, or zero to ask for the mean of these very shots.
/// </remarks>
public static class SpeedFromSound
{
    /// <summary>Mean speed over the way from exit to face: straight way over time. It lies below the launch speed by about k x/2, 3 % at 60 yd for k = 0.0012 1/m.</summary>
    /// <param name="shots">One or more, all of one layout.</param>
    /// <param name="air">The air.</param>
    /// <param name="arrow">The arrow at the exit.</param>
    /// <param name="spread">Standard deviation of speed from shot to shot; zero or more.</param>
    /// <param name="confidence">Level of the interval, between 0 and 1.</param>
    /// <returns>The mean speed.</returns>
    /// <exception cref="ArgumentException">No shot, shots of several layouts, or nothing is left for the flight.</exception>
    /// <exception cref="ShotsDisagreeException">The shots cannot be of one bow and arrow.</exception>
    public static Estimate<Speed> Mean(IReadOnlyList<TimedShot> shots, SoundAir air, ArrowAtExit arrow, Speed spread, double confidence)
    {
        var equations = Equations(shots, air, arrow, spread, confidence);
        if (shots.Any(s => s.Layout != shots[0].Layout))
        {
            throw new ArgumentException("A mean speed belongs to one distance; these shots are of several layouts. Ask for the launch speed.", nameof(shots));
        }

        var (speed, _, step) = equations.Solve((v, _, path) => TimeRates.Steady(v, path.Flown), equations.Start, 0, 0);
        return Normally(speed, step, 0, confidence, shots.Count, "way over time between two sounds", v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>Launch speed with a known drag, from one distance or several.</summary>
    /// <param name="shots">One or more.</param>
    /// <param name="air">The air.</param>
    /// <param name="arrow">The arrow at the exit.</param>
    /// <param name="gravity">Gravity at the place.</param>
    /// <param name="drag">Drag of the arrow.</param>
    /// <param name="dragError">Standard error of the drag in proportion; 20 % for a build-up from parts at best.</param>
    /// <param name="spread">Standard deviation of speed from shot to shot; zero or more.</param>
    /// <param name="confidence">Level of the interval, between 0 and 1.</param>
    /// <returns>Speed as the arrow leaves the string.</returns>
    /// <exception cref="ArgumentException">No shot, or nothing is left for the flight.</exception>
    /// <exception cref="InvalidOperationException">The times are not those of an arrow.</exception>
    /// <exception cref="ShotsDisagreeException">The shots cannot be of one bow and arrow.</exception>
    public static Estimate<Speed> Launch(
        IReadOnlyList<TimedShot> shots, SoundAir air, ArrowAtExit arrow, Gravity gravity, Drag drag, Ratio dragError, Speed spread, double confidence)
    {
        ArgumentNullException.ThrowIfNull(drag);
        var equations = Equations(shots, air, arrow, spread, confidence);
        double share = Require.InRange(dragError.DecimalFractions, 0, 10, "", nameof(dragError));
        PointMassSi mass = PointMassSi.Of(drag, air.Air, Checked(gravity)).In(Wind.Of(air.TailWind, Speed.Zero));
        double toProportion = mass.Curve is null ? mass.K : 1; // from per 1/m to per 1, where drag is one constant
        var (speed, _, step) = equations.Solve(
            (v, _, path) =>
            {
                TimeRates at = TimeRates.Flown(mass, v, path.Flown, path.Layout.Inclination.Radians);
                return at with { ByDrag = at.ByDrag * toProportion };
            },
            equations.Start, 0, share);
        return Normally(speed, step, 0, confidence, shots.Count, "time between two sounds through the flight, drag known", v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>Launch speed and drag constant together, from three distances or more.</summary>
    /// <param name="shots">At three distances or more.</param>
    /// <param name="air">The air.</param>
    /// <param name="arrow">The arrow at the exit.</param>
    /// <param name="gravity">Gravity at the place.</param>
    /// <param name="spread">Standard deviation of launch speed from shot to shot; zero or more.</param>
    /// <param name="confidence">Level of the intervals, between 0 and 1.</param>
    /// <returns>Both, however wide their intervals.</returns>
    /// <exception cref="ArgumentException">Fewer than three distances, or nothing is left for the flight.</exception>
    /// <exception cref="InvalidOperationException">The times are not those of an arrow.</exception>
    /// <exception cref="ShotsDisagreeException">The shots cannot be of one bow and arrow.</exception>
    public static SoundFit LaunchAndDrag(IReadOnlyList<TimedShot> shots, SoundAir air, ArrowAtExit arrow, Gravity gravity, Speed spread, double confidence)
    {
        var equations = Equations(shots, air, arrow, spread, confidence);
        int distances = shots.Select(s => s.Layout.DistanceSi).Distinct().Count();
        if (distances < 3)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Drag beside speed needs shots at three distances or more; {distances} given. With one or two, state the drag."), nameof(shots));
        }

        const double Usual = 0.0015; // where the search begins; it does not pull the result
        PointMassSi mass = new PointMassSi(Usual, Checked(gravity), 0, 0, 0).In(Wind.Of(air.TailWind, Speed.Zero));
        var (speed, k, step) = equations.Solve(
            (v, drag, path) => TimeRates.Flown(mass with { K = drag }, v, path.Flown, path.Layout.Inclination.Radians), equations.Start, Usual, null);
        const string How = "weighted least squares of times between two sounds through the flight";
        return new()
        {
            LaunchSpeed = Normally(speed, step, 0, confidence, shots.Count, How, v => Speed.FromMetersPerSecond(v)),
            DragConstant = Normally(k, step, 1, confidence, shots.Count, How, v => ReciprocalLength.FromInverseMeters(v)),
            DragSpeedCorrelation = step.Covariance[0, 1] / Math.Sqrt(step.Covariance[0, 0] * step.Covariance[1, 1]),
            ChiSquare = step.ChiSquare,
            DegreesOfFreedom = step.FreeObservations,
            Residuals = [.. step.Residuals.Select(r => Duration.FromSeconds(r))],
        };
    }

    static SoundEquations Equations(IReadOnlyList<TimedShot> shots, SoundAir air, ArrowAtExit arrow, Speed spread, double confidence)
    {
        ArgumentNullException.ThrowIfNull(shots);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(arrow);
        Require.Level(confidence);
        return shots.Count > 0 && shots.All(s => s is not null)
            ? new(shots, air, arrow, Require.NotNegative(spread.MetersPerSecond, "m/s", nameof(spread)))
            : throw new ArgumentException("Give one shot or more.", nameof(shots));
    }

    static double Checked(Gravity gravity) => Require.Positive(gravity.Si, "m/s²", nameof(gravity)); // a Gravity never built is zero

    static Estimate<T> Normally<T>(double value, GeneralisedLeastSquares.Solution step, int which, double confidence, int count, string how, Func<double, T> unit)
    {
        double error = Math.Sqrt(step.Covariance[which, which]), half = Normal.InvCDF(0, 1, (1 + confidence) / 2) * error;
        return new(unit(value), unit(error), unit(value - half), unit(value + half), confidence, count, how);
    }
}
