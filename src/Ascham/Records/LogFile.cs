namespace Ascham.Records;

using Ascham.Groups;
using UnitsNet;

/// <summary>Reads <c>log.csv</c>: what was measured on the bow or looked for, one row each.</summary>
/// <remarks>
/// Columns: <c>date</c> (2026-09-12), <c>session</c>, <c>quantity</c> (a word of <see cref="LogQuantity"/>), <c>value</c>; optional <c>unit</c>, <c>sd</c> (in that unit),
/// <c>distance_</c>(m, yd, ft), <c>note</c>. The value of what is seen or not is yes or no, and unit and sd stay blank.
/// A value without a standard deviation is accepted and stays unknown: whoever uses it must ask or leave it out.
/// </remarks>
public static class LogFile
{
    /// <summary>Reads all entries.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sessions">When given, each entry must belong to one of these.</param>
    /// <returns>The entries in the order of the file, quantities in the units of the file.</returns>
    /// <exception cref="RecordException">The file cannot be read, or something in it is not as it should be.</exception>
    public static IReadOnlyList<LogEntry> Read(string path, IEnumerable<Session>? sessions = null)
    {
        string[]? names = sessions is null ? null : [.. sessions.Select(s => s.Name)];
        using var stream = FileProblem.Open(path);
        return Read(stream, path, names);
    }

    internal static IReadOnlyList<LogEntry> Read(Stream stream, string file, string[]? sessions)
    {
        using var table = new CsvTable(stream, file);
        var header = table.Header;
        var date = header.Column("date", required: true, SessionsFile.Dates, SessionsFile.ReadDate);
        var session = header.Text("session", required: true);
        var quantity = header.Column("quantity", required: true, LogVocabulary.Expected, LogVocabulary.Read);
        var value = header.Text("value", required: true);
        var unit = header.Text("unit");
        var sd = header.Text("sd");
        var distance = header.Measure("distance", Measures.Distance);
        var note = header.Text("note");
        header.Done();

        var entries = new List<LogEntry>();
        foreach (var row in table.Rows())
        {
            string name = session.Read(row);
            if (sessions is not null && !sessions.Contains(name))
            {
                throw RecordException.Unknown(row.Place(session.Index, session.Name), "session", name, sessions);
            }

            var word = quantity.Read(row);
            var entry = new LogEntry { Date = date.Read(row), Session = name, Quantity = word.Quantity, Distance = DistanceOf(word, distance, row), Note = note.TextOrNull(row) };
            entries.Add(word.Fill(entry, new(CellOf(value, row), CellOf(unit, row), CellOf(sd, row))));
        }

        return entries;
    }

    static Length? DistanceOf(LogWord word, CsvColumn<Length> distance, CsvRow row)
    {
        if (word.Quantity == LogQuantity.SpeedDownrange)
        {
            return distance.Index >= 0
                ? distance.Read(row)
                : throw new RecordException(new(row.File, row.Line), "a speed_downrange needs the distance of the instrument", expected: "a column distance_m, distance_yd or distance_ft");
        }

        return distance.Has(row)
            ? throw new RecordException(row.Place(distance.Index, distance.Name), $"a {word.Word} has no distance", row.Fields[distance.Index], "a blank field, or quantity speed_downrange")
            : null;
    }

    static Cell CellOf(CsvColumn<string> column, CsvRow row) =>
        column.Index >= 0 ? new(row.Place(column.Index, column.Name), row.Fields[column.Index]) : new(new(row.File, row.Line, null, column.Name), "");
}
