namespace Ascham.Notebooks;

using System.Runtime.CompilerServices;
using Ascham.Quantities;

/// <summary>Argument checks of charts, tables and answers.</summary>
static class Check
{
    public static string Text(string text, string why, [CallerArgumentExpression(nameof(text))] string? name = null) =>
        string.IsNullOrWhiteSpace(text) ? throw new ArgumentException($"{name} must not be empty: {why}.", name) : text;

    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, $"{name} must be finite; it was {NumberText.Plain(value)}.");

    public static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be positive and finite; it was {NumberText.With(NumberText.Plain(value), unit)}.");

    /// <summary>An estimate that can be shown: a finite value, ends in order; an end may be infinite, nothing may be NaN.</summary>
    public static Estimate<double> Showable(Estimate<double> e, string what)
    {
        ArgumentNullException.ThrowIfNull(e);
        if (!double.IsFinite(e.Value) || double.IsNaN(e.StandardError) || !(e.Low <= e.High))
        {
            throw new ArgumentException(
                $"{what} must have a finite value and an interval whose low end is not above its high end; it was {NumberText.Plain(e.Value)} "
                + $"({NumberText.Plain(e.Low)} to {NumberText.Plain(e.High)}). What cannot be told is said in words: \"cannot tell\".", nameof(e));
        }

        return e.Level is > 0 and < 1
            ? e
            : throw new ArgumentException($"{what}: the level of an interval must be between 0 and 1 (0.90 for 90 %); it was {NumberText.Plain(e.Level)}.", nameof(e));
    }

    public static IReadOnlyList<T> Some<T>(IEnumerable<T> items, int most, string what, [CallerArgumentExpression(nameof(items))] string? name = null)
    {
        ArgumentNullException.ThrowIfNull(items, name);
        T[] all = [.. items];
        return all.Length >= 1 && all.Length <= most
            ? all
            : throw new ArgumentException($"{name} must hold 1 to {most} {what}; it held {all.Length}.", name);
    }
}
