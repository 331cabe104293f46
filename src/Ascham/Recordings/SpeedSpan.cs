namespace Ascham.Recordings;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Between which mean speeds the arrow surely flew: where the impact is looked for, and nothing else.</summary>
/// <remarks>It does not pull the result; but a second sound inside the span makes a recording unclear, and one outside does not. A quarter either way of what you expect serves well.</remarks>
public sealed record SpeedSpan
{
    /// <summary>From the slowest to the fastest.</summary>
    /// <param name="slowest">10 m/s or more.</param>
    /// <param name="fastest">Above the slowest; up to 150 m/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range.</exception>
    public SpeedSpan(Speed slowest, Speed fastest)
    {
        double low = Require.InRange(slowest.MetersPerSecond, 10, 150, "m/s", nameof(slowest));
        Require.InRange(fastest.MetersPerSecond, low, 150, "m/s", nameof(fastest));
        Require.Positive(fastest.MetersPerSecond - low, "m/s", "fastest less slowest");
        (Slowest, Fastest) = (slowest, fastest);
    }

    /// <summary>The slowest.</summary>
    public Speed Slowest { get; }

    /// <summary>The fastest.</summary>
    public Speed Fastest { get; }
}
