namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Shots of one arrow mass over a chronograph, all from the same bow setting.</summary>
public sealed record ChronographedArrow
{
    /// <summary>Mass of the complete arrow; positive, up to 200 g.</summary>
    public required Mass Mass
    {
        get;
        init
        {
            Require.InRange(value.Grams, double.Epsilon, 200, "g", nameof(Mass));
            field = value;
        }
    }

    /// <summary>Mean speed as the arrow leaves, corrected for the distance to the chronograph; positive, up to 200 m/s.</summary>
    public required Speed Speed
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, double.Epsilon, 200, "m/s", nameof(Speed));
            field = value;
        }
    }

    /// <summary>Standard deviation from shot to shot; 0 to 50 m/s.</summary>
    public required Speed ShotSd
    {
        get;
        init
        {
            Require.InRange(value.MetersPerSecond, 0, 50, "m/s", nameof(ShotSd));
            field = value;
        }
    }

    /// <summary>How many shots the mean and the spread are of; 2 or more.</summary>
    public required int Shots { get; init => field = (int)Require.InRange(value, 2, 10_000, "", nameof(Shots)); }

    /// <summary>From the single readings.</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <param name="readings">Two or more, corrected to the launch; in any order.</param>
    /// <returns>Their mean and spread.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two readings, or one outside its range.</exception>
    public static ChronographedArrow Of(Mass mass, IEnumerable<Speed> readings)
    {
        (double mean, double sd, int count) = Chronograph.Summary(readings);
        return new() { Mass = mass, Speed = Speed.FromMetersPerSecond(mean), ShotSd = Speed.FromMetersPerSecond(sd), Shots = count };
    }
}
