namespace Ascham.Notebooks;

/// <summary>Tells a .NET notebook kernel how to show a type.</summary>
/// <remarks>
/// The kernel finds this attribute by its name and reads the members below by reflection, so that nothing here refers to
/// a kernel package and the same types show in any front end that keeps the convention.
/// </remarks>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    /// <summary>A type with a parameterless constructor and a method CreateTypeFormatters.</summary>
    public Type FormatterSourceType { get; } = formatterSourceType;

    /// <summary>What to show, best first.</summary>
    public string[] PreferredMimeTypes { get; set; } = [];
}

/// <summary>Writes values of one type in one form.</summary>
sealed class ConventionFormatter<T>(string mimeType, Func<T, string> render)
{
    public string MimeType { get; } = mimeType;

    public bool Format(object instance, TextWriter writer)
    {
        if (instance is not T value)
        {
            return false;
        }

        writer.Write(render(value));
        return true;
    }
}

/// <summary>The forms in which what a cell shows leaves the cell.</summary>
static class Mime
{
    public const string Html = "text/html";
    public const string Plain = "text/plain";
    public const string Answer = "application/vnd.ascham.answer+json";
}

#pragma warning disable CA1822 // The kernel calls these on an instance.
sealed class FigureFormatters
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new ConventionFormatter<Figure>(Mime.Html, f => FigureScript.CarriedBy(f.Id) + f.ToHtml()),
        new ConventionFormatter<Figure>(Mime.Plain, f => f.ToString()),
    ];
}

sealed class TableFormatters
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new ConventionFormatter<Table>(Mime.Html, t => t.ToHtml()),
        new ConventionFormatter<Table>(Mime.Plain, t => t.ToString()),
    ];
}

sealed class AnswerFormatters
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new ConventionFormatter<DeclaredAnswer>(Mime.Html, a => a.ToHtml()),
        new ConventionFormatter<DeclaredAnswer>(Mime.Answer, a => a.ToJson()),
        new ConventionFormatter<DeclaredAnswer>(Mime.Plain, a => a.ToString()),
    ];
}
#pragma warning restore CA1822
