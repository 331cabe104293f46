namespace Ascham.Arrows;

/// <summary>How the edges of a vane are finished, front and back.</summary>
public enum VaneEdge
{
    /// <summary>Cut square.</summary>
    Square,

    /// <summary>Rounded.</summary>
    Rounded,

    /// <summary>Rounded in front and drawn out to a thin edge behind.</summary>
    Streamlined,
}
