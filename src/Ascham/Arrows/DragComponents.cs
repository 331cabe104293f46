namespace Ascham.Arrows;

using UnitsNet;

/// <summary>Where the drag of an arrow comes from, at one Reynolds number: coefficients on the cross-section of the shaft.</summary>
public sealed record DragComponents
{
    /// <summary>Reynolds number of the shaft diameter, V d/nu.</summary>
    public required double Reynolds { get; init; }

    /// <summary>Cross-section of the shaft, to which the coefficients refer.</summary>
    public required Area ReferenceArea { get; init; }

    /// <summary>Friction along the shaft.</summary>
    public required double Shaft { get; init; }

    /// <summary>Pressure on the point.</summary>
    public required double Point { get; init; }

    /// <summary>Suction behind the nock.</summary>
    public required double Base { get; init; }

    /// <summary>Friction along both faces of the vanes.</summary>
    public required double VaneFriction { get; init; }

    /// <summary>Pressure on the edges of the vanes.</summary>
    public required double VaneEdges { get; init; }

    /// <summary>Anything added as a drag area: the blades of a broadhead, a lighted nock, a wrap.</summary>
    public required double Extra { get; init; }

    /// <summary>Whether the Reynolds number lies in 5e3 to 6e4, where the formulas were held against measured arrows.</summary>
    public bool IsInTriedRange => Reynolds is >= 5e3 and <= 6e4;

    /// <summary>The whole drag coefficient.</summary>
    public double Total => Shaft + Point + Base + VaneFriction + VaneEdges + Extra;

    /// <summary>Drag coefficient times reference area: what the air sees, and what differs little between shafts of different diameter.</summary>
    public Area DragArea => Total * ReferenceArea;

    /// <summary>The parts by name, in the order above.</summary>
    public IReadOnlyList<(string Name, double Coefficient)> Parts =>
        [("shaft", Shaft), ("point", Point), ("base", Base), ("vane faces", VaneFriction), ("vane edges", VaneEdges), ("extra", Extra)];
}
