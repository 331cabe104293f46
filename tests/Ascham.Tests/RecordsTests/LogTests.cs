namespace Ascham.Tests.RecordsTests;

using Ascham.Causes;
using Ascham.Groups;
using Ascham.Records;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public sealed class LogTests : IDisposable
{
    const string Head = "date,session,quantity,value,unit,sd,note\n", Day = "2026-09-12,now,";

    readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    IReadOnlyList<LogEntry> Read(string text, IEnumerable<Session>? sessions = null) => LogFile.Read(folder.Put("log.csv", text), sessions);

    [Fact]
    public void Every_word_is_read_with_its_kind_of_quantity_and_its_unit()
    {
        var log = Read("""
            # invented
            date,session,quantity,value,unit,sd,distance_yd,note
            2026-09-12,now,peak_weight,53.5,lb,0.3,,bow scale
            2026-09-12,now,brace_height,6.25,in,0.05,,
            2026-09-12,now,speed,257.9,ft/s,0.8,,
            2026-09-12,now,speed_downrange,249,fps,1,30,
            2026-09-12,now,arrow_mass,27.1,g,,,
            2026-09-12,now,peep_to_nock,108,mm,0.5,,
            2026-09-12,now,cable_guard_offset,-2.5,mm,0.2,,
            2026-09-12,now,temperature,50,F,1.8,,
            2026-09-12,now,pressure,29.8,inHg,0.1,,
            2026-09-12,now,contact_marks,yes,,,,
            2026-09-12,now,witness_moved,no,,,,
            2026-09-12,now,bare_shafts_moved,No,,,,
            2026-09-12,now,level_off,true,,,,
            2026-09-12,now,sight_bar_tilted,0,,,,
            2026-09-12,now,wind_felt,1,,,,
            2026-09-12,now,Distances_Wrong,no,,,,

            """);
        Assert.Equal(Enum.GetValues<LogQuantity>(), log.Select(e => e.Quantity));
        Assert.Equal((53.5, ForceUnit.PoundForce), (((Force)log[0].Value!).Value, ((Force)log[0].Value!).Unit));
        Assert.Equal(0.3, ((Force)log[0].Sd!).PoundsForce, 1e-12);
        Assert.Equal("bow scale", log[0].Note);
        Assert.Equal(30, log[3].Distance!.Value.Yards, 1e-12);
        Assert.Null(log[4].Sd);
        Assert.Equal(-2.5, ((Length)log[6].Value!).Millimeters, 1e-12);
        Assert.Equal(10, ((Temperature)log[7].Value!).DegreesCelsius, 1e-9);
        Assert.Equal(1, ((TemperatureDelta)log[7].Sd!).DegreesCelsius, 1e-9); // a spread of 1.8 °F is 1 °C, without the offset of the scale
        Assert.Equal([true, false, false, true, false, true, false], log.Skip(9).Select(e => e.Seen!.Value));
        Assert.All(log.Take(9), e => Assert.Null(e.Seen));
        Assert.All(log.Skip(9), e => Assert.Null(e.Value));
    }

    [Theory]
    [InlineData(Head + Day + "peek_weight,53,lbf,,\n", "log.csv, line 2, column quantity: quantity \"peek_weight\" is not known; did you mean \"peak_weight\"?")]
    [InlineData(Head + Day + "x,53,lbf,,\n", "log.csv, line 2, column quantity: quantity \"x\" is not known; expected peak_weight, brace_height, speed, speed_downrange, arrow_mass, peep_to_nock, cable_guard_offset, temperature, pressure, contact_marks, witness_moved, bare_shafts_moved, level_off, sight_bar_tilted, wind_felt or distances_wrong.")]
    [InlineData(Head + Day + "peak_weight,53,lbs,,\n", "log.csv, line 2, column unit: unit \"lbs\" is not known; did you mean \"lbf\"?")]
    [InlineData(Head + Day + "peak_weight,53,ft/s,,\n", "log.csv, line 2, column unit: unit \"ft/s\" is not known; expected N, lbf, lb or kgf.")]
    [InlineData(Head + Day + "peak_weight,53,,,\n", "log.csv, line 2, column unit: the field is blank; expected N, lbf, lb or kgf.")]
    [InlineData(Head + Day + "peak_weight,,lbf,,\n", "log.csv, line 2, column value: the field is blank; expected pounds-force above 0, up to 225.")]
    [InlineData(Head + Day + "peak_weight,530,lbf,,\n", "log.csv, line 2, column value: \"530\" is out of range; expected pounds-force above 0, up to 225.")]
    [InlineData(Head + Day + "peak_weight,NaN,lbf,,\n", "log.csv, line 2, column value: \"NaN\" is not a finite number; expected pounds-force above 0, up to 225.")]
    [InlineData(Head + Day + "peak_weight,\"53,5\",lbf,,\n", "log.csv, line 2, column value: \"53,5\" has a decimal comma; expected pounds-force above 0, up to 225, with a decimal point.")]
    [InlineData(Head + Day + "peak_weight,53,lbf,0,\n", "log.csv, line 2, column sd: \"0\" is out of range; expected pounds-force above 0, up to 225.")]
    [InlineData(Head + Day + "peak_weight,53,lbf,-0.3,\n", "log.csv, line 2, column sd: \"-0.3\" is out of range; expected pounds-force above 0, up to 225.")]
    [InlineData(Head + Day + "temperature,20,C,121,\n", "log.csv, line 2, column sd: \"121\" is out of range; expected degrees Celsius above 0, up to 120.")]
    [InlineData(Head + Day + "contact_marks,maybe,,,\n", "log.csv, line 2, column value: \"maybe\" is none of the words known here; expected yes, no, true, false, 1 or 0.")]
    [InlineData(Head + Day + "contact_marks,,,,\n", "log.csv, line 2, column value: the field is blank; expected yes, no, true, false, 1 or 0.")]
    [InlineData(Head + Day + "contact_marks,yes,mm,,\n", "log.csv, line 2, column unit: \"mm\" has no place beside a yes or no; expected a blank field.")]
    [InlineData(Head + Day + "contact_marks,yes,,1,\n", "log.csv, line 2, column sd: \"1\" has no place beside a yes or no; expected a blank field.")]
    [InlineData(Head + Day + "speed_downrange,250,ft/s,1,\n", "log.csv, line 2: a speed_downrange needs the distance of the instrument; expected a column distance_m, distance_yd or distance_ft.")]
    [InlineData("date,session,quantity,value,unit,distance_m\n" + Day + "speed_downrange,250,ft/s,\n", "log.csv, line 2, column distance_m: the field is blank; expected metres above 0, up to 1000.")]
    [InlineData("date,session,quantity,value,unit,distance_m\n" + Day + "speed,250,ft/s,30\n", "log.csv, line 2, column distance_m: a speed has no distance; expected a blank field, or quantity speed_downrange.")]
    [InlineData("date,session,quantity,value\n" + Day + "speed,250\n", "log.csv, line 2, column unit: the field is blank; expected m/s, ft/s, fps or km/h.")]
    [InlineData(Head + "12.9.2026,now,speed,250,ft/s,1,\n", "log.csv, line 2, column date: \"12.9.2026\" is not a date; expected a date as year-month-day, such as 2026-09-12.")]
    [InlineData(Head + "2026-09-12,,speed,250,ft/s,1,\n", "log.csv, line 2, column session: the field is blank; expected a text.")]
    [InlineData("date,session,quantity,value,units\n", "log.csv, line 1, column units: column \"units\" is not known; did you mean \"unit\"?")]
    [InlineData("date,session,value\n", "log.csv, line 1: the header lacks quantity.")]
    [InlineData(Head, "log.csv, line 1: there are no rows under the header; expected one row or more.")]
    public void A_bad_log_is_told_in_one_sentence(string text, string message) => Assert.Equal(message, Example.ErrorOf("log.csv", text));

    [Fact]
    public void An_entry_of_a_session_that_is_not_there_is_refused()
    {
        Session only = new() { Name = "evening", Date = new(2026, 9, 12), Setup = "b", DistanceSource = DistanceSource.Marked };
        string message = Assert.Throws<RecordException>(() => Read(Head + "2026-09-12,evenign,speed,250,ft/s,1,\n", [only])).Message;
        Assert.Equal("log.csv, line 2, column session: session \"evenign\" is not known; did you mean \"evening\"?", message);
    }

    [Fact]
    public void Readings_go_to_then_and_now_and_signs_to_now()
    {
        var told = LogEvidence.Of(Read(Head + """
            2026-08-01,then,peak_weight,57,lbf,0.3,
            2026-09-12,now,peak_weight,53.5,lbf,0.3,
            2026-09-12,now,speed,258,ft/s,0.8,
            2026-09-12,now,contact_marks,no,,,
            2026-08-01,then,contact_marks,yes,,,
            2026-09-12,now,arrow_mass,418,gr,,
            2026-09-12,now,brace_height,6.2,in,0.1,
            2026-09-12,other,speed,258,ft/s,0.8,

            """), ["then"], ["now"]);
        Assert.Equal([(ReadingKind.PeakWeight, false), (ReadingKind.PeakWeight, true), (ReadingKind.LaunchSpeed, true)], told.Readings.Select(r => (r.Kind, r.Now)));
        Assert.Equal([new Sign(SignKind.ContactMarks, false)], told.Signs);
        Assert.Equal(
            [
                "contact_marks of then, 2026-08-01: a sign from when all was well says nothing of a change.",
                "arrow_mass of now, 2026-09-12: give its standard deviation (sd); a reading without its error weighs nothing.",
                "brace_height of now, 2026-09-12: kept for the record; no cause is weighed by it.",
                "speed of other, 2026-09-12: its session is neither of then nor of now.",
            ], told.LeftOut);
    }

    [Fact]
    public void A_sign_looked_for_twice_counts_once_and_says_so()
    {
        var told = LogEvidence.Of(Read(Head + Day + "wind_felt,yes,,,\n" + Day + "wind_felt,no,,,\n"), [], ["now"]);
        Assert.Equal([new Sign(SignKind.WindFelt, false)], told.Signs);
        Assert.Equal(["wind_felt of now, 2026-09-12: looked for twice; the last answer counts, not yes before it."], told.LeftOut);
    }

    [Theory, InlineData("110.0", false), InlineData("112.5", true)] // 0.5 mm each, together 0.71 mm: moved beyond 2.1 mm
    public void A_peep_that_moved_is_a_witness_mark_that_moved(string now, bool moved)
    {
        var told = LogEvidence.Of(Read(Head + "2026-08-01,then,peep_to_nock,110,mm,0.5,\n" + Day + $"peep_to_nock,{now},mm,0.5,\n"), ["then"], ["now"]);
        Assert.Equal(moved ? [new Sign(SignKind.WitnessMoved, true)] : Array.Empty<Sign>(), told.Signs);
        Assert.Equal(moved, told.LeftOut.Count == 0);
    }

    [Fact]
    public void A_session_on_both_sides_is_refused() =>
        Assert.StartsWith("Session \"now\" is named both for then and for now.", Assert.Throws<ArgumentException>(() => LogEvidence.Of([], ["now"], ["now"])).Message, StringComparison.Ordinal);
}
