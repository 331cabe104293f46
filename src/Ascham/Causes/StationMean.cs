namespace Ascham.Causes;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the arrows of one station struck on average: one session, one distance, one sight setting.</summary>
public sealed record StationMean
{
    /// <summary>Name of the session; stations of one session share the archer's day.</summary>
    public required string Session { get; init; }

    /// <summary>Whether from now; otherwise from when all was well.</summary>
    public required bool Now { get; init; }

    /// <summary>Distance along the line of sight, as believed; positive.</summary>
    public required Length Distance { get; init; }

    /// <summary>Angle between line of sight and arrow that the sight was set to; <see langword="null"/> when set for the distance.</summary>
    public Angle? SightAngle { get; init; }

    /// <summary>Mean height over the aim point.</summary>
    public required Length Up { get; init; }

    /// <summary>Mean offset to the archer's right.</summary>
    public required Length Right { get; init; }

    /// <summary>Number of arrows the mean is worth; positive, and less than a whole number where missed arrows took part.</summary>
    public required double Arrows { get; init; }

    /// <summary>Standard deviation in height from setting the sight and knowing the distance, once for the station.</summary>
    public Length UpSd { get; init; }

    /// <summary>Likewise to the side.</summary>
    public Length RightSd { get; init; }

    /// <summary>How many arrows of the string were shot before, on average; 1 for strings of three.</summary>
    public double ShotBefore { get; init; }

    /// <summary>Whether shot without vanes.</summary>
    public bool Bare { get; init; }

    internal void Check()
    {
        ArgumentException.ThrowIfNullOrEmpty(Session);
        Require.Positive(Distance.Meters, "m", nameof(Distance));
        Require.Finite(Up.Meters, "m", nameof(Up));
        Require.Finite(Right.Meters, "m", nameof(Right));
        Require.Positive(Arrows, "", nameof(Arrows));
        Require.NotNegative(UpSd.Meters, "m", nameof(UpSd));
        Require.NotNegative(RightSd.Meters, "m", nameof(RightSd));
        Require.NotNegative(ShotBefore, "", nameof(ShotBefore));
        if (SightAngle is { } angle)
        {
            Require.InRange(angle.Degrees, -10, 45, "degrees", nameof(SightAngle));
        }
    }
}

/// <summary>How widely arrows scattered within their stations, as angles.</summary>
/// <param name="Up">Sigma of heights, mrad; not negative.</param>
/// <param name="Right">Sigma across, mrad; not negative.</param>
/// <param name="DegreesOfFreedom">Of each axis; not negative, 0 when no station holds two arrows.</param>
public sealed record WithinScatter(double Up, double Right, double DegreesOfFreedom)
{
    /// <summary>Nothing known.</summary>
    public static WithinScatter Unknown { get; } = new(0, 0, 0);

    internal void Check(string name)
    {
        Require.NotNegative(Up, "mrad", $"{name}.{nameof(Up)}");
        Require.NotNegative(Right, "mrad", $"{name}.{nameof(Right)}");
        Require.NotNegative(DegreesOfFreedom, "", $"{name}.{nameof(DegreesOfFreedom)}");
        if (DegreesOfFreedom > 0 && !(Up > 0 && Right > 0))
        {
            throw new ArgumentException($"{name} says that all arrows of each station struck in one hole; record impacts more finely.", name);
        }
    }
}

/// <summary>How arrows rise along a string.</summary>
/// <param name="PerArrow">Rise of each arrow over the one before, mrad; negative when they sink.</param>
/// <param name="SumOfSquares">Sum over strings of the squared places about their mean; positive: the slope's variance is scatter squared over it.</param>
/// <param name="Now">Whether from now.</param>
public sealed record StringSlope(double PerArrow, double SumOfSquares, bool Now);
