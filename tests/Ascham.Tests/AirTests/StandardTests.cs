namespace Ascham.Tests.AirTests;

using Ascham.Air;
using UnitsNet;
using Xunit;

public class StandardTests
{
    static readonly AuthorityFile Ussa76 = new("air-ussa76.csv");
    static readonly AuthorityFile Iso2533 = new("air-iso2533-derived.csv");

    public static TheoryData<int> Ussa76Rows => AuthorityFile.Rows("air-ussa76.csv");

    public static TheoryData<int> Iso2533Rows => AuthorityFile.Rows("air-iso2533-derived.csv");

    [Theory, MemberData(nameof(Ussa76Rows))]
    public void Published_the_standard_atmosphere_matches_every_printed_digit(int row)
    {
        Air air = Air.StandardAtGeometric(Length.FromMeters(Ussa76.Value(row, "altitude_m")));
        Ussa76.Cell(row, "temperature_K")!.Matches(air.Temperature.Kelvins);
        // At -1000 m the print has five significant digits of six.
        Ussa76.Cell(row, "pressure_Pa")!.Matches(air.Pressure.Pascals, slack: row == 0 ? 10 : 1);
        Ussa76.Cell(row, "density_kg_m3")!.Matches(air.Density.KilogramsPerCubicMeter);
        Ussa76.Cell(row, "viscosity_1e-5_Pa_s")!.Matches(1e5 * air.DynamicViscosity.PascalSeconds);
        Ussa76.Cell(row, "kinematic_1e-5_m2_s")!.Matches(1e5 * air.KinematicViscosity.SquareMetersPerSecond);
        Ussa76.Cell(row, "sound_m_s")!.Matches(air.SpeedOfSound.MetersPerSecond);
        Assert.Equal(0, air.RelativeHumidity.Percent);
    }

    [Theory, MemberData(nameof(Iso2533Rows))]
    public void Derived_geopotential_rows_match(int row)
    {
        Air air = Air.StandardAt(Length.FromMeters(Iso2533.Value(row, "geopotential_m")));
        Iso2533.Cell(row, "temperature_K")!.Matches(air.Temperature.Kelvins);
        Iso2533.Cell(row, "pressure_Pa")!.Matches(air.Pressure.Pascals);
        Iso2533.Cell(row, "density_kg_m3")!.Matches(air.Density.KilogramsPerCubicMeter);
    }

    [Theory]
    [InlineData(-2001)]
    [InlineData(11001)]
    public void An_altitude_outside_the_layer_is_refused_with_its_range(double metres)
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => Air.StandardAt(Length.FromMeters(metres)));
        Assert.Contains("from -2000 to 11000 m", e.Message);
        Assert.Equal("geopotentialAltitude", e.ParamName);
    }
}
