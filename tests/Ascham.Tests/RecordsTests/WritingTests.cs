namespace Ascham.Tests.RecordsTests;

using Ascham.Groups;
using Ascham.Records;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

public sealed class WritingTests : IDisposable
{
    readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_file_is_replaced_and_nothing_else_is_left()
    {
        folder.Put("setup.json", "old");
        SetupFile.Write(folder.Path("setup.json"), Example.Setup);
        Assert.Equal(Example.Setup, SetupFile.Read(folder.Path("setup.json")));
        Assert.Equal(["setup.json"], folder.Entries);
    }

    [Fact]
    public void A_setup_is_written_for_people_to_read()
    {
        SetupFile.Write(folder.Path("setup.json"), Example.Setup);
        string text = File.ReadAllText(folder.Path("setup.json"));
        Assert.StartsWith("{\n  \"name\": \"field bow\",\n  \"bow\": {\n    \"peak_weight\": \"62 lbf\",\n    \"launch_speed\": \"278 ft/s\",\n", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "shots.csv, line 2: there is a NUL byte, as in UTF-16 or binary files; expected text saved as UTF-8.")]
    [InlineData(0xFFFF, "shots.csv, line 2: there are bytes that are not UTF-8; expected text saved as UTF-8.")]
    [InlineData(0xD83C, "shots.csv: a text holds half of a two-part character.")]
    public void A_text_that_would_not_read_back_is_not_written(int character, string message)
    {
        folder.Put("shots.csv", "old");
        var shot = ShotsFile.Read(folder.Put("good.csv", Example.Shots))[0];
        var error = Assert.Throws<RecordException>(() => ShotsFile.Write(folder.Path("shots.csv"), [shot with { Note = ((char)character).ToString() }]));
        Assert.EndsWith(message, error.Message, StringComparison.Ordinal);
        AssertUntouched("shots.csv", "good.csv");
    }

    [Fact]
    public void A_value_that_would_not_read_back_is_not_written()
    {
        folder.Put("shots.csv", "old");
        var shots = ShotsFile.Read(folder.Put("good.csv", Example.Shots));
        AssertRefused("shots.csv, line 3, column shot: shot \"1 of evening\" was already given on line 2; expected each one once.", () => ShotsFile.Write(folder.Path("shots.csv"), [shots[0], shots[0]]));
        AssertRefused("shots.csv, line 2, column distance_yd: \"-40\" is out of range; expected yards above 0, up to 1094.", () => ShotsFile.Write(folder.Path("shots.csv"), [shots[0] with { Distance = Length.FromYards(-40) }]));
        AssertRefused("shots.csv, line 2, column right_in: an arrow that missed has no impact; expected either right and up, or missed.", () => ShotsFile.Write(folder.Path("shots.csv"), [shots[0] with { Missed = Miss.Low }]));
        AssertRefused("shots.csv, line 2, column right_mm: the field is blank; expected millimetres from -10000 to 10000.", () => ShotsFile.Write(folder.Path("shots.csv"), [shots[0] with { Impact = null }]));
        AssertRefused("shots.csv, line 1: there are no rows under the header; expected one row or more.", () => ShotsFile.Write(folder.Path("shots.csv"), []));
        AssertUntouched("shots.csv", "good.csv");
    }

    [Fact]
    public void A_tape_out_of_order_is_not_written()
    {
        folder.Put("marks.csv", "old");
        var marks = new Marks([new(Length.FromYards(40), Length.Zero), new(Length.FromYards(30), Length.Zero)], LengthUnit.Yard, PositionUnit.Of(LengthUnit.Inch));
        AssertRefused("marks.csv, line 3, column distance_yd: \"30\" is nearer than the mark before it; expected distances that grow from row to row.", () => MarksFile.Write(folder.Path("marks.csv"), marks));
        AssertUntouched("marks.csv");
    }

    [Fact]
    public void A_setup_that_contradicts_itself_is_not_written()
    {
        folder.Put("setup.json", "old");
        var both = Example.Setup with { Arrow = Example.Setup.Arrow with { DragArea = Area.FromSquareMillimeters(60) } };
        Assert.Throws<RecordException>(() => SetupFile.Write(folder.Path("setup.json"), both));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SetupFile.Write(folder.Path("setup.json"), Example.Setup with { Sight = Example.Sight with { TapePerPinTravel = double.NaN } }));
        Assert.StartsWith("setup.Sight.TapePerPinTravel must be positive and finite; it was NaN.", error.Message, StringComparison.Ordinal);
        AssertUntouched("setup.json");
    }

    [Fact]
    public void A_disk_that_fills_up_leaves_the_old_file_and_no_temporary_one()
    {
        string path = folder.Put("x.csv", "old");
        AssertRefused($"{path}: the system could not read or write it: no space left.", () => AtomicFile.Write(path, stream =>
        {
            stream.Write("half"u8);
            throw new IOException("no space left");
        }, _ => { }));
        AssertUntouched("x.csv");
    }

    [Fact]
    public void A_target_that_is_a_folder_is_refused()
    {
        Directory.CreateDirectory(folder.Path("setup.json"));
        AssertRefused($"{folder.Path("setup.json")}: this is a folder; expected the name of a file.", () => SetupFile.Write(folder.Path("setup.json"), Example.Setup));
        Assert.Equal(["setup.json"], folder.Entries);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path("setup.json")));
    }

    [Fact]
    public void A_target_below_a_file_or_in_no_folder_is_refused()
    {
        string below = Path.Combine(folder.Put("plain", "old"), "setup.json"), nowhere = Path.Combine(folder.Path("none"), "setup.json");
        Assert.StartsWith($"{below}: ", Assert.Throws<RecordException>(() => SetupFile.Write(below, Example.Setup)).Message, StringComparison.Ordinal);
        AssertRefused($"{nowhere}: there is no such folder.", () => SetupFile.Write(nowhere, Example.Setup));
        AssertUntouched("plain");
    }

    [Fact]
    public void A_file_marked_as_read_only_is_kept()
    {
        string path = folder.Put("setup.json", "old");
        File.SetAttributes(path, FileAttributes.ReadOnly);
        AssertRefused($"{path}: the file is marked as read only.", () => SetupFile.Write(path, Example.Setup));
        AssertUntouched("setup.json");
        File.SetAttributes(path, FileAttributes.Normal);
    }

    [Fact]
    public void A_link_is_followed_and_stays_a_link()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need a privilege there.");
        folder.Put("real.json", "old");
        File.CreateSymbolicLink(folder.Path("setup.json"), folder.Path("real.json"));
        SetupFile.Write(folder.Path("setup.json"), Example.Setup);
        Assert.NotNull(new FileInfo(folder.Path("setup.json")).LinkTarget);
        Assert.Equal(Example.Setup, SetupFile.Read(folder.Path("real.json")));
        Assert.Equal(["real.json", "setup.json"], folder.Entries);
    }

    [Fact]
    public void A_device_is_never_replaced_by_a_file()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "There is no such device here.");
        File.CreateSymbolicLink(folder.Path("setup.json"), "/dev/full");
        string[] before = Directory.GetFileSystemEntries("/dev");
        AssertRefused($"{folder.Path("setup.json")}: this is a device; expected the name of a file.", () => SetupFile.Write(folder.Path("setup.json"), Example.Setup));
        AssertRefused("/dev/full: this is a device; expected the name of a file.", () => SetupFile.Write("/dev/full", Example.Setup));
        Assert.Equal(before, Directory.GetFileSystemEntries("/dev"));
        Assert.Equal(["setup.json"], folder.Entries);
    }

    static void AssertRefused(string message, Action write) => Assert.Equal(message, Assert.Throws<RecordException>(write).Message);

    void AssertUntouched(string name, params string[] others)
    {
        Assert.Equal("old", File.ReadAllText(folder.Path(name)));
        Assert.Equal(new[] { name }.Concat(others).Order(), folder.Entries);
    }
}
