namespace Ascham.Tests;

using System.Text.RegularExpressions;
using Xunit;

public partial class RoomTests
{
    // room -> the rooms it may name. A new arrow is a design decision: change this table in the same commit and say why.
    static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Quantities"] = [],
        ["Numerics"] = [],
        ["Air"] = ["Quantities", "Numerics"],
        ["Arrows"] = ["Quantities", "Numerics"],
        ["Bows"] = ["Quantities", "Numerics", "Arrows"],
        ["Flight"] = ["Quantities", "Numerics", "Air", "Arrows", "Bows"],
        ["Sights"] = ["Quantities", "Numerics", "Air", "Flight"],
        ["Groups"] = ["Quantities", "Numerics"],
        // The only room that joins groups and flight.
        ["Causes"] = ["Quantities", "Numerics", "Air", "Arrows", "Bows", "Flight", "Sights", "Groups"],
        // Speed from sound needs the speed of sound and, for a launch speed, the flight itself.
        ["Recordings"] = ["Quantities", "Numerics", "Air", "Flight"],
        // Records fills the types of these rooms, Causes' readings and signs from the log among them; nothing in the library knows it.
        ["Records"] = ["Quantities", "Air", "Arrows", "Bows", "Sights", "Groups", "Causes"],
    };

    [Fact]
    public void Every_room_names_only_the_rooms_below_it()
    {
        var wrong = from folder in Directory.GetDirectories(House.Path("src/Ascham"))
                    let room = Path.GetFileName(folder)
                    where Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Any()
                    from file in Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories)
                    from used in RoomsNamed(File.ReadAllText(file))
                    where used != room && !(Allowed.TryGetValue(room, out var below) && below.Contains(used))
                    select $"{room}/{Path.GetFileName(file)} names {used}";

        Assert.Empty(wrong.Distinct());
    }

    [Fact]
    public void A_planted_reference_is_reported() =>
        Assert.Contains("Flight", RoomsNamed("namespace Ascham.Groups;\nusing Ascham.Flight;\n"));

    [Fact]
    public void The_library_references_no_chart_frame_or_kernel_package()
    {
        string project = File.ReadAllText(House.Path("src/Ascham/Ascham.csproj"));
        Assert.DoesNotMatch("Plotly|Deedle|DotNet\\.Interactive", project);
    }

    static IEnumerable<string> RoomsNamed(string code) =>
        RoomName().Matches(code).Select(m => m.Groups[1].Value).Distinct();

    [GeneratedRegex(@"\bAscham\.([A-Z]\w+)")]
    private static partial Regex RoomName();
}
