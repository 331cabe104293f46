namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>The vanes of an arrow: like blades, evenly spaced around the shaft, each a trapezoid.</summary>
/// <remarks>
/// A real vane has a curved outline; take the trapezoid of the same base length, height and area.
/// Lengths along the arrow are counted from the tip of the point.
/// </remarks>
public sealed partial record Fletching
{
    /// <summary>How many vanes; 3 to 8. Two would not be alike in pitch and yaw, and are refused.</summary>
    public required int Count
    {
        get;
        init
        {
            Require.InRange(value, 3, 8, "", nameof(Count));
            field = value;
        }
    }

    /// <summary>Length of a vane along the shaft; positive.</summary>
    public required Length RootChord { get; init => field = Positive(value, nameof(RootChord)); }

    /// <summary>Length of a vane at its outer edge; zero for a triangle.</summary>
    public required Length TipChord { get; init => field = NotNegative(value, nameof(TipChord)); }

    /// <summary>Height of a vane above the shaft; positive.</summary>
    public required Length Height { get; init => field = Positive(value, nameof(Height)); }

    /// <summary>How far the front of the outer edge stands behind the front of the root; zero or more.</summary>
    public required Length Sweep { get; init => field = NotNegative(value, nameof(Sweep)); }

    /// <summary>From the tip of the point to the front of the root; zero or more.</summary>
    public required Length FromTip { get; init => field = NotNegative(value, nameof(FromTip)); }

    /// <summary>
    /// Angle of the vanes against the shaft; positive turns the arrow clockwise seen by the archer; -10° to +10°.
    /// Straight vanes when not given. A helical vane: its mean angle.
    /// </summary>
    public Angle Offset
    {
        get;
        init
        {
            Require.InRange(value.Degrees, -10, 10, "degrees", nameof(Offset));
            field = value;
        }
    }

    /// <summary>Share of the free-stream lift that the vanes deliver; above 0, up to 1.</summary>
    /// <remarks>
    /// Vanes stand in the slowed air along the shaft, whose turbulent layer is as thick as they are high, and they bend:
    /// 0.6 to 1.0 is a fair range, and no measurement was found that narrows it. A filmed wavelength does, for one arrow.
    /// </remarks>
    public required Ratio Effectiveness
    {
        get;
        init
        {
            double share = Require.Positive(value.DecimalFractions, "", nameof(Effectiveness));
            Require.InRange(share, 0, 1, "", nameof(Effectiveness));
            field = value;
        }
    }

    static Length Positive(Length value, string name)
    {
        Require.Positive(value.Meters, "m", name);
        return value;
    }

    static Length NotNegative(Length value, string name)
    {
        Require.NotNegative(value.Meters, "m", name);
        return value;
    }
}
