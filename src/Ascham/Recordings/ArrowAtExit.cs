namespace Ascham.Recordings;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the point of the arrow is as it leaves the string, and how sound and exit hang together: what turns time between two sounds into time of flight.</summary>
/// <remarks>
/// The nock leaves about where the string rests, a brace height behind the grip, and the point is an arrow's length ahead of the nock. It touches the face after
/// distance + brace height - arrow length. The string lets go a little before or behind its rest position: part of <see cref="LeadError"/>.
/// </remarks>
public sealed record ArrowAtExit
{
    /// <summary>From the throat of the nock to the tip of the point; 0.3 m to 1.2 m.</summary>
    public required Length NockToTip { get; init => field = InRange(value, 0.3, 1.2, nameof(NockToTip)); }

    /// <summary>From the grip to the string at rest; 0 to 0.4 m.</summary>
    public required Length BraceHeight { get; init => field = InRange(value, 0, 0.4, nameof(BraceHeight)); }

    /// <summary>Standard error of the place of the point at the exit; zero or more. Two centimetres are usual (common practice, no source).</summary>
    public required Length LeadError { get; init => field = InRange(value, 0, 0.5, nameof(LeadError)); }

    /// <summary>From the sound of the release to the exit.</summary>
    public required ExitDelay Delay
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Delay));
            field = value;
        }
    }

    /// <summary>From the touch of the point to the start of the sound of the impact; 0 to 10 ms. Soft targets answer late: 0.5 ms is usual (common practice, no source).</summary>
    public required Duration TouchToSound { get; init => field = InRange(value, nameof(TouchToSound)); }

    /// <summary>Its standard error; 0 to 10 ms. 0.5 ms is usual (common practice, no source).</summary>
    public required Duration TouchToSoundError { get; init => field = InRange(value, nameof(TouchToSoundError)); }

    /// <summary>How far the point is ahead of the grip at the exit.</summary>
    internal double LeadSi => NockToTip.Meters - BraceHeight.Meters;

    static Length InRange(Length value, double low, double high, string name)
    {
        Require.InRange(value.Meters, low, high, "m", name);
        return value;
    }

    static Duration InRange(Duration value, string name)
    {
        Require.InRange(value.Seconds, 0, 0.01, "s", name);
        return value;
    }
}
