namespace Ascham.Runner.Execution;

using System.Text.Json.Nodes;

/// <summary>The packages the runner ships with, read from its own dependency file: name, version and assemblies.</summary>
sealed class HostPackages
{
    readonly Dictionary<string, (string Version, string[] Assemblies)> packages = new(StringComparer.OrdinalIgnoreCase);

    public static HostPackages Load() => Read(AppContext.BaseDirectory, typeof(HostPackages).Assembly.GetName().Name + ".deps.json");

    static HostPackages Read(string folder, string file)
    {
        var host = new HostPackages();
        var deps = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, file)))!;
        // Not the first target: in a publish for one platform that one is empty.
        string target = (string)deps["runtimeTarget"]!["name"]!;
        foreach (var (key, library) in deps["targets"]![target]!.AsObject())
        {
            string[] name = key.Split('/');
            var assemblies = (library!["runtime"] as JsonObject ?? [])
                .Select(r => Path.Combine(folder, Path.GetFileName(r.Key)))
                .Where(File.Exists);
            host.packages[name[0]] = (name[1], [.. assemblies]);
        }

        return host;
    }

    /// <summary>The assemblies of a package.</summary>
    /// <param name="id">The package's name.</param>
    /// <param name="version">The version asked for; empty or with a star for any.</param>
    /// <param name="assemblies">Full paths.</param>
    /// <returns>Null when found, else one sentence saying why not.</returns>
    public string? TryFind(string id, string version, out string[] assemblies)
    {
        assemblies = [];
        if (!packages.TryGetValue(id, out var package))
        {
            return $"the package {id} is not among those the runner carries, and it fetches none";
        }

        if (version.Length > 0 && !version.Contains('*') && version != package.Version)
        {
            return $"the notebook asks for {id} {version}, the runner carries {id} {package.Version}; change the #r line";
        }

        assemblies = package.Assemblies;
        return null;
    }
}
