namespace Ascham.Notebooks;

using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

public static partial class Wanted
{
    static readonly Dictionary<string, ForceUnit> Forces = new() { ["lbf"] = ForceUnit.PoundForce, ["N"] = ForceUnit.Newton, ["kgf"] = ForceUnit.KilogramForce };

    /// <summary>Reads a force such as <c>0.3 lbf</c>.</summary>
    /// <param name="text">A positive number and a unit (lbf, N, kgf).</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The force; above 0, up to 1000 N.</returns>
    /// <exception cref="ArgumentException">The text is no such force.</exception>
    public static Force Force(string text, string parameter) =>
        TryForce((text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries), out var force)
            ? force
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected a positive number with a decimal point, a space and a unit ({string.Join(", ", Forces.Keys)}), such as \"0.3 lbf\" or \"1.5 N\".", parameter);

    /// <summary>Reads a change of peak weight such as <c>1 turn out</c>, <c>0.5 turns in</c>, <c>3 lbf less</c> or <c>10 N more</c>.</summary>
    /// <param name="text">Turns of both limb bolts, in or out; or a weight, less or more.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The change; up to 30 turns or 1000 N.</returns>
    /// <exception cref="ArgumentException">The text is no such change.</exception>
    public static WeightChange ChangeOfWeight(string text, string parameter)
    {
        string[] parts = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts is [_, "turn" or "turns", "out" or "in"] && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double turns) && turns is > 0 and <= 30)
        {
            return new(parts[2] == "out" ? turns : -turns, null, string.Join(' ', parts));
        }

        return parts is [_, _, "less" or "more"] && TryForce(parts[..2], out var force)
            ? new(null, parts[2] == "less" ? force : -force, string.Join(' ', parts))
            : throw new ArgumentException($"Parameter {parameter} is \"{text}\"; expected turns of both limb bolts, such as \"1 turn out\" or \"0.5 turns in\", or a weight, such as \"3 lbf less\" or \"10 N more\".", parameter);
    }

    /// <summary>Reads a standard deviation in per cent.</summary>
    /// <param name="percent">0 to 20.</param>
    /// <param name="parameter">Name of the parameter, for the message.</param>
    /// <returns>The share.</returns>
    /// <exception cref="ArgumentException">The number is outside its range.</exception>
    public static Ratio PercentSd(double percent, string parameter) => percent is >= 0 and <= 20
        ? Ratio.FromPercent(percent)
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Parameter {parameter} is {percent}; expected a standard deviation from 0 to 20 per cent, such as 1."), parameter);

    static bool TryForce(string[] parts, out Force force)
    {
        bool read = parts.Length == 2 & double.TryParse(parts.FirstOrDefault(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && Forces.ContainsKey(parts[1]);
        force = read ? UnitsNet.Force.From(number, Forces[parts[1]]) : default;
        return read && force.Newtons is > 0 and <= 1000;
    }
}
