namespace Ascham.Tests.AirTests;

using Ascham.Air;
using UnitsNet;
using Xunit;

public class WindTests
{
    [Theory]
    [InlineData(12, -5, 0)] // from the target: head wind
    [InlineData(3, 0, -5)]  // from the right: blows to the left
    [InlineData(6, 5, 0)]
    [InlineData(9, 0, 5)]
    [InlineData(0, -5, 0)]
    public void The_clock_names_where_the_wind_comes_from(double oClock, double tail, double fromLeft)
    {
        Wind wind = Wind.FromClock(Speed.FromMetersPerSecond(5), oClock);
        Assert.Equal(tail, wind.Tail.MetersPerSecond, 1e-12);
        Assert.Equal(fromLeft, wind.FromLeft.MetersPerSecond, 1e-12);
        Assert.Equal(0, wind.Up.MetersPerSecond);
    }

    [Fact]
    public void A_wind_that_cannot_be_is_refused_by_name()
    {
        Assert.Equal("fromLeft", Assert.Throws<ArgumentOutOfRangeException>(() => Wind.Of(Speed.Zero, Speed.FromMetersPerSecond(61))).ParamName);
        Assert.Equal("oClock", Assert.Throws<ArgumentOutOfRangeException>(() => Wind.FromClock(Speed.Zero, double.NaN)).ParamName);
    }

    [Fact]
    public void A_speed_that_is_not_a_number_never_becomes_a_wind() =>
        Assert.ThrowsAny<ArgumentException>(() => Wind.Of(Speed.Zero, Speed.FromMetersPerSecond(double.NaN))); // refused by UnitsNet already

    [Fact]
    public void Components_come_back_as_given()
    {
        Wind wind = Wind.Of(tail: Speed.FromMetersPerSecond(1), fromLeft: Speed.FromMetersPerSecond(2), up: Speed.FromMetersPerSecond(3));
        Assert.Equal((1, 2, 3), (wind.Tail.MetersPerSecond, wind.FromLeft.MetersPerSecond, wind.Up.MetersPerSecond));
        Assert.Equal(Wind.Calm, Wind.Of(Speed.Zero, Speed.Zero));
    }
}
