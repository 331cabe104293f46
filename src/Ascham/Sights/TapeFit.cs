namespace Ascham.Sights;

using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

/// <summary>A tape fitted to measured marks through the flight model, by weighted least squares.</summary>
/// <remarks>
/// <para><b>Model.</b> position = offset + travel of the pin for the distance, at an effective launch speed v and, if asked, drag constant k;
/// Gauss-Newton, covariance from the marks' own standard deviations, never rescaled by the residuals.</para>
/// <para><b>What is identified.</b> At long range only (peep to pin)/v² is: an error of the peep-to-pin distance, of drag or of the marks
/// hides in the fitted speed. <see cref="EffectiveSpeed"/> is therefore no chronograph speed. Speed and drag together are strongly
/// correlated; <see cref="SpeedDragCorrelation"/> says how much.</para>
/// </remarks>
public sealed class TapeFit
{
    readonly SightModel model;
    readonly double offset;
    readonly Matrix<double> covariance;
    readonly double level;
    readonly int marks;

    TapeFit(SightModel model, double offset, GeneralisedLeastSquares.Solution solution, double level)
    {
        (this.model, this.offset, covariance, this.level) = (model, offset, solution.Covariance, level);
        marks = solution.Residuals.Count;
        ChiSquare = solution.ChiSquare;
        DegreesOfFreedom = solution.FreeObservations;
        Residuals = [.. solution.Residuals.Select(r => Length.FromMeters(r))];
        Offset = Estimate(offset, 0, "offset of the scale", v => Length.FromMeters(v));
        EffectiveSpeed = Estimate(model.LaunchSpeed.MetersPerSecond, 1, "effective speed; swallows errors of peep-to-pin distance, drag and marks", v => Speed.FromMetersPerSecond(v));
        if (covariance.RowCount == 3)
        {
            DragConstant = Estimate(model.DragConstantSi, 2, "drag constant fitted with the speed", v => ReciprocalLength.FromInverseMeters(v));
            SpeedDragCorrelation = covariance[1, 2] / Math.Sqrt(covariance[1, 1] * covariance[2, 2]);
        }
    }

    /// <summary>Position of the scale when the pin is at peep level.</summary>
    public Estimate<Length> Offset { get; }

    /// <summary>The launch speed that makes the marks fit; no chronograph speed.</summary>
    public Estimate<Speed> EffectiveSpeed { get; }

    /// <summary>The drag constant, when it was fitted.</summary>
    public Estimate<ReciprocalLength>? DragConstant { get; }

    /// <summary>Correlation of the fitted speed and drag constant, from −1 to 1, when both were fitted.</summary>
    public double? SpeedDragCorrelation { get; }

    /// <summary>Sum of squared residuals, each over its variance; about <see cref="DegreesOfFreedom"/> when model and errors are right.</summary>
    public double ChiSquare { get; }

    /// <summary>Marks less fitted numbers.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Measured less fitted position, in the order of the marks.</summary>
    public IReadOnlyList<Length> Residuals { get; }

    /// <summary>Fits offset and speed, and the drag constant if asked.</summary>
    /// <param name="marks">At least as many as there are numbers to fit, each with its standard deviation.</param>
    /// <param name="start">The bow; its speed and drag are where the fit begins, and its drag is kept unless fitted.</param>
    /// <param name="fitDrag">Whether to fit the drag constant too: needs three marks or more, widely spaced.</param>
    /// <param name="confidence">Level of the intervals.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">Too few marks, or a mark without standard deviation.</exception>
    /// <exception cref="InvalidOperationException">The fit did not settle: the marks do not look like a tape for such a bow.</exception>
    public static TapeFit To(IReadOnlyList<Mark> marks, SightModel start, bool fitDrag, double confidence)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(start);
        Require.Level(confidence);
        int count = fitDrag ? 3 : 2;
        if (marks.Count < count || marks.Any(m => m.PositionSd is not { Meters: > 0 }))
        {
            throw new ArgumentException($"A fit of {count} numbers needs {count} marks or more, each with a positive standard deviation; {marks.Count(m => m.PositionSd is { Meters: > 0 })} given.", nameof(marks));
        }

        var positions = Vector<double>.Build.Dense(marks.Count, i => marks[i].Position.Meters);
        var weights = Matrix<double>.Build.DenseOfDiagonalArray([.. marks.Select(m => Math.Pow(m.PositionSd!.Value.Meters, 2))]);
        var model = start;
        double offset = positions[0] - start.ScaleTravel(marks[0].Distance);
        for (int iteration = 0; iteration < 50; iteration++)
        {
            var (design, fitted) = Linearise(marks, model, offset, count);
            var step = GeneralisedLeastSquares.Fit(design, positions - fitted, weights);
            offset += step.Coefficients[0];
            model = Moved(model, step.Coefficients);
            if (Math.Abs(step.Coefficients[1]) < 1e-9 * model.LaunchSpeed.MetersPerSecond && Math.Abs(step.Coefficients[0]) < 1e-11)
            {
                return new(model, offset, step, confidence);
            }
        }

        throw new InvalidOperationException("The tape fit did not settle in 50 steps: the marks do not look like a tape for a bow of about this speed. Check the distances, the direction of the scale and the travel per pin.");
    }

    /// <summary>Where the fitted tape puts a distance.</summary>
    /// <param name="distance">Distance along the line of sight; outside the marks the interval widens, but only for what was fitted.</param>
    /// <returns>Position on the scale, with the interval of the fitted curve.</returns>
    public Estimate<Length> PositionAt(Length distance)
    {
        var (design, fitted) = Linearise([new Mark(distance, Length.Zero)], model, offset, covariance.RowCount);
        var row = design.Row(0);
        return Interval(fitted[0], Math.Sqrt(row * covariance * row), "tape fitted to marks", v => Length.FromMeters(v));
    }

    static (Matrix<double> Design, Vector<double> Fitted) Linearise(IReadOnlyList<Mark> marks, SightModel model, double offset, int count)
    {
        double speed = model.LaunchSpeed.MetersPerSecond, speedStep = 1e-4 * speed;
        const double DragStep = 1e-6;
        var design = Matrix<double>.Build.Dense(marks.Count, count, 1);
        for (int i = 0; i < marks.Count; i++)
        {
            var d = marks[i].Distance;
            design[i, 1] = (model.WithSpeed(speed + speedStep).ScaleTravel(d) - model.WithSpeed(speed - speedStep).ScaleTravel(d)) / (2 * speedStep);
            if (count == 3)
            {
                design[i, 2] = (model.WithDragConstant(model.DragConstantSi + DragStep).ScaleTravel(d) - model.WithDragConstant(model.DragConstantSi - DragStep).ScaleTravel(d)) / (2 * DragStep);
            }
        }

        return (design, Vector<double>.Build.Dense(marks.Count, i => offset + model.ScaleTravel(marks[i].Distance)));
    }

    // Half-steps at most, so that a poor start cannot throw the speed below zero.
    static SightModel Moved(SightModel model, Vector<double> step)
    {
        double speed = model.LaunchSpeed.MetersPerSecond;
        var moved = model.WithSpeed(speed + Math.Clamp(step[1], -speed / 2, speed / 2));
        return step.Count == 3 ? moved.WithDragConstant(model.DragConstantSi + step[2]) : moved;
    }

    Estimate<T> Estimate<T>(double value, int index, string how, Func<double, T> unit) => Interval(value, Math.Sqrt(covariance[index, index]), how, unit);

    Estimate<T> Interval<T>(double value, double error, string how, Func<double, T> unit)
    {
        double half = Normal.InvCDF(0, 1, (1 + level) / 2) * error;
        return new(unit(value), unit(error), unit(value - half), unit(value + half), level, marks, how);
    }
}
