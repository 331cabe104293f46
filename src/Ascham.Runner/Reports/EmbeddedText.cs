namespace Ascham.Runner.Reports;

/// <summary>Text files carried inside the runner.</summary>
static class EmbeddedText
{
    public static string Read(string name)
    {
        using var reader = new StreamReader(typeof(EmbeddedText).Assembly.GetManifestResourceStream("Ascham.Runner.Reports." + name)!);
        return WithLineFeeds(reader.ReadToEnd());
    }

    /// <summary>A browser reads every line end as a line feed, and the names of allowed scripts depend on each character.</summary>
    public static string WithLineFeeds(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
}
