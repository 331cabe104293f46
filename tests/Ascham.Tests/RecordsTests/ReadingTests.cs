namespace Ascham.Tests.RecordsTests;

using System.Text;
using Ascham.Groups;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public sealed class ReadingTests : IDisposable
{
    readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_setup_is_read_key_by_key_in_the_units_of_the_file() =>
        Assert.Equal(Example.Setup, SetupFile.Read(folder.Put("setup.json", Example.SetupText)));

    [Fact]
    public void A_setup_needs_no_archer_no_air_and_no_note()
    {
        var bare = Example.Setup with { Archer = null, Air = null, Note = null };
        string text = string.Join('\n', Example.SetupText.Split('\n').Where(l => !l.Contains("\"archer\"", StringComparison.Ordinal) && !l.Contains("\"air\"", StringComparison.Ordinal) && !l.Contains("\"note\"", StringComparison.Ordinal)));
        Assert.Equal(bare, SetupFile.Read(folder.Put("setup.json", text)));
    }

    [Fact]
    public void Sessions_are_read_with_all_their_columns()
    {
        var sessions = SessionsFile.Read(folder.Put("sessions.csv", Example.Sessions));
        Session[] expected =
        [
            new()
            {
                Name = "evening", Date = new(2026, 9, 12), Setup = "field bow", DistanceSource = DistanceSource.Ranged, DistanceSd = Length.FromYards(0.5),
                SettingSd = Length.FromMillimeters(0.2), Temperature = Temperature.FromDegreesFahrenheit(68), Pressure = Pressure.FromInchesOfMercury(29.8),
                Wind = "light, from the left",
            },
            new() { Name = "morning", Date = new(2026, 9, 13), Setup = "field bow", DistanceSource = DistanceSource.Judged, Note = "said \"calm\"" },
        ];
        Assert.Equal(expected, sessions);
    }

    [Fact]
    public void Shots_are_read_with_all_their_columns()
    {
        var shots = ShotsFile.Read(folder.Put("shots.csv", Example.Shots));
        Shot[] expected =
        [
            new()
            {
                Session = "evening", Distance = Length.FromYards(40), Number = 1, Impact = new(Length.FromInches(-1.5), Length.FromInches(0.25)), Arrow = "3",
                PointType = "field", Fletched = true, Hold = Duration.FromSeconds(5.5), Setting = Length.FromMillimeters(31.5), Slope = Angle.FromDegrees(-4), Group = "first",
            },
            new()
            {
                Session = "evening", Distance = Length.FromYards(40), Number = 2, Missed = Miss.Low, Called = true, Arrow = "4", PointType = "field",
                Fletched = false, Group = "first", Note = "into the bank",
            },
        ];
        Assert.Equal(expected, shots);
    }

    [Fact]
    public void Marks_are_read_with_the_units_of_their_file()
    {
        var marks = MarksFile.Read(folder.Put("marks.csv", Example.Marks), Example.Sight);
        Mark[] expected =
        [
            new(Length.FromYards(20), Length.FromMillimeters(10), Length.FromMillimeters(0.1)),
            new(Length.FromYards(30), Length.FromMillimeters(14.5), Length.FromMillimeters(0.1)),
            new(Length.FromYards(40), Length.FromMillimeters(20.25)) { Compensated = true },
        ];
        Assert.Equal(expected, marks);
        Assert.Equal((LengthUnit.Yard, "mm"), (marks.DistanceUnit, marks.PositionUnit.Name));
    }

    [Fact]
    public void Scale_numbers_become_travel_of_the_scale()
    {
        var marks = MarksFile.Read(folder.Put("marks.csv", "distance_m,position_scale,sd_scale\n20,10,0.5\n"), Example.Sight);
        Assert.Equal(new Mark(Length.FromMeters(20), Length.FromMillimeters(5), Length.FromMillimeters(0.25)), Assert.Single(marks));
        Assert.True(marks.PositionUnit.IsScale);
        Assert.Equal(10, marks.PositionUnit.Number(marks[0].Position));
    }

    [Fact] // independent: the inch is 25.4 mm and the yard 914.4 mm, International Yard and Pound Agreement, 1959
    public void Either_unit_system_says_the_same()
    {
        var imperial = ShotsFile.Read(folder.Put("shots.csv", "session,distance_yd,shot,right_in,up_in,setting_in\na,50,1,-2,3,1.25\n"))[0];
        var metric = ShotsFile.Read(folder.Put("shots.csv", "session,distance_m,shot,right_mm,up_cm,setting_mm\na,45.72,1,-50.8,7.62,31.75\n"))[0];
        Assert.Equal(metric.Distance.Meters, imperial.Distance.Meters, 1e-12);
        Assert.Equal(metric.Impact!.Value.Right.Meters, imperial.Impact!.Value.Right.Meters, 1e-15);
        Assert.Equal(metric.Impact!.Value.Up.Meters, imperial.Impact!.Value.Up.Meters, 1e-15);
        Assert.Equal(metric.Setting!.Value.Meters, imperial.Setting!.Value.Meters, 1e-15);
    }

    [Theory]
    [InlineData(Example.Sessions, "sessions.csv")]
    [InlineData(Example.Shots, "shots.csv")]
    [InlineData(Example.Marks, "marks.csv")]
    public void A_twin_with_semicolons_CRLF_and_byte_order_mark_reads_the_same(string text, string name)
    {
        string twin = text.Replace("light, from", "light~ from", StringComparison.Ordinal).Replace(',', ';').Replace("light~ from", "light, from", StringComparison.Ordinal).ReplaceLineEndings("\r\n");
        var plain = (IEnumerable<object>)Example.Read(folder.Put(name, text));
        var other = (IEnumerable<object>)Example.Read(folder.Put(name, [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(twin)]));
        Assert.Equal(plain.ToArray(), other.ToArray());
    }

    [Fact]
    public void Words_are_read_whatever_their_case_and_yes_has_its_usual_spellings()
    {
        string rows = string.Concat(new[] { "yes", "True", "1", "NO", "false", "0", "" }.Select((called, i) => $"a,40,{i + 1},1,1,{called}\n"));
        var shots = ShotsFile.Read(folder.Put("shots.csv", "session,distance_yd,shot,right_in,up_in,called\n" + rows));
        Assert.Equal([true, true, true, false, false, false, false], shots.Select(s => s.Called));
    }

    [Fact]
    public void Space_around_fields_blank_lines_and_empty_rows_do_not_matter_but_quoted_space_is_kept()
    {
        var shots = ShotsFile.Read(folder.Put("shots.csv", "\n# c\n session , distance_yd,shot,right_in,up_in,note\n\n a , 40 ,1, 1 ,\t1,\" x \"\n,,,,,\n"));
        Assert.Equal(("a", " x ", 1.0), (shots[0].Session, shots[0].Note, shots[0].Impact!.Value.Up.Inches));
    }

    [Fact]
    public void The_sessions_file_stands_beside_the_shots_file()
    {
        Assert.Equal(Path.Combine("a", "sessions.csv"), SessionsFile.Beside(Path.Combine("a", "shots.csv")));
        Assert.Equal("sessions.csv", SessionsFile.Beside("shots.csv"));
    }

    [Fact]
    public void Shots_of_known_sessions_are_accepted()
    {
        var sessions = SessionsFile.Read(folder.Put("sessions.csv", Example.Sessions));
        Assert.Equal(2, ShotsFile.Read(folder.Put("shots.csv", Example.Shots), sessions: sessions).Count);
    }

    [Theory]
    [InlineData("down", "5,12\n10,10\n15,10\n20,11\n40,17\n")] // turns at short range
    [InlineData("up", "5,12\n10,14\n15,14\n20,13\n40,7\n")]
    [InlineData("down", "20,10\n21,10\n22,10.5\n")] // a printed tape rounds
    [InlineData("up", "5,12\n10,14\n")] // too short to say which way it runs
    [InlineData("down", "5,12\n")]
    public void A_tape_may_turn_once_at_short_range(string way, string rows)
    {
        var sight = Example.Sight with { Increases = way == "down" ? ScaleDirection.Down : ScaleDirection.Up };
        Assert.NotEmpty(MarksFile.Read(folder.Put("marks.csv", "distance_m,position_mm\n" + rows), sight));
    }
}
