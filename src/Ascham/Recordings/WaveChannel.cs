namespace Ascham.Recordings;

/// <summary>Which microphone of a recording is listened to.</summary>
public enum WaveChannel
{
    /// <summary>The only one, or the left of two.</summary>
    First,

    /// <summary>The right of two.</summary>
    Second,

    /// <summary>
    /// Half the sum of both. Two microphones of a phone stand up to 15 cm apart, 0.4 ms of sound, so an onset comes out that much blurred; one channel is sharper.
    /// </summary>
    Mean,
}
