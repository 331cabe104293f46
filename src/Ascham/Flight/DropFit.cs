namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Drag, launch speed and elevation fitted to drops.</summary>
/// <remarks>The errors are those of the drops as given, never rescaled by the residuals: look at <see cref="ChiSquare"/>.</remarks>
public sealed record DropFit
{
    /// <summary>Drag constant k in the air of the drops.</summary>
    public required Estimate<ReciprocalLength> DragConstant { get; init; }

    /// <summary>Launch speed.</summary>
    public required Estimate<Speed> LaunchSpeed { get; init; }

    /// <summary>Launch elevation.</summary>
    public required Estimate<Angle> Elevation { get; init; }

    /// <summary>
    /// Correlation of drag and launch speed, -1 to 1. Near 1: a faster arrow with more drag fits as well, and neither number is to be used without the other.
    /// </summary>
    public required double DragSpeedCorrelation { get; init; }

    /// <summary>Sum of squared residuals, each over its variance; about <see cref="DegreesOfFreedom"/> when model and errors are right.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Observations less fitted numbers.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Measured less fitted height, in the order given.</summary>
    public required IReadOnlyList<Length> Residuals { get; init; }
}

/// <summary>The drops do not tell drag: they leave it less certain than the range in which the drag of any arrow lies.</summary>
public sealed class DragNotIdentifiedException : Exception
{
    internal DragNotIdentifiedException(string message, Estimate<ReciprocalLength>? dragConstant, double correlation)
        : base(message) => (DragConstant, DragSpeedCorrelation) = (dragConstant, correlation);

    /// <summary>What the drops give, useless as it is; <see langword="null"/> when not even that.</summary>
    public Estimate<ReciprocalLength>? DragConstant { get; }

    /// <summary>Correlation of drag and launch speed.</summary>
    public double DragSpeedCorrelation { get; }
}
