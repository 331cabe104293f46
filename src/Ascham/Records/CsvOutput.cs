namespace Ascham.Records;

using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

/// <summary>Writes rows as CSV: comma, line feed, UTF-8 without mark; columns without any content are left out unless required.</summary>
sealed class CsvOutput<TRow>(IReadOnlyList<TRow> rows)
{
    readonly List<(string Header, Func<TRow, string?> Text)> columns = [];

    internal void Text(string header, Func<TRow, string?> get, bool required = false)
    {
        if (required || rows.Any(r => !string.IsNullOrEmpty(get(r))))
        {
            columns.Add((header, get));
        }
    }

    internal void Word<T>(string header, Words<T> words, Func<TRow, T?> get, bool required = false)
        where T : struct => Text(header, r => get(r) is { } value ? words.Write(value) : null, required);

    /// <summary>Writes quantities in the unit of the first one, or in one asked for.</summary>
    internal void Measure<T>(string name, Measure<T> measure, Func<TRow, T?> get, bool required = false, Unit<T>? unit = null)
        where T : struct
    {
        var used = unit ?? rows.Select(get).Where(q => q is not null).Select(q => measure.UnitOf(q!.Value)).FirstOrDefault(measure.Units[0]);
        Text($"{name}_{used.Text}", r => get(r) is { } quantity ? NumberText.Write(used.To(quantity)) : null, required);
    }

    internal void WriteTo(Stream stream)
    {
        var encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
        using var writer = new StreamWriter(stream, encoding, leaveOpen: true);
        using var csv = new CsvWriter(writer, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        WriteRow(csv, columns.Select(c => c.Header));
        foreach (var row in rows)
        {
            WriteRow(csv, columns.Select(c => c.Text(row) ?? ""));
        }
    }

    static void WriteRow(CsvWriter csv, IEnumerable<string> fields)
    {
        foreach (string field in fields)
        {
            csv.WriteField(field, NeedsQuotes(field));
        }

        csv.NextRecord();
    }

    // A number sign would make a comment of the row, space at the ends would be dropped on reading.
    static bool NeedsQuotes(string field) =>
        field.Length > 0 && (field[0] == '#' || field != field.Trim() || field.IndexOfAny([',', ';', '"', '\r', '\n']) >= 0);
}
