namespace Ascham.Tests.AirTests;

using Ascham.Tests.Checks;

/// <summary>Reads a table of tests/authorities: comment lines that start with #, a header, rows of numbers as typed.</summary>
sealed class AuthorityFile
{
    readonly string name, source;
    readonly string[] header;
    readonly string[][] rows;

    public AuthorityFile(string name)
    {
        this.name = name;
        string[] lines = File.ReadAllLines(House.Path($"tests/authorities/{name}"));
        source = lines.First(l => l.StartsWith('#'))[1..].Trim();
        string[] table = [.. lines.Where(l => !l.StartsWith('#') && l.Length > 0)];
        header = table[0].Split(',');
        rows = [.. table.Skip(1).Select(l => l.Split(','))];
    }

    public int Count => rows.Length;

    /// <summary>A number as printed; <see langword="null"/> where the cell is empty.</summary>
    public Printed? Cell(int row, string column)
    {
        string text = rows[row][Array.IndexOf(header, column)];
        return text.Length == 0 ? null : new Printed(text, $"{name} row {row + 1}, {column} ({source})");
    }

    public double Value(int row, string column) => Cell(row, column)!.Value;

    /// <summary>The row numbers of a table, as data of a theory.</summary>
    public static Xunit.TheoryData<int> Rows(string name) => [.. Enumerable.Range(0, new AuthorityFile(name).Count)];
}
