namespace Ascham.Tests.RecordsTests;

using System.Globalization;
using Ascham.Groups;
using Ascham.Records;
using CsCheck;
using UnitsNet;
using Xunit;

public class RoundTripTests
{
    // UnitsNet's quantities are equal when value and unit are, so equality here is to the last bit and in the unit entered.
    [Fact]
    public void A_setup_reads_back_as_it_was_written() => RecordGen.Setups.Sample(ReadsBack);

    [Fact]
    public void Sessions_read_back_as_they_were_written() => RecordGen.Sessions.Sample(ReadsBack);

    [Fact]
    public void Shots_read_back_as_they_were_written() => RecordGen.Shots.Sample(ReadsBack);

    [Fact]
    public void Marks_read_back_as_they_were_written() => RecordGen.Marks.Sample(ReadsBack);

    [Fact]
    public void Scale_numbers_come_back_to_the_last_bit() =>
        Gen.Select(RecordGen.Sights.Where(s => s.ScaleUnit is not null), Gen.Double[-40, 40]).Sample((sight, number) =>
        {
            var unit = PositionUnit.Scale(sight);
            var position = unit.Position(number);
            Assert.Equal(position, unit.Position(unit.Number(position)));
        }, iter: 10_000);

    [Fact]
    public void A_tape_in_scale_numbers_is_written_in_the_numbers_that_were_read()
    {
        using var folder = new ScratchFolder();
        const string text = "distance_yd,position_scale\n20,31.7\n30,36.1\n40,43.3\n";
        var sight = Example.Sight with { ScaleUnit = Length.FromMillimeters(0.7) };
        MarksFile.Write(folder.Path("out.csv"), MarksFile.Read(folder.Put("marks.csv", text), sight));
        Assert.Equal(text, File.ReadAllText(folder.Path("out.csv")));
    }

    [Fact]
    public void Shots_set_in_scale_numbers_are_written_in_them_when_asked()
    {
        using var folder = new ScratchFolder();
        const string text = "session,distance_yd,shot,right_in,up_in,setting_scale\na,20,1,0,0.5,31.7\n";
        var shots = ShotsFile.Read(folder.Put("shots.csv", text), Example.Sight);
        ShotsFile.Write(folder.Path("scale.csv"), shots, PositionUnit.Scale(Example.Sight));
        ShotsFile.Write(folder.Path("length.csv"), shots);
        Assert.Equal(text, File.ReadAllText(folder.Path("scale.csv")));
        Assert.Equal("session,distance_yd,shot,right_in,up_in,setting_mm\na,20,1,0,0.5,15.85\n", File.ReadAllText(folder.Path("length.csv")));
    }

    [Fact]
    public void A_list_of_mixed_units_is_written_in_the_unit_of_its_first()
    {
        using var folder = new ScratchFolder();
        var shots = ShotsFile.Read(folder.Put("shots.csv", Example.Shots));
        var mixed = shots.Append(shots[0] with { Number = 99, Distance = Length.FromMeters(0.9144) });
        ShotsFile.Write(folder.Path("out.csv"), mixed);
        Assert.Equal(1, ShotsFile.Read(folder.Path("out.csv"))[^1].Distance.Yards, 1e-14);
    }

    [Fact]
    public void A_culture_with_decimal_commas_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            RecordGen.Setups.Sample(ReadsBack, iter: 10, threads: 1);
            RecordGen.Sessions.Sample(ReadsBack, iter: 10, threads: 1);
            RecordGen.Shots.Sample(ReadsBack, iter: 10, threads: 1);
            RecordGen.Marks.Sample(ReadsBack, iter: 10, threads: 1);
            A_tape_in_scale_numbers_is_written_in_the_numbers_that_were_read();
            Assert.Equal("shots.csv, line 3, column up_in: \"low\" is not a number; expected inches from -394 to 394.", Example.ErrorOf("shots.csv", Example.Shots.Replace("0.25", "low", StringComparison.Ordinal)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_text_that_looks_like_mark_up_is_kept_as_it_is()
    {
        using var folder = new ScratchFolder();
        string path = folder.Path("setup.json");
        SetupFile.Write(path, Example.Setup with { Note = "<script>alert('x')</script>" });
        Assert.Equal("<script>alert('x')</script>", SetupFile.Read(path).Note);
        Assert.Contains("<script>alert('x')</script>", File.ReadAllText(path), StringComparison.Ordinal);
    }

    static void ReadsBack(Setup setup)
    {
        using var folder = new ScratchFolder();
        SetupFile.Write(folder.Path("setup.json"), setup);
        Assert.Equal(setup, SetupFile.Read(folder.Path("setup.json")));
    }

    static void ReadsBack(Session[] sessions)
    {
        using var folder = new ScratchFolder();
        SessionsFile.Write(folder.Path("sessions.csv"), sessions);
        Assert.Equal(sessions, SessionsFile.Read(folder.Path("sessions.csv")));
    }

    static void ReadsBack(Shot[] shots)
    {
        using var folder = new ScratchFolder();
        ShotsFile.Write(folder.Path("shots.csv"), shots);
        Assert.Equal(shots, ShotsFile.Read(folder.Path("shots.csv")));
    }

    static void ReadsBack(Marks marks)
    {
        using var folder = new ScratchFolder();
        MarksFile.Write(folder.Path("marks.csv"), marks);
        var read = MarksFile.Read(folder.Path("marks.csv"));
        Assert.Equal(marks.ToArray(), read.ToArray());
        Assert.Equal((marks.DistanceUnit, marks.PositionUnit), (read.DistanceUnit, read.PositionUnit));
    }
}
