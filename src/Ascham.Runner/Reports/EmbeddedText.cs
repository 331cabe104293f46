namespace Ascham.Runner.Reports;

using System.Reflection;

/// <summary>A text file carried inside an assembly, with line feeds as line ends (a browser sees it so, and the script hashes depend on it).</summary>
static class EmbeddedText
{
    public static string Read(Assembly assembly, string name)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
