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

    /// <summary>What sort of bow it is.</summary>
    public BowKind? Kind { get; init; }

    /// <summary>String at rest to grip pivot, square to the string; positive.</summary>
    public Length? BraceHeight { get; init; }

    /// <summary>Force while drawing.</summary>
    public DrawCurve? DrawCurve { get; init; }

    /// <summary>Force while letting down.</summary>
    public DrawCurve? LetDown { get; init; }

    /// <summary>Virtual mass, where it is known from elsewhere; not negative.</summary>
    public Mass? VirtualMass { get; init; }

    /// <summary>Its standard deviation.</summary>
    public Mass? VirtualMassSd { get; init; }

    /// <summary>Launch speeds of arrows of several masses.</summary>
    public ArrowSpeeds? ArrowSpeeds { get; init; }

    /// <summary>Speed the maker rates it at, under <see cref="Loading.Rating"/>; positive.</summary>
    public Speed? RatedSpeed { get; init; }

    /// <summary>Where the limb bolts stand.</summary>
    public LimbBolts? LimbBolts { get; init; }

    /// <summary>The maker's least arrow mass per peak weight, grains per pound-force; it comes before any usual limit.</summary>
    public double? LeastGrainsPerPound { get; init; }
}
