namespace Ascham.Runner.Documents;

/// <summary>The folder of notebooks, and the choice among them by name.</summary>
sealed class NotebookFolder
{
    NotebookFolder(string path) => FullPath = path;

    public string FullPath { get; }

    /// <summary>The folder that holds the notebooks' folder: paths below it are written relative to it.</summary>
    public string Root => Path.GetDirectoryName(FullPath) ?? FullPath;

    public IReadOnlyList<string> Files =>
        [.. Directory.GetFiles(FullPath, "*.ipynb").OrderBy(Stem, StringComparer.Ordinal)];

    /// <summary>Finds the nearest folder <c>notebooks</c> with a notebook in it, from a folder upwards.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="asked">A folder named by the user, relative to <paramref name="start"/>; null to search.</param>
    public static NotebookFolder Find(string start, string? asked)
    {
        if (asked is not null)
        {
            string full = Path.GetFullPath(asked, start);
            return HasNotebooks(full) ? new(full) : throw new UsageException($"{full} is not a folder with notebooks (*.ipynb) in it.");
        }

        for (string? folder = start; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            string candidate = Path.Combine(folder, "notebooks");
            if (HasNotebooks(candidate))
            {
                return new(candidate);
            }
        }

        throw new UsageException($"no folder 'notebooks' with notebooks in it was found in {start} or above; name one with --notebooks.");
    }

    /// <summary>The notebooks with the given names; all of them when no name is given.</summary>
    /// <param name="names">File stems, beginnings of stems (<c>01</c>), or paths to notebook files.</param>
    /// <param name="start">What a path in <paramref name="names"/> is relative to.</param>
    public IReadOnlyList<string> Select(IReadOnlyList<string> names, string start) =>
        names.Count == 0 ? Files : [.. names.SelectMany(name => Named(name, start)).Distinct()];

    List<string> Named(string name, string start)
    {
        if (name.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase))
        {
            string path = Path.GetFullPath(name, start);
            if (File.Exists(path))
            {
                return [path];
            }

            name = Path.GetFileNameWithoutExtension(name);
        }

        var exact = Files.Where(f => Stem(f).Equals(name, StringComparison.OrdinalIgnoreCase)).ToList();
        var found = exact.Count > 0 ? exact : [.. Files.Where(f => Stem(f).StartsWith(name, StringComparison.OrdinalIgnoreCase))];
        return found.Count > 0 && name.Length > 0
            ? found
            : throw new UsageException($"no notebook is called '{name}'; there are: {string.Join(", ", Files.Select(Stem))}.");
    }

    static string Stem(string file) => Path.GetFileNameWithoutExtension(file);

    static bool HasNotebooks(string folder) => Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*.ipynb").Any();
}
