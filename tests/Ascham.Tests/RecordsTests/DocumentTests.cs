namespace Ascham.Tests.RecordsTests;

using System.Text.RegularExpressions;
using Ascham.Records;
using Xunit;

/// <summary>The examples of the page on files are files.</summary>
public sealed class DocumentTests : IDisposable
{
    readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_examples_on_the_page_on_files_read_together()
    {
        foreach (string name in new[] { "setup.json", "sessions.csv", "shots.csv", "marks.csv", "log.csv" })
        {
            folder.Put(name, Block(name));
        }

        var setup = SetupFile.Read(folder.Path("setup.json"));
        var sessions = SessionsFile.Read(SessionsFile.Beside(folder.Path("shots.csv")), setup.Sight);
        var shots = ShotsFile.Read(folder.Path("shots.csv"), setup.Sight, sessions);
        var marks = MarksFile.Read(folder.Path("marks.csv"), setup.Sight);
        var log = LogFile.Read(folder.Path("log.csv"), sessions);
        Assert.Equal((2, 3, 4, 5), (sessions.Count, shots.Count, marks.Count, log.Count));
        Assert.All(sessions, s => Assert.Equal(setup.Name, s.Setup));
    }

    [Fact]
    public void Every_key_and_column_the_writers_know_is_on_the_page()
    {
        var shot = ShotsFile.Read(folder.Put("shots.csv", Example.Shots));
        ShotsFile.Write(folder.Path("shots.csv"), shot);
        string header = File.ReadLines(folder.Path("shots.csv")).First();
        string page = Page();
        Assert.Equal(15, header.Split(',').Length);
        Assert.All(header.Split(','), column => Assert.Contains($"`{Regex.Replace(column, "_(yd|in|mm)$", "_")}", page, StringComparison.Ordinal));
        SetupFile.Write(folder.Path("setup.json"), Example.Setup);
        var keys = Regex.Matches(File.ReadAllText(folder.Path("setup.json")), "\"(\\w+)\":").Select(m => m.Groups[1].Value).ToArray();
        Assert.Contains("tape_per_pin_travel", keys);
        Assert.All(keys, key => Assert.Contains($"\"{key}\":", page, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_word_of_the_log_is_on_the_page() =>
        Assert.All(Enum.GetValues<LogQuantity>(), q => Assert.Contains($"`{LogVocabulary.WordOf(q)}`", Page(), StringComparison.Ordinal));

    static string Page() => File.ReadAllText(House.Path("docs/files.md"));

    static string Block(string name) =>
        Regex.Match(Page(), $@"^## `{Regex.Escape(name)}`.*?^```\w+\r?\n(.*?)^```", RegexOptions.Singleline | RegexOptions.Multiline).Groups[1].Value;
}
