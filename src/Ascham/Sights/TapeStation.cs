namespace Ascham.Sights;

using UnitsNet;

/// <summary>What one station said of the tape: from this distance, with the sight here, the group's centre was there.</summary>
public sealed record TapeStation
{
    /// <summary>Distance to the face along the line of sight, as it was known.</summary>
    public required Length Distance { get; init; }

    /// <summary>Where the sight stood, on its own scale, as it was read.</summary>
    public required Length Setting { get; init; }

    /// <summary>Height of the group's centre above the aim point; negative when low.</summary>
    public required Length MeanUp { get; init; }

    /// <summary>Standard error of that centre from the arrows' scatter alone; positive.</summary>
    public required Length MeanUpSd { get; init; }

    /// <summary>Degrees of freedom behind the scatter that <see cref="MeanUpSd"/> was worked out from; positive.</summary>
    public required double ScatterFreedom { get; init; }

    /// <summary>Standard deviation of the distance, the same for all arrows of the station; zero when it was measured out.</summary>
    public required Length DistanceSd { get; init; }

    /// <summary>Standard deviation of setting the sight once, on its own scale.</summary>
    public required Length SettingSd { get; init; }

    /// <summary>Stations with the same key were shot without moving the sight, so they share one error of setting.</summary>
    public required string SettingKey { get; init; }

    /// <summary>Arrows behind the centre.</summary>
    public required int Arrows { get; init; }
}
