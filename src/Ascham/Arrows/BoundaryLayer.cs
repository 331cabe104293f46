namespace Ascham.Arrows;

/// <summary>State of the thin layer of air that a shaft drags along. It decides drag by a factor of 1.6 to 2 and cannot be seen.</summary>
public enum BoundaryLayer
{
    /// <summary>Smooth along the whole shaft: streamlined points, arrows that fly straight. The optimistic bound.</summary>
    Laminar,

    /// <summary>Turbulent along the whole shaft: ordinary points, edges, wraps, an angle of attack above about a degree. The usual case for compound arrows.</summary>
    Turbulent,
}
