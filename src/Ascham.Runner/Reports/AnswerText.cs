namespace Ascham.Runner.Reports;

using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

/// <summary>A declared answer in words: value with unit, interval with level, probability, text, as far as each applies.</summary>
static class AnswerText
{
    public static string Of(JsonObject answer)
    {
        double? value = Number(answer, "value"), low = Number(answer, "low"), high = Number(answer, "high");
        double? level = Number(answer, "level"), probability = Number(answer, "probability");
        int digits = Decimals(value, low, high);
        string unit = (string?)answer["unit"] is { Length: > 0 } u ? " " + u : "";
        List<string> parts = [];
        if (answer["text"] is JsonValue text)
        {
            parts.Add(text.ToString());
        }

        if (value is { } v)
        {
            parts.Add(Round(v, digits) + unit);
        }
        else if (answer["value"] is JsonValue other)
        {
            parts.Add(other.ToString() + unit);
        }

        if (low is { } l && high is { } h)
        {
            string at = level is { } p ? $"{Percent(p)} interval " : "";
            parts.Add($"{at}{Round(l, digits)} to {Round(h, digits)}{unit}");
        }

        if (probability is { } chance)
        {
            parts.Add($"probability {Percent(chance)}");
        }

        return string.Join("; ", parts);
    }

    // The interval tells which digits mean anything: two digits of its half-width.
    static int Decimals(double? value, double? low, double? high)
    {
        double scale = low is { } l && high is { } h && h > l ? (h - l) / 2 : Math.Abs(value ?? 0) / 100;
        return scale > 0 && double.IsFinite(scale) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(scale)), 0, 12) : 0;
    }

    static string Round(double value, int digits) => value.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    static string Percent(double fraction) => (100 * fraction).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    static double? Number(JsonObject answer, string key) =>
        answer[key] is JsonValue v && v.GetValueKind() == JsonValueKind.Number ? v.GetValue<double>() : null;
}
