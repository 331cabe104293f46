namespace Ascham.Tests.SightsTests;

using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;
using Xunit;

public class TapeCheckTests
{
    static readonly SightModel Bow = SightModelTests.Sight(0.0015);
    static readonly double[] Yards = [20, 40, 60, 80, 100];
    static readonly Tape Printed = Bow.MakeTape(Enumerable.Range(2, 9).Select(i => (10 * i).Yards), new Mark(20.Yards, 12.Millimetres));

    [Fact]
    public void A_slide_is_given_back_to_the_micrometre()
    {
        var check = Run(Stations(Bow, 1.5, 0.05));
        Assert.Equal(TapeVerdict.Slid, check.Verdict);
        Assert.Equal(1.5, check.Slide.Value.Millimeters, 1e-3);
        Assert.Equal(0, check.Scale!.Value.Percent, 1e-2);
        Assert.Contains("move the marks by +1.50 mm", check.Reason, StringComparison.Ordinal);
    }

    [Fact] // relation: the right mark of a slid tape is the printed one plus the slide, and the arrow lands low where the pin should be lower
    public void Errors_are_said_three_ways_that_agree()
    {
        var check = Run(Stations(Bow, 1.5, 0.05));
        Assert.All(check.Marks, m =>
        {
            Assert.Equal(m.Printed.Millimeters + 1.5, m.Corrected.Value.Millimeters, 2e-3);
            double low = m.OnTarget.Value.Meters / m.Distance.Meters; // 1.5 mm at 0.8 m is 1.875 mrad; the steeper path at the far end takes up to 1 %
            Assert.Equal(-1.875e-3, low, 2e-5);
        });
        Assert.All(check.Marks.Skip(1), m =>
        {
            double travel = Bow.ScaleTravel(m.Distance) - Bow.ScaleTravel(m.Distance + m.InDistance!.Value);
            Assert.Equal(1.5e-3, travel, 3e-6);
        });
    }

    [Fact] // at 20 yd the scale travels 0.3 mm per yard and turns at 14 yd: a mark 1.5 mm off shoots to no distance at all
    public void A_mark_that_belongs_to_no_distance_says_so() => Assert.Null(Run(Stations(Bow, 1.5, 0.05)).Marks[0].InDistance);

    [Fact]
    public void A_tape_for_a_faster_arrow_is_called_scaled_by_what_the_speeds_say()
    {
        var check = Run(Stations(Bow.WithSpeed(84 / 1.03), 0, 0.05));
        Assert.Equal(TapeVerdict.Scaled, check.Verdict);
        Assert.InRange(check.Scale!.Value.Percent, 6.0, 7.5); // 1.03² − 1 = 6.1 % in drop, a little more where drag has worked
    }

    [Fact]
    public void One_wrong_mark_is_called_bent()
    {
        TapeStation[] stations = [.. Stations(Bow, 0, 0.05).Select(s => At(s, 60) ? s with { MeanUp = (-15).Centimetres } : s)];
        Assert.Equal(TapeVerdict.Bent, Run(stations).Verdict);
    }

    [Fact]
    public void Few_scattered_arrows_cannot_tell() => Assert.Equal(TapeVerdict.CannotTell, Run(Stations(Bow, 0.3, 2.0)).Verdict);

    [Fact]
    public void A_long_tape_shot_close_only_is_not_called_sound_but_sound_so_far()
    {
        var check = Run([.. Stations(Bow, 0, 1.0).Where(s => s.Distance.Yards < 61)]);
        Assert.Equal(TapeVerdict.CannotTell, check.Verdict);
        Assert.InRange(check.SoundTo!.Value.Yards, 40, 90);
        Assert.Contains("beyond, these shots cannot tell", check.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_distances_cannot_tell_but_still_give_their_figures()
    {
        var check = Run([.. Stations(Bow, 1.5, 0.05).Where(s => At(s, 20) || At(s, 80))]);
        Assert.Equal(TapeVerdict.CannotTell, check.Verdict);
        Assert.Equal(1.5, check.Slide.Value.Millimeters, 1e-3);
        Assert.Null(check.Bend);
        Assert.Contains("shoot a third", check.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_outside_the_distances_shot_are_flagged()
    {
        var check = Run([.. Stations(Bow, 0, 0.05).Where(s => !At(s, 100))]);
        Assert.Equal([90.0, 100.0], check.Marks.Where(m => m.Extrapolated).Select(m => Math.Round(m.Distance.Yards, 6)));
    }

    [Fact] // relation: the twin in other units, through another direction and ratio of the scale, is out by as much on the target
    public void Direction_and_ratio_of_the_scale_change_no_error_on_the_target()
    {
        var geared = Bow with { Geometry = Bow.Geometry with { TapePerPinTravel = 2.5, Increases = ScaleDirection.Up } };
        var tape = geared.MakeTape(Printed.Marks.Select(m => m.Distance), new Mark(20.Yards, 80.Millimetres));
        var stations = Stations(Bow, 1.5, 0.4);
        TapeStation[] twin = [.. stations.Select(s => s with { Setting = tape.PositionAt(s.Distance), SettingSd = s.SettingSd * 2.5 })];

        var one = Run(stations);
        var other = TapeCheck.Run(tape, twin, geared, 6.Inches, 0.9);

        Assert.Equal(one.Verdict, other.Verdict);
        Assert.Equal(-2.5 * one.Slide.Value.Millimeters, other.Slide.Value.Millimeters, 1e-6);
        Assert.Equal(one.Scale!.Value.Percent, other.Scale!.Value.Percent, 1e-6);
        Assert.Equal(-2.5 * one.ScaleAtLongest!.High.Millimeters, other.ScaleAtLongest!.Low.Millimeters, 1e-6);
        Assert.Contains("towards larger numbers, the pin lower", one.Reason, StringComparison.Ordinal);
        Assert.Contains("towards smaller numbers, the pin lower", other.Reason, StringComparison.Ordinal);
        Assert.All(one.Marks.Zip(other.Marks), p => Assert.Equal(p.First.OnTarget.Low.Meters, p.Second.OnTarget.Low.Meters, 1e-9));
    }

    [Fact] // relation: the bow's speed hardly matters to what the shots say of the tape
    public void A_wrong_speed_in_the_setup_changes_the_slide_by_less_than_a_part_in_a_thousand()
    {
        var stations = Stations(Bow, 1.5, 0.4);
        double right = Run(stations).Slide.Value.Millimeters, wrong = TapeCheck.Run(Printed, stations, Bow.WithSpeed(80), 6.Inches, 0.9).Slide.Value.Millimeters;
        Assert.Equal(right, wrong, 1e-3 * right);
    }

    [Fact]
    public void One_distance_tells_the_slide_there_and_nothing_else()
    {
        var check = Run([Stations(Bow, 1.5, 0.05)[1]]);
        Assert.Equal(TapeVerdict.CannotTell, check.Verdict);
        Assert.Equal(1.5, check.Slide.Value.Millimeters, 1e-3);
        Assert.Null(check.Scale);
        Assert.Equal([40.0], check.Marks.Select(m => Math.Round(m.Distance.Yards, 6)));
        Assert.Contains("One distance cannot tell a slide from a scale", check.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void No_station_is_refused() => Assert.Throws<ArgumentException>(() => Run([]));

    [Fact] // relation: a slide alone is known better than a slide beside a scale, and all marks move by it alike
    public void A_slid_tape_is_moved_by_the_slide_alone()
    {
        var check = Run(Stations(Bow, 1.5, 0.4));
        Assert.Equal(TapeVerdict.Slid, check.Verdict);
        Assert.True(check.SlideAlone.StandardError < check.Slide.StandardError);
        Assert.All(check.Marks, m => Assert.Equal(check.SlideAlone.Low.Meters, m.OnTape.Low.Meters, 1e-12));
    }

    [Fact]
    public void A_bend_too_small_to_matter_agrees_and_is_told()
    {
        TapeStation[] stations = [.. Stations(Bow, 0, 0.02).Select(s => At(s, 60) ? s with { MeanUp = (-1.5).Centimetres, DistanceSd = Length.Zero } : s with { DistanceSd = Length.Zero })];
        var check = Run(stations);
        Assert.Equal(TapeVerdict.Agrees, check.Verdict);
        Assert.StartsWith("The errors bend by", check.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_off_the_tape_is_refused() =>
        Assert.Contains("the tape runs from 20 yd to 100 yd", Assert.Throws<ArgumentException>(() => Run([.. Stations(Bow, 0, 0.4), Stations(Bow, 0, 0.4)[0] with { Distance = 15.Yards }])).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(90.0)]
    public void A_level_that_is_no_probability_is_refused(double level) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TapeCheck.Run(Printed, Stations(Bow, 0, 0.4), Bow, 6.Inches, level));

    static bool At(TapeStation station, double yards) => Math.Abs(station.Distance.Yards - yards) < 1e-9;

    static TapeCheck Run(IReadOnlyList<TapeStation> stations) => TapeCheck.Run(Printed, stations, Bow, 6.Inches, 0.9);

    // Stations whose centres lie exactly where this bow puts them when the pin stands slideMm too high.
    static TapeStation[] Stations(SightModel shooting, double slideMm, double sigmaMrad) =>
    [
        .. Yards.Select(y => new TapeStation
        {
            Distance = y.Yards,
            Setting = Printed.PositionAt(y.Yards),
            MeanUp = shooting.HeightWithPinAt(Bow.PinBelowPeep(y.Yards) - slideMm.Millimetres, y.Yards) - Zeroing(shooting, y),
            MeanUpSd = (sigmaMrad * 1e-3 * y * 0.9144 / Math.Sqrt(6)).Metres,
            ScatterFreedom = 25,
            DistanceSd = 0.1.Yards,
            SettingSd = 0.05.Millimetres,
            SettingKey = $"{y}",
            Arrows = 6,
        }),
    ];

    // A slower bow is sighted in at 20 yd: the whole scale has been slid so that its shortest mark is right.
    static Length Zeroing(SightModel shooting, double yards) =>
        (shooting.HeightWithPinAt(Bow.PinBelowPeep(20.Yards), 20.Yards) / 20.Yards) * yards.Yards;
}
