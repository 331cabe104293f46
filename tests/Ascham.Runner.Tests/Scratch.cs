namespace Ascham.Runner.Tests;

using System.Globalization;
using System.Runtime.CompilerServices;
using Ascham.Runner.Commands;
using Xunit;

/// <summary>A folder of its own with a folder <c>notebooks</c> in it, gone after the test; and the command line run there.</summary>
sealed class Scratch : IDisposable
{
    readonly string before = Directory.GetCurrentDirectory();

    public Scratch()
    {
        Folder = Directory.CreateTempSubdirectory("ascham-runner-test-").FullName;
        Directory.CreateDirectory(Path("notebooks"));
    }

    public string Folder { get; }

    public string Output { get; private set; } = "";

    public string Error { get; private set; } = "";

    public string Path(string relative) => System.IO.Path.Combine(Folder, relative);

    public string Read(string relative) => File.ReadAllText(Path(relative));

    public string Write(string relative, string text)
    {
        File.WriteAllText(Path(relative), text);
        return Path(relative);
    }

    /// <summary>Runs <c>ascham</c> with this folder as the current one.</summary>
    /// <returns>The exit code.</returns>
    public Task<int> Run(params string[] arguments) => Run(TestContext.Current.CancellationToken, arguments);

    public async Task<int> Run(CancellationToken cancellation, params string[] arguments)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        Directory.SetCurrentDirectory(Folder);
        try
        {
            return await CommandLine.RunAsync(arguments, new Screen(output, error, interactive: false), cancellation);
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            Output = output.ToString();
            Error = error.ToString();
        }
    }

    /// <summary>Names of all files below the folder, in order.</summary>
    public IReadOnlyList<string> Files() =>
        [.. Directory.GetFiles(Folder, "*", SearchOption.AllDirectories).Select(f => System.IO.Path.GetRelativePath(Folder, f)).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

static class Setup
{
    [ModuleInitializer]
    internal static void InvariantCulture() =>
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
}
