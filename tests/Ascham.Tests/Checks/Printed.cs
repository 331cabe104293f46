namespace Ascham.Tests.Checks;

using System.Globalization;
using Xunit;

/// <summary>A published number, as printed, with where it was printed.</summary>
public sealed record Printed(string Text, string Source)
{
    /// <summary>The number.</summary>
    public double Value => double.Parse(Text, CultureInfo.InvariantCulture);

    /// <summary>Half a unit in the last printed digit: the most the printer can have rounded away.</summary>
    public double HalfUlp
    {
        get
        {
            string[] parts = Text.Split('e', 'E');
            int exponent = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
            int point = parts[0].IndexOf('.', StringComparison.Ordinal);
            int decimals = point < 0 ? 0 : parts[0].Length - point - 1;
            return 0.5 * Math.Pow(10, exponent - decimals);
        }
    }

    /// <summary>Asserts that a computed value rounds to the printed one.</summary>
    /// <param name="actual">The computed value, in the printed unit.</param>
    /// <param name="slack">Multiple of half a printed unit allowed; more than 1 needs its reason on the same line.</param>
    public void Matches(double actual, double slack = 1.0)
    {
        double error = Math.Abs(actual - Value), allowed = slack * HalfUlp * (1 + 1e-9);
        Assert.True(error <= allowed, FormattableString.Invariant($"{Source}: printed {Text}, computed {actual:R}, off by {error:E2}; allowed {allowed:E2}."));
    }
}
