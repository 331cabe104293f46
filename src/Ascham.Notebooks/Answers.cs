namespace Ascham.Notebooks;

using System.Globalization;
using System.Text;
using System.Text.Json;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Declares the conclusions of a notebook: <c>using static Ascham.Notebooks.Answers;</c>, then <c>Answer("slide_mm", slide, LengthUnit.Millimeter)</c>.</summary>
/// <remarks>
/// An answer shows itself and is kept for the file of answers, an array of objects written by <see cref="ToJson"/>.
/// Under a runner each name may be declared once; in an interactive front end, where cells run again, the later declaration counts.
/// What cannot be told is declared in words, <c>Answer("verdict", "cannot tell")</c>; a value that is not a number is refused.
/// </remarks>
public static class Answers
{
    static readonly Lock Gate = new();
    static readonly List<DeclaredAnswer> Declared = [];

    /// <summary>The answers declared since <see cref="Reset"/>, in order.</summary>
    public static IReadOnlyList<DeclaredAnswer> All
    {
        get
        {
            lock (Gate)
            {
                return [.. Declared];
            }
        }
    }

    /// <summary>Forgets all answers.</summary>
    public static void Reset()
    {
        lock (Gate)
        {
            Declared.Clear();
        }
    }

    /// <summary>Writes all answers as the file of answers.</summary>
    /// <returns>An indented JSON array, lines ended by line feeds, the last one too.</returns>
    public static string ToJson()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartArray();
            foreach (var answer in All)
            {
                answer.WriteTo(json);
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>Answers in words.</summary>
    /// <param name="name">Name of the answer: lower-case letters, digits, underscores.</param>
    /// <param name="text">The answer; not empty.</param>
    /// <param name="probability">Probability that it is right, from 0 to 1.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken, or the text is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not from 0 to 1.</exception>
    public static DeclaredAnswer Answer(string name, string text, double? probability = null) =>
        Keep(new(name) { Text = Check.Text(text, "say \"cannot tell\" where nothing can be told"), Probability = OfProbability(probability) });

    /// <summary>Answers with a count.</summary>
    /// <param name="name">Name of the answer.</param>
    /// <param name="count">The count.</param>
    /// <param name="unit">What is counted, such as <c>arrows</c>; empty for nothing.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken.</exception>
    public static DeclaredAnswer Answer(string name, int count, string unit = "") =>
        Keep(new(name) { Value = count, Unit = OfUnit(unit), Decimals = 0 });

    /// <summary>Answers with a plain number.</summary>
    /// <param name="name">Name of the answer.</param>
    /// <param name="value">The number; finite.</param>
    /// <param name="unit">Its unit; empty for a pure number.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static DeclaredAnswer Answer(string name, double value, string unit = "") =>
        Keep(new(name) { Value = Check.Finite(value), Unit = OfUnit(unit) });

    /// <summary>Answers with an exact quantity; where doubt is known, give an estimate.</summary>
    /// <param name="name">Name of the answer; when it ends in a unit (<c>_mm</c>), that unit must be <paramref name="unit"/>.</param>
    /// <param name="value">The quantity; finite.</param>
    /// <param name="unit">Unit to write it in.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken, or ends in another unit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is not finite.</exception>
    public static DeclaredAnswer Answer(string name, IQuantity value, Enum unit)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Answer(WithUnit(name, unit), value.As(unit), NumberText.Unit(unit));
    }

    /// <summary>Answers with an estimate of a quantity.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="name">Name of the answer; when it ends in a unit (<c>_mm</c>), that unit must be the one written.</param>
    /// <param name="estimate">The estimate; its value finite, an end of its interval may be infinite.</param>
    /// <param name="unit">Unit to write it in; left out, the unit that the estimate's value carries.</param>
    /// <param name="probability">Probability of what the name says, from 0 to 1.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed, taken or ends in another unit, or the estimate is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not from 0 to 1.</exception>
    public static DeclaredAnswer Answer<T>(string name, Estimate<T> estimate, Enum? unit = null, double? probability = null)
        where T : IQuantity
    {
        ArgumentNullException.ThrowIfNull(estimate);
        Enum chosen = unit ?? estimate.Value.Unit;
        return Answer(WithUnit(name, chosen), NumberText.In(estimate, chosen), NumberText.Unit(chosen), probability);
    }

    /// <summary>Answers with an estimate that is a plain number.</summary>
    /// <param name="name">Name of the answer.</param>
    /// <param name="estimate">The estimate; its value finite, an end of its interval may be infinite.</param>
    /// <param name="unit">Its unit; empty for a pure number.</param>
    /// <param name="probability">Probability of what the name says, from 0 to 1.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken, or the estimate is not a number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not from 0 to 1.</exception>
    public static DeclaredAnswer Answer(string name, Estimate<double> estimate, string unit = "", double? probability = null)
    {
        Check.Showable(estimate, name);
        return Keep(new(name)
        {
            Value = estimate.Value,
            Unit = OfUnit(unit),
            Low = double.IsFinite(estimate.Low) ? estimate.Low : null,
            High = double.IsFinite(estimate.High) ? estimate.High : null,
            Level = estimate.Level,
            Probability = OfProbability(probability),
            Decimals = NumberText.Decimals(estimate.StandardError),
        });
    }

    /// <summary>Answers with a probability, written both as value and as probability.</summary>
    /// <param name="name">Name of the answer.</param>
    /// <param name="probability">From 0 to 1.</param>
    /// <returns>The answer, which shows itself.</returns>
    /// <exception cref="ArgumentException">The name is not well formed or taken.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not from 0 to 1.</exception>
    public static DeclaredAnswer Probability(string name, double probability) =>
        Keep(new(name) { Value = Check.Finite(probability), Probability = OfProbability(probability), Decimals = 3 });

    static DeclaredAnswer Keep(DeclaredAnswer answer)
    {
        lock (Gate)
        {
            int earlier = Declared.FindIndex(a => a.Name == answer.Name);
            if (earlier < 0)
            {
                Declared.Add(answer);
            }
            else if (NotebookHost.IsRunner)
            {
                throw new ArgumentException($"The answer \"{answer.Name}\" is declared twice in this notebook; each name is declared once.", nameof(answer));
            }
            else
            {
                Declared[earlier] = answer;
            }
        }

        return answer;
    }

    /// <summary>Refuses a name that promises one unit while the value is written in another.</summary>
    static string WithUnit(string name, Enum unit)
    {
        ArgumentNullException.ThrowIfNull(name);
        string last = name[(name.LastIndexOf('_') + 1)..];
        return last.Length < name.Length
            && UnitParser.Default.TryParse(last, unit.GetType(), CultureInfo.InvariantCulture, out Enum? promised) && !promised!.Equals(unit)
            ? throw new ArgumentException($"The name \"{name}\" ends in {last}, but the answer is written in {NumberText.Unit(unit)}; give the unit {promised} or change the name.", nameof(name))
            : name;
    }

    static string? OfUnit(string unit) => unit.Length == 0 ? null : unit;

    static double? OfProbability(double? probability) =>
        probability is null or (>= 0 and <= 1)
            ? probability
            : throw new ArgumentOutOfRangeException(nameof(probability), probability, $"probability must be from 0 to 1; it was {NumberText.Plain(probability.Value)}.");
}
