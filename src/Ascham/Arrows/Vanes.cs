namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>The vanes of an arrow as far as their drag goes.</summary>
/// <remarks>Straight along the flow; offset and helical vanes add drag that this leaves out.</remarks>
public sealed record Vanes
{
    /// <summary>How many; 1 to 8.</summary>
    public required int Count
    {
        get;
        init
        {
            Require.InRange(value, 1, 8, "", nameof(Count));
            field = value;
        }
    }

    /// <summary>Length of the base along the shaft; positive.</summary>
    public required Length Chord { get; init => field = Positive(value, nameof(Chord)); }

    /// <summary>Height above the shaft; positive.</summary>
    public required Length Height { get; init => field = Positive(value, nameof(Height)); }

    /// <summary>Thickness; positive, at most a quarter of the chord.</summary>
    public required Length Thickness { get; init => field = Positive(value, nameof(Thickness)); }

    /// <summary>Area of one side over chord times height: 1 for a rectangle, 0.5 for a triangle, about 0.6 for the usual low shapes (common practice, no source).</summary>
    public required Ratio Fullness
    {
        get;
        init
        {
            Require.InRange(Require.Positive(value.DecimalFractions, "", nameof(Fullness)), 0, 1, "", nameof(Fullness));
            field = value;
        }
    }

    /// <summary>Finish of the edges.</summary>
    public required VaneEdge Edge { get; init; }

    /// <summary>Area of one side of all vanes together, m².</summary>
    internal double Planform => Count * Fullness.DecimalFractions * Chord.Meters * Height.Meters;

    /// <summary>Length of the flow along the vane: three quarters of its base, a modelling choice (a tenth more or less is 2 % of the friction).</summary>
    internal double FrictionLength => 0.75 * Chord.Meters;

    /// <summary>Friction area: what multiplies the coefficient of one face, m².</summary>
    internal double FrictionArea => Planform * SkinFriction.BladePerFriction(Thickness.Meters / FrictionLength);

    /// <summary>Drag area of the edges, m².</summary>
    internal double EdgeArea => EdgeCoefficient(Edge) * Count * Thickness.Meters * Height.Meters;

    /// <summary>
    /// Pressure drag per frontal area. From the section drag per planform area at t/c = 0.0625 in Gregorek, TR-11 (1970): square edges 0.0563,
    /// rounded 0.0313, streamlined 0.009; what exceeds the streamlined one is put down to the edges.
    /// </summary>
    internal static double EdgeCoefficient(VaneEdge edge) => edge switch
    {
        VaneEdge.Square => 0.757,
        VaneEdge.Rounded => 0.357,
        VaneEdge.Streamlined => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(edge), edge, "Edge must be one of the three finishes."),
    };

    static Length Positive(Length value, string name)
    {
        Require.Positive(value.Meters, "m", name);
        return value;
    }
}
