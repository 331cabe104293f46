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

    /// <summary>Drag area of the edges if the outline slopes in front as far as its fullness lets it, m²: the least it can be.</summary>
    /// <remarks>
    /// On an edge swept back only the flow square to it presses: times cos² of the sweep (as in S. Niskanen's thesis (2009) for leading edges). The
    /// outline taken is a trapezoid upright behind, whose rear edge keeps its suction.
    /// </remarks>
    internal double LeastEdgeArea
    {
        get
        {
            double sweep = Math.Min(1, 2 * (1 - Fullness.DecimalFractions)) * Chord.Meters, height = Height.Meters;
            double rear = RearCoefficient(Edge), front = EdgeCoefficient(Edge) - rear;
            return (rear + front * height * height / (height * height + sweep * sweep)) * Count * Thickness.Meters * height;
        }
    }

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

    // The part of it behind the vane: base suction 0.12 (E. L. Fleeman), half of it when rounded, as in S. Niskanen's thesis (2009).
    static double RearCoefficient(VaneEdge edge) => edge switch { VaneEdge.Square => 0.12, VaneEdge.Rounded => 0.06, _ => 0 };

    static Length Positive(Length value, string name)
    {
        Require.Positive(value.Meters, "m", name);
        return value;
    }
}
