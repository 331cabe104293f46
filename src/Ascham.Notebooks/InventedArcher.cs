namespace Ascham.Notebooks;

using Ascham.Groups;
using UnitsNet;

/// <summary>An archer whose true scatter is known because it was chosen: for showing what groups do when nothing is wrong.</summary>
/// <remarks>Normal impacts about the aim point (Box and Muller); the same seed shoots the same arrows. Nobody real shoots like this for long: no fatigue, no wind, no flyers.</remarks>
public sealed class InventedArcher
{
    readonly Random random;
    readonly Length across, up;

    /// <summary>Invents an archer.</summary>
    /// <param name="seed">Any number; the same number, the same arrows.</param>
    /// <param name="across">True sigma across the face; positive.</param>
    /// <param name="up">True sigma up the face; positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A sigma is not positive.</exception>
    public InventedArcher(int seed, Length across, Length up)
    {
        Check.Positive(across.Meters, "m", nameof(across));
        Check.Positive(up.Meters, "m", nameof(up));
        (random, this.across, this.up) = (new(seed), across, up);
    }

    /// <summary>Invents an archer whose groups are round.</summary>
    /// <param name="seed">Any number; the same number, the same arrows.</param>
    /// <param name="sigma">True sigma across and up; positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The sigma is not positive.</exception>
    public InventedArcher(int seed, Length sigma)
        : this(seed, sigma, sigma)
    {
    }

    /// <summary>Shoots the next arrows.</summary>
    /// <param name="arrows">How many; 1 to 100,000.</param>
    /// <returns>Where they struck, in the unit of the sigmas.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="arrows"/> is out of range.</exception>
    public IReadOnlyList<Impact> Shoot(int arrows) => arrows is >= 1 and <= 100_000
        ? [.. Enumerable.Range(0, arrows).Select(_ => new Impact(across * Normal(), up * Normal()))]
        : throw new ArgumentOutOfRangeException(nameof(arrows), arrows, $"arrows must be 1 to 100000; it was {arrows}.");

    double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
