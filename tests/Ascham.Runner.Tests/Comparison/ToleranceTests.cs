namespace Ascham.Runner.Tests.Comparison;

using System.Globalization;
using Ascham.Runner.Comparison;
using CsCheck;
using Xunit;

public class ToleranceTests
{
    static readonly Tolerance Usual = new();

    [Theory]
    [InlineData("drop 1.0000000 m", "drop 1.0000009 m")]
    [InlineData("0.10 m", "0.1 m")]
    [InlineData("-1e-10", "0")]
    [InlineData("a \u22121.5", "a \u22121.5000001")]
    [InlineData("NaN or 3", "NaN or 3.000001")]
    public void Texts_with_numbers_within_the_tolerance_are_the_same(string old, string now) => Assert.True(Usual.Same(old, now));

    [Theory]
    [InlineData("drop 1.000000 m", "drop 1.000003 m")]
    [InlineData("drop 1 m", "drop 1 cm")]
    [InlineData("1 2", "1 2 3")]
    [InlineData("-1.5", "1.5")]
    [InlineData("NaN", "3")]
    [InlineData("6 arrows", "7 arrows")]
    [InlineData("2026-05-01", "2026-05-02")]
    [InlineData("mark20", "mark21")]
    [InlineData("1e5", "1e6")]
    public void Texts_that_say_something_else_differ(string old, string now) => Assert.False(Usual.Same(old, now));

    [Fact] // relation: the rule itself, at half and at twice the allowed distance
    public void The_rule_is_absolute_plus_relative() =>
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Double[0, 0.5], Gen.Double[2, 10]).Sample((x, inside, outside) =>
        {
            double allowed = Usual.Absolute + Usual.Relative * Math.Abs(x);
            Assert.True(Usual.Same(Text(x), Text(x + inside * allowed)));
            Assert.False(Usual.Same(Text(x), Text(x + outside * allowed)));
        });

    static string Text(double x) => "x = " + x.ToString("R", CultureInfo.InvariantCulture) + ".";
}
