namespace Ascham.Groups;

/// <summary>A direction on the face.</summary>
public enum Axis
{
    /// <summary>Across the face; positive to the archer's right.</summary>
    Horizontal,

    /// <summary>Up the face; positive upwards.</summary>
    Vertical,
}
