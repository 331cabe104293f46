namespace Ascham.Tests.RecordsTests;

using System.Text;
using Ascham.Records;
using Xunit;

/// <summary>Each bad table, and the whole sentence its owner gets.</summary>
public class BadTableTests
{
    const string Shot = "session,distance_yd,shot,right_in,up_in\n";

    [Theory]
    [InlineData(Shot + "a,40,1,1,low\n", "shots.csv, line 2, column up_in: \"low\" is not a number; expected inches from -394 to 394.")]
    [InlineData("# one\n\n" + Shot + "# two\r\n\r\na,40,1,1,low\n", "shots.csv, line 6, column up_in: \"low\" is not a number; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,40,1,1,500\n", "shots.csv, line 2, column up_in: \"500\" is out of range; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,40,1,NaN,1\n", "shots.csv, line 2, column right_in: \"NaN\" is not a finite number; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,40,1,1e999,1\n", "shots.csv, line 2, column right_in: \"1e999\" is not a finite number; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,40,1,-Infinity,1\n", "shots.csv, line 2, column right_in: \"-Infinity\" is not a finite number; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,0,1,1,1\n", "shots.csv, line 2, column distance_yd: \"0\" is out of range; expected yards above 0, up to 1094.")]
    [InlineData(Shot + "a,1095,1,1,1\n", "shots.csv, line 2, column distance_yd: \"1095\" is out of range; expected yards above 0, up to 1094.")]
    [InlineData(Shot + "a,40 yd,1,1,1\n", "shots.csv, line 2, column distance_yd: \"40 yd\" is not a number; expected yards above 0, up to 1094.")]
    [InlineData(Shot + "a,\"1,000\",1,1,1\n", "shots.csv, line 2, column distance_yd: \"1,000\" has a decimal comma; expected yards above 0, up to 1094, with a decimal point.")]
    [InlineData("session;distance_yd;shot;right_in;up_in\na;40;1;1,5;2\n", "shots.csv, line 2, column right_in: \"1,5\" has a decimal comma; expected inches from -394 to 394, with a decimal point.")]
    [InlineData(Shot + "a,40,1,1,5,2\n", "shots.csv, line 2: the row has 6 fields; expected 5, as in the header (a text with a separator in it needs quotes; numbers have a decimal point).")]
    [InlineData(Shot + "a,40,1\n", "shots.csv, line 2: the row has 3 fields; expected 5, as in the header.")]
    [InlineData(Shot + "a,40,,1,1\n", "shots.csv, line 2, column shot: the field is blank; expected a whole number from 1 to 1000000.")]
    [InlineData(Shot + "a,40,0,1,1\n", "shots.csv, line 2, column shot: \"0\" is no number of a shot; expected a whole number from 1 to 1000000.")]
    [InlineData(Shot + "a,40,1.5,1,1\n", "shots.csv, line 2, column shot: \"1.5\" is no number of a shot; expected a whole number from 1 to 1000000.")]
    [InlineData(Shot + ",40,1,1,1\n", "shots.csv, line 2, column session: the field is blank; expected a text.")]
    [InlineData(Shot + "a,40,1,,1\n", "shots.csv, line 2, column right_in: the field is blank; expected inches from -394 to 394.")]
    [InlineData(Shot + "a,40,1,1,1\na,41,2,1,1\na,42,1,1,1\n", "shots.csv, line 4, column shot: shot \"1 of a\" was already given on line 2; expected each one once.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,missed\na,40,1,,1,low\n", "shots.csv, line 2, column up_in: an arrow that missed has no impact; expected either right and up, or missed.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,missed\na,40,1,,,below\n", "shots.csv, line 2, column missed: \"below\" is none of the words known here; expected low, high, left, right or unknown.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,called\na,40,1,1,1,maybe\n", "shots.csv, line 2, column called: \"maybe\" is none of the words known here; expected yes, no, true, false, 1 or 0.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,hold_s\na,40,1,1,1,61\n", "shots.csv, line 2, column hold_s: \"61\" is out of range; expected seconds from 0 to 60.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,slope_deg\na,40,1,1,1,-81\n", "shots.csv, line 2, column slope_deg: \"-81\" is out of range; expected degrees from -80 to 80.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,setting_scale\na,40,1,1,1,31\n", "shots.csv, line 1, column setting_scale: scale numbers cannot be read without the sight's scale unit; expected a sight with \"scale_unit\" in its setup, such as \"0.5 mm\".")]
    [InlineData("session,distance_yards,shot,right_in,up_in\n", "shots.csv, line 1, column distance_yards: column \"distance_yards\" is not known; did you mean \"distance_yd\"?")]
    [InlineData("session,distance,shot,right_in,up_in\n", "shots.csv, line 1, column distance: this column names no unit; expected distance_m, distance_yd or distance_ft.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,\n", "shots.csv, line 1, column 6: this column has no name; expected session, distance_m, distance_yd, distance_ft, shot, right_mm, right_cm, right_in, up_mm, up_cm, up_in, arrow, point_type, fletched, missed, called, hold_s, setting_mm, setting_cm, setting_in, setting_scale, slope_deg, group or note.")]
    [InlineData("session,distance_yd,distance_m,shot,right_in,up_in\n", "shots.csv, line 1, column distance_m: this column repeats distance_yd; expected one of them.")]
    [InlineData("session,session,distance_yd,shot,right_in,up_in\n", "shots.csv, line 1, column session: this column repeats session; expected one of them.")]
    [InlineData("# c\nsession,distance_yd,right_in\n", "shots.csv, line 2: the header lacks shot and up_mm, up_cm or up_in.")]
    [InlineData("session\tdistance_yd\tshot\n", "shots.csv, line 1: the columns are separated by tabs; expected commas or semicolons.")]
    [InlineData(Shot + "a,40,1,1,1\nb,40,1,1,\"1\nc,40,1,1,1\n", "shots.csv, line 3: a quote is not closed, or stands inside an unquoted field; expected the whole field in quotes, and a quote inside it doubled.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,note\na,40,1,1,1,\"x\ny\"\n\nb,40,1,1,1,5\" low\n", "shots.csv, line 5: a quote is not closed, or stands inside an unquoted field; expected the whole field in quotes, and a quote inside it doubled.")]
    [InlineData("session,distance_yd,shot,right_in,up_in,note\na,40,1,1,1,\"x\ny\"\nb,40,1,1,?,\n", "shots.csv, line 4, column up_in: \"?\" is not a number; expected inches from -394 to 394.")]
    [InlineData("\"session,distance_yd\n", "shots.csv, line 1: a quote is not closed, or stands inside an unquoted field; expected the whole field in quotes, and a quote inside it doubled.")]
    [InlineData(Shot, "shots.csv, line 1: there are no rows under the header; expected one row or more.")]
    [InlineData(Shot + "# only a comment\n,,,,\n", "shots.csv, line 1: there are no rows under the header; expected one row or more.")]
    [InlineData(Shot + "a,40,1,1,\0\n", "shots.csv, line 2: there is a NUL byte, as in UTF-16 or binary files; expected text saved as UTF-8.")]
    [InlineData("# c\r\n# d\r\n" + Shot + "a,40,1,1,\0\r\n", "shots.csv, line 4: there is a NUL byte, as in UTF-16 or binary files; expected text saved as UTF-8.")]
    [InlineData(Shot + "a,40,1,1,this text is much too long to be shown as a whole in a message\n", "shots.csv, line 2, column up_in: \"this text is much too long to be shown a…\" is not a number; expected inches from -394 to 394.")]
    public void Shots(string text, string message) => Assert.Equal(message, Example.ErrorOf("shots.csv", text));

    [Theory]
    [InlineData("session,date,setup,distance_source\na,12.09.2026,b,marked\n", "sessions.csv, line 2, column date: \"12.09.2026\" is not a date; expected a date as year-month-day, such as 2026-09-12.")]
    [InlineData("session,date,setup,distance_source\na,2026-02-30,b,marked\n", "sessions.csv, line 2, column date: \"2026-02-30\" is not a date; expected a date as year-month-day, such as 2026-09-12.")]
    [InlineData("session,date,setup,distance_source\na,2026-09-12,b,guessed\n", "sessions.csv, line 2, column distance_source: \"guessed\" is none of the words known here; expected marked, ranged or judged.")]
    [InlineData("session,date,setup,distance_source\na,2026-09-12,b,\n", "sessions.csv, line 2, column distance_source: the field is blank; expected marked, ranged or judged.")]
    [InlineData("session,date,setup,distance_source\na,2026-09-12,b,marked\na,2026-09-12,b,marked\n", "sessions.csv, line 3, column session: session \"a\" was already given on line 2; expected each one once.")]
    [InlineData("session,date,setup,distance_source,distance_sd_yd\na,2026-09-12,b,ranged,-1\n", "sessions.csv, line 2, column distance_sd_yd: \"-1\" is out of range; expected yards from 0 to 110.")]
    [InlineData("session,date,setup,distance_source,temperature_c\n", "sessions.csv, line 1, column temperature_c: column \"temperature_c\" is not known; did you mean \"temperature_C\"?")]
    [InlineData("session,date,setup,distance_source,temperature_F\na,2026-09-12,b,marked,150\n", "sessions.csv, line 2, column temperature_F: \"150\" is out of range; expected degrees Fahrenheit from -76 to 140.")]
    [InlineData("session,date,setup,distance_source,pressure_inHg\na,2026-09-12,b,marked,1013\n", "sessions.csv, line 2, column pressure_inHg: \"1013\" is out of range; expected inches of mercury from 8.85 to 32.5.")]
    [InlineData("session,date,setup,distance_source,moon\n", "sessions.csv, line 1, column moon: column \"moon\" is not known; expected session, date, setup, distance_source, distance_sd_m, distance_sd_yd, distance_sd_ft, setting_sd_mm, setting_sd_cm, setting_sd_in, setting_sd_scale, temperature_C, temperature_F, pressure_hPa, pressure_inHg, wind or note.")]
    public void Sessions(string text, string message) => Assert.Equal(message, Example.ErrorOf("sessions.csv", text));

    [Theory]
    [InlineData("20,1\n20,2\n", "marks.csv, line 3, column distance_m: distance \"20\" was already given on line 2; expected each one once.")]
    [InlineData("20,1\n30,2\n25,3\n", "marks.csv, line 4, column distance_m: \"25\" is nearer than the mark before it; expected distances that grow from row to row.")]
    [InlineData("30,1\n40,3\n50,2\n60,4\n", "marks.csv, line 4, column position_mm: \"2\" runs back, after \"3\"; expected positions that grow with distance (a tape may turn once, at its near end and not beyond 20 m).")]
    [InlineData("10,3\n25,1\n30,2\n40,4\n", "marks.csv, line 3, column position_mm: \"1\" runs back, after \"3\"; expected positions that grow with distance (a tape may turn once, at its near end and not beyond 20 m).")]
    [InlineData("5,3\n8,4\n12,2\n30,5\n40,6\n", "marks.csv, line 4, column position_mm: \"2\" runs back, after \"4\"; expected positions that grow with distance (a tape may turn once, at its near end and not beyond 20 m).")]
    [InlineData("20,9\n30,8\n40,6\n", "marks.csv, line 4, column position_mm: \"6\" ends a scale that shrinks with distance; expected one that grows, as the sight's \"position_increases\": \"down\" says (one of the two is wrong).")]
    [InlineData("20,1001\n", "marks.csv, line 2, column position_mm: \"1001\" is out of range; expected millimetres from -1000 to 1000.")]
    public void Marks(string rows, string message) => Assert.Equal(message, Example.ErrorOf("marks.csv", "distance_m,position_mm\n" + rows));

    [Fact]
    public void A_session_nobody_knows_is_refused_with_the_nearest_name()
    {
        using var folder = new ScratchFolder();
        var sessions = SessionsFile.Read(folder.Put("sessions.csv", Example.Sessions));
        var error = Assert.Throws<RecordException>(() => ShotsFile.Read(folder.Put("shots.csv", Shot + "evenin,40,1,1,1\n"), sessions: sessions));
        Assert.Equal("shots.csv, line 2, column session: session \"evenin\" is not known; did you mean \"evening\"?", error.Message);
        error = Assert.Throws<RecordException>(() => ShotsFile.Read(folder.Put("shots.csv", Shot + "noon,40,1,1,1\n"), sessions: sessions));
        Assert.Equal("shots.csv, line 2, column session: session \"noon\" is not known; expected evening or morning.", error.Message);
    }

    [Fact]
    public void The_parts_of_the_sentence_are_given_one_by_one()
    {
        var error = Example.ErrorOf("shots.csv", Encoding.UTF8.GetBytes(Shot + "a,40,1,1,low\n"));
        Assert.Equal((2, 5, "up_in", "low", "inches from -394 to 394"), (error.Line, error.Column, error.ColumnName, error.Value, error.Expected));
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused_with_their_line()
    {
        byte[] latin = Encoding.Latin1.GetBytes(Shot + "a,40,1,1,1\nMärz,40,1,1,1\n");
        Assert.Equal("shots.csv, line 3: there are bytes that are not UTF-8; expected text saved as UTF-8.", Example.ErrorOf("shots.csv", latin).Message);
    }

    [Fact]
    public void UTF_16_is_recognised_with_and_without_its_mark()
    {
        byte[] bytes = Encoding.Unicode.GetBytes(Shot + "a,40,1,1,1\n");
        Assert.Equal("shots.csv, line 1: the text starts with bytes that are not UTF-8, perhaps the mark of UTF-16; expected text saved as UTF-8.",
            Example.ErrorOf("shots.csv", [.. Encoding.Unicode.Preamble, .. bytes]).Message);
        Assert.Equal("shots.csv, line 1: there is a NUL byte, as in UTF-16 or binary files; expected text saved as UTF-8.", Example.ErrorOf("shots.csv", bytes).Message);
    }

    [Theory]
    [InlineData("shots.csv")]
    [InlineData("sessions.csv")]
    [InlineData("marks.csv")]
    [InlineData("setup.json")]
    public void A_missing_file_an_empty_one_and_a_folder_are_told_apart(string name)
    {
        using var folder = new ScratchFolder();
        string path = folder.Path(name), expected = name == "setup.json" ? "a setup in JSON" : "a header line and rows";
        Assert.Equal($"{path}: there is no such file.", Assert.Throws<RecordException>(() => Example.Read(path)).Message);
        string deep = Path.Combine(folder.Path("none"), name);
        Assert.Equal($"{deep}: there is no such folder.", Assert.Throws<RecordException>(() => Example.Read(deep)).Message);
        folder.Put(name, "\uFEFF\n");
        Assert.Equal($"{path}: the file is empty; expected {expected}.", Assert.Throws<RecordException>(() => Example.Read(path)).Message);
        File.Delete(path);
        Directory.CreateDirectory(path);
        Assert.Equal($"{path}: this is a folder; expected a file.", Assert.Throws<RecordException>(() => Example.Read(path)).Message);
    }

    [Fact] // Permissions do not bind every user that runs tests, so the wording is tested on the failure itself.
    public void A_refusal_of_the_system_is_put_into_words()
    {
        Assert.Equal("a/b.csv: no permission to read or write here.", FileProblem.Of("a/b.csv", new UnauthorizedAccessException("x")).Message);
        Assert.Equal("a/b.csv: the system could not read or write it: disk on fire.", FileProblem.Of("a/b.csv", new IOException("disk on fire.")).Message);
    }

    [Fact]
    public void A_file_with_lines_ended_by_CR_alone_counts_them_too() =>
        Assert.Equal("shots.csv, line 3, column up_in: \"x\" is not a number; expected inches from -394 to 394.",
            Example.ErrorOf("shots.csv", (Shot + "a,40,1,1,1\na,40,2,1,x\n").Replace('\n', '\r')));
}
