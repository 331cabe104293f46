namespace Ascham.Recordings;

using System.Globalization;
using UnitsNet;

/// <summary>What came of listening to one recording of one shot: the time between release and impact, or why there is none; and the picture in either case.</summary>
/// <remarks>
/// Every two sudden sounds as far apart as the span of speeds allows are a candidate; beside the bow the first of them must be about the loudest sound of all. One pair is taken, two are a
/// refusal; echoes, which have the wave form of an earlier and louder sound, do not count. A second archer's shot is refused where it is recognised, but a release of his in the place of an impact
/// that was not heard is taken for it: keep the microphone where the impact is heard, and the span of speeds narrow. How often that happened in simulated recordings: docs/validation/recordings.md.
/// </remarks>
public sealed record Listening
{
    const double MostClipped = 0.05;

    Listening(SoundTrace trace, TimedShot? shot, UnclearReason? unclear, string why) => (Trace, Shot, Unclear, Why) = (trace, shot, unclear, why);

    /// <summary>For the picture: level, threshold, sounds found and what they were taken for.</summary>
    public SoundTrace Trace { get; }

    /// <summary>The shot; <see langword="null"/> when the recording is unclear.</summary>
    public TimedShot? Shot { get; }

    /// <summary>Why there is no shot; <see langword="null"/> when there is one.</summary>
    public UnclearReason? Unclear { get; }

    /// <summary>In a sentence: what was found, or what is unclear and what to do; and the <see cref="ShotLayout.Caution"/> where there is one.</summary>
    public string Why { get; }

    /// <summary>Listens to a recording of one shot.</summary>
    /// <param name="recording">One shot; cut with <see cref="Recording.Between"/> when there are more.</param>
    /// <param name="layout">Where all stood.</param>
    /// <param name="air">The air.</param>
    /// <param name="arrow">The arrow at the exit.</param>
    /// <param name="speeds">Between which mean speeds the arrow surely flew.</param>
    /// <returns>The shot or the reason why not, and the picture.</returns>
    /// <exception cref="ArgumentException">Nothing of the distance is left to fly once the point is ahead of the bow.</exception>
    public static Listening To(Recording recording, ShotLayout layout, SoundAir air, ArrowAtExit arrow, SpeedSpan speeds)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(arrow);
        ArgumentNullException.ThrowIfNull(speeds);
        var path = new SoundPath(layout, air, arrow);
        var sounds = new SuddenSounds(recording);
        double clipped = recording.Clipped.DecimalFractions;
        (double least, double greatest) = path.Window(speeds);
        var pairing = new Pairing(sounds, path, speeds, clipped > 0);
        (UnclearReason? unclear, string why) = Unusable(recording, clipped, greatest) ?? (pairing.Unclear, pairing.Why);
        why += layout.Caution is { } caution ? " " + caution : "";
        TimedShot? shot = unclear is not null ? null : new()
        {
            Layout = layout,
            Apart = Duration.FromSeconds(pairing.Times.Apart),
            ApartError = Duration.FromSeconds(pairing.Times.Error),
        };
        return new(SoundTrace.Of(sounds, pairing, least, greatest, clipped), shot, unclear, why);
    }

    static (UnclearReason?, string)? Unusable(Recording recording, double clipped, double greatest)
        => recording.Length.Seconds < greatest + 0.2
            ? (UnclearReason.TooShort, string.Create(CultureInfo.InvariantCulture, $"The recording lasts {recording.Length.Seconds:0.##} s; it must hold {greatest:0.##} s from release to impact, and some tenths of a second of what was before and after."))
            : clipped > MostClipped
                ? (UnclearReason.Clipped, string.Create(CultureInfo.InvariantCulture, $"{100 * clipped:0.#} % of the samples stand at full scale. Record less loudly, or farther from the bow."))
                : null;
}
