namespace Ascham.Flight;

using System.Globalization;
using Ascham.Numerics;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

/// <summary>Drag from measurements.</summary>
public static class DragFit
{
    // Half the range 0.0007 to 0.0023 1/m in which the build-ups of common arrows lie, laminar or turbulent: a fit less sure than that tells nothing new.
    const double Useless = 0.0008;

    const int Iterations = 60;

    /// <summary>The drag constant from two speeds a known distance apart.</summary>
    /// <remarks>
    /// Level flight along the wind, drag with the square of the air speed u = V - W: dV/dx = -k u²/V, hence
    /// k x = ln(u1/u2) + W (1/u2 - 1/u1). Standard error by propagation: speeds, distance and wind independent.
    /// With 0.1 m/s for each speed over 60 yd k is known to 2.6 %, with 0.3 m/s to 7.8 % (85 m/s, k = 0.0012 1/m).
    /// Where <see cref="SpeedPair.NearCount"/> or <see cref="SpeedPair.FarCount"/> say from how few readings an error is, the interval is Student's with the degrees of freedom of
    /// B. L. Welch and F. E. Satterthwaite (JCGM 100:2008, G.4.1); normal otherwise.
    /// </remarks>
    /// <param name="pair">The speeds.</param>
    /// <param name="confidence">Level of the interval, between 0 and 1.</param>
    /// <returns>k in the air of the measurement. It may come out negative when the errors are large: then drag was not told from none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The wind is not below both speeds, or the level is outside its range.</exception>
    public static Estimate<ReciprocalLength> FromSpeeds(SpeedPair pair, double confidence)
    {
        ArgumentNullException.ThrowIfNull(pair);
        Require.Level(confidence);
        double wind = pair.TailWind.MetersPerSecond, x = pair.Apart.Meters;
        double near = Require.Positive(pair.Near.MetersPerSecond - wind, "m/s", "Near less TailWind");
        double far = Require.Positive(pair.Far.MetersPerSecond - wind, "m/s", "Far less TailWind");

        double k = (Math.Log(near / far) + wind * (1 / far - 1 / near)) / x;
        double perNear = pair.Near.MetersPerSecond / (near * near), perFar = -pair.Far.MetersPerSecond / (far * far); // x dk by each speed
        double perWind = wind * (1 / (far * far) - 1 / (near * near)) + 2 * (1 / far - 1 / near);
        double ofNear = Square(perNear * pair.NearError.MetersPerSecond), ofFar = Square(perFar * pair.FarError.MetersPerSecond);
        double variance = ofNear + ofFar + Square(perWind * pair.TailWindError.MetersPerSecond) + Square(k * pair.ApartError.Meters), error = Math.Sqrt(variance) / x;

        double uncertain = PerFreedom(ofNear, pair.NearCount) + PerFreedom(ofFar, pair.FarCount);
        double half = (uncertain > 0 ? StudentT.InvCDF(0, 1, Square(variance) / uncertain, (1 + confidence) / 2) : Normal.InvCDF(0, 1, (1 + confidence) / 2)) * error;
        ReciprocalLength PerMetre(double value) => ReciprocalLength.FromInverseMeters(value);
        return new(
            PerMetre(k), PerMetre(error), PerMetre(k - half), PerMetre(k + half), confidence, (pair.NearCount ?? 1) + (pair.FarCount ?? 1),
            "logarithm of two speeds over their distance, errors propagated");
    }

    static double PerFreedom(double variance, int? count) => count is { } n ? variance * variance / (n - 1) : 0;

    /// <summary>Drag constant and launch speed from drops at three or more distances, by weighted least squares through the flight itself.</summary>
    /// <remarks>
    /// Launch speed and drag are strongly correlated when no speed was measured and the distances are short: below 40 yd drag moves an impact by millimetres.
    /// Spread the distances, with one at 80 yd or more, or measure the speed.
    /// </remarks>
    /// <param name="series">The drops and what is known beside them.</param>
    /// <param name="confidence">Level of the intervals, between 0 and 1.</param>
    /// <returns>The fit, with the correlation of drag and speed.</returns>
    /// <exception cref="ArgumentException">Fewer than three distances.</exception>
    /// <exception cref="DragNotIdentifiedException">The standard error of k exceeds 0.0008 1/m, half the range in which the drag of any arrow lies; or speed, drag and elevation cannot be told apart at all.</exception>
    /// <exception cref="InvalidOperationException">The fit did not settle: the drops do not look like those of an arrow launched about as stated.</exception>
    public static DropFit FromDrops(DropSeries series, double confidence)
    {
        ArgumentNullException.ThrowIfNull(series);
        Require.Level(confidence);
        int distances = series.Drops.Select(d => d.Distance.Meters).Distinct().Count();
        if (distances < 3)
        {
            throw new ArgumentException($"A fit of drag to drops needs three distances or more; {distances} given.", nameof(series));
        }

        LaunchSi launch = series.Start.Si;
        PointMassSi mass = new PointMassSi(0.0015, series.Gravity.Si, 0, 0, 0).In(series.Wind);
        for (int i = 0; i < Iterations; i++)
        {
            GeneralisedLeastSquares.Solution step = Step(series, mass, launch);
            double faster = step.Coefficients[0], steeper = step.Coefficients[1], draggier = step.Coefficients[2];
            // Cut short where the path is far from linear, so that a poor start cannot throw the arrow backwards.
            launch = launch with { Speed = launch.Speed + Math.Clamp(faster, -0.3 * launch.Speed, 0.3 * launch.Speed), Elevation = launch.Elevation + Math.Clamp(steeper, -0.1, 0.1) };
            mass = mass with { K = mass.K + Math.Clamp(draggier, -0.002, 0.002) };
            if (Math.Abs(faster) < 1e-8 * launch.Speed && Math.Abs(steeper) < 1e-10 && Math.Abs(draggier) < 1e-10)
            {
                return Result(series, Step(series, mass, launch), mass.K, launch, confidence);
            }
        }

        throw Unlike();
    }

    static InvalidOperationException Unlike() =>
        new("The fit of drag did not settle: the drops do not look like those of an arrow launched about as stated. Check the sign of the heights (below is negative), the start and the distances.");

    /// <summary>One Gauss-Newton step in speed, elevation and k, and what it leaves.</summary>
    static GeneralisedLeastSquares.Solution Step(DropSeries series, in PointMassSi mass, in LaunchSi launch)
    {
        int n = series.Drops.Count;
        List<(double[] Row, double Left, double Error)> rows = new(n + 2);
        foreach (Drop drop in series.Drops)
        {
            if (Sensitivity.Fly(mass, launch, Face.Square(drop.Distance.Meters, 0), 0, out Sensitivity s, out _) != Outcome.Met)
            {
                throw Unlike();
            }

            Gradient h = s.Above;
            double error = Math.Sqrt(Square(drop.HeightError.Meters) + Square(s.ByRange.Up * drop.DistanceError.Meters));
            rows.Add(([h[Sensitivity.Speed], h[Sensitivity.Elevation], h[Sensitivity.Drag]], drop.Height.Meters - h.Value, error));
        }

        if (series.SpeedError is { } speedError)
        {
            rows.Add(([1, 0, 0], series.Start.Speed.MetersPerSecond - launch.Speed, speedError.MetersPerSecond));
        }

        if (series.ElevationError is { } elevationError)
        {
            rows.Add(([0, 1, 0], series.Start.Elevation.Radians - launch.Elevation, elevationError.Radians));
        }

        try
        {
            return GeneralisedLeastSquares.Fit(
                Matrix<double>.Build.DenseOfRowArrays(rows.Select(r => r.Row)),
                Vector<double>.Build.DenseOfEnumerable(rows.Select(r => r.Left)),
                Matrix<double>.Build.DenseOfDiagonalArray([.. rows.Select(r => r.Error * r.Error)]));
        }
        catch (ArgumentException)
        {
            throw new DragNotIdentifiedException("Speed, drag and elevation cannot be told apart from these drops at all. Spread the distances.", null, double.NaN);
        }
    }

    static DropFit Result(DropSeries series, GeneralisedLeastSquares.Solution step, double k, in LaunchSi launch, double confidence)
    {
        int n = series.Drops.Count;
        double Error(int i) => Math.Sqrt(step.Covariance[i, i]);
        double correlation = step.Covariance[0, 2] / (Error(0) * Error(2));
        const string How = "weighted least squares of drops through the flight";
        var constant = Estimate(k, Error(2), confidence, n, How, v => ReciprocalLength.FromInverseMeters(v));
        if (!(Error(2) <= Useless))
        {
            throw new DragNotIdentifiedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"These drops do not tell drag: k = {k:0.0000} with a standard error of {Error(2):0.0000} 1/m, while any arrow lies about 0.0007 to 0.0023. Its correlation with the launch speed is {correlation:0.000}. Measure the speed, or shoot farther."),
                constant,
                correlation);
        }

        return new()
        {
            DragConstant = constant,
            LaunchSpeed = Estimate(launch.Speed, Error(0), confidence, n, How, v => Speed.FromMetersPerSecond(v)),
            Elevation = Estimate(launch.Elevation, Error(1), confidence, n, How, v => Angle.FromRadians(v)),
            DragSpeedCorrelation = correlation,
            ChiSquare = step.ChiSquare,
            DegreesOfFreedom = step.FreeObservations,
            Residuals = [.. step.Residuals.Take(n).Select(r => Length.FromMeters(r))],
        };
    }

    static Estimate<T> Estimate<T>(double value, double error, double confidence, int count, string how, Func<double, T> unit)
    {
        double half = Normal.InvCDF(0, 1, (1 + confidence) / 2) * error;
        return new(unit(value), unit(error), unit(value - half), unit(value + half), confidence, count, how);
    }

    static double Square(double value) => value * value;
}
