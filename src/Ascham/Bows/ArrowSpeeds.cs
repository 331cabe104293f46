namespace Ascham.Bows;

using System.Globalization;

/// <summary>Launch speeds of arrows of several masses from one bow setting: what its virtual mass is found from.</summary>
public sealed partial class ArrowSpeeds : IEquatable<ArrowSpeeds>
{
    readonly ChronographedArrow[] arrows;

    ArrowSpeeds(ChronographedArrow[] arrows) => this.arrows = arrows;

    /// <summary>The arrows, in the order given.</summary>
    public IReadOnlyList<ChronographedArrow> Arrows => arrows;

    /// <summary>Takes arrows of two or more masses.</summary>
    /// <param name="arrows">In any order; each mass once.</param>
    /// <returns>The speeds.</returns>
    /// <exception cref="ArgumentException">Fewer than two arrows, or a mass twice.</exception>
    public static ArrowSpeeds Of(IEnumerable<ChronographedArrow> arrows)
    {
        ArgumentNullException.ThrowIfNull(arrows);
        ChronographedArrow[] list = [.. arrows];
        if (list.Length < 2)
        {
            throw new ArgumentException(Text($"A virtual mass needs arrows of two masses at least, better four; {list.Length} given."), nameof(arrows));
        }

        if (list.GroupBy(a => a.Mass.Kilograms).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            throw new ArgumentException(Text($"Two arrows have the same mass, {twice.First().Mass.Grains:0.#} gr; put their shots together, or weigh them again."), nameof(arrows));
        }

        return new(list);
    }

    /// <inheritdoc/>
    public bool Equals(ArrowSpeeds? other) => other is not null && arrows.SequenceEqual(other.arrows);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ArrowSpeeds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(arrows.Length, arrows[0], arrows[^1]);

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
