namespace Ascham.Notebooks;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Writes numbers, units and intervals, in the invariant culture.</summary>
static class NumberText
{
    /// <summary>A number with so many decimals; never "-0.0"; an end that is not bounded reads "unbounded".</summary>
    public static string Fixed(double value, int decimals)
    {
        if (double.IsInfinity(value))
        {
            return "unbounded";
        }

        string text = value.ToString("F" + decimals, CultureInfo.InvariantCulture);
        return text.AsSpan().ContainsAnyInRange('1', '9') ? text : text.TrimStart('-');
    }

    /// <summary>A number about which nothing more is known: four significant digits.</summary>
    public static string Plain(double value) => value.ToString("G4", CultureInfo.InvariantCulture);

    /// <summary>A level or probability of 0.9 as "90 %".</summary>
    public static string Percent(double fraction) => (100 * fraction).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    /// <summary>Decimals that keep two digits of the standard error: what follows is not known.</summary>
    public static int Decimals(double standardError) =>
        standardError > 0 && double.IsFinite(standardError) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(standardError)), 0, 9) : 2;

    /// <summary>"1.52 mm (90 %: 1.10 to 1.94 mm)", with the digits that are known.</summary>
    public static string Of(Estimate<double> estimate, string unit)
    {
        int decimals = Decimals(estimate.StandardError);
        return $"{With(Fixed(estimate.Value, decimals), unit)} ({Percent(estimate.Level)}: {Range(estimate.Low, estimate.High, decimals, unit)})";
    }

    /// <summary>"1.10 to 1.94 mm".</summary>
    public static string Range(double low, double high, int decimals, string unit) =>
        With($"{Fixed(low, decimals)} to {Fixed(high, decimals)}", unit);

    /// <summary>Number and unit with a space, or the number alone.</summary>
    public static string With(string number, string unit) => unit.Length == 0 ? number : $"{number} {unit}";

    /// <summary>The usual abbreviation of a UnitsNet unit, such as "in" or "ft/s".</summary>
    public static string Unit(Enum unit) =>
        UnitAbbreviationsCache.Default.GetDefaultAbbreviation(unit.GetType(), Convert.ToInt32(unit, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>An estimate as plain numbers in a unit.</summary>
    public static Estimate<double> In<T>(Estimate<T> estimate, Enum unit)
        where T : IQuantity => estimate.Map(q => q.As(unit));
}
