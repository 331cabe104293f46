namespace Ascham.Groups;

using UnitsNet;

/// <summary>How the distances of a session were known.</summary>
public enum DistanceSource
{
    /// <summary>Measured out or marked on the range.</summary>
    Marked,

    /// <summary>Read from a rangefinder.</summary>
    Ranged,

    /// <summary>Judged by eye.</summary>
    Judged,
}

/// <summary>One outing: the circumstances that all its shots share.</summary>
public sealed record Session
{
    /// <summary>Its name, used by the shots to refer to it.</summary>
    public required string Name { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Name of the setup shot.</summary>
    public required string Setup { get; init; }

    /// <summary>How distances were known.</summary>
    public required DistanceSource DistanceSource { get; init; }

    /// <summary>Standard deviation of one distance, shared by all shots of a station; not negative.</summary>
    public Length? DistanceSd { get; init; }

    /// <summary>Standard deviation of setting the sight once, on its own scale, shared by all shots until it is moved; not negative.</summary>
    public Length? SettingSd { get; init; }

    /// <summary>Air temperature.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>Station pressure, not reduced to sea level.</summary>
    public Pressure? Pressure { get; init; }

    /// <summary>Wind in the archer's words.</summary>
    public string? Wind { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}
