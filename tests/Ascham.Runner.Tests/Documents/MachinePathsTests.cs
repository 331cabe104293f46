namespace Ascham.Runner.Tests.Documents;

using Ascham.Runner.Documents;
using Xunit;

public class MachinePathsTests
{
    [Theory]
    [InlineData("read /home/a/work/data/x.csv", "read data/x.csv")]
    [InlineData("file:///home/a/work/data/x.csv", "data/x.csv")]
    [InlineData("'/home/a/work/x' and (/home/a/work/y)", "'x' and (y)")]
    [InlineData("/home/a/work/inner/z", "z")]
    [InlineData("/mnt/home/a/work/x", "/mnt/home/a/work/x")]
    [InlineData("/home/a/workshop/x", "/home/a/workshop/x")]
    public void Folders_of_this_machine_are_taken_out_and_nothing_else(string text, string expected) =>
        Assert.Equal(expected, new MachinePaths("/home/a/work", "/home/a/work/inner/").Strip(text));

    [Fact]
    public void The_root_of_the_disk_is_left_alone() => Assert.Equal("a / b /c", new MachinePaths("/").Strip("a / b /c"));
}
