namespace Ascham.Notebooks;

using System.Globalization;
using UnitsNet;

/// <summary>Reads the parameters that a person types at the head of a notebook.</summary>
public static class Wanted
{
    /// <summary>Reads a length such as <c>6 in</c> or <c>15 cm</c>.</summary>
    /// <param name="text">A positive number and a unit.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentException">The text is no positive length with a unit.</exception>
    public static Length Length(string text, string parameter) =>
        UnitsNet.Length.TryParse(text, CultureInfo.InvariantCulture, out var length) && length.Value > 0 && double.IsFinite(length.Value)
            ? length
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected a positive length with its unit, such as \"6 in\" or \"15 cm\".", parameter);

    /// <summary>Reads the level of intervals, such as 0.90.</summary>
    /// <param name="level">A number between 0.5 and 1, neither included.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The level.</returns>
    /// <exception cref="ArgumentException">The level is outside its range.</exception>
    public static double Level(double level, string parameter) => level is > 0.5 and < 1
        ? level
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Parameter {parameter} is {level}; expected a level between 0.5 and 1, such as 0.90 for 90 % intervals."), parameter);
}
