namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>The virtual mass to be expected of a kind of bow when it was not measured.</summary>
/// <remarks>
/// From the efficiency m/(m + K) usual for the kind at a usual arrow: compound 0.75 to 0.90, recurve 0.65 to 0.80, longbow 0.55 to 0.75
/// (from memory), taken as two standard deviations either side. A prior, not a measurement: shoot two masses over a chronograph.
/// </remarks>
public static class UsualVirtualMass
{
    /// <summary>What to expect of a bow: the limbs do not change with the arrow, so the usual efficiency is taken at a usual arrow of the kind.</summary>
    /// <remarks>6 gr/lbf of peak weight for compounds, 8 for recurves, 9 for longbows (common practice, no source).</remarks>
    /// <param name="kind">The kind of bow.</param>
    /// <param name="peakWeight">Peak weight of the bow; positive.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The virtual mass; never negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is not positive, the level is outside its range, or no such kind.</exception>
    public static Estimate<Mass> For(BowKind kind, Force peakWeight, double level)
    {
        double usual = kind switch { BowKind.Recurve => 8, BowKind.Longbow => 9, _ => 6 }; // gr/lbf; common practice, no source
        return For(kind, Mass.FromGrains(usual * Require.Positive(peakWeight.PoundsForce, "lbf", nameof(peakWeight))), level);
    }

    /// <summary>What to expect of a bow that usually shoots a given arrow.</summary>
    /// <param name="kind">The kind of bow.</param>
    /// <param name="arrowMass">The arrow it usually shoots, not any arrow tried once; positive.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The virtual mass; never negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, the level is outside its range, or no such kind.</exception>
    public static Estimate<Mass> For(BowKind kind, Mass arrowMass, double level)
    {
        Require.Positive(arrowMass.Kilograms, "kg", nameof(arrowMass));
        (double least, double most) = kind switch
        {
            BowKind.Compound => (0.75, 0.90), // from memory
            BowKind.Recurve => (0.65, 0.80),  // from memory
            BowKind.Longbow => (0.55, 0.75),  // from memory
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "kind must be one of the named kinds of bow."),
        };
        double share = (least + most) / 2, sd = (most - least) / 4, ratio = 1 / share - 1, relative = sd / (share * share) / ratio;
        return Bounds.Logarithmic(ratio, relative, Bounds.Multiplier(level), level, 0, $"usual efficiency of a {kind.ToString().ToLowerInvariant()}, not measured").Map(r => r * arrowMass);
    }
}
