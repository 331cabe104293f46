namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How an arrow leaves when its attitude matters: where it flies, where it points, and how it turns.</summary>
/// <remarks>
/// Attitude is counted from the direction of the launch over the ground, and each part is zero when not given: an arrow that
/// leaves pointing the way it flies. In a cross wind such an arrow meets the air at an angle, as real ones do.
/// </remarks>
public sealed record RigidLaunch
{
    const double Widest = 25; // degrees; at 30 the flight counts as tumbled

    /// <summary>Speed, direction and place of the balance point.</summary>
    public required Launch Launch
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Launch));
            field = value;
        }
    }

    /// <summary>Nose above the direction of flight; negative below; -25° to +25°.</summary>
    public Angle Pitch { get; init => field = Within(value, nameof(Pitch)); }

    /// <summary>Nose to the right of the direction of flight; negative to the left; -25° to +25°.</summary>
    public Angle Yaw { get; init => field = Within(value, nameof(Yaw)); }

    /// <summary>How fast the nose rises, in space; -100 to +100 rad/s.</summary>
    public RotationalSpeed PitchRate { get; init => field = Within(value, 100, nameof(PitchRate)); }

    /// <summary>How fast the nose goes to the right, in space; -100 to +100 rad/s.</summary>
    public RotationalSpeed YawRate { get; init => field = Within(value, 100, nameof(YawRate)); }

    /// <summary>Spin about the axis; clockwise seen by the archer is positive; -1000 to +1000 rad/s. Vanes spin it up from zero within some metres.</summary>
    public RotationalSpeed Spin { get; init => field = Within(value, 1000, nameof(Spin)); }

    internal RigidLaunchSi Si => new(
        Launch.Si, Pitch.Radians, Yaw.Radians, PitchRate.RadiansPerSecond, YawRate.RadiansPerSecond, Spin.RadiansPerSecond);

    /// <summary>A launch that points along its way through the air, so that it starts without an angle of attack.</summary>
    /// <param name="launch">Speed, direction and place.</param>
    /// <param name="wind">Velocity of the air.</param>
    /// <returns>The launch, not turning.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The wind is so strong that the arrow would point more than 25° off its way.</exception>
    public static RigidLaunch AlignedWithAir(Launch launch, Wind wind)
    {
        ArgumentNullException.ThrowIfNull(launch);
        ArgumentNullException.ThrowIfNull(wind);
        LaunchAxes axes = new(launch.Si);
        Vec u = launch.Si.Speed * axes.Ahead - new Vec(wind.AlongSi, wind.UpSi, wind.AcrossSi);
        double ahead = u.Dot(axes.Ahead), above = u.Dot(axes.Above), right = u.Dot(axes.Right);
        return new()
        {
            Launch = launch,
            Pitch = Angle.FromRadians(Math.Atan2(above, Math.Sqrt(ahead * ahead + right * right))),
            Yaw = Angle.FromRadians(Math.Atan2(right, ahead)),
        };
    }

    static Angle Within(Angle value, string name)
    {
        Require.InRange(value.Degrees, -Widest, Widest, "degrees", name);
        return value;
    }

    static RotationalSpeed Within(RotationalSpeed value, double widest, string name)
    {
        Require.InRange(value.RadiansPerSecond, -widest, widest, "rad/s", name);
        return value;
    }
}
