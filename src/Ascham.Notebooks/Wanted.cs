namespace Ascham.Notebooks;

using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Reads the parameters that a person types at the head of a notebook.</summary>
public static partial class Wanted
{
    static readonly Dictionary<string, LengthUnit> Units = new()
    {
        ["in"] = LengthUnit.Inch,
        ["cm"] = LengthUnit.Centimeter,
        ["mm"] = LengthUnit.Millimeter,
        ["m"] = LengthUnit.Meter,
        ["ft"] = LengthUnit.Foot,
        ["yd"] = LengthUnit.Yard,
    };

    static readonly Dictionary<string, SpeedUnit> Speeds = new()
    {
        ["m/s"] = SpeedUnit.MeterPerSecond,
        ["mph"] = SpeedUnit.MilePerHour,
        ["km/h"] = SpeedUnit.KilometerPerHour,
        ["ft/s"] = SpeedUnit.FootPerSecond,
    };

    /// <summary>Reads a length such as <c>6 in</c> or <c>15 cm</c>.</summary>
    /// <param name="text">A positive number and a unit.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The length.</returns>
    /// <exception cref="ArgumentException">The text is no positive length with a unit.</exception>
    public static Length Length(string text, string parameter)
    {
        string[] parts = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool read = parts.Length == 2 && Units.TryGetValue(parts[1], out _) && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number is > 0 and < 1e6;
        return read
            ? UnitsNet.Length.From(double.Parse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), Units[parts[1]])
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected a positive number with a decimal point, a space and a unit ({string.Join(", ", Units.Keys)}), such as \"6 in\" or \"15 cm\".", parameter);
    }

    /// <summary>Reads the level of intervals, such as 0.90.</summary>
    /// <param name="level">0.501 to 0.9999.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The level.</returns>
    /// <exception cref="ArgumentException">The level is outside its range.</exception>
    public static double Level(double level, string parameter) => level is >= 0.501 and <= 0.9999
        ? level
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Parameter {parameter} is {level}; expected a level from 0.501 to 0.9999, such as 0.90 for 90 % intervals."), parameter);

    /// <summary>Reads a length, or none.</summary>
    /// <param name="text">A positive number and a unit, or <c>none</c>.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The length; zero for <c>none</c>.</returns>
    /// <exception cref="ArgumentException">The text is neither.</exception>
    public static Length LengthOrNone(string text, string parameter) => text == "none" ? UnitsNet.Length.Zero : Length(text, parameter);

    /// <summary>Reads a speed such as <c>2 mph</c> or <c>1 m/s</c>, or none.</summary>
    /// <param name="text">A positive number up to 60 m/s and a unit (m/s, mph, km/h, ft/s), or <c>none</c>.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The speed; zero for <c>none</c>.</returns>
    /// <exception cref="ArgumentException">The text is neither.</exception>
    public static Speed SpeedOrNone(string text, string parameter)
    {
        string[] parts = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts is ["none"])
        {
            return Speed.Zero;
        }

        bool read = parts.Length == 2 && Speeds.ContainsKey(parts[1]) && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number > 0;
        Speed speed = read ? Speed.From(double.Parse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), Speeds[parts[1]]) : Speed.Zero;
        return read && speed.MetersPerSecond <= 60
            ? speed
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected \"none\", or a positive number up to 60 m/s with a decimal point, a space and a unit ({string.Join(", ", Speeds.Keys)}), such as \"1 m/s\".", parameter);
    }

    /// <summary>Reads a share that is wanted, such as 0.90.</summary>
    /// <param name="share">0.01 to 0.999.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The share.</returns>
    /// <exception cref="ArgumentException">The share is outside its range.</exception>
    public static double Share(double share, string parameter) => share is >= 0.01 and <= 0.999
        ? share
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Parameter {parameter} is {share}; expected a share from 0.01 to 0.999, such as 0.90 for nine arrows of ten."), parameter);
}
