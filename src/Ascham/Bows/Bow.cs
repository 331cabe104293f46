namespace Ascham.Bows;

using UnitsNet;

/// <summary>Which hand draws the string.</summary>
public enum Hand
{
    /// <summary>Right-handed: the right hand draws.</summary>
    Right,

    /// <summary>Left-handed: the left hand draws; the bow is the mirror image.</summary>
    Left,
}

/// <summary>A bow as its owner sees it: what it pulls, how far, and how fast the arrow leaves.</summary>
public sealed record Bow
{
    /// <summary>Largest force on the draw curve.</summary>
    public required Force PeakWeight { get; init; }

    /// <summary>Draw length by the trade standard: nocking point to grip pivot at full draw, plus 1.75 in.</summary>
    public Length? DrawLength { get; init; }

    /// <summary>Speed of the arrow of this setup as it leaves, as measured or taken; positive.</summary>
    public required Speed LaunchSpeed { get; init; }

    /// <summary>Standard deviation of that speed as a value (not from shot to shot).</summary>
    public Speed? LaunchSpeedSd { get; init; }

    /// <summary>Which hand draws.</summary>
    public Hand Hand { get; init; } = Hand.Right;
}
