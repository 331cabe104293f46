namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Two speeds of the same arrow, or of like arrows, a known distance apart, each with its standard error.</summary>
/// <remarks>
/// Both taken level and along the range, at about the same height: a far reading Δh lower than the near one makes k too small by about g Δh/(V² x)
/// when the instrument reads the whole speed. Give the mean of several arrows with its standard error and their number; for one arrow, that of the instrument.
/// </remarks>
public sealed record SpeedPair
{
    /// <summary>Speed over the ground at the near place; positive.</summary>
    public required Speed Near { get; init => field = Positive(value, nameof(Near)); }

    /// <summary>Its standard error; zero or more.</summary>
    public required Speed NearError { get; init => field = NotNegative(value, nameof(NearError)); }

    /// <summary>Speed over the ground at the far place; positive.</summary>
    public required Speed Far { get; init => field = Positive(value, nameof(Far)); }

    /// <summary>Its standard error; zero or more.</summary>
    public required Speed FarError { get; init => field = NotNegative(value, nameof(FarError)); }

    /// <summary>
    /// How many readings <see cref="NearError"/> was worked out from, 2 or more: few readings do not know their own scatter well, and the interval of k widens
    /// (Student). Not given: the error is known otherwise, from the maker of the instrument or from long use.
    /// </summary>
    public int? NearCount { get; init => field = Several(value, nameof(NearCount)); }

    /// <summary>How many readings <see cref="FarError"/> was worked out from, as <see cref="NearCount"/>.</summary>
    public int? FarCount { get; init => field = Several(value, nameof(FarCount)); }

    /// <summary>Distance between the places; positive.</summary>
    public required Length Apart
    {
        get;
        init
        {
            Require.Positive(value.Meters, "m", nameof(Apart));
            field = value;
        }
    }

    /// <summary>Its standard error; zero or more.</summary>
    public required Length ApartError
    {
        get;
        init
        {
            Require.NotNegative(value.Meters, "m", nameof(ApartError));
            field = value;
        }
    }

    /// <summary>Wind along the range, tail wind positive; below both speeds. A metre per second against an arrow of 85 m/s makes k look 2.4 % larger.</summary>
    public required Speed TailWind
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, -60, 60, "m/s", nameof(TailWind));
            field = value;
        }
    }

    /// <summary>Its standard error; zero or more.</summary>
    public required Speed TailWindError { get; init => field = NotNegative(value, nameof(TailWindError)); }

    static int? Several(int? value, string name)
    {
        if (value is { } count)
        {
            Require.InRange(count, 2, int.MaxValue, "readings", name);
        }

        return value;
    }

    static Speed Positive(Speed value, string name)
    {
        Require.Positive(value.MetersPerSecond, "m/s", name);
        return value;
    }

    static Speed NotNegative(Speed value, string name)
    {
        Require.NotNegative(value.MetersPerSecond, "m/s", name);
        return value;
    }
}
