namespace Ascham.Causes;

using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;

/// <summary>The bow as it was when all was well: what every cause is a departure from.</summary>
public sealed record KnownBow
{
    /// <summary>Sight, launch speed, drag, air and gravity.</summary>
    public required SightModel Sight { get; init; }

    /// <summary>Peak weight; positive.</summary>
    public required Force PeakWeight { get; init; }

    /// <summary>Mass of the complete arrow; positive.</summary>
    public required Mass ArrowMass { get; init; }

    /// <summary>Virtual mass of the bow: what of string and limbs moves with the arrow; not negative. A few grams to some ten; never assumed.</summary>
    public required Mass VirtualMass { get; init; }

    /// <summary>How launch speed follows peak weight: speed goes as weight to half this power. 1 when the stored energy follows the peak, within 0.15.</summary>
    public double WeightPower { get; init; } = 1;

    /// <summary>Standard deviation of the launch speed as known, in proportion; 0.015 when read from one ordinary chronograph.</summary>
    public required double SpeedSd { get; init; }

    /// <summary>Standard deviation of the natural logarithm of the drag as known; 0.2 when built up and not measured.</summary>
    public required double DragSd { get; init; }

    /// <summary>Distance at which the sight was set sideways: about its pin a tilted bar turns.</summary>
    public Length SideSetAt { get; init; } = Length.FromYards(20); // common practice, no source

    internal void Check()
    {
        ArgumentNullException.ThrowIfNull(Sight);
        Require.Positive(PeakWeight.Newtons, "N", nameof(PeakWeight));
        Require.Positive(ArrowMass.Kilograms, "kg", nameof(ArrowMass));
        Require.NotNegative(VirtualMass.Kilograms, "kg", nameof(VirtualMass));
        Require.InRange(WeightPower, 0.2, 3, "", nameof(WeightPower));
        Require.InRange(SpeedSd, 0, 0.2, "", nameof(SpeedSd));
        Require.InRange(DragSd, 0, 1, "", nameof(DragSd));
        Require.Positive(SideSetAt.Meters, "m", nameof(SideSetAt));
    }
}
