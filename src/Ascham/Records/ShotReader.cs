namespace Ascham.Records;

using System.Globalization;
using Ascham.Groups;
using UnitsNet;

/// <summary>Turns rows of <c>shots.csv</c> into shots and checks them one against the other.</summary>
sealed class ShotReader
{
    const int MostShots = 1_000_000;

    readonly HashSet<string>? sessions;
    readonly UniqueRows<(string Session, int Shot)> seen = new("shot");
    readonly CsvColumn<string> session, arrow, pointType, group, note;
    readonly CsvColumn<int> number;
    readonly CsvColumn<Length> distance, right, up, setting;
    readonly CsvColumn<Duration> hold;
    readonly CsvColumn<Angle> slope;
    readonly CsvColumn<bool> fletched, called;
    readonly CsvColumn<Miss> missed;

    internal ShotReader(CsvHeader header, Length? scaleUnit, HashSet<string>? sessions)
    {
        this.sessions = sessions;
        session = header.Text("session", required: true);
        distance = header.Measure("distance", Measures.Distance, required: true);
        number = header.Column("shot", required: true, Numbers, ReadNumber);
        right = header.Measure("right", Measures.Offset, required: true);
        up = header.Measure("up", Measures.Offset, required: true);
        arrow = header.Text("arrow");
        pointType = header.Text("point_type");
        fletched = header.Word("fletched", Vocabulary.YesNo);
        missed = header.Word("missed", Vocabulary.Misses);
        called = header.Word("called", Vocabulary.YesNo);
        hold = header.Measure("hold", Measures.Hold);
        setting = header.Position("setting", Measures.Position, scaleUnit).Column;
        slope = header.Measure("slope", Measures.Slope);
        group = header.Text("group");
        note = header.Text("note");
        header.Done();
    }

    internal Shot Read(CsvRow row)
    {
        var shot = new Shot
        {
            Session = SessionOf(row),
            Distance = distance.Read(row),
            Number = number.Read(row),
            Impact = ImpactOf(row),
            Missed = missed.OrNull(row),
            Called = called.OrNull(row) ?? false,
            Arrow = arrow.TextOrNull(row),
            PointType = pointType.TextOrNull(row),
            Fletched = fletched.OrNull(row),
            Hold = hold.OrNull(row),
            Setting = setting.OrNull(row),
            Slope = slope.OrNull(row),
            Group = group.TextOrNull(row),
            Note = note.TextOrNull(row),
        };
        seen.Add((shot.Session, shot.Number), $"{row.Fields[number.Index]} of {shot.Session}", row, number);
        return shot;
    }

    string SessionOf(CsvRow row)
    {
        string name = session.Read(row);
        return sessions is null || sessions.Contains(name)
            ? name
            : throw RecordException.Unknown(row.Place(session.Index, session.Name), "session", name, sessions);
    }

    Impact? ImpactOf(CsvRow row)
    {
        if (!missed.Has(row))
        {
            return new(right.Read(row), up.Read(row));
        }

        var given = right.Has(row) ? right : up.Has(row) ? up : null;
        return given is null
            ? null
            : throw new RecordException(row.Place(given.Index, given.Name), "an arrow that missed has no impact", row.Fields[given.Index],
                "either right and up, or missed");
    }

    const string Numbers = "a whole number from 1 to 1000000";

    static int ReadNumber(Cell cell) =>
        int.TryParse(cell.Text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value is >= 1 and <= MostShots
            ? value
            : throw cell.Wrong("is no number of a shot", Numbers);
}
