namespace Ascham.Records;

using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

/// <summary>A CSV file as header and rows, read as a stream, every row with the line it starts on.</summary>
/// <remarks>
/// RFC 4180 with three liberties: comment lines start with <c>#</c>, the separator may be a semicolon (seen from the header),
/// and space around an unquoted field is dropped. Rows without any content are skipped.
/// </remarks>
sealed class CsvTable : IDisposable
{
    /// <summary>Most rows accepted.</summary>
    internal const int MostRows = 1_000_000;

    /// <summary>Longest field accepted, in characters.</summary>
    internal const int LongestField = 1 << 16;

    readonly string file;
    readonly GuardedReader reader;
    readonly CsvParser parser;

    // Lines before the parser's first.
    int offset;

    /// <param name="stream">The file's bytes; closed with the table.</param>
    /// <param name="file">Path for messages.</param>
    /// <exception cref="RecordException">No header, or no text.</exception>
    internal CsvTable(Stream stream, string file)
    {
        this.file = file;
        reader = new GuardedReader(stream, file);
        string header = ReadHeaderLine();
        string delimiter = header.Contains(';', StringComparison.Ordinal) ? ";" : ",";
        Header = new CsvHeader(file, offset, Fields(header, delimiter));
        parser = new CsvParser(reader, Configuration(delimiter));
    }

    internal CsvHeader Header { get; }

    /// <summary>Reads the rows, once.</summary>
    internal IEnumerable<CsvRow> Rows()
    {
        int count = 0;
        while (Next() is { } row)
        {
            if (row.Fields.All(f => f.Length == 0))
            {
                continue;
            }

            if (row.Fields.Length != Header.Count)
            {
                throw WrongCount(row);
            }

            if (++count > MostRows)
            {
                throw new RecordException(new(file, row.Line), "the file has too many rows", expected: FormattableString.Invariant($"at most {MostRows}"));
            }

            yield return row;
        }

        if (count == 0)
        {
            throw new RecordException(new(file, Header.Line), "there are no rows under the header", expected: "one row or more");
        }
    }

    public void Dispose()
    {
        parser.Dispose();
        reader.Dispose();
    }

    string ReadHeaderLine()
    {
        while (reader.ReadLine() is { } text)
        {
            offset++;
            if (text.Contains('\t', StringComparison.Ordinal) && text.IndexOfAny([',', ';', '#']) < 0)
            {
                throw new RecordException(new(file, offset), "the columns are separated by tabs", expected: "commas or semicolons");
            }

            if (!string.IsNullOrWhiteSpace(text) && text[0] != '#')
            {
                return text;
            }
        }

        throw new RecordException(new(file), "the file is empty", expected: "a header line and rows");
    }

    string[] Fields(string headerLine, string delimiter)
    {
        using var text = new StringReader(headerLine);
        using var line = new CsvParser(text, Configuration(delimiter));
        return line.Read() ? line.Record! : [];
    }

    CsvRow? Next()
    {
        try
        {
            if (!parser.Read())
            {
                return null;
            }
        }
        catch (MaxFieldSizeException e)
        {
            throw TooLong(FirstLine(), e);
        }

        // The parser measures a field only when it needs more text, so one a little too long can pass it.
        var row = new CsvRow(file, FirstLine(), parser.Record!);
        return row.Fields.Any(f => f.Length > LongestField) ? throw TooLong(row.Line, null) : row;
    }

    RecordException TooLong(int line, Exception? inner) =>
        new(new(file, line), "a field is too long, or the quote that opened it is not closed", null, FormattableString.Invariant($"at most {LongestField} characters"), inner);

    // The parser counts the lines it has passed; the row starts as many lines earlier as it has line breaks inside.
    int FirstLine(bool endsInsideField = false)
    {
        string row = parser.RawRecord;
        string inside = (endsInsideField ? row : row.TrimEnd('\r', '\n')).ReplaceLineEndings("\n");
        return offset + parser.RawRow - inside.Count(c => c == '\n');
    }

    CsvConfiguration Configuration(string delimiter) => new(CultureInfo.InvariantCulture)
    {
        Delimiter = delimiter,
        HasHeaderRecord = false,
        AllowComments = true,
        Comment = '#',
        TrimOptions = TrimOptions.Trim,
        MaxFieldSize = LongestField,
        WhiteSpaceChars = [' ', '\t'],
        BadDataFound = bad => throw BadQuote(bad),
    };

    RecordException BadQuote(BadDataFoundArgs bad)
    {
        // No parser yet: the header itself is bad. A quote left open at the end of the file has swallowed the last line break.
        int line = parser is null ? offset : FirstLine(endsInsideField: bad.Field.EndsWith('\n') || bad.Field.EndsWith('\r'));
        return new(new(file, line), "a quote is not closed, or stands inside an unquoted field", bad.Field, "the whole field in quotes, and a quote inside it doubled");
    }

    RecordException WrongCount(CsvRow row)
    {
        string hint = row.Fields.Length > Header.Count ? " (a text with a separator in it needs quotes; numbers have a decimal point)" : "";
        return new(new(file, row.Line), FormattableString.Invariant($"the row has {row.Fields.Length} fields"),
            expected: FormattableString.Invariant($"{Header.Count}, as in the header{hint}"));
    }
}

/// <summary>One row: its fields, and the line it starts on.</summary>
readonly record struct CsvRow(string File, int Line, string[] Fields)
{
    internal Place Place(int index, string name) => new(File, Line, index + 1, name);
}
