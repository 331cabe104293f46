namespace Ascham.Runner.Documents;

using System.Text;

/// <summary>Writes a file whole or not at all: to a temporary neighbour first, then by a move over the target.</summary>
static class AtomicFile
{
    /// <exception cref="UsageException">The file cannot be written; what stood there before is untouched.</exception>
    public static void Write(string path, string text)
    {
        string temporary = Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.{Environment.ProcessId}.tmp");
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write))
            {
                stream.Write(Encoding.UTF8.GetBytes(text));
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{path} cannot be written: {Reason(e)}.", e);
        }
        finally
        {
            Remove(temporary);
        }
    }

    /// <summary>Makes a folder ready to be written into.</summary>
    /// <exception cref="UsageException">A file is in the way, or the folder may not be written.</exception>
    public static void PrepareFolder(string folder)
    {
        string? inTheWay = Ancestors(folder).FirstOrDefault(File.Exists);
        if (inTheWay is not null)
        {
            throw new UsageException($"{folder} cannot be used as a folder, because {(inTheWay == folder ? "it" : inTheWay)} is a file.");
        }

        try
        {
            Directory.CreateDirectory(folder);
            string probe = Path.Combine(folder, $".probe.{Environment.ProcessId}.tmp");
            File.WriteAllText(probe, "");
            File.Delete(probe);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"{folder} cannot be written: {Reason(e)}.", e);
        }
    }

    /// <summary>The system's own words for what went wrong, without the path and the full stop.</summary>
    public static string Reason(Exception e)
    {
        string line = e.Message.Split('\n')[0].Trim();
        int path = line.IndexOf(" : '", StringComparison.Ordinal);
        return (path > 0 ? line[..path] : line).TrimEnd('.', ' ');
    }

    static IEnumerable<string> Ancestors(string folder)
    {
        for (string? f = folder; f is not null; f = Path.GetDirectoryName(f))
        {
            yield return f;
        }
    }

    static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The first failure is the one to report.
        }
    }
}
