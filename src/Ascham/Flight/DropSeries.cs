namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Height of the impacts at one distance, all arrows leaving alike.</summary>
/// <param name="Distance">From the origin to the face, level; positive.</param>
/// <param name="Height">Of the mean impact above the level of the origin; negative below.</param>
/// <param name="HeightError">Its standard error; positive. For n arrows, their spread over the root of n.</param>
/// <param name="DistanceError">Standard error of the distance; zero or more.</param>
public sealed record Drop(Length Distance, Length Height, Length HeightError, Length DistanceError);

/// <summary>Drops of like arrows at three or more distances with one launch: the same sight setting, the same aim level.</summary>
public sealed record DropSeries
{
    /// <summary>The drops, in any order; at three distances or more.</summary>
    public required IReadOnlyList<Drop> Drops
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Drops));
            foreach (Drop drop in value)
            {
                ArgumentNullException.ThrowIfNull(drop, nameof(Drops));
                Require.Positive(drop.Distance.Meters, "m", nameof(Drop.Distance));
                Require.Finite(drop.Height.Meters, "m", nameof(Drop.Height));
                Require.Positive(drop.HeightError.Meters, "m", nameof(Drop.HeightError));
                Require.NotNegative(drop.DistanceError.Meters, "m", nameof(Drop.DistanceError));
            }

            field = value;
        }
    }

    /// <summary>Where the flight starts. Its speed and elevation are where the fit begins; they count as measured only with the errors below.</summary>
    public required Launch Start { get; init; }

    /// <summary>Standard error of the starting speed when it was measured; <see langword="null"/> when it is a guess to be fitted freely.</summary>
    public required Speed? SpeedError { get; init => field = Positive(value, value?.MetersPerSecond, "m/s", nameof(SpeedError)); }

    /// <summary>Standard error of the starting elevation when it is known; <see langword="null"/> when it is a guess to be fitted freely, as with a sight.</summary>
    public required Angle? ElevationError { get; init => field = Positive(value, value?.Radians, "rad", nameof(ElevationError)); }

    /// <summary>The air flown through.</summary>
    public required Air Air { get; init; }

    /// <summary>Gravity at the place.</summary>
    public required Gravity Gravity { get; init; }

    /// <summary>The wind.</summary>
    public required WindField Wind { get; init; }

    static T? Positive<T>(T? value, double? si, string unit, string name)
        where T : struct
    {
        if (si is { } number)
        {
            Require.Positive(number, unit, name);
        }

        return value;
    }
}
