namespace Ascham.Runner.Documents;

using System.Text.RegularExpressions;

/// <summary>Takes this machine's folders out of a text, so that the same notebook gives the same page everywhere.</summary>
sealed class MachinePaths
{
    readonly Regex? prefix;

    /// <param name="folders">Folders whose names must not appear; what lies below one is written relative to it.</param>
    public MachinePaths(params string[] folders)
    {
        // Longest first: a folder inside another one is taken out before the outer one.
        string[] prefixes = [.. folders
            .Select(f => Path.TrimEndingDirectorySeparator(Path.GetFullPath(f)) + Path.DirectorySeparatorChar)
            .Where(f => Path.GetPathRoot(f) != f)
            .Distinct()
            .OrderByDescending(f => f.Length)];
        // Not in the middle of a longer path that happens to contain the same words.
        prefix = prefixes.Length == 0 ? null : new($@"(?:file://|(?<![\w./\\-]))(?:{string.Join('|', prefixes.Select(Regex.Escape))})");
    }

    public string Strip(string text) => prefix?.Replace(text, "") ?? text;
}
