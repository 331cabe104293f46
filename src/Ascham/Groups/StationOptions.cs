namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What is known of the butt, and the level of intervals.</summary>
/// <remarks>
/// Each edge is the distance from the aim point to that edge of the butt; positive. An edge matters only to a station that missed beyond it.
/// Where it is not given, the outermost recorded impact of that station stands in for it: the arrow lay beyond the edge, and the edge beyond that impact.
/// That is true but says less, and leans a little; measure the butt where arrows are missed.
/// </remarks>
public sealed record StationOptions
{
    /// <summary>From the aim point down to the lower edge.</summary>
    public Length? ButtBelow { get; init; }

    /// <summary>From the aim point up to the upper edge.</summary>
    public Length? ButtAbove { get; init; }

    /// <summary>From the aim point to the left edge.</summary>
    public Length? ButtLeft { get; init; }

    /// <summary>From the aim point to the right edge.</summary>
    public Length? ButtRight { get; init; }

    /// <summary>Level of the intervals, between 0 and 1. Changes no estimate and no standard error.</summary>
    public double Level { get; init; } = 0.90;

    /// <summary>The edge a miss went beyond, as a signed offset from the aim point in metres; null when not known.</summary>
    internal double? Edge(Miss miss) => miss switch
    {
        Miss.Low => -ButtBelow?.Meters,
        Miss.High => ButtAbove?.Meters,
        Miss.Left => -ButtLeft?.Meters,
        Miss.Right => ButtRight?.Meters,
        _ => throw new ArgumentOutOfRangeException(nameof(miss), miss, "A miss of unknown direction has no edge."),
    };

    internal void Check()
    {
        Require.Level(Level);
        NotNegative(ButtBelow, nameof(ButtBelow));
        NotNegative(ButtAbove, nameof(ButtAbove));
        NotNegative(ButtLeft, nameof(ButtLeft));
        NotNegative(ButtRight, nameof(ButtRight));
    }

    static void NotNegative(Length? edge, string name)
    {
        if (edge is { } length)
        {
            Require.NotNegative(length.Meters, "m", name);
        }
    }
}
