namespace Ascham.Sights;

using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

/// <summary>A tape fitted to measured marks through the flight model, by weighted least squares.</summary>
/// <remarks>
/// <para><b>Model.</b> position = offset + travel of the pin for the distance, at an effective launch speed v and, if asked, drag constant k;
/// Levenberg and Marquardt, covariance from the marks' own standard deviations, never rescaled by the residuals.</para>
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
        var errors = Vector<double>.Build.Dense(marks.Count, i => marks[i].PositionSd!.Value.Meters);
        (Matrix<double> Slopes, Vector<double> Residuals)? At(Vector<double> parameters)
        {
            if (!(parameters[1] > 0))
            {
                return null; // no bow shoots backwards
            }

            try
            {
                var (design, fitted) = Linearise(marks, Moved(start, parameters), parameters[0], count);
                return (Matrix<double>.Build.DiagonalOfDiagonalVector(1 / errors) * design, (positions - fitted).PointwiseDivide(errors));
            }
            catch (OutOfReachException)
            {
                return null;
            }
        }

        double offset = positions[0] - start.ScaleTravel(marks[0].Distance), speed = start.LaunchSpeed.MetersPerSecond;
        double[] from = fitDrag ? [offset, speed, start.DragConstantSi] : [offset, speed];
        var found = NonlinearLeastSquares.Fit(Vector<double>.Build.DenseOfArray(from), At)
            ?? throw new InvalidOperationException("The tape fit did not settle: the marks do not look like a tape for a bow of about this speed. Check the distances, the direction of the scale and the travel per pin.");
        var model = Moved(start, found);
        var (slopes, values) = Linearise(marks, model, found[0], count);
        return new(model, found[0], GeneralisedLeastSquares.Fit(slopes, positions - values, Matrix<double>.Build.DenseOfDiagonalVector(errors.PointwisePower(2))), confidence);
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

    static SightModel Moved(SightModel model, Vector<double> parameters) =>
        parameters.Count == 3 ? model.WithSpeed(parameters[1]).WithDragConstant(parameters[2]) : model.WithSpeed(parameters[1]);

    Estimate<T> Estimate<T>(double value, int index, string how, Func<double, T> unit) => Interval(value, Math.Sqrt(covariance[index, index]), how, unit);

    Estimate<T> Interval<T>(double value, double error, string how, Func<double, T> unit)
    {
        double half = Normal.InvCDF(0, 1, (1 + level) / 2) * error;
        return new(unit(value), unit(error), unit(value - half), unit(value + half), level, marks, how);
    }
}
