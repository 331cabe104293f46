namespace Ascham.Records;

using Ascham.Sights;
using UnitsNet;

/// <summary>Reads and writes <c>marks.csv</c>: the marks of a printed tape, or measured ones.</summary>
/// <remarks>
/// Columns: <c>distance_</c>(m, yd, ft), <c>position_</c>(mm, cm, in, scale); optional <c>sd_</c>(mm, cm, in, scale) of the position, and
/// <c>compensated</c> (yes when the distance is a rangefinder's slope-compensated reading; else it is along the line of sight).
/// Distances grow from row to row. Positions keep one direction; a tape that turns at short range, as real ones do where the
/// height of the eye above the arrow outweighs the drop, may run the other way up to 20 m, and only at its near end.
/// </remarks>
public static class MarksFile
{
    /// <summary>Reads all marks.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sight">
    /// The sight; needed for positions in its scale numbers. When given, the marks must also run the way its <see cref="SightGeometry.Increases"/> says.
    /// </param>
    /// <returns>The marks with the units of the file.</returns>
    /// <exception cref="RecordException">The file cannot be read, or something in it is not as it should be.</exception>
    public static Marks Read(string path, SightGeometry? sight = null)
    {
        using var stream = FileProblem.Open(path);
        return Read(stream, path, sight?.ScaleUnit, sight?.Increases);
    }

    /// <summary>Writes all marks, replacing the file whole or not at all.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="marks">One mark or more, and the units to write them in.</param>
    /// <exception cref="RecordException">The file cannot be written, or a value or the order is one that could not be read back.</exception>
    public static void Write(string path, Marks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var output = new CsvOutput<Mark>(marks);
        output.Measure("distance", Measures.Distance, m => m.Distance, required: true, unit: Measures.Distance.UnitOf(Length.From(1, marks.DistanceUnit)));
        output.Measure("position", Measures.Position, m => m.Position, required: true, unit: marks.PositionUnit.Unit);
        output.Measure("sd", Measures.PositionSd, m => m.PositionSd);
        output.Word("compensated", Vocabulary.YesNo, m => m.Compensated ? true : null);
        AtomicFile.Write(path, output.WriteTo, stream => Read(stream, path, marks.PositionUnit.Size, null));
    }

    internal static Marks Read(Stream stream, string file, Length? scaleUnit, ScaleDirection? increases)
    {
        using var table = new CsvTable(stream, file);
        var header = table.Header;
        var distance = header.Measure("distance", Measures.Distance, required: true);
        var (position, unit) = header.Position("position", Measures.Position, scaleUnit, required: true);
        var sd = header.Position("sd", Measures.PositionSd, scaleUnit).Column;
        var compensated = header.Word("compensated", Vocabulary.YesNo);
        header.Done();

        var rows = new List<(CsvRow Row, Mark Mark)>();
        foreach (var row in table.Rows())
        {
            rows.Add((row, new Mark(distance.Read(row), position.Read(row), sd.OrNull(row)) { Compensated = compensated.OrNull(row) ?? false }));
        }

        new MarkOrder(distance, position).Check(rows, increases);
        return new(rows.Select(r => r.Mark), rows[0].Mark.Distance.Unit, unit!);
    }
}
