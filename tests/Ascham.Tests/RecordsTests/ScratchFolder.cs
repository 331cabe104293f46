namespace Ascham.Tests.RecordsTests;

using System.Text;

/// <summary>A folder of its own for one test, removed at the end.</summary>
sealed class ScratchFolder : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("records-").FullName;

    public string[] Entries => [.. Directory.GetFileSystemEntries(folder).Select(e => System.IO.Path.GetFileName(e)).Order()];

    public string Path(string name) => System.IO.Path.Combine(folder, name);

    public string Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    public string Put(string name, byte[] bytes)
    {
        File.WriteAllBytes(Path(name), bytes);
        return Path(name);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
