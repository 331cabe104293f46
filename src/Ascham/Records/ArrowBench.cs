namespace Ascham.Records;

using Ascham.Arrows;
using UnitsNet;

/// <summary>What the bench says of the arrow of a setup: its parts, where it balances, its spine, the shape of its vanes.</summary>
/// <remarks>Places count from the bottom of the nock slot towards the point. The weighed mass is that of <see cref="Setup.Arrow"/>.</remarks>
public sealed record ArrowBench
{
    /// <summary>The parts, in the order of the file; empty when not listed.</summary>
    public IReadOnlyList<ArrowPart> Parts { get; init => field = value ?? throw new ArgumentNullException(nameof(Parts)); } = [];

    /// <summary>Where the complete arrow balances on a knife edge.</summary>
    public Length? BalancePoint { get; init; }

    /// <summary>Sag of the shaft under 1.94 lbf (880 g) on a span of 28 in: 0.340 in for a "340".</summary>
    public Length? SpineSag { get; init; }

    /// <summary>Sag of a wooden shaft under 2 lbf on a span of 26 in; this or <see cref="SpineSag"/>, not both.</summary>
    public Length? WoodSpineSag { get; init; }

    /// <summary>Shape of one vane, and how many there are; their length and place are those of the part.</summary>
    public VaneShape? Vanes { get; init; }

    /// <summary>Stiffness of the shaft; <see langword="null"/> when its spine was not read.</summary>
    public StaticSpine? Spine =>
        SpineSag is { } sag ? StaticSpine.FromDeflection(sag) : WoodSpineSag is { } wood ? StaticSpine.FromWoodDeflection(wood) : null;

    /// <summary>Whether two say the same, parts in the same order.</summary>
    /// <param name="other">The other.</param>
    /// <returns>The answer.</returns>
    public bool Equals(ArrowBench? other) =>
        other is not null && Parts.SequenceEqual(other.Parts) && BalancePoint.Equals(other.BalancePoint) && SpineSag.Equals(other.SpineSag)
        && WoodSpineSag.Equals(other.WoodSpineSag) && Equals(Vanes, other.Vanes);

    /// <inheritdoc/>
    public override int GetHashCode() => Parts.Aggregate(HashCode.Combine(BalancePoint, SpineSag, WoodSpineSag, Vanes), HashCode.Combine);
}

/// <summary>Shape of one vane as a trapezoid, and how many there are.</summary>
/// <remarks>A real vane has a curved outline; take the trapezoid of the same base, height and area.</remarks>
public sealed record VaneShape
{
    /// <summary>How many vanes, evenly spaced; 3 to 8.</summary>
    public required int Count { get; init; }

    /// <summary>Height above the shaft; positive.</summary>
    public required Length Height { get; init; }

    /// <summary>Length at the outer edge; zero for a triangle.</summary>
    public required Length TipLength { get; init; }

    /// <summary>How far the front of the outer edge stands behind the front of the base; zero or more.</summary>
    public required Length Sweep { get; init; }

    /// <summary>Angle against the shaft; positive turns the arrow clockwise seen by the archer. Straight when not given.</summary>
    public Angle? Offset { get; init; }
}

public sealed partial record Setup
{
    /// <summary>What the bench says of the arrow; <see langword="null"/> when the file says nothing of it.</summary>
    public ArrowBench? ArrowBench { get; init; }

    /// <summary>The arrow as built, its weighed mass and measured balance overriding what the parts add up to; <see langword="null"/> when no parts are listed.</summary>
    public ArrowBuild? ArrowBuild => ArrowBench is { Parts.Count: > 0 } bench
        ? new() { Parts = bench.Parts, WeighedMass = Arrow.Mass, MeasuredBalance = bench.BalancePoint }
        : null;

    /// <summary>The vanes as lifting parts; <see langword="null"/> when their shape is not given.</summary>
    /// <param name="effectiveness">Share of the free-stream lift that they deliver; see <see cref="Fletching.Effectiveness"/>.</param>
    /// <returns>The vanes, counted from the tip of the point.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public Fletching? FletchingWith(Ratio effectiveness) =>
        ArrowBuild is { } build && ArrowBench!.Vanes is { } shape && build.Parts.FirstOrDefault(p => p.Kind == PartKind.Vanes) is { } vanes
            ? new()
            {
                Count = shape.Count,
                RootChord = vanes.Length,
                TipChord = shape.TipLength,
                Height = shape.Height,
                Sweep = shape.Sweep,
                FromTip = build.FromTip(vanes.To),
                Offset = shape.Offset ?? Angle.Zero,
                Effectiveness = effectiveness,
            }
            : null;
}
