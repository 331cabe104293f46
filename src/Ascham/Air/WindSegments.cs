namespace Ascham.Air;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A wind that differs from stretch to stretch of the range: one wind to the first boundary, another beyond it, and so on.</summary>
/// <remarks>Boundaries are planes square to the line of sight. On a level range their distance is the level distance downrange.</remarks>
public sealed record WindSegments : WindField
{
    readonly (Length From, Wind Wind)[] segments;

    WindSegments((Length, Wind)[] segments) => this.segments = segments;

    /// <summary>The stretches: where each begins, from the origin along the line of sight, and its wind. The first reaches back to wherever the flight starts.</summary>
    public IReadOnlyList<(Length From, Wind Wind)> Segments => segments;

    /// <summary>A wind in stretches.</summary>
    /// <param name="first">The wind up to the first boundary.</param>
    /// <param name="beyond">Boundaries and the wind beyond each; distances positive and rising.</param>
    /// <returns>The wind.</returns>
    /// <exception cref="ArgumentException">Distances that do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A distance that is not positive.</exception>
    public static WindSegments Of(Wind first, params IReadOnlyList<(Length From, Wind Wind)> beyond)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(beyond);
        for (int i = 0; i < beyond.Count; i++)
        {
            ArgumentNullException.ThrowIfNull(beyond[i].Wind, nameof(beyond));
            double from = Require.Positive(beyond[i].From.Meters, "m", "From");
            if (i > 0 && from <= beyond[i - 1].From.Meters)
            {
                throw new ArgumentException(FormattableString.Invariant($"Boundaries must rise; boundary {i + 1} at {from:G6} m follows {beyond[i - 1].From.Meters:G6} m."), nameof(beyond));
            }
        }

        return new([(Length.Zero, first), .. beyond]);
    }

    /// <summary>Equal when the stretches are.</summary>
    /// <param name="other">Another wind.</param>
    /// <returns>Whether boundaries and winds are the same.</returns>
    public bool Equals(WindSegments? other) => other is not null && segments.AsSpan().SequenceEqual(other.segments);

    /// <summary>Of the stretches.</summary>
    /// <returns>A hash code.</returns>
    public override int GetHashCode() => segments.Aggregate(segments.Length, HashCode.Combine);

    internal ReadOnlySpan<(Length From, Wind Wind)> All => segments;
}
