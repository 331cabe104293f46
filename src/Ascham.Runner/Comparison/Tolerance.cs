namespace Ascham.Runner.Comparison;

using System.Globalization;
using System.Text.RegularExpressions;

/// <summary>How far two numbers may lie apart and still count as the same: |a − b| ≤ absolute + relative · max(|a|, |b|).</summary>
/// <param name="Relative">Share of the larger one.</param>
/// <param name="Absolute">In the number's own unit.</param>
sealed partial record Tolerance(double Relative = 1e-6, double Absolute = 1e-9)
{
    /// <summary>Whether two texts say the same: their words agree exactly, their numbers within the tolerance.</summary>
    public bool Same(string old, string now)
    {
        if (old == now)
        {
            return true;
        }

        var (before, after) = (Number().Matches(old), Number().Matches(now));
        return before.Count == after.Count
            && Number().Replace(old, "#") == Number().Replace(now, "#")
            && before.Zip(after).All(pair => Same(Value(pair.First), Value(pair.Second)));
    }

    public bool Same(double old, double now) =>
        old.Equals(now) || Math.Abs(old - now) <= Absolute + Relative * Math.Max(Math.Abs(old), Math.Abs(now));

    static double Value(Match number) =>
        double.Parse(number.Value.Replace('\u2212', '-'), NumberStyles.Float, CultureInfo.InvariantCulture);

    // A sign belongs to a number only where no letter or digit stands before it: 2026-05-01 is three numbers without sign.
    [GeneratedRegex(@"(?<![\w.])[-+\u2212]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?|(?<=[\w.])\d+(?:\.\d+)?")]
    private static partial Regex Number();
}
