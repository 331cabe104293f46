namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;
using Xunit;

public class StationGroupTests
{
    [Fact]
    public void Shots_split_by_session_distance_setting_and_slope_in_order_of_appearance()
    {
        Length setting = Length.FromMillimeters(12);
        Shot[] shots =
        [
            Simulated.Shot(1, 0, 0, 40), Simulated.Shot(2, 0, 0.1, 20), Simulated.Shot(3, 0, 0.2, 40),
            Simulated.Shot(4, 0, 0, 40) with { Setting = setting }, Simulated.Shot(1, 0, 0, 40, "summer"),
            Simulated.Shot(5, 0, 0, 40) with { Slope = Angle.FromDegrees(10) }, Simulated.Shot(6, 0, 0, 40) with { Slope = Angle.Zero },
        ];

        IReadOnlyList<StationGroup> stations = StationGroup.From(shots);

        Assert.Equal(["spring 40", "spring 20", "spring 40", "summer 40", "spring 40"], stations.Select(s => FormattableString.Invariant($"{s.Session} {s.Distance.Meters}")));
        Assert.Equal([1, 3, 6], stations[0].Shots.Select(s => s.Number));
        Assert.Equal(setting, stations[2].Setting);
        Assert.Null(stations[0].Setting);
        Assert.Equal(10, stations[4].Slope.Degrees);
        Assert.Equal("spring at 40 m, sight at 12 mm", stations[2].ToString());
    }

    [Fact]
    public void Called_and_missed_arrows_are_counted_apart()
    {
        StationGroup station = Assert.Single(StationGroup.From(
        [
            Simulated.Shot(1, 0, 0), Simulated.Lost(2, Miss.Low), Simulated.Shot(3, 1, 1, called: true), Simulated.Lost(4, Miss.High, called: true), Simulated.Lost(5, Miss.Left),
        ]));

        Assert.Equal((3, 2, 2), (station.Counted, station.CalledSetAside, station.Missed));
        Assert.Equal([Miss.Low, Miss.Left], station.Misses);
        Assert.Equal(5, station.Shots.Count);
        Assert.Single(station.Impacts);
    }

    [Fact] // 1/16 inch and its metres differ in the last bit; rounding to a grid would part them
    public void One_setting_in_two_units_is_one_station() =>
        Assert.Single(StationGroup.From(
        [
            Simulated.Shot(1, 0, 0) with { Setting = Length.FromInches(1 / 16.0) }, Simulated.Shot(2, 0, 0) with { Setting = Length.FromMeters(0.0015875) },
        ]));

    [Fact]
    public void No_shots_make_no_station() =>
        Assert.Contains("at least one shot", Assert.Throws<ArgumentException>(() => StationGroup.From([])).Message, StringComparison.Ordinal);

    [Fact]
    public void A_null_shot_is_refused() =>
        Assert.Contains("must not hold null", Assert.Throws<ArgumentException>(() => StationGroup.From([null!])).Message, StringComparison.Ordinal);
}
