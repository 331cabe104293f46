namespace Ascham.Notebooks.Tests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Records;
using UnitsNet;
using Xunit;

public class LessonShotsTests
{
    static readonly Setup Bow = new()
    {
        Name = "alder",
        Bow = new() { PeakWeight = 57.PoundsForce, DrawLength = 28.5.Inches, LaunchSpeed = 266.FeetPerSecond, Hand = Ascham.Bows.Hand.Right },
        Arrow = new() { Mass = 418.Grains, ShaftDiameter = 5.9.Millimetres, DragConstant = 0.0017.PerMetre },
        Sight = new() { PeepToPin = 31.Inches, PeepHeight = 4.2.Inches, TapePerPinTravel = 1, Increases = Ascham.Sights.ScaleDirection.Down },
        Range = new() { LongestSafeDistance = 60.Yards, Backstop = "bank", ButtBelow = 20.Inches, ButtAbove = 20.Inches, ButtLeft = 20.Inches, ButtRight = 20.Inches },
    };

    static Session Day(string name, int day) => new() { Name = name, Date = new(2026, 9, day), Setup = "alder", DistanceSource = DistanceSource.Marked };

    static IEnumerable<Shot> Shoot(string session, int from, double yards, int arrows, double milliradians, int seed)
    {
        var distance = yards.Yards;
        return new InventedArcher(seed, distance * (1e-3 * milliradians)).Shoot(arrows).Select((at, i) => new Shot { Session = session, Distance = distance, Number = from + i, Impact = at });
    }

    [Fact]
    public void First_arrows_of_a_day_are_kept_apart_once_a_day()
    {
        Session[] days = [Day("morning", 1), Day("evening", 1), Day("next", 2)];
        Shot[] shots = [.. days.SelectMany((d, i) => Shoot(d.Name, 1, 30, 6, 1, i + 1))];
        var ready = HitShots.Of(shots, days, Bow, firstShotApart: true);
        Assert.Equal(["morning", "next"], ready.FirstArrows.Select(s => s.Session));
        Assert.Equal(16, ready.Groups.Sum(g => g.Counted));
        Assert.Equal(18, HitShots.Of(shots, days, Bow, firstShotApart: false).Groups.Sum(g => g.Counted));
    }

    [Fact]
    public void Called_flyers_count_and_unsafe_distances_do_not()
    {
        Session[] days = [Day("a", 1)];
        Shot[] shots = [.. Shoot("a", 2, 30, 6, 1, 1), .. Shoot("a", 8, 70, 6, 1, 2), .. Shoot("a", 14, 30, 1, 1, 3).Select(s => s with { Called = true })];
        var ready = HitShots.Of(shots, days, Bow, true);
        Assert.Equal(7, ready.Groups.Single().Counted);
        Assert.Equal("6 arrows shot beyond the setup's longest safe distance, 60 yd.", Assert.Single(ready.SetAside));
        Assert.Equal(30, ready.Scatter.Farthest.Yards, 1e-9);
    }

    [Fact]
    public void An_angle_that_grows_leaves_only_the_farthest_groups_and_says_so()
    {
        Session[] days = [Day("a", 1)];
        var ready = HitShots.Of([.. Shoot("a", 2, 20, 20, 0.5, 1), .. Shoot("a", 30, 50, 20, 2, 2)], days, Bow, true);
        Assert.True(ready.FarOnly);
        Assert.Contains("Only the farthest groups are used", Assert.Single(ready.Cautions), StringComparison.Ordinal);
        // Sigma of 2 mrad, not the pooled 1.46: the circle that holds half at 50 yd.
        Assert.Equal(0.5, HitProbability.OfCircle(ready.Scatter.At(50.0.Yards), 50.0.Yards * (2e-3 * 1.1774), 0.9).Probability.Value, 0.15);
    }

    [Fact]
    public void Missed_arrows_widen_the_scatter_and_unseen_ones_stop_the_answer()
    {
        Session[] days = [Day("a", 1)];
        Shot[] struck = [.. Shoot("a", 2, 50, 12, 3, 4), .. Shoot("a", 20, 40, 6, 3, 5)];
        Shot Lost(Miss way) => struck[0] with { Number = 40, Impact = null, Missed = way };
        double Chance(params Shot[] more) => HitProbability.OfCircle(HitShots.Of([.. struck, .. more], days, Bow, true).Scatter.At(50.0.Yards), 6.Inches, 0.9).Probability.Value;
        Assert.True(Chance(Lost(Miss.Low)) < Chance());
        Assert.Contains("cannot be left out of a hit probability", Assert.Throws<CannotTellException>(() => Chance(Lost(Miss.Unknown))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_left_is_said_with_the_reason() => Assert.Contains("beyond the setup's longest safe distance", Assert.Throws<CannotTellException>(() =>
        HitShots.Of(Shoot("a", 2, 70, 6, 1, 1), [Day("a", 1)], Bow, true)).Message, StringComparison.Ordinal);

    [Fact]
    public void Hits_are_counted_about_the_aim_and_a_miss_is_no_hit()
    {
        Shot at = Shoot("a", 1, 30, 1, 1, 1).Single();
        Shot[] shots = [at with { Impact = new(3.Inches, 4.Inches) }, at with { Impact = new(3.1.Inches, 4.Inches) }, at with { Impact = null, Missed = Miss.Low }];
        Assert.Equal((1, 3), HitShots.Count(shots, 5.0000001.Inches));
    }

    static Shot[] Pointed(string session, double yards, params string[] points) =>
        [.. Shoot(session, 1, yards, points.Length, 1, 7).Select((s, i) => s with { PointType = points[i] })];

    [Fact]
    public void Points_are_paired_by_distance_in_the_order_shot()
    {
        Shot[] shots = [.. Pointed("a", 30, "field", "broadhead", "Broadhead", "field", "blunt"), .. Pointed("a", 20, "field", "field")];
        var ready = PointPairs.Of(shots, "field", "broadhead", "");
        var pair = Assert.Single(ready.Pairs);
        Assert.Equal((2, 2), (pair.First.Counted, pair.Second.Counted));
        Assert.Equal([false, true, true, false], pair.Order);
        Assert.Equal(["1 arrow with neither field nor broadhead points.", "2 arrows at 20 yd: only one kind of point was shot there."], ready.SetAside);
        Assert.Contains("they were at 30 yd", Assert.Throws<ArgumentException>(() => ready.At(20.0.Yards)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Days_are_not_mixed_and_unknown_points_are_named()
    {
        Shot[] shots = [.. Pointed("a", 30, "field", "broadhead"), .. Pointed("b", 30, "field", "broadhead")];
        Assert.Contains("expected one of a, b", Assert.Throws<ArgumentException>(() => PointPairs.Of(shots, "field", "broadhead", "")).Message, StringComparison.Ordinal);
        Assert.Equal("b", PointPairs.Of(shots, "field", "broadhead", "b").Session);
        Assert.Contains("No arrow has point type \"blade\"; the column point_type holds \"field\", \"broadhead\"", Assert.Throws<ArgumentException>(() => PointPairs.Of(shots, "field", "blade", "a")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_invented_archer_shoots_the_same_arrows_for_the_same_seed_and_scatters_as_asked()
    {
        var arrows = new InventedArcher(3, 2.Inches, 1.Inches).Shoot(20_000);
        Assert.Equal(new InventedArcher(3, 2.Inches, 1.Inches).Shoot(3), arrows.Take(3));
        // Four standard errors of a standard deviation from 20000 arrows: 4 / √40000 = 2 %.
        Assert.Equal(2, Math.Sqrt(arrows.Average(a => a.Right.Inches * a.Right.Inches)), 0.04);
        Assert.Equal(1, Math.Sqrt(arrows.Average(a => a.Up.Inches * a.Up.Inches)), 0.02);
        Assert.Throws<ArgumentOutOfRangeException>(() => new InventedArcher(3, 0.Inches));
        Assert.Throws<ArgumentOutOfRangeException>(() => new InventedArcher(3, 1.Inches).Shoot(0));
    }

    [Fact]
    public void Wanted_lengths_speeds_and_shares_are_read_strictly()
    {
        Assert.Equal(Length.Zero, Wanted.LengthOrNone("none", "p"));
        Assert.Equal(1, Wanted.LengthOrNone("1 yd", "p").Yards, 1e-12);
        Assert.Equal(0.44704, Wanted.SpeedOrNone("1 mph", "p").MetersPerSecond, 1e-12);   // 1 mile = 1609.344 m, exact
        Assert.Equal(0, Wanted.SpeedOrNone("none", "p").MetersPerSecond);
        foreach (string wrong in (string[])["", "1", "-1 m/s", "1,5 m/s", "70 m/s", "1 knots", "NaN m/s"])
        {
            Assert.Contains("expected \"none\", or a positive number", Assert.Throws<ArgumentException>(() => Wanted.SpeedOrNone(wrong, "p")).Message, StringComparison.Ordinal);
        }

        Assert.Equal(0.8, Wanted.Share(0.8, "p"));
        Assert.Throws<ArgumentException>(() => Wanted.Share(double.NaN, "p"));
        Assert.Throws<ArgumentException>(() => Wanted.Share(80, "p"));
    }
}
