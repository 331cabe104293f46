namespace Ascham.Causes;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What an instrument reads.</summary>
public enum ReadingKind
{
    /// <summary>Speed as the arrow leaves, corrected to the bow.</summary>
    LaunchSpeed,

    /// <summary>Speed at a distance.</summary>
    DownrangeSpeed,

    /// <summary>Peak weight on a bow scale.</summary>
    PeakWeight,

    /// <summary>Mass of the arrow on a scale.</summary>
    ArrowMass,
}

/// <summary>One reading of an instrument, from when all was well or from now.</summary>
/// <remarks>Made by its factories, so that each kind has its own quantity.</remarks>
public sealed record Reading
{
    Reading(ReadingKind kind, bool now, double value, double sd, double distance, string unit)
    {
        (Kind, Now, Si, SdSi, DistanceSi) = (kind, now, Require.Positive(value, unit, "value"), Require.Positive(sd, unit, "sd"), Require.NotNegative(distance, "m", "distance"));
    }

    /// <summary>What was read.</summary>
    public ReadingKind Kind { get; }

    /// <summary>Whether it is from now; otherwise from when all was well.</summary>
    public bool Now { get; }

    /// <summary>m/s, N or kg.</summary>
    internal double Si { get; }

    /// <summary>Of the value as given: instrument and repeated readings together.</summary>
    internal double SdSi { get; }

    internal double DistanceSi { get; }

    /// <summary>Several readings of one kind, time and place as one: their mean, with the instrument's error as of one.</summary>
    internal static Reading MeanOf(IReadOnlyCollection<Reading> same)
    {
        Reading first = same.First();
        return new(first.Kind, first.Now, same.Average(r => r.Si), same.Average(r => r.SdSi), first.DistanceSi, "SI");
    }

    /// <summary>Speed as the arrow leaves.</summary>
    /// <param name="value">Mean of the readings, corrected to the bow.</param>
    /// <param name="sd">Standard error of that mean with the instrument's own error between two days; positive.</param>
    /// <param name="now">Whether from now.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Reading LaunchSpeed(Speed value, Speed sd, bool now) =>
        new(ReadingKind.LaunchSpeed, now, value.MetersPerSecond, sd.MetersPerSecond, 0, "m/s");

    /// <summary>Speed at a distance.</summary>
    /// <param name="value">Mean of the readings.</param>
    /// <param name="sd">As for <see cref="LaunchSpeed"/>.</param>
    /// <param name="distance">Distance of the instrument from the bow.</param>
    /// <param name="now">Whether from now.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Reading DownrangeSpeed(Speed value, Speed sd, Length distance, bool now) =>
        new(ReadingKind.DownrangeSpeed, now, value.MetersPerSecond, sd.MetersPerSecond, Require.Positive(distance.Meters, "m", nameof(distance)), "m/s");

    /// <summary>Peak weight on a bow scale.</summary>
    /// <param name="value">Mean of the readings.</param>
    /// <param name="sd">As for <see cref="LaunchSpeed"/>.</param>
    /// <param name="now">Whether from now.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Reading PeakWeight(Force value, Force sd, bool now) => new(ReadingKind.PeakWeight, now, value.Newtons, sd.Newtons, 0, "N");

    /// <summary>Mass of the arrow on a scale.</summary>
    /// <param name="value">Mean over the arrows shot.</param>
    /// <param name="sd">As for <see cref="LaunchSpeed"/>.</param>
    /// <param name="now">Whether from now.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    public static Reading ArrowMass(Mass value, Mass sd, bool now) => new(ReadingKind.ArrowMass, now, value.Kilograms, sd.Kilograms, 0, "kg");
}
