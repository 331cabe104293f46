namespace Ascham.Runner.Execution;

using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;

/// <summary>The <c>#r</c> lines of a cell: packages are served from the runner's own folder, files are checked against it.</summary>
sealed partial class ReferenceLines(HostPackages packages)
{
    /// <summary>Prepares a cell's text.</summary>
    /// <param name="source">The cell's text.</param>
    /// <param name="folder">What relative paths are relative to: the notebook's folder.</param>
    /// <returns>The text with package lines turned into comments (so that line numbers stay), the assemblies to reference, and what is wrong with the first bad line.</returns>
    public (string Code, IReadOnlyList<string> Assemblies, (int Line, string Message)? Problem) Prepare(string source, string folder)
    {
        string[] lines = source.Split('\n');
        var assemblies = new List<string>();
        for (int i = 0; i < lines.Length; i++)
        {
            string? problem = null;
            if (PackageLine().Match(lines[i]) is { Success: true } package)
            {
                problem = packages.TryFind(package.Groups["id"].Value, package.Groups["version"].Value, out string[] found);
                assemblies.AddRange(found);
                lines[i] = "// " + lines[i].Trim();
            }
            else if (FileLine().Match(lines[i]) is { Success: true } file)
            {
                problem = CheckFile(file.Groups["path"].Value, folder);
            }

            if (problem is not null)
            {
                return (source, [], (i + 1, problem + "."));
            }
        }

        return (string.Join('\n', lines), assemblies, null);
    }

    // The script compiles against the named file but runs the copy the runner has loaded: two different builds
    // would fail later with a MissingMethodException that explains nothing.
    static string? CheckFile(string path, string folder)
    {
        string full = Path.GetFullPath(path, folder);
        if (!File.Exists(full))
        {
            return $"{path} does not exist; build it first: dotnet build -c Release";
        }

        string own = Path.Combine(AppContext.BaseDirectory, Path.GetFileName(full));
        return !File.Exists(own) || Mvid(own) == Mvid(full)
            ? null
            : $"{path} is not the build the runner was made with; rebuild: dotnet build -c Release";
    }

    static Guid Mvid(string assembly)
    {
        using var reader = new PEReader(File.OpenRead(assembly));
        var metadata = reader.GetMetadataReader();
        return metadata.GetGuid(metadata.GetModuleDefinition().Mvid);
    }

    [GeneratedRegex("""^\s*#r\s+"nuget:\s*(?<id>[^,"\s]+)\s*(?:,\s*(?<version>[^"]+?))?\s*"\s*(?://.*)?$""", RegexOptions.IgnoreCase)]
    private static partial Regex PackageLine();

    [GeneratedRegex("""^\s*#r\s+"(?<path>[^"]+\.dll)"\s*(?://.*)?$""", RegexOptions.IgnoreCase)]
    private static partial Regex FileLine();
}
