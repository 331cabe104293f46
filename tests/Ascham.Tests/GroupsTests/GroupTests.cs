namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;
using Xunit;

public class GroupTests
{
    static readonly Shot[] WithFlyer =
    [
        Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0.1, 0.2), Simulated.Shot(3, 1, -2, called: true), Simulated.Shot(4, -0.1, 0.1),
    ];

    [Fact]
    public void A_called_flyer_is_set_aside_counted_and_kept()
    {
        Group group = Group.Of(WithFlyer);

        Assert.Equal((3, 1, 0), (group.Counted, group.CalledSetAside, group.Missed));
        Assert.Equal(Simulated.At(1, -2), Assert.Single(group.CalledImpacts));
        Assert.Equal(4, group.Shots.Count);
        Assert.Equal(0.1, group.Centre(0.9).Up.Value.Meters, 1e-12);
    }

    [Fact]
    public void With_called_gives_the_other_view()
    {
        Group all = Group.Of(WithFlyer).WithCalled();

        Assert.Equal((4, 0), (all.Counted, all.CalledSetAside));
        Assert.Equal(-1.7 / 4, all.Centre(0.9).Up.Value.Meters, 1e-12);
        Assert.Equal([0, 0.2, -2, 0.1], all.Impacts.Select(i => i.Up.Meters));
    }

    [Fact]
    public void A_called_miss_is_set_aside_and_comes_back_as_a_miss()
    {
        Group group = Group.Of([.. WithFlyer, Simulated.Lost(5, Miss.Low, called: true)]);

        Assert.Equal((0, 2), (group.Missed, group.CalledSetAside));
        Assert.Equal((1, 5), (group.WithCalled().Missed, group.WithCalled().Counted));
    }

    [Fact]
    public void A_plain_mean_is_refused_when_an_arrow_missed()
    {
        Group group = Group.Of([.. WithFlyer, Simulated.Lost(5, Miss.Low)]);

        var refused = Assert.Throws<MissedArrowsException>(() => group.Centre(0.9));
        Assert.Equal((1, 3), (refused.Missed, refused.Struck));
        Assert.Equal("1 of 4 counted arrows missed the butt, so a plain mean or spread of the 3 that struck would be biased. "
            + "StationCentres.Fit uses missed arrows as what they are: impacts known to lie beyond an edge.", refused.Message);
        Assert.Throws<MissedArrowsException>(() => group.Centre(Axis.Vertical, 0.9));
        Assert.Throws<MissedArrowsException>(() => group.Dispersion(0.9));
        Assert.Throws<MissedArrowsException>(() => group.Dispersion(Axis.Horizontal, 0.9));
        Assert.Throws<MissedArrowsException>(() => Dispersion.Pooled([Group.Of(WithFlyer), group], 0.9));
    }

    [Fact]
    public void One_shot_cannot_tell()
    {
        Group one = Group.Of(Simulated.Of((0, 0)));

        Assert.Contains("from 1 counted impact: no group has two", Assert.Throws<CannotTellException>(() => one.Dispersion(0.9)).Message, StringComparison.Ordinal);
        Assert.Throws<CannotTellException>(() => one.Centre(0.9));
        Assert.False(one.TryDispersion(0.9, out var dispersion, out string? whyNot));
        Assert.Null(dispersion);
        Assert.Contains("Shoot at least two", whyNot, StringComparison.Ordinal);
        Assert.False(one.TryCentre(0.9, out _, out _));
    }

    [Fact]
    public void Only_called_flyers_cannot_tell() =>
        Assert.Throws<CannotTellException>(() => Group.Of([Simulated.Shot(1, 0, 0, called: true), Simulated.Shot(2, 1, 1, called: true)]).Centre(0.9));

    [Fact]
    public void Try_gives_what_the_throwing_form_gives()
    {
        Group group = Group.Of(WithFlyer);
        Assert.True(group.TryDispersion(0.9, out var dispersion, out _));
        Assert.Equal(group.Dispersion(0.9), dispersion);
        Assert.True(group.TryCentre(0.9, out var centre, out _));
        Assert.Equal(group.Centre(0.9), centre);
    }

    [Fact]
    public void Impacts_at_one_height_cannot_tell_the_vertical_but_can_the_horizontal()
    {
        Group flat = Group.Of(Simulated.Of((0.1, 0.1), (0.2, 0.1), (0.4, 0.1)));

        Assert.Contains("same height", Assert.Throws<CannotTellException>(() => flat.Dispersion(0.9)).Message, StringComparison.Ordinal);
        Assert.Throws<CannotTellException>(() => flat.Centre(Axis.Vertical, 0.9));
        Assert.True(flat.Dispersion(Axis.Horizontal, 0.9).Sample.Meters > 0);
        Assert.Contains("same place across", Assert.Throws<CannotTellException>(() => Group.Of(Simulated.Of((0.1, 0), (0.1, 1))).Centre(0.9)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Empty_lists_are_refused()
    {
        Assert.Contains("at least one impact", Assert.Throws<ArgumentException>(() => Group.Of(Array.Empty<Impact>())).Message, StringComparison.Ordinal);
        Assert.Contains("at least one shot", Assert.Throws<ArgumentException>(() => Group.Of(Array.Empty<Shot>())).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Shots_of_two_distances_are_refused()
    {
        var mixed = Assert.Throws<ArgumentException>(() => Group.Of([Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0, 1, distance: 30)]));
        Assert.Contains("shot 1 was from 20 m, shot 2 from 30 m", mixed.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Shots_of_two_settings_are_refused()
    {
        var mixed = Assert.Throws<ArgumentException>(() => Group.Of([Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0, 1) with { Setting = Length.FromMillimeters(12) }]));
        Assert.Contains("the sight moved between shots 1 and 2", mixed.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_distance_in_two_units_is_one_distance() =>
        Assert.Equal(2, Group.Of([Simulated.Shot(1, 0, 0, 18.288), Simulated.Shot(2, 0, 1) with { Distance = Length.FromYards(20) }]).Counted);

    [Fact]
    public void A_shot_needs_an_impact_or_a_miss_and_not_both()
    {
        Assert.Contains("Shot 1 of session spring must have either an impact or a miss; it had neither.",
            Assert.Throws<ArgumentException>(() => Group.Of([Simulated.Shot(1, 0, 0) with { Impact = null }])).Message, StringComparison.Ordinal);
        Assert.Contains("it had both", Assert.Throws<ArgumentException>(() => Group.Of([Simulated.Shot(1, 0, 0) with { Missed = Miss.Low }])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_distance_must_be_positive()
    {
        Assert.Contains("distance of shot 1 must be positive and finite m; it was 0 m.",
            Assert.Throws<ArgumentOutOfRangeException>(() => Group.Of([Simulated.Shot(1, 0, 0, distance: 0)])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Group.Of(Simulated.Of((0, 0)), Length.FromMeters(-1)));
    }

    [Fact] // the unit library refuses it before any of our code runs
    public void A_length_that_is_not_a_number_never_gets_in() =>
        Assert.Throws<ArgumentException>(() => Simulated.At(double.NaN, 0));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(90)]
    [InlineData(double.NaN)]
    public void A_level_must_lie_between_zero_and_one(double level)
    {
        Group group = Group.Of(WithFlyer);
        Assert.Contains("level must be between 0 and 1", Assert.Throws<ArgumentOutOfRangeException>(() => group.Centre(level)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => group.Dispersion(level));
        Assert.Throws<ArgumentOutOfRangeException>(() => group.TryDispersion(level, out _, out _));
    }
}
