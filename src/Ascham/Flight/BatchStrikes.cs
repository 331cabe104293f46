namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Where, when and how fast each arrow of a batch struck each face: one array per quantity and face, to be filled again and again.</summary>
/// <remarks>Right and up are counted from the point where the line of sight meets the face. An arrow that did not get to a face is not a number there.</remarks>
public sealed class BatchStrikes
{
    readonly double[][] right, up, time, speed;

    /// <summary>Makes room.</summary>
    /// <param name="arrows">At least one.</param>
    /// <param name="faces">At least one.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is below one.</exception>
    public BatchStrikes(int arrows, int faces)
    {
        Require.InRange(arrows, 1, Array.MaxLength, "");
        Require.InRange(faces, 1, 1000, "");
        (Arrows, Faces) = (arrows, faces);
        double[][] Rows() => [.. Enumerable.Range(0, faces).Select(_ => new double[arrows])];
        (right, up, time, speed) = (Rows(), Rows(), Rows(), Rows());
    }

    /// <summary>How many arrows.</summary>
    public int Arrows { get; }

    /// <summary>How many faces.</summary>
    public int Faces { get; }

    /// <summary>Strikes to the right, in metres.</summary>
    /// <param name="face">From 0, in the order of the batch.</param>
    /// <returns>One number per arrow.</returns>
    public ReadOnlySpan<double> RightMetres(int face) => right[face];

    /// <summary>Strikes upwards, in metres.</summary>
    /// <param name="face">From 0, in the order of the batch.</param>
    /// <returns>One number per arrow.</returns>
    public ReadOnlySpan<double> UpMetres(int face) => up[face];

    /// <summary>Times of flight, in seconds.</summary>
    /// <param name="face">From 0, in the order of the batch.</param>
    /// <returns>One number per arrow.</returns>
    public ReadOnlySpan<double> TimeSeconds(int face) => time[face];

    /// <summary>Speeds on the face, in metres per second.</summary>
    /// <param name="face">From 0, in the order of the batch.</param>
    /// <returns>One number per arrow.</returns>
    public ReadOnlySpan<double> SpeedMetresPerSecond(int face) => speed[face];

    /// <summary>One strike.</summary>
    /// <param name="arrow">From 0.</param>
    /// <param name="face">From 0, in the order of the batch.</param>
    /// <returns>The strike; <see langword="null"/> when the arrow did not get there.</returns>
    public BatchStrike? At(int arrow, int face) => double.IsNaN(right[face][arrow])
        ? null
        : new(Length.FromMeters(right[face][arrow]), Length.FromMeters(up[face][arrow]), Duration.FromSeconds(time[face][arrow]), Speed.FromMetersPerSecond(speed[face][arrow]));

    internal void Keep(BatchChunk chunk, long number, int count)
    {
        int first = (int)number * BatchChunk.Arrows;
        for (int face = 0; face < Faces; face++)
        {
            chunk.Right(face)[..count].CopyTo(right[face].AsSpan(first));
            chunk.Up(face)[..count].CopyTo(up[face].AsSpan(first));
            chunk.Time(face)[..count].CopyTo(time[face].AsSpan(first));
            chunk.Speed(face)[..count].CopyTo(speed[face].AsSpan(first));
        }
    }
}

/// <summary>Where, when and how fast one arrow struck a face.</summary>
/// <param name="Right">Of the point where the line of sight meets the face.</param>
/// <param name="Up">Of that point.</param>
/// <param name="Time">Since the launch.</param>
/// <param name="Speed">Over the ground.</param>
public readonly record struct BatchStrike(Length Right, Length Up, Duration Time, Speed Speed);
