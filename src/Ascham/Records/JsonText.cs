namespace Ascham.Records;

using System.Text;
using System.Text.Json;
using System.Text.Unicode;

/// <summary>Reads a small JSON file, remembering where everything stands. Comments and a comma after the last entry are tolerated.</summary>
sealed class JsonText
{
    /// <summary>Longest file accepted, in bytes.</summary>
    internal const int Longest = 1 << 20;

    readonly string file;
    readonly byte[] bytes;

    JsonText(string file, byte[] bytes) => (this.file, this.bytes) = (file, bytes);

    /// <summary>Reads the object a file consists of.</summary>
    /// <exception cref="RecordException">Not UTF-8, not JSON, not an object, or a key twice.</exception>
    internal static JsonSection Read(Stream stream, string file)
    {
        var text = new JsonText(file, Bytes(stream, file));
        text.CheckEncoding();
        var reader = new Utf8JsonReader(text.bytes, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 8 });
        try
        {
            reader.Read();
            if (reader.TokenType != JsonTokenType.StartObject)
            {
                throw new RecordException(text.At(reader.TokenStartIndex, null), "the file does not begin with a brace", expected: "{ and the keys of the setup");
            }

            var root = text.Section(ref reader, "");
            reader.Read(); // Throws when anything but comments follows.
            return root;
        }
        catch (JsonException e)
        {
            throw text.Malformed(e);
        }
    }

    static byte[] Bytes(Stream stream, string file)
    {
        byte[] buffer = new byte[Longest + 1];
        int length;
        try
        {
            length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw FileProblem.Of(file, e);
        }

        if (length > Longest)
        {
            throw new RecordException(new(file), "the file is too long for a setup", expected: FormattableString.Invariant($"at most {Longest} bytes"));
        }

        ReadOnlySpan<byte> text = buffer.AsSpan(0, length);
        text = text.StartsWith(Encoding.UTF8.Preamble) ? text[Encoding.UTF8.Preamble.Length..] : text;
        return text.Trim("\r\n\t "u8).IsEmpty ? throw new RecordException(new(file), "the file is empty", expected: "a setup in JSON") : text.ToArray();
    }

    void CheckEncoding()
    {
        int nul = bytes.AsSpan().IndexOf((byte)0);
        if (nul >= 0)
        {
            throw new RecordException(At(nul, null), "there is a NUL byte, as in UTF-16 or binary files", expected: "text saved as UTF-8");
        }

        for (int at = 0; at < bytes.Length && !Utf8.IsValid(bytes);)
        {
            if (Rune.DecodeFromUtf8(bytes.AsSpan(at), out _, out int consumed) != System.Buffers.OperationStatus.Done)
            {
                throw new RecordException(At(at, null), "there are bytes that are not UTF-8", expected: "text saved as UTF-8");
            }

            at += consumed;
        }
    }

    JsonSection Section(ref Utf8JsonReader reader, string name)
    {
        var place = At(reader.TokenStartIndex, name.Length == 0 ? null : name);
        var entries = new Dictionary<string, JsonEntry>();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            string key = reader.GetString()!, path = name.Length == 0 ? key : $"{name}.{key}";
            var keyPlace = At(reader.TokenStartIndex, path);
            if (entries.TryGetValue(key, out var first))
            {
                throw new RecordException(keyPlace, FormattableString.Invariant($"key {RecordException.Quote(key)} was already given on line {first.KeyPlace.Line}"), key, "each key once");
            }

            reader.Read();
            entries[key] = Entry(ref reader, keyPlace, path);
        }

        return new(name, place, entries);
    }

    JsonEntry Entry(ref Utf8JsonReader reader, Place keyPlace, string path)
    {
        int start = (int)reader.TokenStartIndex;
        var (place, kind) = (At(start, path), reader.TokenType);
        var section = kind == JsonTokenType.StartObject ? Section(ref reader, path) : null;
        reader.Skip();
        string text = kind == JsonTokenType.String ? reader.GetString()! : Encoding.UTF8.GetString(bytes.AsSpan(start..(int)reader.BytesConsumed));
        return new(keyPlace, new(place, text), kind, section);
    }

    RecordException Malformed(JsonException e)
    {
        int start = 0;
        for (long line = e.LineNumber ?? 0; line > 0; line--)
        {
            start += bytes.AsSpan(start).IndexOf((byte)'\n') + 1;
        }

        return new(At(Math.Min(bytes.Length, start + (e.BytePositionInLine ?? 0)), null), "the JSON cannot be read on from here", null,
            "keys and texts in double quotes, a colon after each key, a comma between entries, every brace closed", e);
    }

    // Lines end in LF or CRLF; columns count characters, not bytes.
    Place At(long position, string? name)
    {
        var before = bytes.AsSpan(0, (int)position);
        int lineStart = before.LastIndexOf((byte)'\n') + 1;
        return new(file, before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1, name, IsText: true);
    }
}
