namespace Ascham.Sights;

using UnitsNet;

/// <summary>Which way the pin moves when the number on the sight's scale grows.</summary>
public enum ScaleDirection
{
    /// <summary>A larger number is a lower pin, as on most tapes: a longer distance.</summary>
    Down,

    /// <summary>A larger number is a higher pin.</summary>
    Up,
}

/// <summary>Where eye, peep and pin stand with respect to the arrow, and how the printed scale follows the pin.</summary>
/// <remarks>Axes are fixed to the bow at full draw: along the arrow, and up at right angles to it.</remarks>
public sealed record SightGeometry
{
    /// <summary>Distance from the peep (or the eye, without a peep) forward to the pin; positive.</summary>
    public required Length PeepToPin { get; init; }

    /// <summary>Height of the peep (or the eye) above the arrow's axis at full draw.</summary>
    public required Length PeepHeight { get; init; }

    /// <summary>Travel of the printed scale per travel of the pin; 1 on a plain slider, other on geared or dial sights. Never assumed.</summary>
    public required double TapePerPinTravel { get; init; }

    /// <summary>Which way the pin moves when the number on the scale grows.</summary>
    public required ScaleDirection Increases { get; init; }

    /// <summary>Travel of the scale that one of the sight's own scale numbers stands for; needed only for marks given in scale numbers.</summary>
    public Length? ScaleUnit { get; init; }
}
