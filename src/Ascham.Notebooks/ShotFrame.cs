namespace Ascham.Notebooks;

using Ascham.Groups;
using Deedle;
using UnitsNet.Units;

/// <summary>Puts shots into a Deedle frame, to filter, group and pivot them there.</summary>
public static class ShotFrame
{
    /// <summary>Makes a frame with one row per shot and the columns of the shots file.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="distanceIn">Unit of the distance column.</param>
    /// <param name="offsetsIn">Unit of the columns right and up.</param>
    /// <returns>
    /// A frame with the columns session, distance_*, shot, right_*, up_* (missing where the arrow missed the butt), missed, called,
    /// arrow, point_type, fletched, hold_s, group, note; * is the unit. The row key is the position in <paramref name="shots"/>, from 0,
    /// so a filtered frame leads back to its shots: <c>frame.RowKeys.Select(k => shots[k])</c>.
    /// </returns>
    public static Frame<int, string> From(IEnumerable<Shot> shots, LengthUnit distanceIn, LengthUnit offsetsIn)
    {
        ArgumentNullException.ThrowIfNull(shots);
        Shot[] all = [.. shots];
        string yards = NumberText.Unit(distanceIn), inches = NumberText.Unit(offsetsIn);
        return Frame.FromColumns(
        [
            Column("session", s => s.Session),
            Column($"distance_{yards}", s => s.Distance.As(distanceIn)),
            Column("shot", s => s.Number),
            Column($"right_{inches}", s => s.Impact?.Right.As(offsetsIn)),
            Column($"up_{inches}", s => s.Impact?.Up.As(offsetsIn)),
            Column("missed", s => s.Missed is { } miss ? MissWord(miss) : null),
            Column("called", s => s.Called),
            Column("arrow", s => s.Arrow),
            Column("point_type", s => s.PointType),
            Column("fletched", s => s.Fletched),
            Column("hold_s", s => s.Hold?.Seconds),
            Column("group", s => s.Group),
            Column("note", s => s.Note),
        ]);

        KeyValuePair<string, Series<int, object>> Column(string name, Func<Shot, object?> cell) =>
            // Deedle takes null for missing.
            KeyValuePair.Create(name, new Series<int, object>(Enumerable.Range(0, all.Length), all.Select(cell)!));
    }

    internal static string MissWord(Miss miss) => miss switch
    {
        Miss.Low => "low",
        Miss.High => "high",
        Miss.Left => "left",
        Miss.Right => "right",
        _ => "unknown",
    };
}
