namespace Ascham.Records;

using UnitsNet;

/// <summary>What an entry of the log tells: the closed vocabulary of <c>log.csv</c>.</summary>
public enum LogQuantity
{
    /// <summary>Peak weight on a bow scale (<c>peak_weight</c>): a <see cref="Force"/>.</summary>
    PeakWeight,

    /// <summary>Brace height (<c>brace_height</c>): a <see cref="Length"/>.</summary>
    BraceHeight,

    /// <summary>Speed as the arrow leaves, corrected to the bow (<c>speed</c>): a <see cref="UnitsNet.Speed"/>.</summary>
    Speed,

    /// <summary>Speed at a distance (<c>speed_downrange</c>): a <see cref="UnitsNet.Speed"/>, with its distance.</summary>
    SpeedDownrange,

    /// <summary>Mass of the complete arrow (<c>arrow_mass</c>): a <see cref="Mass"/>.</summary>
    ArrowMass,

    /// <summary>Peep to nocking point along the string (<c>peep_to_nock</c>): a <see cref="Length"/>.</summary>
    PeepToNock,

    /// <summary>Cable guard against its own zero (<c>cable_guard_offset</c>): a <see cref="Length"/>, of either sign.</summary>
    CableGuardOffset,

    /// <summary>Temperature of the air (<c>temperature</c>): a <see cref="UnitsNet.Temperature"/>.</summary>
    Temperature,

    /// <summary>Pressure at the place, not reduced to sea level (<c>pressure</c>): a <see cref="UnitsNet.Pressure"/>.</summary>
    Pressure,

    /// <summary>Marks of contact on vanes, cable or rest (<c>contact_marks</c>): yes or no.</summary>
    ContactMarks,

    /// <summary>Sight, peep, nocking point or rest off its witness mark (<c>witness_moved</c>): yes or no.</summary>
    WitnessMoved,

    /// <summary>Bare shafts strike elsewhere than they used to, against the fletched ones (<c>bare_shafts_moved</c>): yes or no.</summary>
    BareShaftsMoved,

    /// <summary>The level is wrong against a plumb line, or was not kept (<c>level_off</c>): yes or no.</summary>
    LevelOff,

    /// <summary>The sight's bar does not run along a plumb line (<c>sight_bar_tilted</c>): yes or no.</summary>
    SightBarTilted,

    /// <summary>Wind enough to feel (<c>wind_felt</c>): yes or no.</summary>
    WindFelt,

    /// <summary>Distances measured again came out otherwise (<c>distances_wrong</c>): yes or no.</summary>
    DistancesWrong,
}

/// <summary>One line of the log: something measured or looked for, on a day, for a session.</summary>
public sealed record LogEntry
{
    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The session whose bow it describes.</summary>
    public required string Session { get; init; }

    /// <summary>What was measured or looked for.</summary>
    public required LogQuantity Quantity { get; init; }

    /// <summary>What was measured, in the unit entered; its kind is told at <see cref="LogQuantity"/>. <see langword="null"/> for what is seen or not.</summary>
    public IQuantity? Value { get; init; }

    /// <summary>Standard deviation of that value as a value, instrument and repeated readings together; positive. A <see cref="TemperatureDelta"/> for a temperature.</summary>
    public IQuantity? Sd { get; init; }

    /// <summary>Whether it was there, for what is looked for; <see langword="null"/> for what is measured.</summary>
    public bool? Seen { get; init; }

    /// <summary>Distance of the instrument from the bow, for <see cref="LogQuantity.SpeedDownrange"/> only.</summary>
    public Length? Distance { get; init; }

    /// <summary>Anything else.</summary>
    public string? Note { get; init; }
}
