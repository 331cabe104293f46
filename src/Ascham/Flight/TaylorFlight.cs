namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>How a flight by one series ended on a face.</summary>
readonly struct SeriesArrival<T>(T time, Triple<T> moved, Triple<T> arriving, T trust)
    where T : struct, IReal<T>
{
    /// <summary>Time of flight.</summary>
    internal readonly T Time = time;

    /// <summary>Displacement, and velocity on the face, over the ground.</summary>
    internal readonly Triple<T> Moved = moved, Arriving = arriving;

    /// <summary>Above zero where the numbers can be trusted; otherwise <see cref="March"/> has to fly this arrow.</summary>
    internal readonly T Trust = trust;
}

/// <summary>Flight under a constant k through steady wind, from one power series for all the faces on the way.</summary>
/// <remarks>
/// In the frame of the air the path is a <see cref="TaylorPath{T}"/>, and x = cos(heading) ξ + wind t over the ground.
/// A face that moves through the air is met where a cubic guess, one evaluation and a correction of second order say.
/// Whether the series serves is decided from its own last terms, arrow by arrow: no arrow depends on its neighbours.
/// </remarks>
struct TaylorFlight<T>
    where T : struct, IReal<T>
{
    // The correction to the guess, as a fraction of the path, must be small: its cube is left out of the height.
    const double LargestCorrection = 0.001;

    // At less than this cosine to the face's normal (84 degrees) the march decides whether the face is met at all.
    const double LeastCosine = 0.1;

    TaylorPath<T> path;
    Triple<T> wind;
    T headingX, headingZ, slowness;
    double cosine, tolerance;
    T farthest;
    T perLevel, perRise, perTime;  // distance toward the face per metre flown level, per metre risen in the air, per second in the wind
    T advance, perAdvance;         // distance toward the face per metre flown level, at the start; and one over it
    T bending;                     // half of how that grows, per metre

    /// <summary>Begins a flight toward a face, the farthest of those to be met; <see cref="Extend"/> it before use.</summary>
    /// <param name="velocity">At the launch, over the ground.</param>
    /// <param name="wind">Velocity of the air.</param>
    /// <param name="k">Relative loss of speed per metre.</param>
    /// <param name="gravity">Positive downwards.</param>
    /// <param name="distance">To the face along its normal, from the launch point.</param>
    /// <param name="sine">Of the inclination of the normal.</param>
    /// <param name="cosine">Of the inclination of the normal.</param>
    /// <param name="tolerance">Largest last term of slowness (relative) and slope; what is left out is several times smaller.</param>
    internal void Begin(in Triple<T> velocity, in Triple<T> wind, T k, T gravity, T distance, double sine, double cosine, double tolerance)
    {
        (this.wind, farthest, this.cosine, this.tolerance) = (wind, distance, cosine, tolerance);
        Triple<T> air = velocity - wind;
        slowness = T.Of(1) / T.SquareRoot(T.MultiplyAdd(air.X, air.X, air.Z * air.Z));
        (headingX, headingZ) = (air.X * slowness, air.Z * slowness);
        T slope = air.Y * slowness, stretch = T.SquareRoot(T.MultiplyAdd(slope, slope, T.Of(1)));

        perLevel = cosine * headingX;
        perRise = T.Of(sine);
        perTime = T.MultiplyAdd(T.Of(sine), wind.Y, cosine * wind.X);
        advance = T.MultiplyAdd(perTime, slowness, T.MultiplyAdd(perRise, slope, perLevel));
        perAdvance = T.Of(1) / advance;
        bending = 0.5 * (slowness * (perTime * k * stretch - perRise * gravity * slowness));
        path.Begin(slowness, slope, k, gravity, Guess(distance));
    }

    /// <summary>Adds terms to the series up to an order.</summary>
    internal void Extend(int order) => path.Extend(order);

    /// <summary>Above zero where the last terms are small enough.</summary>
    internal readonly T Margin
    {
        get
        {
            var (w, s) = path.LastTerms;
            T allowed = T.Of(tolerance * tolerance);
            return T.Lesser(allowed - w * w, allowed - s * s);
        }
    }

    /// <summary>Meets the face of <see cref="Begin"/>.</summary>
    /// <param name="arrival">On it.</param>
    internal readonly void MeetFarthest(out SeriesArrival<T> arrival) => Meet(farthest, T.Of(1), out arrival);

    /// <summary>Meets a face that is parallel to that of <see cref="Begin"/>, and no farther.</summary>
    /// <param name="distance">To the face along its normal, from the launch point.</param>
    /// <param name="arrival">On it.</param>
    internal readonly void Meet(T distance, out SeriesArrival<T> arrival) => Meet(distance, Guess(distance) / path.Length, out arrival);

    readonly void Meet(T distance, T fraction, out SeriesArrival<T> arrival)
    {
        PathPoint<T> at = path.At(fraction);
        var (rate, bend) = path.Rates(at);
        T dw = rate * at.Slowness, ds = bend * at.Slowness * at.Slowness;

        // Toward the face: how far the guess falls short of it, and how fast that grows with the fraction.
        T perFraction = perLevel * path.Length, risen = perRise * path.Length, blown = perTime * slowness * path.Length;
        T missing = distance - T.MultiplyAdd(blown, at.Time, T.MultiplyAdd(risen, at.Rise, perFraction * fraction));
        T speed = T.MultiplyAdd(blown, at.Slowness, T.MultiplyAdd(risen, at.Slope, perFraction));
        T perSpeed = T.Of(1) / speed, more = missing * perSpeed;

        // There, by Taylor's formula; the second derivatives without the change of R, which does not matter.
        T half = 0.5 * (more * more);
        T time = T.MultiplyAdd(half, dw, T.MultiplyAdd(more, at.Slowness, at.Time));
        T rise = T.MultiplyAdd(half, ds, T.MultiplyAdd(more, at.Slope, at.Rise));
        T endSlowness = T.MultiplyAdd(half, rate * dw, T.MultiplyAdd(more, dw, at.Slowness));
        T endSlope = T.MultiplyAdd(half, 2.0 * (rate * ds), T.MultiplyAdd(more, ds, at.Slope));

        T flown = path.Length * (fraction + more), seconds = path.Length * slowness * time, level = T.Of(1) / (slowness * endSlowness);
        T vx = T.MultiplyAdd(level, headingX, wind.X), vy = T.MultiplyAdd(level, endSlope, wind.Y), vz = T.MultiplyAdd(level, headingZ, wind.Z);
        T x = T.MultiplyAdd(wind.X, seconds, flown * headingX), y = T.MultiplyAdd(wind.Y, seconds, path.Length * rise), z = T.MultiplyAdd(wind.Z, seconds, flown * headingZ);

        // What second order leaves of the way to the face is flown at constant speed.
        T left = (distance - T.MultiplyAdd(perRise, y, cosine * x)) * (path.Length * slowness * at.Slowness * perSpeed);
        var moved = new Triple<T>(T.MultiplyAdd(left, vx, x), T.MultiplyAdd(left, vy, y), T.MultiplyAdd(left, vz, z));

        T onFace = T.MultiplyAdd(T.Of(-LeastCosine), path.Length * (T.Of(1) + endSlope * endSlope), speed);
        T guessed = T.Of(LargestCorrection * LargestCorrection) - more * more;
        T trust = T.Lesser(T.Lesser(Margin, guessed), T.Lesser(T.Lesser(path.Length, advance), onFace));
        arrival = new(seconds + left, moved, new(vx, vy, vz), trust);
    }

    /// <summary>Level distance through the air at which the face stands, to second order: the root of bending ξ² + advance ξ = distance, as a series.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly T Guess(T distance)
    {
        T first = distance * perAdvance, q = bending * first * perAdvance;
        return first * T.MultiplyAdd(q, T.MultiplyAdd(q, T.MultiplyAdd(T.Of(-5), q, T.Of(2)), T.Of(-1)), T.Of(1));
    }
}

/// <summary>One flight by a series, with as many terms as it needs.</summary>
static class TaylorFlight
{
    // Terms are added one at a time; a flight that asks for more than the most is left to the march.
    const int Fewest = 8;

    // Leaves 2e-7 m, 2e-9 s and 1e-6 m/s over speeds 70 to 95 m/s, k 0.0012 to 0.0024 1/m, 20 to 100 yd, winds to 8 m/s.
    const double Tolerance = 1e-7;

    /// <summary>Flies to a face if the series serves.</summary>
    /// <returns><see langword="false"/> where it does not, or where the face may not be met.</returns>
    internal static bool TryFly(
        in Triple<Real> velocity, in Triple<Real> wind, Real k, Real gravity, in Face face, out Arrival<Real> arrival)
    {
        var flight = default(TaylorFlight<Real>);
        flight.Begin(velocity, wind, k, gravity, new(face.Distance), face.Sine, face.Cosine, Tolerance);
        for (int order = Fewest; order <= TaylorPath<Real>.MostTerms; order++)
        {
            flight.Extend(order);
            if (flight.Margin.Value > 0)
            {
                flight.MeetFarthest(out SeriesArrival<Real> end);
                arrival = new(end.Time, end.Moved, end.Arriving, wind, face.Distance);
                return end.Trust.Value > 0;
            }
        }

        arrival = default;
        return false;
    }
}
