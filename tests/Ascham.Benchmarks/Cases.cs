namespace Ascham.Benchmarks;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>The flights, the tape and the batch that both sides solve.</summary>
static class Cases
{
    public const double Gravity = 9.80665, K = 0.001711, Speed = 85, Elevation = 2 * Math.PI / 180, Distance = 91.44, PeepHeight = 0.11;

    /// <summary>Ordinary shots: 70 to 95 m/s, -3 to 8 degrees, winds to 8 m/s, 20 to 100 yd, drag from 0.7 to 1.4 of the usual.</summary>
    public static readonly (PointMassSi Mass, LaunchSi Launch, double Distance)[] Ensemble = Shots();

    /// <summary>Marks at every yard from 20 to 100.</summary>
    public static readonly double[] Marks = [.. Enumerable.Range(20, 81).Select(yards => 0.9144 * yards)];

    /// <summary>Six inputs that differ normally.</summary>
    public static readonly FlightBatch Batch = new()
    {
        Flight = new()
        {
            Drag = Drag.FromConstant(K.PerMetre), Air = Air.StandardAt(Length.Zero), Gravity = Ascham.Air.Gravity.Standard, Wind = Wind.Of(0.MetresPerSecond, 3.MetresPerSecond),
        },
        Launch = new() { Speed = Speed.MetresPerSecond, Elevation = Angle.FromRadians(Elevation) },
        Faces = [Distance.Metres],
        LaunchSpeed = Scatter.Normal(0.6.MetresPerSecond), DragArea = Scatter.Normal(3.Percent), TailWind = Scatter.Normal(1.MetresPerSecond),
        WindFromLeft = Scatter.Normal(1.MetresPerSecond), AimUp = Scatter.Normal(1.Milliradians), AimRight = Scatter.Normal(1.Milliradians),
    };

    /// <summary>A million of them, with the histogram and the circle that MathNet's side fills too.</summary>
    public static BatchOptions Options(int threads) =>
        new() { Arrows = 1 << 20, Seed = 1, Level = 0.95, Circle = 20.Centimetres, HistogramHalfWidth = 4.Metres, HistogramCells = 256, Threads = threads };

    static (PointMassSi, LaunchSi, double)[] Shots()
    {
        var random = new Random(20240501);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        const double Degree = Math.PI / 180;
        return [.. Enumerable.Range(0, 400).Select(_ => (
            new PointMassSi(K * Between(0.7, 1.4), Gravity, Between(-8, 8), Between(-1, 1), Between(-8, 8)),
            new LaunchSi(Between(70, 95), Between(-3, 8) * Degree, Between(-0.5, 0.5) * Degree), Between(18.3, 91.4)))];
    }
}

/// <summary>A drag law that changes in flight: from 0.0017 to 0.0025 1/m across 51 m/s, without exponentials, the same on both sides.</summary>
readonly struct Changing<T> : IDragLaw<T>
    where T : struct, IReal<T>
{
    public T At(T airSpeed)
    {
        T u = 0.2 * (airSpeed - T.Of(51));
        return T.MultiplyAdd(T.Of(0.0004), u / T.SquareRoot(T.MultiplyAdd(u, u, T.Of(1))), T.Of(0.0021));
    }

    /// <summary>A part of the distance over which the law changes its course.</summary>
    public double Room(double airSpeed, bool? slowing) => 0.4 * Math.Sqrt(25 + (airSpeed - 51) * (airSpeed - 51));

    public bool Covers(double airSpeed) => true;
}
