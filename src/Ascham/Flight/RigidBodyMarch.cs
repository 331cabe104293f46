namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>How the flight of a rigid arrow toward a face ended.</summary>
enum RigidOutcome
{
    /// <summary>On the face.</summary>
    Met,

    /// <summary>The path turned along the face before it got there.</summary>
    TooFar,

    /// <summary>It never started toward the face.</summary>
    Away,

    /// <summary>The angle of attack left every range in which the model means anything.</summary>
    Tumbled,
}

/// <summary>A rigid arrow on its way: it stands at a face, and can be taken on to the next.</summary>
/// <remarks>A mutable value on the stack; nothing is allocated.</remarks>
struct RigidBodyMarch(in RigidBodyField field, in RigidBodyState state, double reach, double wavelengths)
{
    /// <summary>Beyond 30° an arrow no longer flies as one: square of the sine.</summary>
    internal const double Tumbling = 0.25;

    // As for the point mass: beyond 88 degrees to its normal the path runs along the face.
    const double SteepestR = 28.65, ShortestStep = 1e-4;

    internal RigidBodyState State = state;

    /// <summary>Distance along the normal of the face.</summary>
    internal double Reach = reach;

    /// <summary>The largest square of the sine of the angle of attack that a step has ended with.</summary>
    internal double LargestSineSquared;

    readonly RigidBodyField equations = field;
    readonly double wavelengths = wavelengths;

    /// <summary>Square of the sine of the angle of attack here.</summary>
    internal readonly double SineSquared => equations.SineSquared(State);

    /// <summary>Goes on until it stands exactly at a distance.</summary>
    /// <param name="distance">Along the normal of the face, not behind.</param>
    /// <param name="steps">0 for steps by the built-in rule; otherwise this many equal steps.</param>
    internal RigidOutcome To(double distance, int steps = 0)
    {
        double start = Reach, longest = distance - start;
        if (!(longest >= 0) || !IsSound(State))
        {
            return RigidOutcome.Away;
        }

        LargestSineSquared = Math.Max(LargestSineSquared, SineSquared);
        if (!(LargestSineSquared < Tumbling))
        {
            return RigidOutcome.Tumbled;
        }

        Span<RigidBodyState> room = stackalloc RigidBodyState[DormandPrince8.Stages];
        while (Reach < distance)
        {
            double left = distance - Reach;
            double step = Math.Min(longest, steps > 0 ? (distance - start) / steps : equations.StepFrom(State, wavelengths));
            step = step >= left * (1 - 1e-12) ? left : Math.Min(step, steps > 0 ? step : 0.5 * left);

            DormandPrince8.Step(equations, Reach, State, step, room, out RigidBodyState next);
            if (!IsSound(next))
            {
                if (!(step >= ShortestStep)) // also when it is not a number
                {
                    return RigidOutcome.TooFar;
                }

                longest = 0.5 * step;
                continue;
            }

            State = next;
            Reach = step == left ? distance : Reach + step;
            double sineSquared = SineSquared;
            LargestSineSquared = Math.Max(LargestSineSquared, sineSquared);
            if (!(sineSquared < Tumbling))
            {
                return RigidOutcome.Tumbled;
            }
        }

        return RigidOutcome.Met;
    }

    // Comparisons with NaN are false, so a state that is not a number is not sound either.
    static bool IsSound(in RigidBodyState y)
    {
        double toward = y.Velocity.X;
        return toward > 0 && Math.Abs(y.Velocity.Y) < SteepestR * toward && Math.Abs(y.Velocity.Z) < SteepestR * toward
            && double.IsFinite(y.AxisRate.Dot(y.AxisRate)) && double.IsFinite(y.Spin) && double.IsFinite(y.Axis.Dot(y.Axis));
    }
}
