namespace Ascham.Recordings;

using UnitsNet;

/// <summary>What a sound was taken for.</summary>
public enum SoundRole
{
    /// <summary>Something else, or not told.</summary>
    Other,

    /// <summary>The release.</summary>
    Release,

    /// <summary>The impact.</summary>
    Impact,

    /// <summary>An earlier sound over again: the same wave form, weaker.</summary>
    Echo,
}

/// <summary>One sudden sound in a recording.</summary>
/// <param name="Time">Its start, from the start of the recording.</param>
/// <param name="TimeError">Standard error of that.</param>
/// <param name="Level">Of its loudest millisecond within the band, dB below full scale (negative).</param>
/// <param name="AboveNoise">The same above the sound just before, dB.</param>
/// <param name="IsDouble">It starts twice within a hundredth of a second or two, so that its start is not known.</param>
/// <param name="Role">What it was taken for.</param>
public sealed record SoundOnset(Duration Time, Duration TimeError, Level Level, Level AboveNoise, bool IsDouble, SoundRole Role)
{
    internal double At => Time.Seconds;
}
