namespace Ascham.Records;

using Ascham.Bows;
using UnitsNet;

/// <summary>The quantities and words of a bow on the bench; ranges stay inside those of the room Bows.</summary>
static class BowBenchMeasures
{
    internal static readonly Measure<Force> DrawForce =
        new("a force", "41.5 lbf", Force.Zero, Force.FromNewtons(999), Units.Forces);

    internal static readonly Measure<Force> ForceSd =
        new("a force", "0.5 lbf", Force.Zero, Force.FromNewtons(99), Units.Forces);

    internal static readonly Measure<Force> PerTurn =
        new("a force", "3.2 lbf", Force.Zero, Force.FromNewtons(99), Units.Forces) { Above = true };

    internal static readonly Measure<Length> Draw =
        new("a draw length", "20.5 in", Length.Zero, Length.FromMeters(1.9), Units.Lengths) { Above = true };

    internal static readonly Measure<Length> Brace =
        new("a length", "6.5 in", Length.Zero, Length.FromMeters(0.5), Units.Lengths) { Above = true };

    internal static readonly Measure<Mass> VirtualMass =
        new("a mass", "77 gr", Mass.Zero, Mass.FromGrams(199), Units.Masses);

    internal static readonly Measure<Mass> ArrowMass =
        new("an arrow mass", "400 gr", Mass.Zero, Mass.FromGrams(199), Units.Masses) { Above = true };

    internal static readonly Measure<Speed> Speed =
        new("a speed", "278 ft/s", UnitsNet.Speed.Zero, UnitsNet.Speed.FromMetersPerSecond(199), Units.Speeds) { Above = true };

    internal static readonly Measure<Speed> ShotSd =
        new("a speed", "1.2 ft/s", UnitsNet.Speed.Zero, UnitsNet.Speed.FromMetersPerSecond(49), Units.Speeds);

    internal static readonly Words<BowKind> Kinds = new(("compound", BowKind.Compound), ("recurve", BowKind.Recurve), ("longbow", BowKind.Longbow));
}
