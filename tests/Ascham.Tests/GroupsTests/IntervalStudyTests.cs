namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Xunit;

/// <summary>Plays a few rows of docs/validation/coverage.md again, and holds the page to what the documentation promises.</summary>
public class IntervalStudyTests
{
    static readonly string[] Page = File.Exists(House.Path(IntervalStudyPage.Path)) ? File.ReadAllLines(House.Path(IntervalStudyPage.Path)) : [];

    static readonly Sampling Round = Sampling.All[0], StretchedWild = Sampling.All[3];

    [Fact(Explicit = true)] // run with -explicit only after a change of an interval; a quarter of an hour on two quiet cores
    public void Write_the_whole_study() => IntervalStudyPage.Write();

    [Fact]
    public void Rows_of_one_group_are_as_published()
    {
        Same("One group", Round.Name, 3, IntervalStudy.OneGroup(Round, 3));
        Same("One group", StretchedWild.Name, 12, IntervalStudy.OneGroup(StretchedWild, 12));
    }

    [Fact]
    public void A_row_of_two_groups_is_as_published() => Same("Two groups", Round.Name, 6, IntervalStudy.TwoGroups(Round, 6));

    [Fact]
    public void A_row_of_strings_is_as_published() => Same("Strings", StretchedWild.Name, 5, IntervalStudy.Strings(StretchedWild, 5));

    [Fact]
    public void A_row_of_numbered_arrows_is_as_published() => Same("Numbered arrows", $"tau 0.5, {Round.Name}", 3, IntervalStudy.Numbered(Round, 3, 0.5));

    [Fact]
    public void A_row_of_growing_scatter_is_as_published() => Same("Scatter that grows", IntervalStudyPage.Growths[0].Name, 5, IntervalStudy.Growth(0, 5, IntervalStudyPage.Growths[0].Parts));

    [Fact] // too long to play again whole: the first groups of the row, within four and a half standard errors of the published share
    public void The_first_groups_of_a_row_of_hits_agree_with_the_published_row()
    {
        const int groups = 25;
        Tally first = IntervalStudy.Hit(Round, 6, groups);
        foreach (var (statement, share) in Row("Hits", Round.Name, 6))
        {
            Assert.InRange(first[statement] - share, -4.5 * Math.Sqrt((share * (1 - share)) + 0.01) / Math.Sqrt(groups), 4.5 * Math.Sqrt((share * (1 - share)) + 0.01) / Math.Sqrt(groups));
        }
    }

    [Theory] // exact for round normal groups: four simulation standard errors of 90 %
    [InlineData("One group", 1.9, "sigma, one axis", "sigma, both axes", "radius of nine tenths", "centre, one coordinate", "centre, disc", "centre, ellipse", "next arrow, circle", "next arrow, ellipse")]
    [InlineData("Two groups", 2.7, "spread ratio, one axis", "spread ratio, both axes", "shift up, Round", "distance in sigmas")]
    [InlineData("Strings", 2.7, "slope, least squares", "sigma about the line")]
    [InlineData("Hits", 13.4, "on aim, Round", "score, Round")]
    public void What_is_exact_for_round_groups_is_held_as_stated(string section, double allowed, params string[] statements) => Assert.All(IntervalStudy.Sizes, n =>
    {
        var row = Row(section, Round.Name, n).ToDictionary(c => c.Statement, c => 100 * c.Share);
        Assert.All(statements, s => Assert.InRange(row[s], 90 - allowed, 90 + allowed));
    });

    [Theory] // needs no roundness
    [InlineData("One group", 1.9, "sigma, one axis", "centre, one coordinate", "centre, ellipse", "next arrow, ellipse", "axis ratio")]
    [InlineData("Two groups", 2.7, "spread ratio, one axis", "shift up, AnyShapeUnlike")]
    [InlineData("Strings", 2.7, "slope, least squares", "sigma about the line")]
    public void What_needs_no_roundness_is_held_in_stretched_groups(string section, double allowed, params string[] statements) => Assert.All(IntervalStudy.Sizes, n =>
    {
        var row = Row(section, Sampling.All[1].Name, n).ToDictionary(c => c.Statement, c => 100 * c.Share);
        Assert.All(statements, s => Assert.InRange(row[s], 90 - allowed, 90 + allowed + 2));
    });

    // One unit in the last digit and a few cases are for the logarithms and sines of another platform.
    static void Same(string section, string name, int n, Tally tally)
    {
        var published = Row(section, name, n).ToArray();
        Assert.NotEmpty(published);
        Assert.All(published, cell => Assert.Equal(100 * cell.Share, 100 * tally[cell.Statement], 0.35));
    }

    static IEnumerable<(string Statement, double Share)> Row(string section, string name, int n)
    {
        string[] lines = [.. Page.SkipWhile(l => !l.StartsWith($"## {section}", StringComparison.Ordinal)).Skip(1).TakeWhile(l => !l.StartsWith("## ", StringComparison.Ordinal)).Where(l => l.StartsWith('|'))];
        string[] statements = Cells(lines[0]), row = Cells(lines.Single(l => l.StartsWith($"| {name} | {n} |", StringComparison.Ordinal)));
        return statements.Zip(row).Skip(2).Where(c => c.Second.Length > 0).Select(c => (c.First, double.Parse(c.Second, CultureInfo.InvariantCulture) / 100));
    }

    static string[] Cells(string line) => [.. line.Trim('|').Split('|').Select(c => c.Trim())];
}
