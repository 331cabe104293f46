namespace Ascham.Records;

using Ascham.Sights;
using UnitsNet;

/// <summary>Checks that a tape reads like a tape: distances grow, positions keep their direction.</summary>
sealed class MarkOrder(CsvColumn<Length> distance, CsvColumn<Length> position)
{
    // Without drag the smallest number of a tape stands at v sqrt(2 h/g), h being the eye's height above the arrow: 12 m for 85 m/s and 0.10 m,
    // 16 m for 100 m/s and 0.13 m. Nearer than that the numbers grow again, so a turn is expected there and an error beyond.
    static readonly Length FarthestTurn = Length.FromMeters(20);

    internal void Check(List<(CsvRow Row, Mark Mark)> rows, ScaleDirection? increases)
    {
        CheckDistances(rows);
        int direction = Direction(rows);
        if (increases is { } told && direction != 0 && rows[^1].Mark.Distance > FarthestTurn && direction != (told == ScaleDirection.Down ? 1 : -1))
        {
            throw Backwards(rows[^1].Row, told);
        }

        bool turned = false;
        for (int i = 1; i < rows.Count; i++)
        {
            int step = Step(rows, i);
            turned |= step == direction;
            if (step == -direction && direction != 0 && (turned || rows[i].Mark.Distance > FarthestTurn))
            {
                throw Turned(rows[i - 1].Row, rows[i].Row, direction);
            }
        }
    }

    void CheckDistances(List<(CsvRow Row, Mark Mark)> rows)
    {
        var seen = new UniqueRows<double>("distance");
        for (int i = 0; i < rows.Count; i++)
        {
            var (row, mark) = rows[i];
            seen.Add(mark.Distance.Meters, row.Fields[distance.Index], row, distance);
            if (i > 0 && mark.Distance < rows[i - 1].Mark.Distance)
            {
                throw Wrong(row, distance, "is nearer than the mark before it", "distances that grow from row to row");
            }
        }
    }

    // The direction of most steps; of the last one when both are as many.
    static int Direction(List<(CsvRow Row, Mark Mark)> rows)
    {
        int[] steps = [.. Enumerable.Range(1, rows.Count - 1).Select(i => Step(rows, i)).Where(s => s != 0)];
        return steps.Length == 0 ? 0 : steps.Sum() is var sum && sum != 0 ? Math.Sign(sum) : steps[^1];
    }

    static int Step(List<(CsvRow Row, Mark Mark)> rows, int i) =>
        Math.Sign(rows[i].Mark.Position.Meters - rows[i - 1].Mark.Position.Meters);

    RecordException Turned(CsvRow before, CsvRow row, int direction) =>
        Wrong(row, position, $"runs back, after {RecordException.Quote(before.Fields[position.Index])}",
            $"positions that {(direction > 0 ? "grow" : "shrink")} with distance (a tape may turn once, at its near end and not beyond 20 m)");

    RecordException Backwards(CsvRow row, ScaleDirection told)
    {
        bool down = told == ScaleDirection.Down;
        return Wrong(row, position, $"ends a scale that {(down ? "shrinks" : "grows")} with distance",
            $"one that {(down ? "grows" : "shrinks")}, as the sight's \"position_increases\": \"{(down ? "down" : "up")}\" says (one of the two is wrong)");
    }

    static RecordException Wrong(CsvRow row, CsvColumn<Length> column, string problem, string expected) =>
        new Cell(row.Place(column.Index, column.Name), row.Fields[column.Index]).Wrong(problem, expected);
}
