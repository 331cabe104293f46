namespace Ascham.Tests.AirTests;

using Ascham.Air;
using CsCheck;
using UnitsNet;
using Xunit;

public class GravityTests
{
    static readonly AuthorityFile Wgs84 = new("air-wgs84-gravity.csv");

    public static TheoryData<int> Wgs84Rows => AuthorityFile.Rows("air-wgs84-gravity.csv");

    [Theory, MemberData(nameof(Wgs84Rows))]
    public void Published_normal_gravity_matches_every_digit(int row) =>
        Wgs84.Cell(row, "gravity_m_s2")!.Matches(At(Wgs84.Value(row, "latitude_deg"), Wgs84.Value(row, "height_m")));

    [Fact]
    public void Standard_gravity_is_the_conventional_value() =>
        Assert.Equal(9.80665, Gravity.Standard.Acceleration.MetersPerSecondSquared); // exact, 3rd CGPM 1901

    [Fact]
    public void Relation_north_and_south_are_alike_and_higher_is_lighter() => Gen.Select(Gen.Double[0, 90], Gen.Double[0, 9000]).Sample((latitude, height) =>
        At(latitude, height) == At(-latitude, height) && At(latitude, height + 100) < At(latitude, height));

    [Theory]
    [InlineData(91, 0, "latitude")]
    [InlineData(-90.1, 0, "latitude")]
    [InlineData(45, 30000, "height")]
    public void A_place_off_the_earth_is_refused(double degrees, double metres, string argument)
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => At(degrees, metres));
        Assert.Equal(argument, e.ParamName);
    }

    static double At(double degrees, double metres) =>
        Gravity.At(Angle.FromDegrees(degrees), Length.FromMeters(metres)).Acceleration.MetersPerSecondSquared;
}
