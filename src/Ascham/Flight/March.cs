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

    /// <summary>At some speed of the flight the drag law does not hold.</summary>
    Uncovered,
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

/// <summary>Equations of motion with the distance to the face as the independent variable.</summary>
/// <typeparam name="TState">What is stepped.</typeparam>
/// <typeparam name="TSums">What is summed along the path beside it.</typeparam>
/// <typeparam name="T">The kind of number.</typeparam>
interface IPath<TState, TSums, T> : IField<TState, T>
{
    /// <summary>Length of the next step from here, in metres toward the face.</summary>
    double StepFrom(double x, TState y);

    /// <summary>Whether the path still runs toward the face; also false when the state is not a number.</summary>
    bool IsSound(TState y);

    /// <summary>Whether the drag law holds here.</summary>
    bool Covers(double x, TState y);

    /// <summary>The sums after a step.</summary>
    TSums Add(TSums sums, T step, in LobattoNodes<TState> at);
}

/// <summary>Flies a point mass through a steady, uniform wind until it stands exactly on a face.</summary>
/// <remarks>See <see cref="TowardFace{T, TDrag}"/> for the equations. Nothing is allocated.</remarks>
static class March
{
    /// <summary>Beyond this the path runs along the face, and where it meets it is as good as undefined: 1/cos 88 degrees.</summary>
    internal const double SteepestR = 28.65;

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
        var sums = new PathSums<T>(T.Of(0), T.Of(0));
        reach = 0;
        Outcome outcome = face.Distance >= 0 && field.IsSound(state)
            ? Advance<TowardFace<T, TDrag>, PathState<T>, PathSums<T>, T>(field, face.Distance, steps, ref state, ref sums, out reach)
            : Outcome.Away;

        // Back to world axes and to the ground.
        time = sums.Time;
        T advanced = (T.Of(reach) - windToward * time) / q;
        T flown = advanced * mx - sums.Slid * my, risen = advanced * my + sums.Slid * mx;
        moved = new Triple<T>(flown * ex, risen, flown * ez) + time * wind;
        T speedToward = T.Of(1) / state.Slowness, speedAlong = state.Slope * speedToward;
        T levelSpeed = speedToward * mx - speedAlong * my;
        arriving = new Triple<T>(levelSpeed * ex, speedToward * my + speedAlong * mx, levelSpeed * ez) + wind;
        return outcome;
    }

    /// <summary>Steps a path to the face, from where it is sound.</summary>
    internal static Outcome Advance<TPath, TState, TSums, T>(
        in TPath path, double distance, int steps, ref TState state, ref TSums sums, out double reach)
        where TPath : struct, IPath<TState, TSums, T>
        where TState : struct, IState<TState, T>
        where TSums : struct
        where T : struct, IReal<T>
    {
        reach = 0;
        double longest = distance;
        if (!path.Covers(0, state))
        {
            return Outcome.Uncovered;
        }

        while (reach < distance)
        {
            double left = distance - reach;
            double step = Math.Min(longest, steps > 0 ? distance / steps : path.StepFrom(reach, state));
            step = step >= left * (1 - 1e-12) ? left : Math.Min(step, steps > 0 ? step : 0.5 * left);

            T h = T.Of(step);
            TState next = RungeKutta8.Step<TPath, TState, T>(path, T.Of(reach), state, h, out var at);
            if (!path.IsSound(next))
            {
                if (!(step >= ShortestStep)) // also when it is not a number
                {
                    return Outcome.TooFar;
                }

                longest = 0.5 * step;
                continue;
            }

            sums = path.Add(sums, h, at);
            state = next;
            reach = step == left ? distance : reach + step;
            if (!path.Covers(reach, state))
            {
                return Outcome.Uncovered;
            }
        }

        return Outcome.Met;
    }
}
