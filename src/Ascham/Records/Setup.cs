namespace Ascham.Records;

using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Sights;
using UnitsNet;

/// <summary>Everything that stays the same from shot to shot: bow, arrow, sight, archer, air and range.</summary>
public sealed partial record Setup
{
    /// <summary>Its name, used by sessions to refer to it.</summary>
    public required string Name { get; init; }

    /// <summary>The bow.</summary>
    public required Bow Bow { get; init; }

    /// <summary>The arrow.</summary>
    public required Arrow Arrow { get; init; }

    /// <summary>The sight.</summary>
    public required SightGeometry Sight { get; init; }

    /// <summary>Where it is shot, and how far it may be.</summary>
    public required ShootingRange Range { get; init; }

    /// <summary>Who shoots it.</summary>
    public Archer? Archer { get; init; }

    /// <summary>The air it is usually shot in.</summary>
    public AirConditions? Air { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}

/// <summary>Who shoots.</summary>
public sealed record Archer
{
    /// <summary>A name or nickname.</summary>
    public string? Name { get; init; }

    /// <summary>Standard deviation of impacts along one axis, as an angle, that the archer expects of good shots; positive.</summary>
    /// <remarks>A guess made before any shot is counted; groups tell better.</remarks>
    public Angle? ExpectedDispersion { get; init; }
}

/// <summary>The air, as read from instruments; what is not known stays <see langword="null"/>.</summary>
public sealed record AirConditions
{
    /// <summary>Temperature; −60 °C to 60 °C.</summary>
    public Temperature? Temperature { get; init; }

    /// <summary>Station pressure, not reduced to sea level; 300 hPa to 1100 hPa.</summary>
    public Pressure? Pressure { get; init; }

    /// <summary>Relative humidity; 0 % to 100 %.</summary>
    public Ratio? RelativeHumidity { get; init; }
}

/// <summary>Where the setup is shot.</summary>
/// <remarks>
/// The edges of the butt are distances from the aim point outwards. They say which impacts could have been seen at all:
/// an arrow that leaves no mark went beyond one of them.
/// </remarks>
public sealed record ShootingRange
{
    /// <summary>Longest distance at which a miss is still stopped safely; positive. No test is proposed beyond it.</summary>
    public required Length LongestSafeDistance { get; init; }

    /// <summary>What stops an arrow that misses the butt, in the archer's words.</summary>
    public required string Backstop { get; init; }

    /// <summary>How far the butt reaches below the aim point; not negative.</summary>
    public Length? ButtBelow { get; init; }

    /// <summary>How far the butt reaches above the aim point; not negative.</summary>
    public Length? ButtAbove { get; init; }

    /// <summary>How far the butt reaches to the left of the aim point, seen by the archer; not negative.</summary>
    public Length? ButtLeft { get; init; }

    /// <summary>How far the butt reaches to the right of the aim point, seen by the archer; not negative.</summary>
    public Length? ButtRight { get; init; }
}
