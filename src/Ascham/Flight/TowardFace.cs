namespace Ascham.Flight;

using System.Runtime.CompilerServices;
using Ascham.Numerics;

/// <summary>The two unknowns of a planar path that are coupled: slowness (one over the speed toward the face) and slope (speed along the face over speed toward it).</summary>
readonly struct PathState<T>(T slowness, T slope) : IState<PathState<T>, T>
    where T : struct, IReal<T>
{
    internal readonly T Slowness = slowness, Slope = slope;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static PathState<T> operator +(PathState<T> a, PathState<T> b) => new(a.Slowness + b.Slowness, a.Slope + b.Slope);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static PathState<T> operator *(double a, PathState<T> b) => new(a * b.Slowness, a * b.Slope);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static PathState<T> operator *(T a, PathState<T> b) => new(a * b.Slowness, a * b.Slope);
}

/// <summary>What follows from those two by summing along the path: time, and distance along the face.</summary>
readonly struct PathSums<T>(T time, T slid)
    where T : struct, IReal<T>
{
    internal readonly T Time = time, Slid = slid;
}

/// <summary>The equations of motion with the distance to the face as the independent variable.</summary>
/// <remarks>
/// In the frame of the air the path lies in the vertical plane of the first air speed, and in that plane let one axis
/// point along the normal of the face and the other along the face. With w one over the air speed toward the face,
/// s the slope, R = sqrt(1 + s²) and V = R/w the air speed, drag acts along the path and so leaves its slope alone:
/// per metre of air toward the face
///     dw = k w R + gn w³,   ds = (gn s - gf) w²,   dt = w,   d(along the face) = s,
/// where gn and gf are the components of gravity against the two axes. The face itself moves through the air:
/// a metre of ground toward it is 1/(q + wind w) metres of air, q being the cosine between the plane and the face's normal.
/// </remarks>
readonly struct TowardFace<T, TDrag>(TDrag drag, T gravityNormal, T gravityAlong, T cosine, T wind) : IPath<PathState<T>, PathSums<T>, T>
    where T : struct, IReal<T>
    where TDrag : struct, IDragLaw<T>
{
    // The longest step, as a fraction of the distance over which the state changes by its own size. Found by trial over
    // speeds 40 to 120 m/s, k 0 to 0.004 1/m, lines -60 to +60 degrees, winds to 10 m/s, distances 5 to 120 m:
    // the worst error is then 1e-7 m, and an arrow at 85 m/s takes one step to 100 yd.
    const double StepFraction = 0.18;

    readonly TDrag drag = drag;
    readonly T gravityNormal = gravityNormal, gravityAlong = gravityAlong, cosine = cosine, wind = wind;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public PathState<T> At(T x, PathState<T> y)
    {
        T w = y.Slowness, s = y.Slope, w2 = w * w;
        T r = T.SquareRoot(T.Of(1) + s * s);
        T air = AirPerGround(w);
        return new(
            air * (drag.At(r / w) * r * w + gravityNormal * w2 * w),
            air * (gravityNormal * s - gravityAlong) * w2);
    }

    /// <inheritdoc/>
    public PathSums<T> Add(PathSums<T> sums, T step, in LobattoNodes<PathState<T>> at) => new(
        sums.Time + step * Lobatto.MeanOf(Time(at.Start), Time(at.Early), Time(at.Middle), Time(at.Late), Time(at.End)),
        sums.Slid + step * Lobatto.MeanOf(Slide(at.Start), Slide(at.Early), Slide(at.Middle), Slide(at.Late), Slide(at.End)));

    // Comparisons with NaN are false, so a state that is not a number is not sound either.
    public bool IsSound(PathState<T> y)
        => y.Slowness.Value > 0 && Math.Abs(y.Slope.Value) < March.SteepestR && AirPerGround(y.Slowness).Value is > 0 and < double.PositiveInfinity;

    public bool Covers(double x, PathState<T> y)
    {
        double s = y.Slope.Value;
        return drag.Covers(Math.Sqrt(1 + s * s) / y.Slowness.Value);
    }

    public double StepFrom(double x, PathState<T> y)
    {
        double w = y.Slowness.Value, s = y.Slope.Value, w2 = w * w, r = Math.Sqrt(1 + s * s), speed = r / w;
        double gn = gravityNormal.Value, gf = gravityAlong.Value, k = drag.At(T.Of(speed)).Value;
        // The weights belong to StepFraction: gravity against the motion ends the path in a square root, the others bend it gently.
        double rate = 0.5 * k * r + 2 * Math.Abs(gn) * w2 + 0.5 * Math.Abs(gn * s - gf) * w2 / r;
        double step = StepFraction / rate, braking = k * speed * speed, pull = (gn + gf * s) / r;
        double room = drag.Room(speed, SpeedTrend.Slowing(braking, pull));
        return Math.Min(step, room / (w * (Math.Abs(braking) + Math.Abs(pull)))) / AirPerGround(y.Slowness).Value;
    }

    T Time(PathState<T> y) => AirPerGround(y.Slowness) * y.Slowness;

    T Slide(PathState<T> y) => AirPerGround(y.Slowness) * y.Slope;

    /// <summary>Metres of air toward the face per metre of ground; negative when the wind drives the arrow away from it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    T AirPerGround(T slowness) => T.Of(1) / (cosine + wind * slowness);
}
