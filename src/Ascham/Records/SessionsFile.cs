namespace Ascham.Records;

using System.Globalization;
using Ascham.Groups;
using Ascham.Sights;
using UnitsNet;

/// <summary>Reads and writes <c>sessions.csv</c>: one row per outing.</summary>
/// <remarks>
/// Columns: <c>session</c>, <c>date</c> (2026-09-12), <c>setup</c>, <c>distance_source</c> (marked, ranged or judged); optional
/// <c>distance_sd_</c>(m, yd, ft), <c>setting_sd_</c>(mm, cm, in, scale), <c>temperature_</c>(C, F), <c>pressure_</c>(hPa, inHg), <c>wind</c>, <c>note</c>.
/// A ranged or judged distance without a standard deviation is accepted and stays unknown: whoever uses it must ask or decide.
/// </remarks>
public static class SessionsFile
{
    /// <summary>Names the sessions file that belongs to a shots file: <c>sessions.csv</c> in the same folder.</summary>
    /// <param name="shotsPath">Path of a shots file.</param>
    /// <returns>Path of the sessions file; it need not exist.</returns>
    public static string Beside(string shotsPath)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(shotsPath);
        return Path.Combine(Path.GetDirectoryName(shotsPath) ?? "", "sessions.csv");
    }

    /// <summary>Reads all sessions.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sight">The sight; needed only when settings are given in its scale numbers.</param>
    /// <returns>The sessions in the order of the file, quantities in the units of the file.</returns>
    /// <exception cref="RecordException">The file cannot be read, or something in it is not as it should be.</exception>
    public static IReadOnlyList<Session> Read(string path, SightGeometry? sight = null)
    {
        using var stream = FileProblem.Open(path);
        return Read(stream, path, sight?.ScaleUnit);
    }

    /// <summary>Writes all sessions, replacing the file whole or not at all.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sessions">One session or more. Within a column all take the unit of the first.</param>
    /// <exception cref="RecordException">The file cannot be written, or a value is one that could not be read back.</exception>
    public static void Write(string path, IEnumerable<Session> sessions)
    {
        var output = new CsvOutput<Session>([.. sessions]);
        output.Text("session", s => s.Name, required: true);
        output.Text("date", s => s.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), required: true);
        output.Text("setup", s => s.Setup, required: true);
        output.Word("distance_source", Vocabulary.DistanceSources, s => s.DistanceSource, required: true);
        output.Measure("distance_sd", Measures.DistanceSd, s => s.DistanceSd);
        output.Measure("setting_sd", Measures.PositionSd, s => s.SettingSd);
        output.Measure("temperature", Measures.Temperature, s => s.Temperature);
        output.Measure("pressure", Measures.Pressure, s => s.Pressure);
        output.Text("wind", s => s.Wind);
        output.Text("note", s => s.Note);
        AtomicFile.Write(path, output.WriteTo, stream => Read(stream, path, scaleUnit: null));
    }

    internal static IReadOnlyList<Session> Read(Stream stream, string file, Length? scaleUnit)
    {
        using var table = new CsvTable(stream, file);
        var header = table.Header;
        var session = header.Text("session", required: true);
        var date = header.Column("date", required: true, Dates, ReadDate);
        var setup = header.Text("setup", required: true);
        var source = header.Word("distance_source", Vocabulary.DistanceSources, required: true);
        var distanceSd = header.Measure("distance_sd", Measures.DistanceSd);
        var settingSd = header.Position("setting_sd", Measures.PositionSd, scaleUnit).Column;
        var temperature = header.Measure("temperature", Measures.Temperature);
        var pressure = header.Measure("pressure", Measures.Pressure);
        var wind = header.Text("wind");
        var note = header.Text("note");
        header.Done();

        var sessions = new List<Session>();
        var seen = new UniqueRows<string>("session");
        foreach (var row in table.Rows())
        {
            string name = session.Read(row);
            seen.Add(name, name, row, session);
            sessions.Add(new()
            {
                Name = name,
                Date = date.Read(row),
                Setup = setup.Read(row),
                DistanceSource = source.Read(row),
                DistanceSd = distanceSd.OrNull(row),
                SettingSd = settingSd.OrNull(row),
                Temperature = temperature.OrNull(row),
                Pressure = pressure.OrNull(row),
                Wind = wind.TextOrNull(row),
                Note = note.TextOrNull(row),
            });
        }

        return sessions;
    }

    internal const string Dates = "a date as year-month-day, such as 2026-09-12";

    internal static DateOnly ReadDate(Cell cell) =>
        DateOnly.TryParseExact(cell.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw cell.Wrong("is not a date", Dates);
}
