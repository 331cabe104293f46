namespace Ascham.Tests;

using System.Runtime.CompilerServices;

/// <summary>Finds files of the repository from a test.</summary>
static class House
{
    /// <summary>The full path of a file or folder given relative to the repository's root.</summary>
    public static string Path(string relative) => System.IO.Path.GetFullPath(System.IO.Path.Combine(Root(), relative));

    static string Root([CallerFilePath] string file = "")
    {
        // Deterministic CI builds map source paths to /_/, so fall back on walking up from the output folder.
        for (var folder = new DirectoryInfo(File.Exists(file) ? System.IO.Path.GetDirectoryName(file)! : AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "Ascham.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("The repository's root (the folder of Ascham.slnx) was not found above the test.");
    }
}
