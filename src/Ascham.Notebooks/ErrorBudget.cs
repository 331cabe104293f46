namespace Ascham.Notebooks;

using Ascham.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

/// <summary>One thing that is not exactly known, and how to move it.</summary>
/// <typeparam name="T">What is asked about.</typeparam>
/// <param name="Name">What it is.</param>
/// <param name="HowSure">How well it is known, in words with unit.</param>
/// <param name="Moved">The same thing with this unknown moved by so many of its standard deviations.</param>
public sealed record Unknown<T>(string Name, string HowSure, Func<T, double, T> Moved);

/// <summary>What several unknowns do together to an answer: each is moved one standard deviation both ways, and the effects are added as squares.</summary>
/// <remarks>
/// First-order propagation of independent errors: exact for answers that go in a straight line with the unknowns, and good where they bend little
/// over one standard deviation. It knows only the unknowns it is told of.
/// </remarks>
/// <typeparam name="T">What is asked about.</typeparam>
/// <param name="central">With everything at its likely value.</param>
/// <param name="unknowns">The unknowns, independent of one another.</param>
/// <param name="level">Of the intervals, between 0 and 1.</param>
public sealed class ErrorBudget<T>(T central, IReadOnlyList<Unknown<T>> unknowns, double level)
{
    readonly double reach = Normal.InvCDF(0, 1, (1 + (level is > 0 and < 1 ? level : throw new ArgumentOutOfRangeException(nameof(level), level, "level must be between 0 and 1, such as 0.90."))) / 2);

    /// <summary>The unknowns.</summary>
    public IReadOnlyList<Unknown<T>> Unknowns { get; } = unknowns ?? throw new ArgumentNullException(nameof(unknowns));

    /// <summary>An answer that is a plain number, with its interval.</summary>
    /// <param name="question">What is asked; the answer is not a number where it cannot be told.</param>
    /// <returns>The estimate; <see langword="null"/> when the answer, or one with an unknown moved, is not a number.</returns>
    public Estimate<double>? Of(Func<T, double> question)
    {
        ArgumentNullException.ThrowIfNull(question);
        double value = question(central), error = Math.Sqrt(Effects(question).Sum(e => e.Effect * e.Effect));
        return double.IsFinite(value) && double.IsFinite(error)
            ? new(value, error, value - reach * error, value + reach * error, level, 1, "first-order propagation of the unknowns listed")
            : null;
    }

    /// <summary>An answer that is a length, with its interval.</summary>
    /// <param name="question">What is asked.</param>
    /// <returns>The estimate; <see langword="null"/> when it cannot be told.</returns>
    public Estimate<Length>? Of(Func<T, Length> question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Of(t => question(t).Meters)?.Map(metres => Length.FromMeters(metres));
    }

    /// <summary>What each unknown does alone: half the difference between one standard deviation up and one down.</summary>
    /// <param name="question">What is asked.</param>
    /// <returns>Signed effects, in the order of the unknowns.</returns>
    public IReadOnlyList<(Unknown<T> Unknown, double Effect)> Effects(Func<T, double> question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return [.. Unknowns.Select(u => (u, 0.5 * (question(u.Moved(central, 1)) - question(u.Moved(central, -1)))))];
    }
}
