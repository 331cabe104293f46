namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Tests.Checks;
using Xunit;

/// <summary>Keeps the tables of docs/models/groups.md and the measurements the same.</summary>
static class Document
{
    /// <summary>Asserts that a row stands in the document as printed, and that its numbers are the ones measured.</summary>
    /// <remarks>The seed is fixed; the slack of one unit in the last digit is for the logarithms of another platform.</remarks>
    public static void Publishes(string what, string[] printed, double[] measured)
    {
        string row = $"| {what} | {string.Join(" | ", measured.Select(m => m.ToString("F3", CultureInfo.InvariantCulture)))} |";
        string text = File.ReadAllText(House.Path("docs/models/groups.md"));
        Assert.True(text.Contains($"| {what} | {string.Join(" | ", printed)} |", StringComparison.Ordinal), $"docs/models/groups.md lacks {row}");
        for (int i = 0; i < measured.Length; i++)
        {
            new Printed(printed[i], row).Matches(measured[i], 3);
        }
    }
}
