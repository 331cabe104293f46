namespace Ascham.Records;

using UnitsNet;

/// <summary>A header line: readers ask it for the columns they know, then call <see cref="Done"/>.</summary>
sealed class CsvHeader(string file, int line, string[] names)
{
    readonly List<string> known = [], missing = [];
    readonly Dictionary<string, string> variantsOf = [];
    readonly HashSet<int> used = [];

    internal int Line => line;

    internal int Count => names.Length;

    /// <summary>Asks for a column by its name.</summary>
    internal CsvColumn<T> Column<T>(string name, bool required, string expected, Func<Cell, T> read)
    {
        known.Add(name);
        return new(Find([name], name, required), name, expected, read);
    }

    internal CsvColumn<string> Text(string name, bool required = false) => Column(name, required, "a text", cell => cell.Text);

    internal CsvColumn<T> Word<T>(string name, Words<T> words, bool required = false)
        where T : struct => Column(name, required, words.Expected, words.Read);

    /// <summary>Asks for a column whose name ends in a unit.</summary>
    internal CsvColumn<T> Measure<T>(string name, Measure<T> measure, bool required = false)
        where T : struct => Measure(name, measure, measure.Units, required).Column;

    /// <summary>Asks for a column of sight positions, in a length or in scale numbers.</summary>
    internal (CsvColumn<Length> Column, PositionUnit? Unit) Position(string name, Measure<Length> measure, Length? scaleUnit, bool required = false)
    {
        var scale = PositionUnit.Scale(scaleUnit ?? Length.FromMillimeters(1));
        var (column, unit) = Measure(name, measure, [.. measure.Units, scale.Unit], required);
        if (unit == scale.Unit && scaleUnit is null)
        {
            throw new RecordException(new(file, line, column.Index + 1, column.Name), "scale numbers cannot be read without the sight's scale unit",
                expected: "a sight with \"scale_unit\" in its setup, such as \"0.5 mm\"");
        }

        return (column, unit == scale.Unit ? scale : unit is null ? null : PositionUnit.Of(unit));
    }

    /// <summary>Ends the asking: no column may be left over, none may lack.</summary>
    internal void Done()
    {
        for (int i = 0; i < names.Length; i++)
        {
            if (!used.Contains(i))
            {
                throw Unknown(new(file, line, i + 1, names[i].Length == 0 ? FormattableString.Invariant($"{i + 1}") : names[i]), names[i]);
            }
        }

        if (missing.Count > 0)
        {
            throw new RecordException(new(file, line), $"the header lacks {string.Join(" and ", missing)}");
        }
    }

    (CsvColumn<T> Column, Unit<T>? Unit) Measure<T>(string name, Measure<T> measure, Unit<T>[] units, bool required)
        where T : struct
    {
        string[] variants = [.. units.Select(u => $"{name}_{u.Text}")];
        known.AddRange(variants);
        variantsOf[name] = Wording.OneOf(variants);
        int index = Find(variants, variantsOf[name], required);
        if (index < 0)
        {
            return (new(index, name, "", _ => default), null);
        }

        var unit = units[Array.IndexOf(variants, names[index])];
        return (new(index, names[index], measure.Allowed(unit), cell => measure.Read(cell, unit)), unit);
    }

    int Find(string[] variants, string told, bool required)
    {
        int[] found = [.. Enumerable.Range(0, names.Length).Where(i => variants.Contains(names[i]))];
        used.UnionWith(found);
        if (found.Length > 1)
        {
            throw new RecordException(new(file, line, found[1] + 1, names[found[1]]), $"this column repeats {names[found[0]]}", names[found[1]], "one of them");
        }

        if (found.Length == 0 && required)
        {
            missing.Add(told);
        }

        return found.Length == 0 ? -1 : found[0];
    }

    RecordException Unknown(Place place, string name) =>
        name.Length == 0 ? new(place, "this column has no name", name, Wording.OneOf(known))
        : variantsOf.TryGetValue(name, out string? variants) ? new(place, "this column names no unit", name, variants)
        : RecordException.Unknown(place, "column", name, known);
}

/// <summary>A column found in a header, or not (<paramref name="index"/> below zero).</summary>
sealed class CsvColumn<T>(int index, string name, string expected, Func<Cell, T> read)
{
    internal int Index => index;

    internal string Name => name;

    internal bool Has(CsvRow row) => index >= 0 && row.Fields[index].Length > 0;

    /// <summary>Reads a field that must not be blank.</summary>
    internal T Read(CsvRow row) => Has(row)
        ? read(new(row.Place(index, name), row.Fields[index]))
        : throw new RecordException(row.Place(index, name), "the field is blank", "", expected);
}

/// <summary>Reads fields that may be blank.</summary>
static class BlankFields
{
    internal static T? OrNull<T>(this CsvColumn<T> column, CsvRow row)
        where T : struct => column.Has(row) ? column.Read(row) : null;

    internal static string? TextOrNull(this CsvColumn<string> column, CsvRow row) => column.Has(row) ? column.Read(row) : null;
}
