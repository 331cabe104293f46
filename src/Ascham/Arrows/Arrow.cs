namespace Ascham.Arrows;

using UnitsNet;

/// <summary>An arrow as far as its flight needs it.</summary>
public sealed record Arrow
{
    /// <summary>Mass of the complete arrow; positive.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Outer diameter of the shaft; positive. Reference for a drag coefficient.</summary>
    public Length? ShaftDiameter { get; init; }

    /// <summary>Length from the bottom of the nock slot to the front end of the shaft, without the point.</summary>
    public Length? Length { get; init; }

    /// <summary>Drag constant k in the air of the measurement, the relative loss of speed per metre flown; not negative.</summary>
    public ReciprocalLength? DragConstant { get; init; }

    /// <summary>Drag area: drag coefficient times reference area; not negative.</summary>
    public Area? DragArea { get; init; }
}
