namespace Ascham.Recordings;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Launch speed and drag from shots at three or more distances.</summary>
/// <remarks>
/// Drag is what is left of the times when speed and delay are taken out, their bend: with shots to 60 yd and 2 ms it is not told from none. The interval says so; it may
/// reach below zero or beyond any arrow (0.0007 to 0.0025 1/m).
/// </remarks>
public sealed record SoundFit
{
    /// <summary>Speed as the arrow leaves the string.</summary>
    public required Estimate<Speed> LaunchSpeed { get; init; }

    /// <summary>Drag constant k in the air of the recordings.</summary>
    public required Estimate<ReciprocalLength> DragConstant { get; init; }

    /// <summary>Correlation of the two, -1 to 1; near 1 a faster arrow with more drag fits as well.</summary>
    public required double DragSpeedCorrelation { get; init; }

    /// <summary>Sum of squared residuals, each over its variance; about <see cref="DegreesOfFreedom"/> when model and errors are right.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Shots less two.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Heard less fitted time, in the order of the shots.</summary>
    public required IReadOnlyList<Duration> Residuals { get; init; }
}
