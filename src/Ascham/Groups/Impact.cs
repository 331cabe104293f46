namespace Ascham.Groups;

using UnitsNet;

/// <summary>Where one arrow struck the face, seen by the archer, relative to the aim point.</summary>
/// <param name="Right">Horizontal offset; positive to the archer's right.</param>
/// <param name="Up">Vertical offset; positive upwards.</param>
public readonly record struct Impact(Length Right, Length Up);

/// <summary>Where an arrow went that left no mark on the face.</summary>
public enum Miss
{
    /// <summary>It passed, but nobody saw where.</summary>
    Unknown,

    /// <summary>It passed below the butt.</summary>
    Low,

    /// <summary>It passed above the butt.</summary>
    High,

    /// <summary>It passed to the left of the butt, seen by the archer.</summary>
    Left,

    /// <summary>It passed to the right of the butt, seen by the archer.</summary>
    Right,
}
