namespace Ascham.Flight;

using Ascham.Arrows;
using UnitsNet;

/// <summary>A rigid arrow at one moment of its flight: where it is, and where it points.</summary>
public readonly record struct RigidState
{
    internal RigidState(in RigidStateSi si)
    {
        Flight = new(si.Point);
        (double up, double right) = si.FromPath(si.Axis);
        double cosine = Math.Min(1, si.Axis.Dot(si.Air) / si.Air.Length);
        (AttackUp, AttackRight) = (Angle.FromRadians(up), Angle.FromRadians(right));
        Attack = Angle.FromRadians(Math.Atan2(si.Axis.Cross(si.Air).Length / si.Air.Length, cosine));
        Spin = RotationalSpeed.FromRadiansPerSecond(si.Spin);
        Turning = RotationalSpeed.FromRadiansPerSecond(si.Rate.Length);
        Pointing = Angle.FromRadians(Math.Atan2(si.Axis.Y, Math.Sqrt(si.Axis.X * si.Axis.X + si.Axis.Z * si.Axis.Z)));
        PointingRight = Angle.FromRadians(Math.Atan2(si.Axis.Z, si.Axis.X));
    }

    /// <summary>When, where and how fast, of the balance point.</summary>
    public FlightState Flight { get; }

    /// <summary>Angle between the arrow and its path through the air; zero or more.</summary>
    public Angle Attack { get; }

    /// <summary>Its part in the vertical plane: nose above the path positive.</summary>
    public Angle AttackUp { get; }

    /// <summary>Its part to the side: nose to the right of the path positive.</summary>
    public Angle AttackRight { get; }

    /// <summary>Where the nose points: above the horizontal positive. A tear in paper shows this against the way the arrow flies over the ground.</summary>
    public Angle Pointing { get; }

    /// <summary>Where the nose points: to the right of downrange positive.</summary>
    public Angle PointingRight { get; }

    /// <summary>Rate at which the axis turns in space; zero or more.</summary>
    public RotationalSpeed Turning { get; }

    /// <summary>Spin about the axis; clockwise seen by the archer positive.</summary>
    public RotationalSpeed Spin { get; }
}

/// <summary>How an arrow swings along its way.</summary>
public sealed record AttackHistory
{
    const double SmallAngle = 8; // degrees: beyond, lift is no longer in proportion to the angle

    internal AttackHistory(IReadOnlyList<RigidState> states, Angle largestOnTheWay, Stability stability)
    {
        States = states;
        LargestAttack = Angle.FromDegrees(states.Select(s => s.Attack.Degrees).Append(largestOnTheWay.Degrees).Max());
        Cautions = [.. Warn(LargestAttack.Degrees, stability)];
    }

    /// <summary>The states, one per distance asked for.</summary>
    public IReadOnlyList<RigidState> States { get; }

    /// <summary>Largest angle of attack from the launch to the last of them.</summary>
    public Angle LargestAttack { get; }

    /// <summary>What to beware of in these numbers, in sentences; empty when there is nothing.</summary>
    public IReadOnlyList<string> Cautions { get; }

    static IEnumerable<string> Warn(double attack, Stability stability)
    {
        if (!stability.IsStable)
        {
            yield return FormattableString.Invariant(
                $"The centre of pressure lies {-stability.Margin.Centimeters:0.#} cm ahead of the balance point: at small angles nothing holds this arrow straight.");
        }

        if (attack > SmallAngle)
        {
            yield return FormattableString.Invariant(
                $"The angle of attack reaches {attack:0.#}°; beyond {SmallAngle}° lift is no longer in proportion to it and the flight is an extrapolation.");
        }
    }
}

/// <summary>Where a rigid arrow strikes relative to the same arrow as a point mass, on the face.</summary>
/// <param name="Up">Higher is positive.</param>
/// <param name="Right">To the archer's right is positive.</param>
public readonly record struct ShiftFromPointMass(Length Up, Length Right);
