namespace Ascham.Groups;

using UnitsNet;

/// <summary>One arrow shot: when, from how far, with what setting, and where it went.</summary>
/// <remarks>Either <see cref="Impact"/> or <see cref="Missed"/> is given, never both.</remarks>
public sealed record Shot
{
    /// <summary>Name of the session it belongs to.</summary>
    public required string Session { get; init; }

    /// <summary>Distance to the face along the line of sight; positive.</summary>
    public required Length Distance { get; init; }

    /// <summary>Number within the session, from 1, in the order shot.</summary>
    public required int Number { get; init; }

    /// <summary>Where it struck; <see langword="null"/> when it missed the butt.</summary>
    public Impact? Impact { get; init; }

    /// <summary>Where it went when it missed the butt; <see langword="null"/> when it struck.</summary>
    public Miss? Missed { get; init; }

    /// <summary>Whether the archer called a flyer before looking.</summary>
    public bool Called { get; init; }

    /// <summary>The number written on the arrow.</summary>
    public string? Arrow { get; init; }

    /// <summary>What stands at the front, in the archer's words, such as "field" or "broadhead".</summary>
    public string? PointType { get; init; }

    /// <summary>Whether the arrow had vanes on; <see langword="null"/> when not recorded.</summary>
    public bool? Fletched { get; init; }

    /// <summary>How long the archer held at full draw.</summary>
    public Duration? Hold { get; init; }

    /// <summary>Where the sight stood, on its own scale; <see langword="null"/> when it stood at the mark for the distance.</summary>
    public Length? Setting { get; init; }

    /// <summary>Slope of the line of sight; positive uphill; level when not recorded.</summary>
    public Angle? Slope { get; init; }

    /// <summary>Name of the group or end, in the archer's words.</summary>
    public string? Group { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}
