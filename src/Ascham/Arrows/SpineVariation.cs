namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How much a shaft's stiffness differs around it, from spine readings at several rotations.</summary>
/// <remarks>
/// A straight shaft bends alike at opposite rotations, so readings half a turn apart should agree: what they differ by is a bent
/// shaft or the error of reading, and a variation no larger than that says nothing.
/// </remarks>
public sealed record SpineVariation
{
    SpineVariation(Length mean, Length range, Angle stiffest, Length? mismatch)
        => (Mean, Range, Stiffest, HalfTurnMismatch) = (mean, range, stiffest, mismatch);

    /// <summary>Mean reading.</summary>
    public Length Mean { get; }

    /// <summary>Largest less smallest reading.</summary>
    public Length Range { get; }

    /// <summary>Rotation of the smallest reading, the stiffest side.</summary>
    public Angle Stiffest { get; }

    /// <summary>Largest difference between readings half a turn apart; <see langword="null"/> when none are.</summary>
    public Length? HalfTurnMismatch { get; }

    /// <summary>Whether the range is more than twice what opposite readings differ by; <see langword="null"/> when none are opposite.</summary>
    public bool? IsSeen => HalfTurnMismatch is { } mismatch ? Range.Meters > 2 * mismatch.Meters : null;

    /// <summary>From readings; four a quarter turn apart are usual (ASTM F2031, read in excerpts).</summary>
    /// <param name="readings">Rotation and sag, at two rotations or more.</param>
    /// <returns>The variation.</returns>
    /// <exception cref="ArgumentException">There are fewer than two readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A sag is not positive.</exception>
    public static SpineVariation Of(IEnumerable<(Angle Rotation, Length Deflection)> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        (Angle Rotation, Length Deflection)[] all = [.. readings];
        if (all.Length < 2)
        {
            throw new ArgumentException($"A variation needs readings at two rotations or more, better four; there are {all.Length}.", nameof(readings));
        }

        double[] sag = [.. all.Select(r => Require.Positive(r.Deflection.Meters, "m", nameof(readings)))];
        double[] opposite = [.. from a in all
                                from b in all
                                where Math.Abs(Math.IEEERemainder(b.Rotation.Degrees - a.Rotation.Degrees - 180, 360)) < 1
                                select Math.Abs(a.Deflection.Meters - b.Deflection.Meters)];
        return new(
            Length.FromMeters(sag.Average()), Length.FromMeters(sag.Max() - sag.Min()), all[Array.IndexOf(sag, sag.Min())].Rotation,
            opposite.Length > 0 ? Length.FromMeters(opposite.Max()) : null);
    }
}
