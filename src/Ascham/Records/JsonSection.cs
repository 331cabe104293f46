namespace Ascham.Records;

using System.Text.Json;

/// <summary>An object of a JSON file: readers ask it for the keys they know, then call <see cref="Done"/>.</summary>
sealed partial class JsonSection
{
    readonly string name;
    readonly Place place;
    readonly IReadOnlyDictionary<string, JsonEntry> entries;
    readonly List<string> known = [], missing = [];

    // Stands in for a section that lacks, so that the one above can tell all it lacks at once.
    readonly bool absent;

    /// <param name="name">Key of the section; empty for the file as a whole.</param>
    /// <param name="place">Where it begins.</param>
    /// <param name="entries">What it holds.</param>
    /// <param name="absent">Whether it is not in the file.</param>
    internal JsonSection(string name, Place place, IReadOnlyDictionary<string, JsonEntry> entries, bool absent = false) =>
        (this.name, this.place, this.entries, this.absent) = (name, place, entries, absent);

    internal JsonSection? Section(string key) => Find(key, required: false) is { } entry ? AsSection(entry) : null;

    internal JsonSection RequiredSection(string key) =>
        Find(key, required: true) is { } entry ? AsSection(entry) : new(key, place, new Dictionary<string, JsonEntry>(), absent: true);

    internal T? Measure<T>(string key, Measure<T> measure)
        where T : struct => Find(key, required: false) is { } entry ? measure.Read(AsText(entry, $"{measure.Noun} such as \"{measure.Example}\"")) : null;

    internal T RequiredMeasure<T>(string key, Measure<T> measure)
        where T : struct
    {
        var value = Measure(key, measure);
        Need(key);
        return value ?? default;
    }

    internal string? Text(string key) => Find(key, required: false) is { } entry ? AsText(entry, "a text in quotes").Text : null;

    internal string RequiredText(string key)
    {
        if (Find(key, required: true) is not { } entry)
        {
            return "";
        }

        var text = AsText(entry, "a text in quotes");
        return string.IsNullOrWhiteSpace(text.Text) ? throw text.Wrong("is blank", "a text") : text.Text;
    }

    internal T? Word<T>(string key, Words<T> words)
        where T : struct => Find(key, required: false) is { } entry ? words.Read(AsText(entry, words.Expected)) : null;

    internal T RequiredWord<T>(string key, Words<T> words)
        where T : struct
    {
        var value = Word(key, words);
        Need(key);
        return value ?? default;
    }

    /// <summary>Reads a number without unit, above zero and up to a limit.</summary>
    internal double RequiredNumber(string key, double high)
    {
        if (Find(key, required: true) is not { } entry)
        {
            return 0;
        }

        string expected = FormattableString.Invariant($"a number without quotes, above 0, up to {high}");
        double value = entry.Kind == JsonTokenType.Number ? NumberText.Read(entry.Cell, entry.Cell.Text, expected) : throw entry.Cell.Wrong("is not a number", expected);
        return value > 0 && value <= high ? value : throw entry.Cell.Wrong("is out of range", expected);
    }

    /// <summary>Refuses two keys that answer the same question.</summary>
    internal void NotBoth(string one, string other)
    {
        if (entries.ContainsKey(one) && entries.TryGetValue(other, out var second))
        {
            throw new RecordException(second.KeyPlace, $"\"{other}\" and \"{one}\" are both given, and may contradict each other", second.Cell.Text, "one of them");
        }
    }

    /// <summary>Ends the asking: no key may be left over, none may lack.</summary>
    internal void Done()
    {
        foreach (var (key, entry) in entries.Where(e => !known.Contains(e.Key)))
        {
            throw RecordException.Unknown(entry.KeyPlace, "key", key, known);
        }

        if (missing.Count > 0 && !absent)
        {
            string where = name.Length == 0 ? "the setup" : $"\"{name}\"";
            throw new RecordException(place, $"{where} lacks {string.Join(" and ", missing.Select(k => $"\"{k}\""))}");
        }
    }

    JsonEntry? Find(string key, bool required)
    {
        known.Add(key);
        if (required)
        {
            Need(key);
        }

        return entries.GetValueOrDefault(key);
    }

    void Need(string key)
    {
        if (!entries.ContainsKey(key))
        {
            missing.Add(key);
        }
    }

    static Cell AsText(JsonEntry entry, string expected) =>
        entry.Kind == JsonTokenType.String ? entry.Cell : throw entry.Cell.Wrong("is not a text in quotes", expected);

    static JsonSection AsSection(JsonEntry entry) =>
        entry.Section ?? throw entry.Cell.Wrong("is not a section", "keys and values in braces, { ... }");
}

/// <summary>One key of a JSON object with its value.</summary>
/// <param name="KeyPlace">Where the key stands.</param>
/// <param name="Cell">The value as text, and where it stands.</param>
/// <param name="Kind">What kind of value it is.</param>
/// <param name="Section">The value, when it is an object.</param>
sealed record JsonEntry(Place KeyPlace, Cell Cell, JsonTokenType Kind, JsonSection? Section);
