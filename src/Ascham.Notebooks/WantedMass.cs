namespace Ascham.Notebooks;

using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

public static partial class Wanted
{
    static readonly Dictionary<string, MassUnit> Masses = new() { ["gr"] = MassUnit.Grain, ["g"] = MassUnit.Gram };

    /// <summary>Reads a change of mass such as <c>25 gr</c> or <c>-1.5 g</c>.</summary>
    /// <param name="text">A number other than zero and a unit.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The change; up to 20 g either way.</returns>
    /// <exception cref="ArgumentException">The text is no such change.</exception>
    public static Mass ChangeOfMass(string text, string parameter) =>
        TryMass(text, out var mass) && mass.Grams != 0 && Math.Abs(mass.Grams) <= 20
            ? mass
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected a number other than zero with a decimal point, a space and a unit (gr, g), up to 20 g either way, such as \"25 gr\" or \"-1.5 g\".", parameter);

    /// <summary>Reads a mass such as <c>0.5 gr</c>.</summary>
    /// <param name="text">A positive number and a unit.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The mass; above 0, up to 200 g.</returns>
    /// <exception cref="ArgumentException">The text is no such mass.</exception>
    public static Mass Mass(string text, string parameter) =>
        TryMass(text, out var mass) && mass.Grams is > 0 and <= 200
            ? mass
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected a positive number with a decimal point, a space and a unit (gr, g), such as \"0.5 gr\" or \"0.03 g\".", parameter);

    /// <summary>Reads a range of masses such as <c>60 gr to 95 gr</c>, or that it is unknown.</summary>
    /// <param name="text">Two positive masses, the smaller first, or <c>unknown</c>.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The ends; <see langword="null"/> for <c>unknown</c>.</returns>
    /// <exception cref="ArgumentException">The text is neither.</exception>
    public static (Mass Low, Mass High)? MassRangeOrUnknown(string text, string parameter)
    {
        string[] ends = (text ?? "").Split(" to ");
        return ends is ["unknown"]
            ? null
            : ends.Length == 2 && TryMass(ends[0], out var low) && TryMass(ends[1], out var high) && low.Grams > 0 && high > low && high.Grams <= 200
                ? (low, high)
                : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected \"unknown\", or two masses with their units, the smaller first, such as \"60 gr to 95 gr\" or \"4 g to 6 g\".", parameter);
    }

    static bool TryMass(string? text, out Mass mass)
    {
        string[] parts = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool read = parts.Length == 2 & double.TryParse(parts.FirstOrDefault(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number) && Masses.ContainsKey(parts[1]);
        mass = read ? UnitsNet.Mass.From(number, Masses[parts[1]]) : default;
        return read;
    }
}
