namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>How a march toward a face ended.</summary>
enum Outcome
{
    /// <summary>On the face.</summary>
    Met,

    /// <summary>The path turned along the face before it got there.</summary>
    TooFar,

    /// <summary>It never started toward the face.</summary>
    Away,
}

/// <summary>A face: a plane square to a line of sight from the origin.</summary>
readonly struct Face(double distance, double sine, double cosine)
{
    internal readonly double Distance = distance, Sine = sine, Cosine = cosine;

    internal static Face Square(double distance, double inclination)
    {
        (double sin, double cos) = inclination == 0 ? (0, 1) : Math.SinCos(inclination);
        return new(distance, sin, cos);
    }
}

/// <summary>Flies a point mass through a steady, uniform wind until it stands exactly on a face.</summary>
/// <remarks>See <see cref="TowardFace{T, TDrag}"/> for the equations. Nothing is allocated.</remarks>
static class March
{
    // Beyond this the path runs along the face, and where it meets it is as good as undefined: 1/cos 88 degrees.
    const double SteepestR = 28.65;

    // Steps are halved toward the place where a path turns along the face until they are this short, in metres.
    const double ShortestStep = 1e-4;

    /// <summary>Flies to the face.</summary>
    /// <param name="velocity">At the launch, over the ground.</param>
    /// <param name="wind">Velocity of the air.</param>
    /// <param name="gravity">Acceleration, positive downwards.</param>
    /// <param name="drag">Drag law.</param>
    /// <param name="face">The face, its distance counted from the launch point.</param>
    /// <param name="steps">0 for steps by the built-in rule; otherwise this many equal steps (to measure the order of convergence).</param>
    /// <param name="time">Time of flight.</param>
    /// <param name="moved">Displacement over the ground.</param>
    /// <param name="arriving">Velocity over the ground at the face.</param>
    /// <param name="reach">Distance to the face; when it is too far, the distance to the farthest one met.</param>
    internal static Outcome Fly<T, TDrag>(
        Triple<T> velocity, Triple<T> wind, T gravity, TDrag drag, in Face face, int steps,
        out T time, out Triple<T> moved, out Triple<T> arriving, out double reach)
        where T : struct, IReal<T>
        where TDrag : struct, IDragLaw<T>
    {
        // The vertical plane of the air speed, and in it the axes along the normal of the face and along the face.
        Triple<T> air = velocity - wind;
        T level = T.SquareRoot(air.X * air.X + air.Z * air.Z);
        T ex = air.X / level, ez = air.Z / level;
        T nx = face.Cosine * ex, ny = T.Of(face.Sine), q = T.SquareRoot(nx * nx + ny * ny);
        T mx = nx / q, my = ny / q;
        T toward = level * mx + air.Y * my, along = air.Y * mx - level * my;
        T windToward = face.Cosine * wind.X + face.Sine * wind.Y;

        var field = new TowardFace<T, TDrag>(drag, gravity * my, gravity * mx, q, windToward);
        var state = new PathState<T>(T.Of(1) / toward, along / toward);
        time = T.Of(0);
        T slid = T.Of(0);
        reach = 0;
        Outcome outcome = face.Distance >= 0 && IsSound(field, state) ? Advance(field, face.Distance, steps, ref state, ref time, ref slid, out reach) : Outcome.Away;

        // Back to world axes and to the ground.
        T advanced = (T.Of(reach) - windToward * time) / q;
        T flown = advanced * mx - slid * my, risen = advanced * my + slid * mx;
        moved = new Triple<T>(flown * ex, risen, flown * ez) + time * wind;
        T speedToward = T.Of(1) / state.Slowness, speedAlong = state.Slope * speedToward;
        T levelSpeed = speedToward * mx - speedAlong * my;
        arriving = new Triple<T>(levelSpeed * ex, speedToward * my + speedAlong * mx, levelSpeed * ez) + wind;
        return outcome;
    }

    static Outcome Advance<T, TDrag>(
        in TowardFace<T, TDrag> field, double distance, int steps, ref PathState<T> state, ref T time, ref T slid, out double reach)
        where T : struct, IReal<T>
        where TDrag : struct, IDragLaw<T>
    {
        reach = 0;
        double longest = distance;
        while (reach < distance)
        {
            double left = distance - reach;
            double step = Math.Min(longest, steps > 0 ? distance / steps : field.StepFrom(state));
            step = step >= left * (1 - 1e-12) ? left : Math.Min(step, steps > 0 ? step : 0.5 * left);

            T h = T.Of(step);
            PathState<T> next = RungeKutta8.Step<TowardFace<T, TDrag>, PathState<T>, T>(field, T.Of(reach), state, h, out var at);
            if (!IsSound(field, next))
            {
                if (!(step >= ShortestStep)) // also when it is not a number
                {
                    return Outcome.TooFar;
                }

                longest = 0.5 * step;
                continue;
            }

            time += h * field.MeanTime(at);
            slid += h * field.MeanSlide(at);
            state = next;
            reach = step == left ? distance : reach + step;
        }

        return Outcome.Met;
    }

    // Comparisons with NaN are false, so a state that is not a number is not sound either.
    static bool IsSound<T, TDrag>(in TowardFace<T, TDrag> field, PathState<T> y)
        where T : struct, IReal<T>
        where TDrag : struct, IDragLaw<T>
        => y.Slowness.Value > 0 && Math.Abs(y.Slope.Value) < SteepestR && field.AirPerGround(y.Slowness).Value is > 0 and < double.PositiveInfinity;
}
