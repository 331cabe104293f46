namespace Ascham.Notebooks.Tests;

using Ascham.Records;
using Xunit;

public class SetupModelTests
{
    static readonly Setup Demo = SetupFile.Read(Ascham.Tests.House.Path("data-demo/tape-check/setup.json"));

    [Fact]
    public void A_whole_setup_needs_nothing_supplied() => Assert.Empty(SetupModel.Of(Demo).Cautions);

    [Fact]
    public void Missing_drag_and_air_are_supplied_with_a_caution_each()
    {
        var model = SetupModel.Of(Demo with { Air = null, Arrow = Demo.Arrow with { DragConstant = null } });
        Assert.Equal(2, model.Cautions.Count);
        Assert.Contains(model.Cautions, c => c.Contains("may be out by half", StringComparison.Ordinal));
        Assert.Contains(model.Cautions, c => c.Contains("standard air at sea level", StringComparison.Ordinal));
        Assert.Equal(0.0015 * 26 / Demo.Arrow.Mass.Grams, model.Sight.Drag.ConstantIn(model.Sight.Air).InverseMeters, 1e-9);
    }

    [Theory]
    [InlineData("6")]
    [InlineData("six inches")]
    [InlineData("-6 in")]
    [InlineData("0 in")]
    [InlineData("6 lb")]
    public void A_target_that_is_no_positive_length_is_refused_with_an_example(string text) =>
        Assert.StartsWith($"Parameter target is \"{text}\"; expected a positive length with its unit, such as \"6 in\" or \"15 cm\".", Assert.Throws<ArgumentException>(() => Wanted.Length(text, "target")).Message, StringComparison.Ordinal);

    [Fact]
    public void A_target_in_either_system_is_read()
    {
        Assert.Equal(0.1524, Wanted.Length("6 in", "target").Meters, 1e-12);
        Assert.Equal(0.15, Wanted.Length("15 cm", "target").Meters, 1e-12);
    }

    [Theory]
    [InlineData(90)]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_level_that_is_no_level_is_refused_with_an_example(double level) =>
        Assert.Contains("expected a level between 0.5 and 1, such as 0.90 for 90 % intervals.", Assert.Throws<ArgumentException>(() => Wanted.Level(level, "confidence")).Message, StringComparison.Ordinal);
}
