namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>Place on a plane that moves with the arrow toward the face, time, and velocity: the six unknowns when the air moves differently from place to place.</summary>
readonly struct WindState<T>(T time, T along, T right, Triple<T> velocity) : IState<WindState<T>, T>
    where T : struct, IReal<T>
{
    /// <summary>Velocity over the ground: toward the face, along it in the vertical plane, to the right.</summary>
    internal readonly Triple<T> Velocity = velocity;

    internal readonly T Time = time, Along = along, Right = right;

    public static WindState<T> operator +(WindState<T> a, WindState<T> b)
        => new(a.Time + b.Time, a.Along + b.Along, a.Right + b.Right, a.Velocity + b.Velocity);

    public static WindState<T> operator *(double a, WindState<T> b) => T.Of(a) * b;

    public static WindState<T> operator *(T a, WindState<T> b) => new(a * b.Time, a * b.Along, a * b.Right, a * b.Velocity);
}

/// <summary>Nothing to sum beside the state.</summary>
readonly struct NoSums;

/// <summary>The equations of motion in a wind that varies from place to place, with the distance to the face as the independent variable.</summary>
/// <remarks>d/dx = (1/speed toward the face) d/dt of place, time and velocity; dv/dt = -k |u| u - g with u = v - wind(place).</remarks>
readonly struct ThroughWind<T, TDrag, TWind>(TDrag drag, TWind wind, T gravity, double sine, double cosine, Triple<Real> from)
    : IPath<WindState<T>, NoSums, T>
    where T : struct, IReal<T>
    where TDrag : struct, IDragLaw<T>
    where TWind : struct, IWindLaw<T>
{
    // As in TowardFace; here the whole state is stepped, which wants shorter steps for the same error.
    const double StepFraction = 0.12;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public WindState<T> At(T x, WindState<T> y)
    {
        Triple<T> v = y.Velocity, u = v - InPlane(wind.At(Place(x, y)));
        T w = T.Of(1) / v.X, speed = Length(u), pull = drag.At(speed) * speed;
        Triple<T> acceleration = new(
            T.Of(0) - pull * u.X - sine * gravity,
            T.Of(0) - pull * u.Y - cosine * gravity,
            T.Of(0) - pull * u.Z);
        return new(w, w * v.Y, w * v.Z, w * acceleration);
    }

    public NoSums Add(NoSums sums, T step, in LobattoNodes<WindState<T>> at) => sums;

    public bool IsSound(WindState<T> y)
    {
        Triple<T> v = y.Velocity;
        return v.X.Value > 0 && Length(v).Value < March.SteepestR * v.X.Value;
    }

    public bool Covers(double x, WindState<T> y) => drag.Covers(Length(y.Velocity - InPlane(wind.At(Place(T.Of(x), y)))).Value);

    public double StepFrom(double x, WindState<T> y)
    {
        Triple<T> place = Place(T.Of(x), y), v = y.Velocity, u = v - InPlane(wind.At(place));
        double w = 1 / v.X.Value, ground = Length(v).Value, air = Length(u).Value, g = gravity.Value;
        double braking = drag.At(T.Of(air)).Value * air * air, pull = g * (sine * v.X.Value + cosine * v.Y.Value) / ground;
        double across = Math.Abs(sine * v.Y.Value - cosine * v.X.Value) * g / ground;
        double rate = 0.5 * w * braking / ground + 2 * Math.Abs(sine) * g * w * w + 0.5 * across * w / ground;
        double room = drag.Room(air, SpeedTrend.Slowing(braking, pull)) / (w * (braking + Math.Abs(pull)));
        return Math.Min(Math.Min(StepFraction / rate, room), wind.Room(place, Out(T.Of(w) * v)));
    }

    /// <summary>Where this state is, from the origin, in world axes.</summary>
    internal Triple<T> Place(T x, WindState<T> y)
        => new Triple<T>(T.Of(from.X.Value), T.Of(from.Y.Value), T.Of(from.Z.Value)) + Out(new(x, y.Along, y.Right));

    /// <summary>From the axes of the face to those of the world.</summary>
    internal Triple<T> Out(Triple<T> a) => new(cosine * a.X - sine * a.Y, sine * a.X + cosine * a.Y, a.Z);

    /// <summary>From the axes of the world to those of the face.</summary>
    internal Triple<T> InPlane(Triple<T> a) => new(cosine * a.X + sine * a.Y, cosine * a.Y - sine * a.X, a.Z);

    static T Length(Triple<T> a) => T.SquareRoot(a.X * a.X + a.Y * a.Y + a.Z * a.Z);
}
