namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

/// <summary>A chronograph's reading carried back to where the arrow left the string.</summary>
/// <remarks>
/// <para><b>Model.</b> Level flight in still air, dv/dx = −k v: v₀ = v exp(k x) when k is one constant, else the same integrated through the drag's
/// own law. At 1 yd this is 0.1 to 0.2 %, at 20 yd 1.3 to 4 %.</para>
/// <para><b>Left out.</b> Wind, the fall of the path, and that the arrow swings and drags more just after release: a reading within the first metres
/// may belong to an arrow not yet quite free of the string. The place is the middle between the gates.</para>
/// <para>The mean of several readings is worked out in the room Bows (<c>Chronograph</c>): it needs no drag.</para>
/// </remarks>
public static class LaunchReading
{
    /// <summary>Speed at the launch.</summary>
    /// <param name="reading">Speed at the chronograph, with its interval.</param>
    /// <param name="distance">From where the arrow's nock leaves the string to the middle of the gates, less the length of arrow ahead of it: how far the arrow flew free; 0 to 100 m. Closer than that, the point is in the gates while the arrow is still on the string: the reading is then too low and cannot be carried back.</param>
    /// <param name="distanceSd">Its standard deviation; 0 to 10 m.</param>
    /// <param name="drag">The least, the likely and the most drag. Half the way between the outer two over √3 is taken as standard error.</param>
    /// <param name="air">The air of the measurement.</param>
    /// <returns>The launch speed at the level of the reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the drag is not known at a speed on the way.</exception>
    public static Estimate<Speed> AtLaunch(Estimate<Speed> reading, Length distance, Length distanceSd, DragBound drag, Air air)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(drag);
        ArgumentNullException.ThrowIfNull(air);
        double v = Require.Positive(reading.Value.MetersPerSecond, "m/s", nameof(reading)), x = Require.InRange(distance.Meters, 0, 100, "m", nameof(distance));
        double sd = Require.InRange(distanceSd.Meters, 0, 10, "m", nameof(distanceSd));
        double launch = Back(drag.Likely, air, v, x), factor = launch / v;
        double byDrag = (Back(drag.High, air, v, x) - Back(drag.Low, air, v, x)) / Math.Sqrt(12);
        double byPlace = drag.Likely.At(Speed.FromMetersPerSecond(launch), air).InverseMeters * launch * sd;
        double multiplier = Normal.InvCDF(0, 1, (1 + reading.Level) / 2);

        // The reading's interval may be uneven; the other errors join each half of it.
        double Half(Speed half) => Norm(factor * half.MetersPerSecond, multiplier * byDrag, multiplier * byPlace);
        double error = Norm(factor * reading.StandardError.MetersPerSecond, byDrag, byPlace);
        return new(
            Speed.FromMetersPerSecond(launch),
            Speed.FromMetersPerSecond(error),
            Speed.FromMetersPerSecond(launch - Half(reading.Value - reading.Low)),
            Speed.FromMetersPerSecond(launch + Half(reading.High - reading.Value)),
            reading.Level,
            reading.Count,
            reading.HowObtained + ", carried back to the launch with drag");
    }

    // Runge and Kutta's fourth order in ln v over x; one constant makes it exact, a law that follows the speed is smooth over these few metres.
    static double Back(Drag drag, Air air, double speed, double distance)
    {
        const int Steps = 16;
        double h = distance / Steps, log = Math.Log(speed);
        double K(double l) => drag.At(Speed.FromMetersPerSecond(Math.Exp(l)), air).InverseMeters;
        for (int i = 0; i < Steps && h > 0; i++)
        {
            double a = K(log), b = K(log + 0.5 * h * a), c = K(log + 0.5 * h * b), d = K(log + h * c);
            log += h / 6 * (a + 2 * b + 2 * c + d);
        }

        return Math.Exp(log);
    }

    static double Norm(double a, double b, double c) => Math.Sqrt(a * a + b * b + c * c);
}
