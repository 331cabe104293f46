namespace Ascham.Records;

using System.Text;

/// <summary>Replaces a file whole or not at all.</summary>
static class AtomicFile
{
    /// <summary>Writes to a temporary file in the same folder, reads it back, then puts it in the target's place.</summary>
    /// <param name="path">Target; a link is followed, so that the file it names is replaced and the link stays.</param>
    /// <param name="write">Writes the content.</param>
    /// <param name="read">Reads it back, throwing when that fails: a file that cannot be read is never left behind.</param>
    /// <exception cref="RecordException">The system refused, or the content does not read back. The target is untouched and no temporary file remains.</exception>
    internal static void Write(string path, Action<Stream> write, Action<Stream> read)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string? temporary = null;
        try
        {
            string target = Target(path);
            temporary = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}.{Guid.NewGuid():N}.tmp");
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
                stream.Position = 0;
                read(stream);
            }

            File.Move(temporary, target, overwrite: true);
            temporary = null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw FileProblem.Of(path, e);
        }
        catch (EncoderFallbackException e)
        {
            throw new RecordException(new(path), "a text holds half of a two-part character", inner: e);
        }
        finally
        {
            Remove(temporary);
        }
    }

    static string Target(string path)
    {
        bool link = new FileInfo(path).LinkTarget is not null;
        string target = Path.GetFullPath(link ? File.ResolveLinkTarget(path, returnFinalTarget: true)!.FullName : path);
        if (Directory.Exists(target))
        {
            throw new RecordException(new(path), "this is a folder", expected: "the name of a file");
        }

        // Moving a file over a device would replace the device.
        if (Path.GetDirectoryName(target) is null or "/dev")
        {
            throw new RecordException(new(path), "this is a device", expected: "the name of a file");
        }

        // Replacing needs no right on the file itself, only on its folder; the owner's wish to keep it is respected all the same.
        if (File.Exists(target) && File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
        {
            throw new RecordException(new(path), "the file is marked as read only");
        }

        return target;
    }

    static void Remove(string? temporary)
    {
        try
        {
            if (temporary is not null)
            {
                File.Delete(temporary);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The failure that brought us here is the one to tell.
        }
    }
}
