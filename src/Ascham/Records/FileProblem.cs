namespace Ascham.Records;

/// <summary>Says what kept a file from being read or written.</summary>
static class FileProblem
{
    /// <summary>Opens a file for reading.</summary>
    /// <exception cref="RecordException">There is none, it is a folder, or it may not be read.</exception>
    internal static FileStream Open(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        if (Directory.Exists(path))
        {
            throw new RecordException(new(path), "this is a folder", expected: "a file");
        }

        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Of(path, e);
        }
    }

    /// <summary>Puts a failure of the system into words.</summary>
    internal static RecordException Of(string path, Exception failure) => failure switch
    {
        FileNotFoundException => new(new(path), "there is no such file", inner: failure),
        DirectoryNotFoundException => new(new(path), "there is no such folder", inner: failure),
        UnauthorizedAccessException => new(new(path), "no permission to read or write here", inner: failure),
        PathTooLongException => new(new(path), "the path is too long", inner: failure),
        _ => new(new(path), "the system could not read or write it: " + failure.Message.TrimEnd('.'), inner: failure),
    };
}
