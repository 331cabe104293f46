namespace Ascham.Notebooks;

using System.Globalization;
using System.Text;
using Ascham.Quantities;
using Deedle;
using UnitsNet;

/// <summary>A small table of texts and numbers; units stand in the headers. It never changes once made.</summary>
/// <remarks>A table as the last line of a cell shows itself. Columns that hold only numbers are set flush right.</remarks>
[TypeFormatterSource(typeof(TableFormatters), PreferredMimeTypes = [Mime.Html, Mime.Plain])]
public sealed record Table
{
    Table(IReadOnlyList<string> headers, IReadOnlyList<IReadOnlyList<string>> rows) => (Headers, Rows) = (headers, rows);

    /// <summary>One header per column, with its unit: <c>error (mm)</c>.</summary>
    public IReadOnlyList<string> Headers { get; }

    /// <summary>Rows of texts, each as long as <see cref="Headers"/>; a cell with nothing in it is empty.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }

    /// <summary>A line above the table; empty for none.</summary>
    public string Caption { get; init => field = value ?? ""; } = "";

    /// <summary>Makes a table of headers and rows of values.</summary>
    /// <param name="headers">Headers with units; at least one.</param>
    /// <param name="rows">Rows, each with one value per header. Numbers are written with four significant digits; give text where other digits are wanted.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">There is no header, or a row is not as long as the headers.</exception>
    public static Table From(IEnumerable<string> headers, IEnumerable<IEnumerable<object?>> rows)
    {
        string[] top = [.. Check.Some(headers, 100, "headers")];
        IReadOnlyList<string>[] body = [.. rows.Select(row => (string[])[.. row.Select(cell => Text(cell, null))])];
        int wrong = Array.FindIndex(body, row => row.Count != top.Length);
        return wrong < 0
            ? new(top, body)
            : throw new ArgumentException($"Each row must have {top.Length} cells, one for each header; row {wrong + 1} has {body[wrong].Count}.", nameof(rows));
    }

    /// <summary>Makes a table of things, one row each.</summary>
    /// <typeparam name="TRow">The kind of thing.</typeparam>
    /// <param name="rows">The things.</param>
    /// <param name="columns">For each column its header with unit, what to write of a thing, and the number of decimals.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">There is no column.</exception>
    /// <example><code>Table.From(marks, ("distance (yd)", m => m.Distance.Yards, 0), ("mark (mm)", m => m.Position.Millimeters, 1))</code></example>
    public static Table From<TRow>(IEnumerable<TRow> rows, params (string Header, Func<TRow, object?> Cell, int Decimals)[] columns)
    {
        Check.Some(columns, 100, "columns");
        return From(columns.Select(c => c.Header), rows.Select(row => columns.Select(c => (object?)Text(c.Cell(row), c.Decimals))));
    }

    /// <summary>Makes a table of named estimates, all in one unit.</summary>
    /// <typeparam name="T">The quantity estimated.</typeparam>
    /// <param name="rows">Names and estimates.</param>
    /// <param name="unit">The unit to write them in.</param>
    /// <param name="decimals">Decimals of values and interval ends.</param>
    /// <returns>The table: name, value, ends of the interval, its level, number of observations.</returns>
    public static Table From<T>(IEnumerable<(string Name, Estimate<T> Estimate)> rows, Enum unit, int decimals)
        where T : IQuantity => From(rows.Select(r => (r.Name, NumberText.In(r.Estimate, unit))), NumberText.Unit(unit), decimals);

    /// <summary>Makes a table of named estimates that are plain numbers.</summary>
    /// <param name="rows">Names and estimates.</param>
    /// <param name="unit">The unit as text; empty for a pure number.</param>
    /// <param name="decimals">Decimals of values and interval ends.</param>
    /// <returns>The table: name, value, ends of the interval, its level, number of observations.</returns>
    public static Table From(IEnumerable<(string Name, Estimate<double> Estimate)> rows, string unit, int decimals)
    {
        string suffix = unit.Length == 0 ? "" : $" ({unit})";
        return From<(string Name, Estimate<double> E)>(
            rows.Select(r => (r.Name, Check.Showable(r.Estimate, r.Name))),
            ("", r => r.Name, 0),
            ("value" + suffix, r => r.E.Value, decimals),
            ("low" + suffix, r => r.E.Low, decimals),
            ("high" + suffix, r => r.E.High, decimals),
            ("interval", r => NumberText.Percent(r.E.Level), 0),
            ("n", r => r.E.Count, 0));
    }

    /// <summary>Makes a table of the first rows of a Deedle frame.</summary>
    /// <typeparam name="TRow">Type of row keys.</typeparam>
    /// <typeparam name="TColumn">Type of column keys.</typeparam>
    /// <param name="frame">The frame.</param>
    /// <param name="rows">Most rows to show; positive.</param>
    /// <returns>The table: row keys, then the columns; missing values are empty. Says in the caption how many rows there are.</returns>
    public static Table From<TRow, TColumn>(Frame<TRow, TColumn> frame, int rows)
    {
        ArgumentNullException.ThrowIfNull(frame);
        Check.Positive(rows, "rows");
        var columns = frame.ColumnKeys.Select(frame.GetColumn<object>).ToArray();
        var body = from position in Enumerable.Range(0, Math.Min(rows, frame.RowCount))
                   select columns.Select(c => c.TryGetAt(position)).Select(cell => cell.HasValue ? cell.Value : null)
                       .Prepend(frame.GetRowKeyAt(position));
        return From(frame.ColumnKeys.Select(key => key?.ToString() ?? "").Prepend(""), body) with
        {
            Caption = rows < frame.RowCount ? string.Create(CultureInfo.InvariantCulture, $"First {rows} of {frame.RowCount} rows") : "",
        };
    }

    /// <summary>Writes the table as HTML.</summary>
    /// <param name="mostRows">Rows beyond this number are only counted.</param>
    /// <returns>A fragment that is also well-formed XML; all text escaped.</returns>
    public string ToHtml(int mostRows = int.MaxValue)
    {
        string[] align = [.. Enumerable.Range(0, Headers.Count).Select(c => IsNumeric(c) ? "text-align:right" : "text-align:left")];
        var html = new StringBuilder("<div class=\"ascham-table\" style=\"overflow-x:auto\"><table>\n");
        html.Append(Caption.Length > 0 ? $"<caption style=\"text-align:left\">{Markup.Html(Caption)}</caption>\n" : "");
        AppendRow("thead", Headers, (cell, c) => $"<th scope=\"col\" style=\"{align[c]}\">{cell}</th>");
        html.Append("<tbody>\n");
        foreach (var row in Rows.Take(mostRows))
        {
            AppendRow("", row, (cell, c) => $"<td style=\"{align[c]}\">{cell}</td>");
        }

        html.Append("</tbody></table>");
        html.Append(Rows.Count > mostRows ? string.Create(CultureInfo.InvariantCulture, $"<p>and {Rows.Count - mostRows} more rows</p>") : "");
        return html.Append("</div>\n").ToString();

        void AppendRow(string around, IReadOnlyList<string> cells, Func<string, int, string> cell)
        {
            string inside = $"<tr>{string.Concat(cells.Select((text, c) => cell(Markup.Html(text), c)))}</tr>";
            html.Append(around.Length == 0 ? inside : $"<{around}>{inside}</{around}>").Append('\n');
        }
    }

    /// <summary>Writes the table as text in columns of one width.</summary>
    /// <returns>Lines joined by line feeds.</returns>
    public override string ToString()
    {
        int[] width = [.. Enumerable.Range(0, Headers.Count).Select(c => Rows.Select(r => r[c].Length).Append(Headers[c].Length).Max())];
        bool[] numeric = [.. Enumerable.Range(0, Headers.Count).Select(IsNumeric)];
        string Line(IReadOnlyList<string> cells) =>
            string.Join("  ", cells.Select((text, c) => numeric[c] ? text.PadLeft(width[c]) : text.PadRight(width[c]))).TrimEnd();
        IEnumerable<string> lines = [Line(Headers), Line([.. width.Select(w => new string('-', w))]), .. Rows.Select(Line)];
        return string.Join('\n', Caption.Length > 0 ? lines.Prepend(Caption) : lines);
    }

    bool IsNumeric(int column) =>
        Rows.Any(row => row[column].Length > 0)
        && Rows.All(row => row[column].Length == 0 || double.TryParse(row[column], NumberStyles.Float, CultureInfo.InvariantCulture, out _));

    static string Text(object? cell, int? decimals) => cell switch
    {
        null => "",
        string text => text,
        bool yes => yes ? "yes" : "no",
        double number => decimals is { } d ? NumberText.Fixed(number, d) : NumberText.Plain(number),
        IQuantity quantity => NumberText.With(decimals is { } d ? NumberText.Fixed(quantity.As(quantity.Unit), d) : NumberText.Plain(quantity.As(quantity.Unit)), NumberText.Unit(quantity.Unit)),
        DateTime day when day.TimeOfDay == TimeSpan.Zero => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
