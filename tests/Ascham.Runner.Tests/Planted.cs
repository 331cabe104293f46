namespace Ascham.Runner.Tests;

using System.Globalization;
using System.Text.Json.Nodes;
using Ascham.Runner.Documents;

/// <summary>Found by the kernel by its name, as on the display types of a notebook library.</summary>
[AttributeUsage(AttributeTargets.Class)]
sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    public Type FormatterSourceType { get; } = formatterSourceType;

    public string[] PreferredMimeTypes { get; set; } = [];
}

sealed class PlantedFormatter<T>(string mimeType, Func<T, string> render)
{
    public string MimeType { get; } = mimeType;

    public bool Format(object instance, TextWriter writer)
    {
        if (instance is T value)
        {
            writer.Write(render(value));
        }

        return instance is T;
    }
}

/// <summary>A chart of the numbers 0, 1, 4, ... with a caption and a data table, as a notebook library would show it.</summary>
[TypeFormatterSource(typeof(PlantedFigureFormatters), PreferredMimeTypes = [MimeTypes.Html, MimeTypes.Plain])]
public sealed record PlantedFigure(string Title, int Points, double Unit = 1)
{
    internal JsonArray Numbers() => new([.. Enumerable.Range(0, Points).Select(i => (JsonNode)(i * i * Unit))]);

    internal string Json() => new JsonObject
    {
        ["data"] = new JsonArray(new JsonObject { ["type"] = "scatter", ["mode"] = "lines+markers", ["name"] = Title, ["y"] = Numbers() }),
        ["layout"] = new JsonObject
        {
            ["height"] = 360,
            ["xaxis"] = new JsonObject { ["title"] = new JsonObject { ["text"] = "distance (m)" } },
            ["yaxis"] = new JsonObject { ["title"] = new JsonObject { ["text"] = "drop (mm)" } },
        },
        ["config"] = new JsonObject { ["displaylogo"] = false },
    }.ToJsonString();

    internal string Fragment() => $"""
        <figure class="ascham-figure"><p class="ascham-title"><strong>{Html.Escape(Title)}</strong></p>
        <div data-figure="fig-{Points}" role="img" aria-label="Squares: {Html.Escape(Title)}" style="width:100%;height:360px"></div>
        <figcaption>Squares of the first numbers.</figcaption>
        <details><summary>The numbers in this chart</summary><table><tr><th>n</th><td>{Points}</td></tr></table></details></figure>
        <script>(window.aschamFigures=window.aschamFigures||[]).push(["fig-{Points}",{Json()}]);</script>
        """;

    public override string ToString() => $"{Title}\n{Points} points";
}

#pragma warning disable CA1822 // The kernel calls these on an instance.
sealed class PlantedFigureFormatters
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new PlantedFormatter<PlantedFigure>(MimeTypes.Html, f => f.Fragment()),
        new PlantedFormatter<PlantedFigure>(MimeTypes.Plain, f => f.ToString()),
    ];
}

/// <summary>A declared answer, as a notebook library would show it.</summary>
[TypeFormatterSource(typeof(PlantedAnswerFormatters), PreferredMimeTypes = [MimeTypes.Html, MimeTypes.Answer, MimeTypes.Plain])]
public sealed record PlantedAnswer(string Name, double Value, string Unit)
{
    internal string Json() => new JsonObject { ["name"] = Name, ["value"] = Value, ["unit"] = Unit }.ToJsonString();

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}: {Value:G6} {Unit}");
}

sealed class PlantedAnswerFormatters
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new PlantedFormatter<PlantedAnswer>(MimeTypes.Html, a => $"<div>{Html.Escape(a.ToString())}</div>"),
        new PlantedFormatter<PlantedAnswer>(MimeTypes.Answer, a => a.Json()),
        new PlantedFormatter<PlantedAnswer>(MimeTypes.Plain, a => a.ToString()),
    ];
}
#pragma warning restore CA1822
