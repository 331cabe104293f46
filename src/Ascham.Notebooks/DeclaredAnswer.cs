namespace Ascham.Notebooks;

using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

/// <summary>One conclusion of a notebook under a stable name, as shown in the page and written to the file of answers.</summary>
/// <remarks>Made by <see cref="Answers"/>; of the optional members those are set that apply.</remarks>
[TypeFormatterSource(typeof(AnswerFormatters), PreferredMimeTypes = [Mime.Html, Mime.Answer, Mime.Plain])]
public sealed partial record DeclaredAnswer
{
    internal DeclaredAnswer(string name) =>
        Name = NamePattern().IsMatch(name ?? throw new ArgumentNullException(nameof(name)))
            ? name
            : throw new ArgumentException(
                $"The name of an answer is made of lower-case letters, digits and underscores, starts with a letter, and has a dot only between two of them "
                + $"(corrected_mark_18.288m, cause.drag); it was \"{name}\".", nameof(name));

    /// <summary>The name by which tests and scripts find the answer.</summary>
    public string Name { get; }

    /// <summary>The value, in <see cref="Unit"/>.</summary>
    public double? Value { get; internal init; }

    /// <summary>The unit; <see langword="null"/> for a pure number or a text.</summary>
    public string? Unit { get; internal init; }

    /// <summary>Lower end of the interval; <see langword="null"/> when there is none or it is not bounded.</summary>
    public double? Low { get; internal init; }

    /// <summary>Upper end of the interval; <see langword="null"/> when there is none or it is not bounded.</summary>
    public double? High { get; internal init; }

    /// <summary>Level of the interval: 0.90 for 90 %.</summary>
    public double? Level { get; internal init; }

    /// <summary>Probability that the answer is right, or of what its name says; from 0 to 1.</summary>
    public double? Probability { get; internal init; }

    /// <summary>The answer in words.</summary>
    public string? Text { get; internal init; }

    /// <summary>Decimals that are known, for people; the file carries all digits.</summary>
    internal int? Decimals { get; init; }

    /// <summary>Writes the answer as one JSON object.</summary>
    /// <returns>Compact JSON with <c>name</c> and those of <c>value</c>, <c>unit</c>, <c>low</c>, <c>high</c>, <c>level</c>, <c>probability</c>, <c>text</c> that apply; numbers read back to the same double.</returns>
    public string ToJson()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            WriteTo(json);
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>Writes the answer as one compact line of HTML.</summary>
    /// <returns>A fragment that is also well-formed XML; all text escaped.</returns>
    public string ToHtml() =>
        $"<div class=\"ascham-answer\"><code>{Markup.Html(Name)}</code>: <strong>{Markup.Html(Said)}</strong>{Markup.Html(Doubt)}</div>\n";

    /// <summary>Writes the answer as one line of text.</summary>
    /// <returns>Name, answer, interval, probability.</returns>
    public override string ToString() => $"{Name}: {Said}{Doubt}";

    internal void WriteTo(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", Name);
        WriteNumber("value", Value);
        WriteText("unit", Unit);
        WriteNumber("low", Low);
        WriteNumber("high", High);
        WriteNumber("level", Level);
        WriteNumber("probability", Probability);
        WriteText("text", Text);
        json.WriteEndObject();

        void WriteNumber(string member, double? number)
        {
            if (number is { } n)
            {
                json.WriteNumber(member, n);
            }
        }

        void WriteText(string member, string? text)
        {
            if (text is not null)
            {
                json.WriteString(member, text);
            }
        }
    }

    string Said => Value switch
    {
        { } value when value == Probability => $"probability {NumberText.Fixed(value, 3)}",
        { } value => NumberText.With(Decimals is { } d ? NumberText.Fixed(value, d) : NumberText.Plain(value), Unit ?? ""),
        _ => Text!,
    };

    string Doubt
    {
        get
        {
            string interval = Level is { } level
                ? $" ({NumberText.Percent(level)}: {NumberText.Range(Low ?? double.NegativeInfinity, High ?? double.PositiveInfinity, Decimals ?? 2, Unit ?? "")})"
                : "";
            return Probability is { } p && p != Value ? $"{interval}, probability {NumberText.Fixed(p, 3)}" : interval;
        }
    }

    [GeneratedRegex(@"^[a-z](?:[a-z0-9_]|(?<=[a-z0-9])\.(?=[a-z0-9]))*\z")]
    private static partial Regex NamePattern();
}
