namespace Ascham.Records;

using System.Text.Json;
using Ascham.Bows;
using UnitsNet;

/// <summary>Reads what the section "bow" of a setup says of the bow on the bench: draw curve, virtual mass, limb bolts, limits.</summary>
static class BowBenchReader
{
    internal static Bow Read(JsonSection section, Bow bow)
    {
        var brace = section.Measure("brace_height", BowBenchMeasures.Brace);
        var sd = section.Measure("draw_curve_sd", BowBenchMeasures.ForceSd);
        bow = bow with
        {
            Kind = section.Word("kind", BowBenchMeasures.Kinds),
            BraceHeight = brace,
            DrawCurve = ReadCurve(section, "draw_curve", brace, sd),
            LetDown = ReadCurve(section, "let_down", brace, sd),
            VirtualMass = section.Measure("virtual_mass", BowBenchMeasures.VirtualMass),
            VirtualMassSd = section.Measure("virtual_mass_sd", BowBenchMeasures.VirtualMass),
            ArrowSpeeds = section.Section("chronographed") is { } speeds ? ReadSpeeds(speeds) : null,
            RatedSpeed = section.Measure("rated_speed", BowBenchMeasures.Speed),
            LimbBolts = ReadBolts(section),
            LeastGrainsPerPound = section.Number("least_grains_per_pound", 3, 30),
        };
        section.Together("virtual_mass", "virtual_mass_sd");
        return bow;
    }

    // Keys are draw lengths, values forces.
    static DrawCurve? ReadCurve(JsonSection bow, string key, Length? brace, Force? sd)
    {
        if (bow.Section(key) is not { } section)
        {
            return null;
        }

        List<DrawPoint> points = [];
        foreach (var (text, entry) in section.Entries)
        {
            var force = BowBenchMeasures.DrawForce.Read(entry.Kind == JsonTokenType.String ? entry.Cell : throw entry.Cell.Wrong("is not a force in quotes", "such as \"41.5 lbf\""));
            points.Add(new() { Draw = BowBenchMeasures.Draw.Read(new Cell(entry.KeyPlace, text)), Force = force, ForceSd = force.Newtons > 0 ? sd : null });
        }

        return Made(section, () => brace is { } b ? DrawCurve.FromPoints(points, b) : DrawCurve.FromPoints(points));
    }

    // Keys are arrow masses.
    static ArrowSpeeds ReadSpeeds(JsonSection section)
    {
        List<ChronographedArrow> arrows = [];
        foreach (var (text, entry) in section.Entries)
        {
            var arrow = entry.Section ?? throw entry.Cell.Wrong("is not a section", "keys and values in braces, { ... }");
            arrows.Add(new()
            {
                Mass = BowBenchMeasures.ArrowMass.Read(new Cell(entry.KeyPlace, text)),
                Speed = arrow.RequiredMeasure("speed", BowBenchMeasures.Speed) is var v && v > Speed.Zero ? v : Speed.FromMetersPerSecond(1), // a lacking one is told by Done
                ShotSd = arrow.RequiredMeasure("shot_sd", BowBenchMeasures.ShotSd),
                Shots = arrow.Shots("shots"),
            });
            arrow.Done();
        }

        return Made(section, () => ArrowSpeeds.Of(arrows));
    }

    static LimbBolts? ReadBolts(JsonSection bow)
    {
        string[] keys = ["limb_bolts_turns_out", "limb_bolts_most_out", "weight_per_turn"];
        var now = bow.Number(keys[0], 0, 30);
        var most = bow.Number(keys[1], 0, 30);
        var perTurn = bow.Measure(keys[2], BowBenchMeasures.PerTurn);
        bow.Together(keys);
        if (now > most)
        {
            throw bow.Value(keys[0]).Wrong("is beyond the most the maker states", FormattableString.Invariant($"at most {most} turns; turn the bolts in before drawing the bow"));
        }

        return now is { } n && most is { } m && perTurn is { } w ? new() { TurnsOut = n, MostTurnsOut = m, WeightPerTurn = w } : null;
    }

    // What the room Bows refuses is told with its place in the file.
    static T Made<T>(JsonSection section, Func<T> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException e)
        {
            string text = e.ParamName is { } name ? e.Message.Replace($" (Parameter '{name}')", "", StringComparison.Ordinal) : e.Message;
            throw new RecordException(section.Start, char.ToLowerInvariant(text[0]) + text[1..].TrimEnd('.'), inner: e);
        }
    }
}

/// <remarks>For sections whose keys are quantities, and for keys that go together.</remarks>
sealed partial class JsonSection
{
    /// <summary>All there is, in the order of the file.</summary>
    internal IEnumerable<(string Key, JsonEntry Entry)> Entries => entries.Select(e => (e.Key, e.Value));

    /// <summary>Where the section begins.</summary>
    internal Place Start => place;

    internal Cell Value(string key) => entries[key].Cell;

    /// <summary>Reads a number without unit, when it is there.</summary>
    internal double? Number(string key, double low, double high)
    {
        if (Find(key, required: false) is not { } entry)
        {
            return null;
        }

        string expected = FormattableString.Invariant($"a number without quotes, {low} to {high}");
        double value = entry.Kind == JsonTokenType.Number ? NumberText.Read(entry.Cell, entry.Cell.Text, expected) : throw entry.Cell.Wrong("is not a number", expected);
        return value >= low && value <= high ? value : throw entry.Cell.Wrong("is out of range", expected);
    }

    /// <summary>Reads how many shots a mean is of.</summary>
    internal int Shots(string key)
    {
        Need(key);
        const string Expected = "a whole number of shots without quotes, 2 or more";
        double? value = Number(key, 2, 10_000);
        return value is null || value == Math.Floor(value.Value) ? (int)(value ?? 2) : throw Value(key).Wrong("is no whole number", Expected);
    }

    /// <summary>Refuses one of several keys without the others.</summary>
    internal void Together(params string[] keys)
    {
        string[] given = [.. keys.Where(entries.ContainsKey)], lacking = [.. keys.Except(given)];
        if (given.Length > 0 && lacking.Length > 0)
        {
            throw new RecordException(entries[given[0]].KeyPlace, $"\"{given[0]}\" is given without {string.Join(" and ", lacking.Select(k => $"\"{k}\""))}", given[0], "all of them or none");
        }
    }
}
