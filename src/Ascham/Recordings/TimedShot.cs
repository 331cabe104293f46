namespace Ascham.Recordings;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Release and impact of one shot as the microphone heard them: by <see cref="Listening"/>, or by hand from a picture of the sound.</summary>
public sealed record TimedShot
{
    /// <summary>Where all stood.</summary>
    public required ShotLayout Layout
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Layout));
            field = value;
        }
    }

    /// <summary>From the sound of the release to the sound of the impact, as recorded; positive.</summary>
    public required Duration Apart
    {
        get;
        init
        {
            Require.Positive(value.Seconds, "s", nameof(Apart));
            field = value;
        }
    }

    /// <summary>Its standard error: how well the two onsets could be read; positive. Half a millisecond to two are usual.</summary>
    public required Duration ApartError
    {
        get;
        init
        {
            Require.Positive(value.Seconds, "s", nameof(ApartError));
            field = value;
        }
    }
}
