namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;
using Xunit;

public class StationCentresTests
{
    static readonly StationOptions Butt = new() { ButtBelow = Length.FromMeters(0.4), ButtAbove = Length.FromMeters(0.4), ButtLeft = Length.FromMeters(0.4), ButtRight = Length.FromMeters(0.4) };

    // Two stations, nothing missed. Near: up 0, 2, 4 cm at 20 m, SS 8 cm² = 2 mrad². Far: up 5, 11 cm at 60 m, SS 18 cm² = 0.5 mrad².
    static readonly Shot[] Plain =
    [
        Simulated.Shot(1, 0.00, 0.00), Simulated.Shot(2, 0.01, 0.02), Simulated.Shot(3, -0.01, 0.04),
        Simulated.Shot(4, 0.02, 0.05, 60), Simulated.Shot(5, -0.02, 0.11, 60),
    ];

    [Fact] // by hand
    public void Without_missed_arrows_it_is_the_plain_pooled_answer()
    {
        StationCentres fit = Fit(Plain);

        Assert.Equal(Math.Sqrt(2.5 / 3), fit.Vertical.Sample.Milliradians, 1e-12);
        Assert.Equal(3, fit.Vertical.DegreesOfFreedom);
        Assert.Equal((0.02, 0.08), (Math.Round(fit.Stations[0].MeanUp.Meters, 14), Math.Round(fit.Stations[1].MeanUp.Meters, 14)));
        Assert.Equal(Math.Sqrt(2.5 / 3) * 20e-3 / Math.Sqrt(3), fit.Stations[0].MeanUpStandardError.Meters, 1e-14);
        Assert.Equal(Math.Sqrt(2.5 / 3) * 60e-3 / Math.Sqrt(2), fit.Stations[1].MeanUpStandardError.Meters, 1e-14);
        Assert.Equal((5, 0, 3, 2), (fit.Count, fit.CalledSetAside, fit.Stations[0].Count, fit.Stations[1].Count));
        Assert.Empty(fit.SetAside);
    }

    [Fact] // a second route
    public void Without_missed_arrows_sigma_is_that_of_pooled_groups()
    {
        StationCentres fit = Fit(Plain);
        Dispersion<Angle> pooled = Dispersion.PooledAngle(StationGroup.From(Plain).Select(s => Group.Of(s.Shots)), 0.90);

        Assert.Equal(pooled.Vertical.Estimate.Value.Milliradians, fit.Vertical.Estimate.Value.Milliradians, 1e-12);
        Assert.Equal(pooled.Horizontal.Estimate.High.Milliradians, fit.Horizontal.Estimate.High.Milliradians, 1e-12);
        Assert.Equal(pooled.Horizontal.DegreesOfFreedom, fit.Horizontal.DegreesOfFreedom);
    }

    [Fact]
    public void A_low_miss_lowers_the_mean_and_leaves_the_horizontal_alone()
    {
        StationCentres without = Fit(Plain, Butt), with = Fit([.. Plain, Simulated.Lost(6, Miss.Low, 60)], Butt);

        Assert.True(with.Stations[1].MeanUp < without.Stations[1].MeanUp);
        Assert.True(with.Stations[1].MeanUpStandardError > without.Stations[1].MeanUpStandardError);
        Assert.Equal(without.Stations[1].MeanRight, with.Stations[1].MeanRight);
        Assert.Equal(without.Horizontal.Sample, with.Horizontal.Sample);
        Assert.Equal((6, 3), (with.Count, with.Stations[1].Count));
        Assert.False(with.Stations[1].EdgeAssumed);
    }

    [Theory]
    [InlineData(Miss.Left, -1)]
    [InlineData(Miss.Right, +1)]
    public void A_miss_to_the_side_moves_the_horizontal_mean_only(Miss miss, int direction)
    {
        StationCentres without = Fit(Plain, Butt), with = Fit([.. Plain, Simulated.Lost(6, miss, 60)], Butt);

        Assert.Equal(direction, Math.Sign((with.Stations[1].MeanRight - without.Stations[1].MeanRight).Meters));
        Assert.Equal(without.Stations[1].MeanUp, with.Stations[1].MeanUp);
        Assert.Equal(6, with.Count);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_high_miss_is_a_low_miss_in_a_mirror(bool edgesKnown)
    {
        StationOptions? options = edgesKnown ? Butt : null;
        Shot[] mirrored = [.. Plain.Select(s => s with { Impact = Simulated.At(s.Impact!.Value.Right.Meters, -s.Impact.Value.Up.Meters) })];
        StationCentres low = Fit([.. Plain, Simulated.Lost(6, Miss.Low, 60)], options), high = Fit([.. mirrored, Simulated.Lost(6, Miss.High, 60)], options);

        Assert.Equal(low.Stations[1].MeanUp.Meters, -high.Stations[1].MeanUp.Meters, 1e-12);
        Assert.Equal(low.Vertical.Sample.Milliradians, high.Vertical.Sample.Milliradians, 1e-9);
    }

    [Fact]
    public void An_edge_not_given_is_taken_at_the_lowest_recorded_impact_and_said_so()
    {
        Shot[] shots = [Simulated.Shot(1, 0, 0.1), Simulated.Shot(2, 0.1, 0.12), Simulated.Shot(3, 0.1, -0.05, 60), Simulated.Shot(4, 0, 0.11, 60), Simulated.Lost(5, Miss.Low, 60)];
        StationCentres assumed = Fit(shots), given = Fit(shots, new() { ButtBelow = Length.FromMeters(0.05) });

        Assert.Equal([false, true], assumed.Stations.Select(s => s.EdgeAssumed));
        Assert.All(given.Stations, s => Assert.False(s.EdgeAssumed));
        Assert.Equal(given.Stations[1].Up, assumed.Stations[1].Up);
    }

    [Fact]
    public void A_called_flyer_marks_the_butt_but_not_the_mean()
    {
        Shot[] flyer = [.. Plain, Simulated.Lost(6, Miss.Low, 60), Simulated.Shot(7, 0, -0.3, 60, called: true)];
        StationCentres fit = Fit(flyer), edge = Fit([.. Plain, Simulated.Lost(6, Miss.Low, 60)], new() { ButtBelow = Length.FromMeters(0.3) });

        Assert.Equal(edge.Stations[1].MeanUp.Meters, fit.Stations[1].MeanUp.Meters, 1e-12);
        Assert.Equal((6, 1), (fit.Count, fit.CalledSetAside));
    }

    [Fact]
    public void A_miss_nobody_saw_sets_its_station_aside_with_the_reason()
    {
        StationCentres fit = Fit([.. Plain, Simulated.Lost(6, Miss.Unknown, 60)], Butt);

        Assert.Equal(20, Assert.Single(fit.Stations).Station.Distance.Meters);
        StationSetAside aside = Assert.Single(fit.SetAside);
        Assert.Equal(60, aside.Station.Distance.Meters);
        Assert.Equal("an arrow missed and nobody saw where; a mean of the others would ignore it.", aside.Reason);
        Assert.Equal(3, fit.Count);
    }

    [Fact]
    public void A_called_miss_nobody_saw_does_no_harm() =>
        Assert.Empty(Fit([.. Plain, Simulated.Lost(6, Miss.Unknown, 60, called: true)]).SetAside);

    [Fact]
    public void Stations_without_an_impact_are_set_aside()
    {
        StationCentres fit = Fit([.. Plain, Simulated.Lost(6, Miss.Low, 80), Simulated.Shot(7, 0, 0, 90, called: true)]);

        Assert.Equal(
            ["all 1 counted arrows missed; the centre has a bound but no estimate.", "all its arrows were called flyers; none counts."], fit.SetAside.Select(s => s.Reason));
    }

    [Fact]
    public void A_station_of_one_arrow_borrows_sigma_from_the_others()
    {
        StationCentres fit = Fit([.. Plain, Simulated.Shot(6, 0.01, -0.05, 80)]);

        Assert.Equal(-0.05, fit.Stations[2].MeanUp.Meters, 1e-15);
        Assert.Equal(fit.Vertical.Sample.Radians * 80, fit.Stations[2].MeanUpStandardError.Meters, 1e-12);
    }

    [Fact]
    public void Covariance_is_diagonal_until_arrows_miss_at_two_stations()
    {
        double[,] plain = Fit(Plain).Covariance(Axis.Vertical);
        StationCentres fit = Fit([.. Plain, Simulated.Lost(6, Miss.Low, 20), Simulated.Lost(7, Miss.Low, 60)], Butt);
        double[,] shared = fit.Covariance(Axis.Vertical);

        Assert.Equal(0, plain[0, 1]);
        Assert.True(shared[0, 1] > 0); // a larger sigma lets both centres lie lower
        Assert.Equal(shared[0, 1], shared[1, 0], 1e-15);
        Assert.Equal(fit.Stations[1].MeanUpStandardError.Meters, Math.Sqrt(shared[1, 1]), 1e-12);
    }

    [Fact]
    public void An_impact_beyond_a_given_edge_is_refused()
    {
        var refused = Assert.Throws<ArgumentException>(() => Fit(Plain, new() { ButtAbove = Length.FromMeters(0.1) }));
        Assert.Contains("Shot 5 of spring at 60 m struck beyond a given edge of the butt (right -0.02 m, up 0.11 m)", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_edge_must_not_be_negative()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Fit(Plain, new() { ButtBelow = Length.FromMeters(-0.4) }));
        Assert.Contains("ButtBelow must be zero or more, and finite m; it was -0.4 m.", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_must_lie_between_zero_and_one() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Fit(Plain, new() { Level = 1 }));

    [Fact]
    public void No_stations_are_refused() =>
        Assert.Contains("at least one station", Assert.Throws<ArgumentException>(() => StationCentres.Fit([])).Message, StringComparison.Ordinal);

    [Fact]
    public void One_arrow_at_every_station_cannot_tell()
    {
        Shot[] ones = [Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0, 0, 40)];
        Assert.Contains("no station has two counted impacts that differ", Assert.Throws<CannotTellException>(() => Fit(ones)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_but_misses_cannot_tell_and_says_why()
    {
        var why = Assert.Throws<CannotTellException>(() => Fit([Simulated.Lost(1, Miss.Low), Simulated.Lost(2, Miss.Low)]));
        Assert.Equal("No station can be estimated. spring at 20 m: all 2 counted arrows missed; the centre has a bound but no estimate.", why.Message);
    }

    static StationCentres Fit(Shot[] shots, StationOptions? options = null) => StationCentres.Fit(StationGroup.From(shots), options);
}
