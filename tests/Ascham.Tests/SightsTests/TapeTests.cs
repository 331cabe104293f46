namespace Ascham.Tests.SightsTests;

using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;
using Xunit;

public class TapeTests
{
    static readonly Length[] TenYardMarks = [.. Enumerable.Range(2, 9).Select(i => (10 * i).Yards)];

    [Fact]
    public void Between_ten_yard_marks_the_scale_is_within_a_fortieth_of_a_millimetre()
    {
        var sight = SightModelTests.Sight(0.0015);
        var tape = sight.MakeTape(TenYardMarks, new Mark(20.Yards, 10.Millimetres));
        for (double yards = 20; yards <= 100; yards += 0.5)
        {
            double exact = sight.PinBelowPeep(yards.Yards).Millimeters - sight.PinBelowPeep(20.Yards).Millimeters + 10;
            Assert.Equal(exact, tape.PositionAt(yards.Yards).Millimeters, 0.025);
        }
    }

    [Fact]
    public void The_anchor_fixes_where_the_scale_begins() =>
        Assert.Equal(10, SightModelTests.Sight(0.0015).MakeTape(TenYardMarks, new Mark(20.Yards, 10.Millimetres)).Shortest.Position.Millimeters, 1e-9);

    [Fact]
    public void A_distance_off_the_tape_is_refused_with_the_ends_of_the_tape()
    {
        var tape = SightModelTests.Sight(0.0015).MakeTape(TenYardMarks, new Mark(20.Yards, 10.Millimetres));
        var exception = Assert.Throws<ArgumentOutOfRangeException>(() => tape.PositionAt(110.Yards));
        Assert.Contains("The tape runs from 20 yd to 100 yd", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_marks_for_one_distance_are_refused() =>
        Assert.Contains("two marks for 20 yd", Assert.Throws<ArgumentException>(() => Tape.Of([new(20.Yards, 1.Millimetres), new(20.Yards, 2.Millimetres)])).Message, StringComparison.Ordinal);

    [Fact]
    public void One_mark_is_no_tape() => Assert.Throws<ArgumentException>(() => Tape.Of([new(20.Yards, 1.Millimetres)]));
}
