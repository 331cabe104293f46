namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>A launch with attitude in SI units.</summary>
/// <param name="Launch">Speed, direction, place.</param>
/// <param name="Pitch">Nose above the direction of flight, radians.</param>
/// <param name="Yaw">Nose to the right of it, radians.</param>
/// <param name="PitchRate">Nose rising, rad/s.</param>
/// <param name="YawRate">Nose going right, rad/s.</param>
/// <param name="Spin">Clockwise seen by the archer, rad/s.</param>
readonly record struct RigidLaunchSi(LaunchSi Launch, double Pitch = 0, double Yaw = 0, double PitchRate = 0, double YawRate = 0, double Spin = 0)
{
    /// <summary>The state at the launch, in world axes.</summary>
    internal RigidBodyState<Real> State
    {
        get
        {
            LaunchAxes axes = new(Launch);
            (double sinP, double cosP) = Math.SinCos(Pitch);
            (double sinY, double cosY) = Math.SinCos(Yaw);
            Vec across = cosY * axes.Ahead + sinY * axes.Right; // the axis before the nose is raised
            Vec rising = cosP * axes.Above - sinP * across, turning = cosY * axes.Right - sinY * axes.Ahead;
            return new()
            {
                Velocity = (Launch.Speed * axes.Ahead).Real,
                Axis = (cosP * across + sinP * axes.Above).Real,
                AxisRate = (PitchRate * rising + YawRate * turning).Real,
                Spin = new(Spin),
            };
        }
    }
}

/// <summary>Directions of a launch: ahead, above in the vertical plane, and right.</summary>
readonly struct LaunchAxes
{
    internal readonly Vec Ahead, Above, Right;

    internal LaunchAxes(in LaunchSi launch)
    {
        (double sin, double cos) = Math.SinCos(launch.Elevation);
        (double sinA, double cosA) = launch.Azimuth == 0 ? (0, 1) : Math.SinCos(launch.Azimuth);
        Ahead = new(cos * cosA, sin, cos * sinA);
        Above = new(-sin * cosA, cos, -sin * sinA);
        Right = new(-sinA, 0, cosA);
    }
}
