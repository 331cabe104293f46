namespace Ascham.Records;

using System.Globalization;
using Ascham.Groups;
using Ascham.Sights;
using UnitsNet;

/// <summary>Reads and writes <c>shots.csv</c>: one row per arrow shot.</summary>
/// <remarks>
/// Columns: <c>session</c>, <c>distance_</c>(m, yd, ft), <c>shot</c>, <c>right_</c>(mm, cm, in), <c>up_</c>(mm, cm, in); optional
/// <c>arrow</c>, <c>point_type</c>, <c>fletched</c>, <c>missed</c> (low, high, left, right or unknown, with <c>right</c> and <c>up</c> blank), <c>called</c>,
/// <c>hold_s</c>, <c>setting_</c>(mm, cm, in, scale), <c>slope_deg</c>, <c>group</c>, <c>note</c>.
/// </remarks>
public static class ShotsFile
{
    /// <summary>Reads all shots.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sight">The sight; needed only when settings are given in its scale numbers.</param>
    /// <param name="sessions">When given, each shot must belong to one of these.</param>
    /// <returns>The shots in the order of the file, quantities in the units of the file.</returns>
    /// <exception cref="RecordException">The file cannot be read, or something in it is not as it should be.</exception>
    public static IReadOnlyList<Shot> Read(string path, SightGeometry? sight = null, IEnumerable<Session>? sessions = null)
    {
        HashSet<string>? names = sessions is null ? null : [.. sessions.Select(s => s.Name)];
        using var stream = FileProblem.Open(path);
        return Read(stream, path, sight?.ScaleUnit, names);
    }

    /// <summary>Writes all shots, replacing the file whole or not at all.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="shots">One shot or more. Within a column all take the unit of the first.</param>
    /// <param name="settingUnit">Unit of the settings; that of the first setting when <see langword="null"/>.</param>
    /// <exception cref="RecordException">The file cannot be written, or a value is one that could not be read back.</exception>
    public static void Write(string path, IEnumerable<Shot> shots, PositionUnit? settingUnit = null)
    {
        var output = new CsvOutput<Shot>([.. shots]);
        output.Text("session", s => s.Session, required: true);
        output.Measure("distance", Measures.Distance, s => s.Distance, required: true);
        output.Text("shot", s => s.Number.ToString(CultureInfo.InvariantCulture), required: true);
        output.Measure("right", Measures.Offset, s => s.Impact?.Right, required: true);
        output.Measure("up", Measures.Offset, s => s.Impact?.Up, required: true);
        output.Text("arrow", s => s.Arrow);
        output.Text("point_type", s => s.PointType);
        output.Word("fletched", Vocabulary.YesNo, s => s.Fletched);
        output.Word("missed", Vocabulary.Misses, s => s.Missed);
        output.Word("called", Vocabulary.YesNo, s => s.Called ? true : null);
        output.Measure("hold", Measures.Hold, s => s.Hold);
        output.Measure("setting", Measures.Position, s => s.Setting, unit: settingUnit?.Unit);
        output.Measure("slope", Measures.Slope, s => s.Slope);
        output.Text("group", s => s.Group);
        output.Text("note", s => s.Note);
        AtomicFile.Write(path, output.WriteTo, stream => Read(stream, path, settingUnit?.Size, null));
    }

    internal static IReadOnlyList<Shot> Read(Stream stream, string file, Length? scaleUnit, HashSet<string>? sessions)
    {
        using var table = new CsvTable(stream, file);
        var reader = new ShotReader(table.Header, scaleUnit, sessions);
        return [.. table.Rows().Select(reader.Read)];
    }
}
