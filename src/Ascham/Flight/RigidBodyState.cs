namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>What changes in the flight of a rigid arrow, at a distance from the face.</summary>
/// <remarks>
/// The axis and its rate are vectors, so no angle has a singular place, and axes that do not roll with the arrow come by
/// themselves. The last three do not feed back. A plain block of numbers: the integrator adds it as such.
/// </remarks>
struct RigidBodyState<T>
    where T : unmanaged, IReal<T>
{
    /// <summary>Velocity of the balance point over the ground.</summary>
    internal Triple<T> Velocity;

    /// <summary>Direction from the balance point to the tip, of length one.</summary>
    internal Triple<T> Axis;

    /// <summary>Its rate of change with time, square to it.</summary>
    internal Triple<T> AxisRate;

    /// <summary>Rate of turning about the axis.</summary>
    internal T Spin;

    /// <summary>Time since the launch.</summary>
    internal T Time;

    /// <summary>Way gone along the face in the vertical plane.</summary>
    internal T Up;

    /// <summary>Way gone to the right.</summary>
    internal T Right;

    /// <summary>Nothing: sixteen numbers are summed faster than thirteen.</summary>
    internal Triple<T> Spare;
}
