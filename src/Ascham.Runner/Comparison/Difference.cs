namespace Ascham.Runner.Comparison;

/// <summary>One thing that is not as committed.</summary>
/// <param name="Where">The cell and the output, or the answer.</param>
/// <param name="Old">As committed; empty when it was not there.</param>
/// <param name="Now">As found; empty when it is gone.</param>
sealed record Difference(string Where, string Old, string Now)
{
    // More lines than this of one output help nobody on a terminal.
    const int MostLines = 12;
    const int MostCharacters = 200;

    /// <summary>The lines that differ: old ones marked -, new ones marked +.</summary>
    public IEnumerable<string> Lines(Tolerance tolerance)
    {
        string[] old = Split(Old), now = Split(Now);
        if (old.Length == now.Length)
        {
            var changed = Enumerable.Range(0, old.Length).Where(i => !tolerance.Same(old[i], now[i])).ToList();
            old = [.. changed.Select(i => old[i])];
            now = [.. changed.Select(i => now[i])];
        }

        return [.. Marked("-", old), .. Marked("+", now)];
    }

    static IEnumerable<string> Marked(string mark, string[] lines) =>
        lines.Take(MostLines).Select(l => $"{mark} {(l.Length > MostCharacters ? l[..MostCharacters] + " (cut)" : l)}").Concat(lines.Length > MostLines ? [$"{mark} ({lines.Length - MostLines} more lines)"] : []);

    static string[] Split(string text) => text.Length == 0 ? [] : text.TrimEnd('\n').Split('\n');
}
