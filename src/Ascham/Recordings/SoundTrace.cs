namespace Ascham.Recordings;

using UnitsNet;

/// <summary>What a picture of a recording needs: the level of the sound against time, what counted as a sudden sound, and the sounds found.</summary>
public sealed record SoundTrace
{
    /// <summary>Time of each point, from the start of the recording; a millisecond apart; shape (n).</summary>
    public required IReadOnlyList<Duration> Times { get; init; }

    /// <summary>Level of the sound within the band, dB below full scale; shape (n).</summary>
    public required IReadOnlyList<Level> Levels { get; init; }

    /// <summary>Level at which a sound would have counted as sudden there; shape (n).</summary>
    public required IReadOnlyList<Level> Thresholds { get; init; }

    /// <summary>The sudden sounds, in order of time.</summary>
    public required IReadOnlyList<SoundOnset> Onsets { get; init; }

    /// <summary>Least and greatest time from release to impact that was looked for.</summary>
    public required (Duration Least, Duration Greatest) Window { get; init; }

    /// <summary>Share of the samples at full scale.</summary>
    public required Ratio Clipped { get; init; }

    internal static SoundTrace Of(SuddenSounds sounds, Pairing pairing, double least, double greatest, double clipped)
    {
        int step = Math.Max(1, (int)Math.Round(0.001 / sounds.HopSeconds));
        int[] at = [.. Enumerable.Range(0, sounds.HopCount / step).Select(i => i * step)];
        return new()
        {
            Times = [.. at.Select(i => Duration.FromSeconds(i * sounds.HopSeconds))],
            Levels = [.. at.Select(i => Decibels(sounds.Power(i)))],
            Thresholds = [.. at.Select(i => Decibels(sounds.Threshold(i)))],
            Onsets = [.. pairing.Found.Select((s, i) => new SoundOnset(Duration.FromSeconds(s.At), Duration.FromSeconds(s.Error), Decibels(s.Power), Decibels(s.OverNoise), s.StartsTwice, pairing.Roles[i]))],
            Window = (Duration.FromSeconds(least), Duration.FromSeconds(greatest)),
            Clipped = Ratio.FromDecimalFractions(clipped),
        };
    }

    static Level Decibels(double power) => Level.FromDecibels(10 * Math.Log10(power));
}
