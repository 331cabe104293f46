namespace Ascham.Records;

using System.Globalization;
using System.Text;

/// <summary>Says, in one sentence, what is wrong with a file of records and where.</summary>
/// <remarks>
/// Example: <c>shots.csv, line 14, column up_in: "low" is not a number; expected inches from -394 to 394.</c>
/// The parts of the sentence are also given one by one.
/// </remarks>
public sealed class RecordException : Exception
{
    internal RecordException(Place place, string problem, string? value = null, string? expected = null, Exception? inner = null)
        : this(place, Sentence(place, problem, expected), value, expected, inner, whole: true)
    {
    }

    // "whole" only tells the two constructors apart: here the sentence comes ready made.
    RecordException(Place place, string sentence, string? value, string? expected, Exception? inner, bool whole)
        : base(sentence, inner)
    {
        _ = whole;
        File = place.File;
        Line = place.Line;
        Column = place.Column;
        ColumnName = place.Name;
        Value = value;
        Expected = expected;
    }

    /// <summary>The file's path, as it was given.</summary>
    public string File { get; }

    /// <summary>Line of the file, from 1, comment lines counted; <see langword="null"/> when the file as a whole is meant.</summary>
    public int? Line { get; }

    /// <summary>From 1: the field of the row in a CSV file, the character of the line in a JSON file; <see langword="null"/> when not one place is meant.</summary>
    public int? Column { get; }

    /// <summary>Name of the column in a CSV file, path of the key (such as <c>bow.peak_weight</c>) in a JSON file.</summary>
    public string? ColumnName { get; }

    /// <summary>The offending text, whole.</summary>
    public string? Value { get; }

    /// <summary>What was expected, in words.</summary>
    public string? Expected { get; }

    /// <summary>A name that is not in a list: suggests the nearest, or tells the list.</summary>
    internal static RecordException Unknown(Place place, string what, string typed, IReadOnlyCollection<string> known)
    {
        string? nearest = Wording.Nearest(typed, known);
        string problem = $"{what} {Quote(typed)} is not known";
        return nearest is null
            ? new(place, problem, typed, Wording.OneOf(known))
            : new(place, $"{place}: {problem}; did you mean \"{nearest}\"?", typed, nearest, null, whole: true);
    }

    /// <summary>Puts text in quotes for a message: one line, at most 40 characters of it.</summary>
    internal static string Quote(string text)
    {
        const int longest = 40;
        var shown = new StringBuilder("\"");
        foreach (char c in text.Length > longest ? text[..longest] : text)
        {
            shown.Append(char.IsControl(c) || char.IsSurrogate(c) ? '?' : c);
        }

        return shown.Append(text.Length > longest ? "…\"" : "\"").ToString();
    }

    static string Sentence(Place place, string problem, string? expected) =>
        $"{place}: {problem}{(expected is null ? "" : $"; expected {expected}")}.";
}

/// <summary>A place in a file.</summary>
/// <param name="File">Path as given.</param>
/// <param name="Line">Line from 1.</param>
/// <param name="Column">Field of a CSV row, or character of a JSON line, from 1.</param>
/// <param name="Name">Name of the CSV column, or path of the JSON key.</param>
/// <param name="IsText">Whether <paramref name="Column"/> counts characters, and so is worth telling beside the name.</param>
readonly record struct Place(string File, int? Line = null, int? Column = null, string? Name = null, bool IsText = false)
{
    public override string ToString()
    {
        // A problem with the file itself is told with the path, one inside it with the name alone.
        string text = Line is null ? File : string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(File)}, line {Line}");
        if (IsText && Column is not null)
        {
            text += string.Create(CultureInfo.InvariantCulture, $", column {Column}");
            return Name is null ? text : $"{text} ({Name})";
        }

        return Name is null ? text : $"{text}, column {Name}";
    }
}

/// <summary>One value as text, and where it stands.</summary>
readonly record struct Cell(Place Place, string Text)
{
    internal RecordException Wrong(string problem, string expected) =>
        new(Place, $"{RecordException.Quote(Text)} {problem}", Text, expected);
}
