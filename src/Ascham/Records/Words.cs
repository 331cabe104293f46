namespace Ascham.Records;

using Ascham.Groups;

/// <summary>A closed list of words and what each stands for; the first word of a value is the one written.</summary>
sealed class Words<T>(params (string Word, T Value)[] list)
    where T : struct
{
    /// <summary>The words, for messages.</summary>
    internal string Expected { get; } = Wording.OneOf(list.Select(w => w.Word));

    /// <summary>Reads a word, whatever its case.</summary>
    internal T Read(Cell cell)
    {
        foreach (var (word, value) in list)
        {
            if (word.Equals(cell.Text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        throw cell.Wrong("is none of the words known here", Expected);
    }

    internal string Write(T value) => list.First(w => w.Value.Equals(value)).Word;
}

/// <summary>The closed vocabularies of the files.</summary>
static class Vocabulary
{
    internal static readonly Words<bool> YesNo =
        new(("yes", true), ("no", false), ("true", true), ("false", false), ("1", true), ("0", false));

    internal static readonly Words<Miss> Misses =
        new(("low", Miss.Low), ("high", Miss.High), ("left", Miss.Left), ("right", Miss.Right), ("unknown", Miss.Unknown));

    internal static readonly Words<DistanceSource> DistanceSources =
        new(("marked", DistanceSource.Marked), ("ranged", DistanceSource.Ranged), ("judged", DistanceSource.Judged));
}

/// <summary>Turns of phrase of the messages.</summary>
static class Wording
{
    /// <summary>Lists as <c>a, b or c</c>.</summary>
    internal static string OneOf(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} or {all[^1]}";
    }

    /// <summary>The known name nearest to a mistyped one; <see langword="null"/> when none is near.</summary>
    internal static string? Nearest(string typed, IEnumerable<string> known)
    {
        var nearest = known.Select(name => (Name: name, Edits: Edits(typed, name))).MinBy(c => c.Edits);
        return nearest.Name is not null && nearest.Edits <= 1 + nearest.Name.Length / 3 ? nearest.Name : null;
    }

    // Insertions, deletions and exchanges of one character that lead from a to b, whatever the case (V. I. Levenshtein, 1966).
    static int Edits(string a, string b)
    {
        // Nothing longer than this is a slip of the finger, and the table below is held in memory.
        const int longest = 64;
        if (a.Length > longest)
        {
            return int.MaxValue;
        }

        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 0; i < a.Length; i++)
        {
            int diagonal = row[0]++;
            for (int j = 0; j < b.Length; j++)
            {
                int exchange = diagonal + (char.ToLowerInvariant(a[i]) == char.ToLowerInvariant(b[j]) ? 0 : 1);
                diagonal = row[j + 1];
                row[j + 1] = Math.Min(exchange, 1 + Math.Min(diagonal, row[j]));
            }
        }

        return row[^1];
    }
}
