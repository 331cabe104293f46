namespace Ascham.Records;

using System.Text;

/// <summary>Reads UTF-8 text and refuses, while it streams, what is no text: broken bytes, NUL, lines without end.</summary>
/// <remarks>Not more than one block is held in memory, however long the file or its lines.</remarks>
sealed class GuardedReader : TextReader
{
    /// <summary>Longest line accepted, in characters.</summary>
    internal const int LongestLine = 1 << 20;

    // Stands for bytes that are not UTF-8. A noncharacter of Unicode, so no text contains it.
    const char Broken = '\uFFFF';

    readonly StreamReader reader;
    readonly string file;
    readonly char[] block = new char[8192];
    int next, count, line = 1, length;
    bool first = true, afterReturn;

    /// <param name="stream">Bytes of the file; closed with the reader. A byte-order mark of UTF-8 is skipped.</param>
    /// <param name="file">Path for messages.</param>
    internal GuardedReader(Stream stream, string file)
    {
        var utf8 = Encoding.GetEncoding("utf-8", EncoderFallback.ExceptionFallback, new DecoderReplacementFallback(Broken.ToString()));
        reader = new StreamReader(stream, utf8, detectEncodingFromByteOrderMarks: false);
        this.file = file;
    }

    public override int Peek() => Fill() ? block[next] : -1;

    public override int Read() => Fill() ? block[next++] : -1;

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        if (buffer.IsEmpty || !Fill())
        {
            return 0;
        }

        int taken = Math.Min(buffer.Length, count - next);
        block.AsSpan(next, taken).CopyTo(buffer);
        next += taken;
        return taken;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            reader.Dispose();
        }

        base.Dispose(disposing);
    }

    bool Fill()
    {
        if (next < count)
        {
            return true;
        }

        next = 0;
        count = ReadBlock();
        foreach (char c in block.AsSpan(0, count))
        {
            Check(c);
        }

        return count > 0;
    }

    int ReadBlock()
    {
        try
        {
            return reader.Read(block, 0, block.Length);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw FileProblem.Of(file, e);
        }
    }

    void Check(char c)
    {
        if (c is Broken or '\0')
        {
            string problem = c == '\0' ? "there is a NUL byte, as in UTF-16 or binary files"
                : first ? "the text starts with bytes that are not UTF-8, perhaps the mark of UTF-16"
                : "there are bytes that are not UTF-8";
            throw new RecordException(new(file, line), problem, expected: "text saved as UTF-8");
        }

        first = false;
        length++;
        if (c == '\r' || (c == '\n' && !afterReturn))
        {
            line++;
        }

        afterReturn = c == '\r';
        length = c is '\r' or '\n' ? 0 : length;

        if (length > LongestLine)
        {
            throw new RecordException(new(file, line), "the line is too long", expected: FormattableString.Invariant($"at most {LongestLine} characters"));
        }
    }
}
