namespace Ascham.Records;

using System.Text.Json;
using Ascham.Arrows;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Reads what the section "arrow" of a setup says of parts, balance, spine and vanes.</summary>
static class ArrowBenchReader
{
    const double SameLength = 1e-3; // m; two readings of one length with a tape measure

    internal static ArrowBench? Read(JsonSection arrow)
    {
        var parts = arrow.Section("parts");
        VaneShape? vanes = null;
        var bench = new ArrowBench
        {
            BalancePoint = arrow.Measure("balance_point", ArrowBenchMeasures.Place),
            SpineSag = arrow.Measure("spine", ArrowBenchMeasures.Sag),
            WoodSpineSag = arrow.Measure("wood_spine", ArrowBenchMeasures.Sag),
            Parts = parts is null ? [] : ReadParts(parts, out vanes),
            Vanes = vanes,
        };
        arrow.NotBoth("spine", "wood_spine");
        if (parts is not null)
        {
            CheckPlaces(bench.Parts, parts);
            CheckAgainst(bench.Parts.Single(p => p.Kind == PartKind.Shaft), arrow, bench.BalancePoint);
        }

        return bench == new ArrowBench() ? null : bench;
    }

    static List<ArrowPart> ReadParts(JsonSection parts, out VaneShape? vanes)
    {
        List<ArrowPart> list = [];
        vanes = null;
        foreach (string key in parts.Keys)
        {
            var section = parts.RequiredSection(key);
            var part = ReadPart(parts, key, section);
            vanes = part.Kind == PartKind.Vanes && vanes is null ? ReadShape(section) : vanes;
            section.Done();
            list.Add(part);
        }

        return list;
    }

    static ArrowPart ReadPart(JsonSection parts, string key, JsonSection section)
    {
        PartKind? named = Enum.GetValues<PartKind>().Cast<PartKind?>().FirstOrDefault(k => ArrowBenchMeasures.Word(k!.Value) == key);
        var kind = section.Word("kind", ArrowBenchMeasures.Kinds) ?? named ?? throw Unnamed(parts, key);
        var at = section.Measure("at", ArrowBenchMeasures.Place);
        var from = at ?? section.RequiredMeasure("from", ArrowBenchMeasures.Place);
        var length = at is null ? section.RequiredMeasure("length", ArrowBenchMeasures.PartLength) : Length.Zero;
        section.NotBoth("at", "from");
        section.NotBoth("at", "length");
        return new()
        {
            Kind = kind,
            Name = kind == named ? "" : key,
            Mass = kind == PartKind.Shaft && section.Measure("mass_per_length", ArrowBenchMeasures.MassPerLength) is { } density
                ? OfLength(section, density, length)
                : section.RequiredMeasure("mass", ArrowBenchMeasures.PartMass),
            From = from,
            Length = length,
        };
    }

    static RecordException Unnamed(JsonSection parts, string key)
    {
        string[] kinds = [.. Enum.GetValues<PartKind>().Select(ArrowBenchMeasures.Word)];
        string meant = Wording.Nearest(key, kinds) is { } near ? $"; did you mean \"{near}\"? If not, say" : "; say";
        return new(parts.KeyPlace(key), $"part {RecordException.Quote(key)} is no kind of part known here{meant} what it is with \"kind\"", key, Wording.OneOf(kinds));
    }

    // Rounded to a millionth: inches times grains per inch should not show the conversion's last digits.
    static Mass OfLength(JsonSection section, LinearDensity density, Length length)
    {
        section.NotBoth("mass", "mass_per_length");
        var mass = Mass.FromGrams(density.GramsPerMeter * length.Meters);
        return length.Unit == LengthUnit.Inch ? Mass.FromGrains(Math.Round(mass.Grains, 6)) : Mass.FromGrams(Math.Round(mass.Grams, 6));
    }

    static VaneShape? ReadShape(JsonSection section)
    {
        var offset = section.Measure("offset", ArrowBenchMeasures.VaneOffset);
        string[] shape = ["count", "height", "tip_length", "sweep"];
        if (offset is null && !shape.Any(section.Has))
        {
            shape.ToList().ForEach(section.Knows);
            return null;
        }

        return new()
        {
            Count = section.RequiredWhole("count", 3, 8),
            Height = section.RequiredMeasure("height", ArrowBenchMeasures.VaneHeight),
            TipLength = section.RequiredMeasure("tip_length", ArrowBenchMeasures.VaneLength),
            Sweep = section.RequiredMeasure("sweep", ArrowBenchMeasures.VaneLength),
            Offset = offset,
        };
    }

    static void CheckPlaces(IReadOnlyList<ArrowPart> list, JsonSection parts)
    {
        if (PartPlaces.Fault(list) is { } fault)
        {
            int culprit = list.ToList().FindIndex(p => ReferenceEquals(p, fault.Culprit));
            throw new RecordException(culprit < 0 ? parts.Place : parts.KeyPlace(parts.Keys.ElementAt(culprit)), char.ToLowerInvariant(fault.Problem[0]) + fault.Problem[1..].TrimEnd('.'));
        }
    }

    static void CheckAgainst(ArrowPart shaft, JsonSection arrow, Length? balance)
    {
        if (balance is { } b && (b < shaft.From || b > shaft.To))
        {
            throw arrow.CellOf("balance_point").Wrong("lies outside the shaft", $"{Within(shaft)} from the bottom of the nock slot: balance the complete arrow again, and measure from the slot, not from the tip");
        }

        if (arrow.Has("length") && ArrowBenchMeasures.PartLength.Read(arrow.CellOf("length")) is var length && Math.Abs((length - shaft.To).Meters) > SameLength)
        {
            throw arrow.CellOf("length").Wrong("differs from where the shaft ends", $"{Told(shaft.To)}: measure from the bottom of the nock slot to the front end of the shaft again");
        }
    }

    static string Within(ArrowPart shaft) => $"{Told(shaft.From)} to {Told(shaft.To)}";

    // Without the last digits of a sum.
    static string Told(Length place) => ArrowBenchMeasures.Place.Write(Length.From(Math.Round(place.Value, 6), place.Unit));
}

/// <remarks>For sections whose keys are names, not known beforehand.</remarks>
sealed partial class JsonSection
{
    /// <summary>The keys, in the order of the file.</summary>
    internal IEnumerable<string> Keys => entries.Keys;

    /// <summary>Where the section begins.</summary>
    internal Place Place => place;

    internal bool Has(string key) => entries.ContainsKey(key);

    /// <summary>Lets a key be told among those that are known here.</summary>
    internal void Knows(string key) => known.Add(key);

    internal Cell CellOf(string key) => entries[key].Cell;

    internal Place KeyPlace(string key) => entries[key].KeyPlace;

    /// <summary>Reads a whole number without quotes.</summary>
    internal int RequiredWhole(string key, int low, int high)
    {
        if (Find(key, required: true) is not { } entry)
        {
            return low;
        }

        string expected = FormattableString.Invariant($"a whole number without quotes, {low} to {high}");
        double value = entry.Kind == JsonTokenType.Number ? NumberText.Read(entry.Cell, entry.Cell.Text, expected) : throw entry.Cell.Wrong("is not a number", expected);
        return value >= low && value <= high && value == Math.Floor(value) ? (int)value : throw entry.Cell.Wrong("is out of range", expected);
    }
}
