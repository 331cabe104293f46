namespace Ascham.Flight;

using System.Globalization;
using UnitsNet;

/// <summary>The arrow does not get to the distance asked for.</summary>
public sealed class OutOfReachException : Exception
{
    internal OutOfReachException(Length asked, Length reach, Angle inclination)
        : base(Text(asked, reach, inclination)) => (Asked, Reach, Inclination) = (asked, reach, inclination);

    /// <summary>The distance asked for, from the origin along the line of sight.</summary>
    public Length Asked { get; }

    /// <summary>
    /// The farthest face this launch meets: at this distance the path stands at 88° to the normal of the face,
    /// so that it runs along faces farther out or never comes to them. There is no ground in this: a path below it goes on. It is no range and no safety distance.
    /// </summary>
    public Length Reach { get; }

    /// <summary>Of the line of sight to which the face is square; zero for an upright face.</summary>
    public Angle Inclination { get; }

    static string Text(Length asked, Length reach, Angle inclination) => string.Create(
        CultureInfo.InvariantCulture,
        $"The arrow does not reach {asked.Meters:0.##} m along a line at {inclination.Degrees:0.#}°: with this launch it meets faces square to that line out to {reach.Meters:0.##} m only (as if there were no ground: no range, and no safety distance). Check the launch speed and the distance.");
}
