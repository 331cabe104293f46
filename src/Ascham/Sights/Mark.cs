namespace Ascham.Sights;

using UnitsNet;

/// <summary>One mark: at this distance the sight stands here.</summary>
/// <param name="Distance">Distance along the line of sight; positive.</param>
/// <param name="Position">Position on the sight's own scale, measured along the scale.</param>
/// <param name="PositionSd">Standard deviation of the position; <see langword="null"/> when not known.</param>
public sealed record Mark(Length Distance, Length Position, Length? PositionSd = null)
{
    /// <summary>Whether the distance is a rangefinder's slope-compensated reading instead.</summary>
    public bool Compensated { get; init; }
}
