namespace Ascham.Air;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A wind that grows with height above the ground by a power law: wind(h) = wind(reference) (h/reference)^exponent.</summary>
/// <remarks>
/// <para>An engineering fit for wind over open, even ground in neutral air, from about 10 m upwards: 1/7 over open level ground (from memory).
/// A range lies below that height, between hedges and people: this shows how much height matters, it does not measure a range.</para>
/// <para>Below <see cref="Floor"/> the wind is held at its value there. The ground may slope along the range.</para>
/// </remarks>
public sealed record WindProfile : WindField
{
    /// <summary>Height below which the wind no longer falls: 0.1 m. An arrow there is in the grass.</summary>
    public static Length Floor { get; } = Length.FromMeters(FloorSi);

    internal const double FloorSi = 0.1;

    /// <summary>The wind at the reference height.</summary>
    public required Wind AtReference
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(AtReference));
            field = value;
        }
    }

    /// <summary>Height above the ground at which that wind was measured: 0.1 m to 100 m.</summary>
    public required Length ReferenceHeight
    {
        get;
        init
        {
            Require.InRange(value.Meters, FloorSi, 100, "m", nameof(ReferenceHeight));
            field = value;
        }
    }

    /// <summary>Exponent, 0 (no change with height) to 1.</summary>
    public required double Exponent
    {
        get;
        init
        {
            Require.InRange(value, 0, 1, "", nameof(Exponent));
            field = value;
        }
    }

    /// <summary>Height of the origin of the flight above the ground below it: 0 m to 100 m.</summary>
    public required Length OriginAboveGround
    {
        get;
        init
        {
            Require.InRange(value.Meters, 0, 100, "m", nameof(OriginAboveGround));
            field = value;
        }
    }

    /// <summary>Slope of the ground along the range; positive uphill; -60° to +60°.</summary>
    public required Angle GroundSlope
    {
        get;
        init
        {
            Require.InRange(value.Degrees, -60, 60, "degrees", nameof(GroundSlope));
            field = value;
        }
    }

    /// <summary>The wind at a height above the ground.</summary>
    /// <param name="height">Above the ground, zero or more.</param>
    /// <returns>The wind there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is negative or not a number, or the wind there exceeds 60 m/s.</exception>
    public Wind AtHeight(Length height)
    {
        double share = Math.Pow(Math.Max(FloorSi, Require.NotNegative(height.Meters, "m", nameof(height))) / ReferenceHeight.Meters, Exponent);
        return Wind.Of(share * AtReference.Tail, share * AtReference.FromLeft, share * AtReference.Up);
    }
}
