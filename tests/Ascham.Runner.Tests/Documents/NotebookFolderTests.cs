namespace Ascham.Runner.Tests.Documents;

using Ascham.Runner.Documents;
using Xunit;

public sealed class NotebookFolderTests : IDisposable
{
    readonly Scratch scratch = new();

    public NotebookFolderTests()
    {
        foreach (string name in new[] { "02-b", "01-a", "01-a-more", "11-c" })
        {
            scratch.Write($"notebooks/{name}.ipynb", "");
        }
    }

    public void Dispose() => scratch.Dispose();

    [Theory]
    [InlineData("01-a", "01-a")]
    [InlineData("01", "01-a 01-a-more")]
    [InlineData("1", "11-c")]
    [InlineData("02-B", "02-b")]
    [InlineData("notebooks/11-c.ipynb", "11-c")]
    [InlineData("11-c.ipynb", "11-c")]
    public void A_name_is_a_stem_or_the_beginning_of_one_or_a_path(string name, string expected) =>
        Assert.Equal(expected, Stems(Find().Select([name], scratch.Folder)));

    [Fact]
    public void Without_names_all_are_meant_in_order() =>
        Assert.Equal("01-a 01-a-more 02-b 11-c", Stems(Find().Select([], scratch.Folder)));

    [Fact]
    public void A_notebook_named_twice_is_run_once() =>
        Assert.Equal("01-a 01-a-more", Stems(Find().Select(["01-a", "01"], scratch.Folder)));

    [Theory]
    [InlineData("03")]
    [InlineData("")]
    [InlineData("a")]
    public void An_unknown_name_lists_the_known_ones(string name)
    {
        var error = Assert.Throws<UsageException>(() => Find().Select([name], scratch.Folder));
        Assert.Equal($"no notebook is called '{name}'; there are: 01-a, 01-a-more, 02-b, 11-c.", error.Message);
    }

    [Fact]
    public void The_folder_is_found_from_below()
    {
        string deep = Directory.CreateDirectory(scratch.Path("data/more")).FullName;
        Assert.Equal(scratch.Path("notebooks"), NotebookFolder.Find(deep, null).FullPath);
    }

    [Fact]
    public void No_folder_and_a_wrong_folder_are_said()
    {
        Assert.Contains("--notebooks", Assert.Throws<UsageException>(() => NotebookFolder.Find(Path.GetPathRoot(scratch.Folder)!, null)).Message, StringComparison.Ordinal);
        Assert.Contains("is not a folder with notebooks", Assert.Throws<UsageException>(() => NotebookFolder.Find(scratch.Folder, "nowhere")).Message, StringComparison.Ordinal);
    }

    NotebookFolder Find() => NotebookFolder.Find(scratch.Folder, null);

    static string Stems(IEnumerable<string> files) => string.Join(' ', files.Select(Path.GetFileNameWithoutExtension));
}
