namespace Ascham.Records;

using System.Globalization;

/// <summary>Numbers as files write them: invariant culture, decimal point, no thousands separator, finite.</summary>
static class NumberText
{
    const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>Reads a number.</summary>
    /// <exception cref="RecordException">Not a number, not a finite one, or written with a decimal comma.</exception>
    internal static double Read(Cell cell, string number, string expected)
    {
        if (!double.TryParse(number, Style, CultureInfo.InvariantCulture, out double value))
        {
            throw HasDecimalComma(number)
                ? cell.Wrong("has a decimal comma", $"{expected}, with a decimal point")
                : cell.Wrong("is not a number", expected);
        }

        // The parser of .NET reads "NaN" and "Infinity", and turns 1e999 into infinity.
        return double.IsFinite(value) ? value : throw cell.Wrong("is not a finite number", expected);
    }

    /// <summary>Writes the shortest text that reads back as the same number.</summary>
    internal static string Write(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    static bool HasDecimalComma(string text) =>
        text.Count(c => c == ',') == 1 && double.TryParse(text.Replace(',', '.'), Style, CultureInfo.InvariantCulture, out _);
}
