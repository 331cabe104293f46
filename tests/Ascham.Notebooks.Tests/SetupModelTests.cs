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

    [Fact]
    public void An_arrow_too_light_for_the_bow_is_warned_of_first()
    {
        var light = Demo with { Arrow = Demo.Arrow with { Mass = UnitsNet.Mass.FromGrains(250) } };
        Assert.Contains(SetupModel.Of(light).Cautions, c => c.StartsWith("Do not shoot this arrow from this bow: 4.4 grains per pound", StringComparison.Ordinal));
    }

    [Fact]
    public void A_temperature_without_pressure_is_used_and_said()
    {
        var model = SetupModel.Of(Demo with { Air = new() { Temperature = UnitsNet.Temperature.FromDegreesCelsius(-10) } });
        Assert.Equal(-10, model.Sight.Air.Temperature.DegreesCelsius, 1e-9);
        Assert.Equal(2, model.Cautions.Count);
    }

    [Theory]
    [InlineData("6")]
    [InlineData("six inches")]
    [InlineData("-6 in")]
    [InlineData("0 in")]
    [InlineData("6 lb")]
    [InlineData("15,5 cm")]
    [InlineData("6 M")]
    [InlineData("6 mil")]
    public void A_target_that_is_no_positive_length_is_refused_with_an_example(string text) =>
        Assert.StartsWith($"Parameter target is \"{text}\"; expected a positive number with a decimal point, a space and a unit (in, cm, mm, m, ft, yd), such as \"6 in\" or \"15 cm\".", Assert.Throws<ArgumentException>(() => Wanted.Length(text, "target")).Message, StringComparison.Ordinal);

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
    [InlineData(0.5005)]
    [InlineData(0.99999)]
    [InlineData(double.NaN)]
    public void A_level_that_is_no_level_is_refused_with_an_example(double level) =>
        Assert.Contains("expected a level from 0.501 to 0.9999, such as 0.90 for 90 % intervals.", Assert.Throws<ArgumentException>(() => Wanted.Level(level, "confidence")).Message, StringComparison.Ordinal);
}
