namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Numerics;

/// <summary>A flight about to begin, in numbers of any kind: all its inputs but the drag.</summary>
readonly struct Shot<T>
    where T : struct, ITranscendental<T>
{
    /// <summary>At the launch, over the ground.</summary>
    internal required Triple<T> Velocity { get; init; }

    /// <summary>Steady, uniform wind; on top of what varies.</summary>
    internal required Triple<T> Wind { get; init; }

    /// <summary>What varies along the way; <see langword="null"/> for nothing.</summary>
    internal required WindField? Varying { get; init; }

    /// <summary>Acceleration, positive downwards.</summary>
    internal required T Gravity { get; init; }

    /// <summary>Factor on the drag that follows the speed; 1.</summary>
    internal required T DragFactor { get; init; }

    /// <summary>Factor on the density, which enters that drag twice; 1.</summary>
    internal required T DensityFactor { get; init; }

    /// <summary>Where the launch is.</summary>
    internal required Triple<Real> From { get; init; }

    /// <summary>A shot from a launch whose speed and angles may carry derivatives.</summary>
    internal static Triple<T> Direct(T speed, (T Sine, T Cosine) elevation, (T Sine, T Cosine) azimuth)
    {
        T level = speed * elevation.Cosine;
        return new(level * azimuth.Cosine, speed * elevation.Sine, level * azimuth.Sine);
    }
}

/// <summary>How a flight ended.</summary>
readonly struct Arrival<T>(T time, Triple<T> moved, Triple<T> velocity, Triple<T> wind, double reach)
    where T : struct, IReal<T>
{
    internal readonly T Time = time;

    /// <summary>Displacement over the ground.</summary>
    internal readonly Triple<T> Moved = moved;

    /// <summary>Over the ground.</summary>
    internal readonly Triple<T> Velocity = velocity;

    /// <summary>Velocity of the air there.</summary>
    internal readonly Triple<T> Wind = wind;

    /// <summary>Distance from the launch to the face; when it was not met, to the farthest one met.</summary>
    internal readonly double Reach = reach;
}
