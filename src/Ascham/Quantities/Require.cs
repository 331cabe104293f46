namespace Ascham.Quantities;

using System.Globalization;
using System.Runtime.CompilerServices;

/// <summary>Argument checks that name the argument, its value, the range allowed and the unit.</summary>
static class Require
{
    internal static double InRange(double value, double low, double high, string unit, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, value, unit, $"from {Text(low)} to {Text(high)}"));

    internal static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, value, unit, "positive and finite"));

    internal static double NotNegative(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value >= 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, value, unit, "zero or more, and finite"));

    internal static double Finite(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null)
        => double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, value, unit, "finite"));

    internal static double Level(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value is > 0 and < 1
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be between 0 and 1 (0.90 for a 90 % interval); it was {Text(value)}.");

    static string Message(string? name, double value, string unit, string allowed)
    {
        string suffix = unit.Length == 0 ? "" : " " + unit;
        return $"{name} must be {allowed}{suffix}; it was {Text(value)}{suffix}.";
    }

    static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
