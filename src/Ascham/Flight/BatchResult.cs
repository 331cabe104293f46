namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What a batch of arrows did, face by face.</summary>
/// <param name="Arrows">How many were flown.</param>
/// <param name="Seed">What they were drawn from.</param>
/// <param name="Sampling">How they were drawn.</param>
/// <param name="Faces">In the order of <see cref="FlightBatch.Faces"/>.</param>
public sealed record BatchResult(long Arrows, ulong Seed, Sampling Sampling, IReadOnlyList<FaceResult> Faces);

/// <summary>How a batch of arrows struck one face. Right and up are counted from the point where the line of sight meets it.</summary>
/// <remarks>Intervals tell the error of having flown this many arrows and no more; they say nothing about how well the inputs are known.</remarks>
public sealed record FaceResult
{
    /// <summary>Distance of the face along the line of sight.</summary>
    public required Length Distance { get; init; }

    /// <summary>Arrows that reached it, at speeds where the drag is known. The others are left out of everything below but <see cref="Within"/>, where they count as outside.</summary>
    public required long Arrived { get; init; }

    /// <summary>Mean strike to the right.</summary>
    public required Estimate<Length> MeanRight { get; init; }

    /// <summary>Mean strike upwards.</summary>
    public required Estimate<Length> MeanUp { get; init; }

    /// <summary>Standard deviation to the sides.</summary>
    public required Estimate<Length> SdRight { get; init; }

    /// <summary>Standard deviation up and down.</summary>
    public required Estimate<Length> SdUp { get; init; }

    /// <summary>Correlation of right and up, -1 to 1; zero where all arrows struck in a line along one of the two.</summary>
    public required Estimate<double> Correlation { get; init; }

    /// <summary>Mean time of flight.</summary>
    public required Estimate<Duration> MeanTime { get; init; }

    /// <summary>Mean speed on the face.</summary>
    public required Estimate<Speed> MeanSpeed { get; init; }

    /// <summary>Standard deviation of the speed on the face.</summary>
    public required Estimate<Speed> SdSpeed { get; init; }

    /// <summary>Share of all arrows that struck within the circle about the aim point; <see langword="null"/> when no circle was given.</summary>
    public Estimate<double>? Within { get; init; }

    /// <summary>Strikes by cells; <see langword="null"/> when not asked for.</summary>
    public StrikeHistogram? Histogram { get; init; }
}
