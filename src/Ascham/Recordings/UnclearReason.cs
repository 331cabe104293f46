namespace Ascham.Recordings;

/// <summary>Why a recording was not used.</summary>
public enum UnclearReason
{
    /// <summary>Nothing sudden stands out of the noise.</summary>
    NothingHeard,

    /// <summary>Sudden sounds, but no two as far apart as release and impact can be.</summary>
    NoPair,

    /// <summary>More than one pair of sounds could be release and impact.</summary>
    SeveralPairs,

    /// <summary>A third sound may be of another bow's shot: as loud as the release; or at a time from which an arrow would be on its way to this impact; or at a time at which an arrow let go at this impact would strike.</summary>
    AnotherBow,

    /// <summary>So many sounds like the impact are about that one may stand in its place by chance.</summary>
    Restless,

    /// <summary>The sound in the place of the impact is too loud to come from the target.</summary>
    TooLoud,

    /// <summary>The sound in the place of the impact hardly stands out of the noise.</summary>
    TooFaint,

    /// <summary>The release, or the impact, starts twice within some milliseconds, so its start is not known.</summary>
    DoubleStart,

    /// <summary>Too much of the recording stands at full scale.</summary>
    Clipped,

    /// <summary>The start of release or impact is too blurred to be of use.</summary>
    Blurred,

    /// <summary>The recording is too short to judge the noise and hold a shot.</summary>
    TooShort,
}
