namespace Ascham.Notebooks.Tests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;
using Xunit;

public class TapeShotsTests
{
    static readonly Tape Printed = Tape.Of(Enumerable.Range(2, 7).Select(i => new Mark((10 * i).Yards, (4 * i).Millimetres)));
    static readonly Session Marked = new() { Name = "s", Date = new(2026, 8, 1), Setup = "Alder", DistanceSource = DistanceSource.Marked, DistanceSd = 0.1.Yards, SettingSd = 0.2.Millimetres };

    static readonly Setup Demo = SetupFile.Read(Ascham.Tests.House.Path("data-demo/tape-check/setup.json"));

    [Fact] // relation: the same shots in other units, separators and line ends say the same, row by row
    public void The_metric_twin_of_the_demonstration_gives_the_same_answers()
    {
        var (imperial, metric) = (Check("tape-check"), Check("tape-check-metric"));
        Assert.Equal(imperial.Verdict, metric.Verdict);
        Assert.Equal(imperial.Slide.Low.Millimeters, metric.Slide.Low.Millimeters, 1e-9);
        Assert.Equal(imperial.Scale!.High.Percent, metric.Scale!.High.Percent, 1e-9);
        Assert.All(imperial.Marks.Zip(metric.Marks), p =>
        {
            Assert.Equal(p.First.Corrected.Value.Millimeters, p.Second.Corrected.Value.Millimeters, 1e-9);
            Assert.Equal(p.First.Corrected.Low.Millimeters, p.Second.Corrected.Low.Millimeters, 1e-9);
            Assert.Equal(p.First.OnTarget.Value.Inches, p.Second.OnTarget.Value.Inches, 1e-9);
        });
    }

    [Fact] // planted: the tape was cut for 275 ft/s, the bow shoots 266 ft/s, the 20 yd mark is right
    public void The_demonstration_gives_back_what_was_planted()
    {
        var check = Check("tape-check");
        double planted = 100 * (Math.Pow(275.0 / 266, 2) - 1); // drop goes with 1/v²; a little more where drag has worked
        Assert.Equal(TapeVerdict.Scaled, check.Verdict);
        Assert.InRange(planted, check.Scale!.Low.Percent, check.Scale.High.Percent);
        Assert.InRange(0.0, check.Slide.Low.Millimeters, check.Slide.High.Millimeters);
    }

    [Fact]
    public void A_sight_left_alone_shares_one_setting_error()
    {
        var shots = new[] { 20, 30, 40 }.SelectMany(y => Station(y, setting: 8.Millimetres));
        var ready = TapeShots.Of(shots, [Marked], Printed, Demo, 0.9);
        Assert.Single(ready.Stations.Select(s => s.SettingKey).Distinct());
        Assert.All(ready.Stations, s => Assert.Equal(8, s.Setting.Millimeters, 1e-12));
    }

    [Fact]
    public void A_sight_set_to_each_mark_has_its_own_error_at_each()
    {
        var ready = TapeShots.Of(new[] { 20, 30, 40 }.SelectMany(y => Station(y)), [Marked], Printed, Demo, 0.9);
        Assert.Equal(3, ready.Stations.Select(s => s.SettingKey).Distinct().Count());
        Assert.Equal([8.0, 12.0, 16.0], ready.Stations.Select(s => Math.Round(s.Setting.Millimeters, 9)));
    }

    [Fact]
    public void Slopes_bare_shafts_and_distances_off_the_tape_are_set_aside_openly()
    {
        Shot[] shots = [.. Station(20), .. Station(30).Select(s => s with { Slope = 10.Degrees, Number = s.Number + 10 }), .. Station(90).Select(s => s with { Number = s.Number + 20 }), .. Station(40).Select(s => s with { Fletched = false, Number = s.Number + 30 })];
        var ready = TapeShots.Of(shots, [Marked], Printed, Demo, 0.9);
        Assert.Equal([20.0], ready.Stations.Select(s => Math.Round(s.Distance.Yards, 9)));
        Assert.Contains(ready.SetAside, r => r.Contains("bare shafts", StringComparison.Ordinal));
        Assert.Contains(ready.SetAside, r => r.Contains("slope of 10 degrees", StringComparison.Ordinal));
        Assert.Contains(ready.SetAside, r => r.Contains("the tape runs from 20 yd to 80 yd only", StringComparison.Ordinal));
    }

    [Fact]
    public void Ranged_distances_without_their_standard_deviation_are_refused()
    {
        var ranged = Marked with { DistanceSource = DistanceSource.Ranged, DistanceSd = null };
        string message = Assert.Throws<ArgumentException>(() => TapeShots.Of(Station(20), [ranged], Printed, Demo, 0.9)).Message;
        Assert.StartsWith("Session \"s\" has ranged distances, but sessions.csv does not say how well: add a column distance_sd_yd", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_error_that_is_not_given_is_a_caution() =>
        Assert.Contains(TapeShots.Of(Station(20), [Marked with { SettingSd = null }], Printed, Demo, 0.9).Cautions, c => c.Contains("gives no setting_sd", StringComparison.Ordinal));

    [Fact]
    public void Called_flyers_are_counted_and_missed_arrows_stay_in()
    {
        Shot[] shots = [.. Station(20), Station(20).First() with { Number = 9, Called = true }, Station(20).First() with { Number = 10, Impact = null, Missed = Miss.Low }];
        var ready = TapeShots.Of(shots, [Marked], Printed, Demo with { Range = Demo.Range with { ButtBelow = 50.Centimetres } }, 0.9);
        Assert.Equal(1, ready.FlyersSetAside);
        Assert.Equal(5, ready.ShotsUsed);
        Assert.True(ready.Stations[0].MeanUp < Length.Zero, "an arrow under the butt must draw the centre down");
    }

    static IEnumerable<Shot> Station(int yards, Length? setting = null) => Enumerable.Range(1, 4).Select(i => new Shot
    {
        Session = "s",
        Distance = yards.Yards,
        Number = 100 * yards + i,
        Setting = setting,
        Impact = new(i.Centimetres, (i % 2 == 0 ? 1 : -1).Centimetres),
    });

    static TapeCheck Check(string folder)
    {
        string path = Ascham.Tests.House.Path($"data-demo/{folder}/");
        var setup = SetupFile.Read(path + "setup.json");
        var sessions = SessionsFile.Read(SessionsFile.Beside(path + "shots.csv"), setup.Sight);
        var tape = Tape.Of(MarksFile.Read(path + "marks.csv", setup.Sight));
        var ready = TapeShots.Of(ShotsFile.Read(path + "shots.csv", setup.Sight, sessions), sessions, tape, setup, 0.9);
        return TapeCheck.Run(tape, ready.Stations, SetupModel.Of(setup).Sight, 6.Inches, 0.9);
    }

    [Fact]
    public void A_station_with_more_misses_than_impacts_is_set_aside()
    {
        var under = Station(30).Select(s => s.Number % 4 == 0 ? s : s with { Impact = null, Missed = Miss.Low });
        var ready = TapeShots.Of([.. Station(20), .. under], [Marked], Printed, Demo, 0.9);
        Assert.Single(ready.Stations);
        Assert.Contains(ready.SetAside, r => r.Contains("3 of 4 counted arrows passed under or over the butt", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_setup_s_session_is_set_aside()
    {
        Session other = Marked with { Name = "t", Setup = "other bow" };
        var ready = TapeShots.Of([.. Station(20), .. Station(30).Select(s => s with { Session = "t" })], [Marked, other], Printed, Demo, 0.9);
        Assert.Single(ready.Stations);
        Assert.Contains(ready.SetAside, r => r.Contains("shot with setup \"other bow\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Stations_beyond_the_longest_safe_distance_and_mixed_points_are_cautions()
    {
        var near = Demo with { Range = Demo.Range with { LongestSafeDistance = 25.Yards } };
        var ready = TapeShots.Of([.. Station(20), .. Station(30).Select(s => s with { PointType = "broadhead" }), .. Station(40).Select(s => s with { PointType = "field" })], [Marked], Printed, near, 0.9);
        Assert.Equal(2, ready.Cautions.Count(c => c.Contains("beyond the setup's longest safe distance", StringComparison.Ordinal)));
        Assert.Contains(ready.Cautions, c => c.Contains("broadhead and field points", StringComparison.Ordinal));
    }
}
