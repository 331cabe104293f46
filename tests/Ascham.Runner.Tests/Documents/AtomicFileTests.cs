namespace Ascham.Runner.Tests.Documents;

using Ascham.Runner.Documents;
using Xunit;

public class AtomicFileTests
{
    [Fact]
    public void A_file_is_replaced_and_nothing_else_is_left()
    {
        using var scratch = new Scratch();
        scratch.Write("a.txt", "old");
        AtomicFile.Write(scratch.Path("a.txt"), "new");
        Assert.Equal("new", scratch.Read("a.txt"));
        Assert.Equal(["a.txt"], scratch.Files());
    }

    [Fact]
    public void A_target_that_is_a_folder_is_one_sentence_and_leaves_nothing_behind()
    {
        using var scratch = new Scratch();
        var error = Assert.Throws<UsageException>(() => AtomicFile.Write(scratch.Path("notebooks"), "x"));
        Assert.StartsWith(scratch.Path("notebooks") + " cannot be written: ", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', error.Message);
        Assert.Empty(scratch.Files());
    }

    [Fact]
    public void A_file_in_the_way_of_a_folder_is_named()
    {
        using var scratch = new Scratch();
        scratch.Write("way", "kept");
        var error = Assert.Throws<UsageException>(() => AtomicFile.PrepareFolder(scratch.Path("way/reports")));
        Assert.Equal($"{scratch.Path("way/reports")} cannot be used as a folder, because {scratch.Path("way")} is a file.", error.Message);
        Assert.Equal("kept", scratch.Read("way"));
    }

    [Fact]
    public void A_device_in_place_of_a_folder_is_refused()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "there is no /dev/full here");
        Assert.Throws<UsageException>(() => AtomicFile.PrepareFolder("/dev/full"));
        Assert.Throws<UsageException>(() => AtomicFile.PrepareFolder("/proc/reports"));
    }
}
