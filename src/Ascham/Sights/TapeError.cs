namespace Ascham.Sights;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How far one mark of a tape is out, three ways of saying it, and the mark corrected.</summary>
public sealed record TapeError
{
    /// <summary>The distance printed beside the mark.</summary>
    public required Length Distance { get; init; }

    /// <summary>Where the mark is printed, on the sight's own scale.</summary>
    public required Length Printed { get; init; }

    /// <summary>Travel from the printed mark to the right one, positive towards larger numbers on the scale.</summary>
    public required Estimate<Length> OnTape { get; init; }

    /// <summary>
    /// The distance the bow really shoots to with the sight at this mark, less the distance printed; negative when the arrow
    /// falls short. <see langword="null"/> where the scale turns (very close), so that no one distance belongs to the mark.
    /// </summary>
    public required Estimate<Length>? InDistance { get; init; }

    /// <summary>Where the group's centre lands with the sight at this mark, above the aim point; negative when low.</summary>
    public required Estimate<Length> OnTarget { get; init; }

    /// <summary>Where the mark should stand.</summary>
    public required Estimate<Length> Corrected { get; init; }

    /// <summary>Whether the mark lies outside the distances shot, so that its figures lean on the pattern going on.</summary>
    public required bool Extrapolated { get; init; }
}

/// <summary>What one station measured of the tape, before any pattern is fitted.</summary>
/// <param name="Station">The station.</param>
/// <param name="OnTape">Travel from the printed scale to the right setting at the station's distance; error of scatter, distance and setting included.</param>
/// <param name="OnTarget">The same as height on the target with the sight on the printed scale; negative when low.</param>
public sealed record StationError(TapeStation Station, Estimate<Length> OnTape, Estimate<Length> OnTarget);
