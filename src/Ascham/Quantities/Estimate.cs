namespace Ascham.Quantities;

using System.Globalization;
using UnitsNet;

/// <summary>A number that knows how sure it is: value, standard error, interval, how many observations, how obtained.</summary>
/// <typeparam name="T">A UnitsNet quantity, or <see cref="double"/> for a number without unit.</typeparam>
/// <param name="Value">The estimate itself.</param>
/// <param name="StandardError">One standard deviation of the estimate over repeated experiments; not negative.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
/// <param name="Level">Long-run frequency with which such intervals contain the truth, between 0 and 1; 0.90 for a 90 % interval.</param>
/// <param name="Count">Number of independent observations behind the estimate.</param>
/// <param name="HowObtained">In a few words: the estimator and what it assumes.</param>
public sealed record Estimate<T>(T Value, T StandardError, T Low, T High, double Level, int Count, string HowObtained)
{
    /// <summary>Expresses the estimate in another unit or type.</summary>
    /// <typeparam name="TOut">Type of the result.</typeparam>
    /// <param name="convert">A linear, increasing conversion without offset, such as <c>l => l.Millimeters</c>.</param>
    /// <returns>The same estimate, each number converted.</returns>
    /// <exception cref="ArgumentException">The conversion is decreasing: it would swap the ends of the interval.</exception>
    public Estimate<TOut> Map<TOut>(Func<T, TOut> convert)
    {
        ArgumentNullException.ThrowIfNull(convert);
        var (low, high) = (convert(Low), convert(High));
        return Comparer<TOut>.Default.Compare(low, high) <= 0
            ? new(convert(Value), convert(StandardError), low, high, Level, Count, HowObtained)
            : throw new ArgumentException("The conversion turns the interval round; it must be increasing.", nameof(convert));
    }

    /// <summary>Writes value and interval, for example <c>1.52 mm (90 %: 1.10 to 1.94 mm)</c>.</summary>
    /// <returns>Text in the invariant culture.</returns>
    public override string ToString()
    {
        string percent = (100 * Level).ToString("0.#", CultureInfo.InvariantCulture);
        return $"{Text(Value)} ({percent} %: {Text(Low)} to {Text(High)})";
    }

    static string Text(T value) => value switch
    {
        IQuantity quantity => quantity.ToString("G4", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString("G4", CultureInfo.InvariantCulture),
        _ => value?.ToString() ?? "",
    };
}
