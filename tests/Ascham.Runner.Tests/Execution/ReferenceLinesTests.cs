namespace Ascham.Runner.Tests.Execution;

using Ascham.Runner.Execution;
using Xunit;

public sealed class ReferenceLinesTests : IDisposable
{
    readonly Scratch scratch = new();
    readonly ReferenceLines lines = new(HostPackages.Load());

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void A_package_the_runner_carries_is_served_from_its_folder_and_keeps_its_line()
    {
        var (code, assemblies, problem) = lines.Prepare("int a;\n#r \"nuget: UnitsNet, 5.75.1\" // units\nint b;", scratch.Folder);
        Assert.Null(problem);
        Assert.Equal("int a;\n// #r \"nuget: UnitsNet, 5.75.1\" // units\nint b;", code);
        Assert.Equal([Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll")], assemblies);
    }

    [Fact]
    public void A_package_without_a_version_is_served_too() =>
        Assert.Single(lines.Prepare("#r \"nuget:UnitsNet\"", scratch.Folder).Assemblies);

    [Theory]
    [InlineData("\n#r \"nuget: UnitsNet, 4.0.0\"", "the notebook asks for UnitsNet 4.0.0, the runner carries UnitsNet 5.75.1; change the #r line.")]
    [InlineData("\n#r \"nuget: Nowhere.To.Be.Found, 1.0.0\"", "the package Nowhere.To.Be.Found is not among those the runner carries, and it fetches none.")]
    [InlineData("\n#r \"gone/Lib.dll\"", "gone/Lib.dll does not exist; build it first: dotnet build -c Release.")]
    public void What_cannot_be_served_is_said_with_its_line(string source, string expected) =>
        Assert.Equal((2, expected), lines.Prepare(source, scratch.Folder).Problem);

    [Fact]
    public void Another_build_of_an_assembly_the_runner_has_is_refused()
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Markdig.dll"), scratch.Path("UnitsNet.dll"));
        Assert.Equal(
            (1, "UnitsNet.dll is not the build the runner was made with; rebuild: dotnet build -c Release."),
            lines.Prepare("#r \"UnitsNet.dll\"", scratch.Folder).Problem);
    }

    [Fact]
    public void The_same_build_elsewhere_and_a_file_of_the_users_own_are_left_to_the_kernel()
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll"), scratch.Path("UnitsNet.dll"));
        File.Copy(Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll"), scratch.Path("Own.dll"));
        const string source = "#r \"UnitsNet.dll\"\n#r \"Own.dll\"";
        var (code, assemblies, problem) = lines.Prepare(source, scratch.Folder);
        Assert.Null(problem);
        Assert.Equal(source, code);
        Assert.Empty(assemblies);
    }
}
