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
    /// <returns>Text in the invariant culture, with the decimals that the first two digits of the standard error need (four digits where there is none).</returns>
    public override string ToString()
    {
        string percent = (100 * Level).ToString("0.#", CultureInfo.InvariantCulture);
        (double value, string unit) = Number(Value);
        double error = Number(StandardError).Number, low = Number(Low).Number, high = Number(High).Number;
        return double.IsNaN(value)
            ? $"{Value} ({percent} %: {Low} to {High})" // no number at all, or one that is not
            : $"{Digits(value, error)}{unit} ({percent} %: {Digits(low, error)} to {Digits(high, error)}{unit})";
    }

    // All four in the unit of the value.
    (double Number, string Unit) Number(T number) => (number, Value) switch
    {
        (IQuantity quantity, IQuantity value) => (quantity.As(value.Unit), $" {value.ToString("a", CultureInfo.InvariantCulture)}".TrimEnd()),
        (IConvertible plain and not string, _) => (plain.ToDouble(CultureInfo.InvariantCulture), ""),
        _ => (double.NaN, ""),
    };

    static string Digits(double number, double error)
    {
        if (!(error > 0) || !double.IsFinite(error) || !double.IsFinite(number))
        {
            return number.ToString("G4", CultureInfo.InvariantCulture);
        }

        int decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(error)), -300, 15);
        string text = decimals >= 0
            ? number.ToString("F" + decimals, CultureInfo.InvariantCulture)
            : (Math.Round(number * Math.Pow(10, decimals)) * Math.Pow(10, -decimals)).ToString("F0", CultureInfo.InvariantCulture);
        return text.AsSpan().ContainsAnyInRange('1', '9') ? text : text.TrimStart('-'); // never "-0.0"
    }
}
