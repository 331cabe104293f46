namespace Ascham.Tests.AirTests;

using Ascham.Air;
using CsCheck;
using UnitsNet;
using Xunit;

public class MoistTests
{
    static readonly AuthorityFile Cipm = new("air-cipm2007.csv");

    public static TheoryData<int> CipmRows => AuthorityFile.Rows("air-cipm2007.csv");

    static Gen<(double Celsius, double Pascal, double Humidity)> LaboratoryAir =>
        Gen.Select(Gen.Double[15, 27], Gen.Double[60000, 110000], Gen.Double[0, 1]);

    [Theory, MemberData(nameof(CipmRows))]
    public void Published_cipm_2007_matches_every_digit(int row) =>
        Cipm.Cell(row, "density_kg_m3")!.Matches(Density(Air.MoistCipm2007(Kelvin(row), Pascal(row), Humidity(row))));

    [Theory, MemberData(nameof(CipmRows))]
    public void Independent_the_ideal_mixture_is_within_five_parts_in_ten_thousand_of_cipm_2007(int row)
    {
        double ideal = Density(Air.Moist(Kelvin(row), Pascal(row), Humidity(row)));
        Assert.InRange(ideal / Cipm.Value(row, "density_kg_m3") - 1, -5e-4, 5e-4);
    }

    [Fact]
    public void Independent_the_two_formulas_agree_over_the_whole_laboratory_range() => LaboratoryAir.Sample(a =>
        Math.Abs(Density(Moist(a)) / Density(Cipm2007(a)) - 1) < 6e-4);

    [Fact]
    public void Relation_more_vapour_makes_lighter_air() => LaboratoryAir.Sample(a =>
    {
        var damper = a with { Humidity = Math.Min(1, a.Humidity + 0.05) };
        return Density(Moist(damper)) <= Density(Moist(a)) && Density(Cipm2007(damper)) <= Density(Cipm2007(a));
    });

    [Fact]
    public void Relation_dry_air_of_the_standard_state_is_the_standard_air()
    {
        Air moist = Air.Moist(Temperature.FromKelvins(288.15), Pressure.FromPascals(101325), Ratio.Zero), standard = Air.StandardAt(Length.Zero);
        Assert.Equal(Density(standard), Density(moist), 1e-12);
        Assert.Equal(standard.SpeedOfSound.MetersPerSecond, moist.SpeedOfSound.MetersPerSecond, 1e-9);
    }

    [Fact]
    public void Carbon_dioxide_makes_the_air_heavier_by_its_molar_mass()
    {
        Air Of(double fraction) => Air.MoistCipm2007(Temperature.FromKelvins(293.15), Pressure.FromPascals(101325), Ratio.Zero, Ratio.FromDecimalFractions(fraction));
        // Picard et al. 2008: M_a = [28.96546 + 12.011 (x_CO2 - 0.0004)] g/mol.
        Assert.Equal(1 + 12.011 * 0.0006 / 28.96546, Density(Of(0.001)) / Density(Of(0.0004)), 1e-12);
    }

    [Fact]
    public void The_cipm_formula_refuses_air_outside_its_range_and_says_so()
    {
        var cold = Assert.Throws<ArgumentOutOfRangeException>(() => Air.MoistCipm2007(Temperature.FromDegreesCelsius(5), Pressure.FromHectopascals(1000), Ratio.Zero));
        Assert.Equal("temperature", cold.ParamName);
        Assert.Contains("288.15", cold.Message);
        var thin = Assert.Throws<ArgumentOutOfRangeException>(() => Air.MoistCipm2007(Temperature.FromDegreesCelsius(20), Pressure.FromHectopascals(599), Ratio.Zero));
        Assert.Equal("station", thin.ParamName);
    }

    [Fact]
    public void The_bounds_themselves_are_accepted_in_any_unit()
    {
        Assert.NotNull(Air.MoistCipm2007(Temperature.FromDegreesCelsius(15), Pressure.FromHectopascals(600), Ratio.FromPercent(100)));
        Assert.NotNull(Air.MoistCipm2007(Temperature.FromDegreesCelsius(27), Pressure.FromHectopascals(1100), Ratio.FromPercent(100)));
        Assert.NotNull(Air.MoistCipm2007(Temperature.FromDegreesFahrenheit(59), Pressure.FromHectopascals(1100), Ratio.FromPercent(100)));
    }

    [Theory]
    [InlineData(20, 1000, 101, "relativeHumidity")]
    [InlineData(20, 100, 50, "station")]
    [InlineData(70, 1000, 50, "temperature")]
    public void Bad_weather_is_named(double celsius, double hectopascal, double percent, string argument)
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Air.Moist(Temperature.FromDegreesCelsius(celsius), Pressure.FromHectopascals(hectopascal), Ratio.FromPercent(percent)));
        Assert.Equal(argument, e.ParamName);
    }

    static Air Moist((double Celsius, double Pascal, double Humidity) a) =>
        Air.Moist(Temperature.FromDegreesCelsius(a.Celsius), Pressure.FromPascals(a.Pascal), Ratio.FromDecimalFractions(a.Humidity));

    static Air Cipm2007((double Celsius, double Pascal, double Humidity) a) =>
        Air.MoistCipm2007(Temperature.FromDegreesCelsius(a.Celsius), Pressure.FromPascals(a.Pascal), Ratio.FromDecimalFractions(a.Humidity));

    static Temperature Kelvin(int row) => Temperature.FromKelvins(Cipm.Value(row, "temperature_K"));

    static Pressure Pascal(int row) => Pressure.FromPascals(Cipm.Value(row, "pressure_Pa"));

    static Ratio Humidity(int row) => Ratio.FromDecimalFractions(Cipm.Value(row, "humidity"));

    static double Density(Air air) => air.Density.KilogramsPerCubicMeter;
}
