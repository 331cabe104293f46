namespace Ascham.Records;

using UnitsNet;

/// <summary>Words of the log.</summary>
public static class LogQuantityText
{
    /// <summary>Gives the word by which <c>log.csv</c> names a quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <returns>Lower case, parts joined by underscores, such as <c>peak_weight</c>.</returns>
    public static string Word(this LogQuantity quantity) => LogVocabulary.WordOf(quantity);
}

/// <summary>One word of the log's vocabulary, and how the fields beside it are read.</summary>
/// <param name="Quantity">What it stands for.</param>
/// <param name="Word">How it is written.</param>
abstract record LogWord(LogQuantity Quantity, string Word)
{
    /// <summary>Fills an entry from its fields <c>value</c>, <c>unit</c> and <c>sd</c>.</summary>
    internal abstract LogEntry Fill(LogEntry entry, LogFields fields);
}

/// <summary>The fields of one row that depend on its quantity.</summary>
readonly record struct LogFields(Cell Value, Cell Unit, Cell Sd)
{
    internal static Cell NotBlank(Cell cell, string expected) =>
        cell.Text.Length > 0 ? cell : throw new RecordException(cell.Place, "the field is blank", "", expected);

    internal static void Blank(Cell cell, string why)
    {
        if (cell.Text.Length > 0)
        {
            throw cell.Wrong(why, "a blank field");
        }
    }
}

/// <summary>A word for something measured.</summary>
sealed record LogMeasure<T>(LogQuantity Quantity, string Word, Measure<T> Measure, Func<double, Unit<T>, IQuantity> Difference) : LogWord(Quantity, Word)
    where T : struct, IQuantity
{
    internal override LogEntry Fill(LogEntry entry, LogFields fields)
    {
        string[] known = [.. Measure.Units.Select(u => u.Text)];
        string typed = LogFields.NotBlank(fields.Unit, Wording.OneOf(known)).Text;
        var unit = Measure.Units.FirstOrDefault(u => u.Text == typed) ?? throw RecordException.Unknown(fields.Unit.Place, "unit", typed, known);
        T value = Measure.Read(LogFields.NotBlank(fields.Value, Measure.Allowed(unit)), unit);
        return entry with { Value = value, Sd = fields.Sd.Text.Length > 0 ? SdOf(fields.Sd, unit) : null };
    }

    // No larger than the whole range of values: beyond that the unit or a digit slipped.
    IQuantity SdOf(Cell cell, Unit<T> unit)
    {
        double most = unit.To(Measure.High) - unit.To(Measure.Low);
        string expected = FormattableString.Invariant($"{unit.Plural} above 0, up to {Math.Round(most)}");
        double sd = NumberText.Read(cell, cell.Text, expected);
        return sd > 0 && sd <= most ? Difference(sd, unit) : throw cell.Wrong("is out of range", expected);
    }
}

/// <summary>A word for something that is there or not.</summary>
sealed record LogSign(LogQuantity Quantity, string Word) : LogWord(Quantity, Word)
{
    internal override LogEntry Fill(LogEntry entry, LogFields fields)
    {
        LogFields.Blank(fields.Unit, "has no place beside a yes or no");
        LogFields.Blank(fields.Sd, "has no place beside a yes or no");
        return entry with { Seen = Vocabulary.YesNo.Read(LogFields.NotBlank(fields.Value, Vocabulary.YesNo.Expected)) };
    }
}

/// <summary>The closed vocabulary of <c>log.csv</c>.</summary>
static class LogVocabulary
{
    static readonly Measure<Length> Brace = new("a length", "6.5 in", Length.Zero, Length.FromMeters(0.5), Units.Lengths) { Above = true };
    static readonly Measure<Length> Guard = new("an offset", "12 mm", Length.FromMeters(-0.2), Length.FromMeters(0.2), Units.SmallLengths);

    static readonly LogWord[] Words =
    [
        Of(LogQuantity.PeakWeight, "peak_weight", Measures.Weight),
        Of(LogQuantity.BraceHeight, "brace_height", Brace),
        Of(LogQuantity.Speed, "speed", Measures.LaunchSpeed),
        Of(LogQuantity.SpeedDownrange, "speed_downrange", Measures.LaunchSpeed),
        Of(LogQuantity.ArrowMass, "arrow_mass", Measures.Mass),
        Of(LogQuantity.PeepToNock, "peep_to_nock", Measures.PeepHeight),
        Of(LogQuantity.CableGuardOffset, "cable_guard_offset", Guard),
        new LogMeasure<Temperature>(LogQuantity.Temperature, "temperature", Measures.Temperature, (sd, unit) =>
            unit == Units.Fahrenheit ? TemperatureDelta.FromDegreesFahrenheit(sd) : TemperatureDelta.FromDegreesCelsius(sd)),
        Of(LogQuantity.Pressure, "pressure", Measures.Pressure),
        new LogSign(LogQuantity.ContactMarks, "contact_marks"),
        new LogSign(LogQuantity.WitnessMoved, "witness_moved"),
        new LogSign(LogQuantity.BareShaftsMoved, "bare_shafts_moved"),
        new LogSign(LogQuantity.LevelOff, "level_off"),
        new LogSign(LogQuantity.SightBarTilted, "sight_bar_tilted"),
        new LogSign(LogQuantity.WindFelt, "wind_felt"),
        new LogSign(LogQuantity.DistancesWrong, "distances_wrong"),
    ];

    /// <summary>How a quantity is written.</summary>
    internal static string WordOf(LogQuantity quantity) => Words.First(w => w.Quantity == quantity).Word;

    /// <summary>Reads a word, whatever its case.</summary>
    internal static LogWord Read(Cell cell) => Words.FirstOrDefault(w => w.Word.Equals(cell.Text, StringComparison.OrdinalIgnoreCase))
        ?? throw RecordException.Unknown(cell.Place, "quantity", cell.Text, [.. Words.Select(w => w.Word)]);

    /// <summary>All words, for messages.</summary>
    internal static string Expected { get; } = Wording.OneOf(Words.Select(w => w.Word));

    static LogMeasure<T> Of<T>(LogQuantity quantity, string word, Measure<T> measure)
        where T : struct, IQuantity => new(quantity, word, measure, (sd, unit) => unit.From(sd));
}
