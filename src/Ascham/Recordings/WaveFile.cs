namespace Ascham.Recordings;

using System.Buffers.Binary;
using System.Text;

/// <summary>Reads recordings from WAVE files: PCM of 8, 16, 24 or 32 bits, or floating point of 32 or 64; one or two channels.</summary>
/// <remarks>
/// The file is read in blocks and kept as one channel of 32-bit numbers: at most <see cref="LongestSamples"/> of them, 120 MB.
/// Format: IBM Corporation and Microsoft Corporation, "Multimedia Programming Interface and Data Specifications 1.0" (1991).
/// </remarks>
public static class WaveFile
{
    /// <summary>Most samples of one channel that are read: about ten minutes at 48 kHz.</summary>
    public const int LongestSamples = 30_000_000;

    const int Block = 1 << 16;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="channel">Which microphone to listen to.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="WaveFileException">The file is not WAVE, is cut off, is compressed, is too long, or contradicts itself; the message says where.</exception>
    /// <exception cref="IOException">The file cannot be opened or read.</exception>
    public static Recording Read(string path, WaveChannel channel)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        using FileStream stream = File.OpenRead(path);
        return Read(stream, Path.GetFileName(path), channel);
    }

    /// <summary>Reads a stream from where it stands; it need not be able to seek.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="channel">Which microphone to listen to.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="WaveFileException">As for a file.</exception>
    public static Recording Read(Stream stream, string name, WaveChannel channel)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        if (!Enum.IsDefined(channel))
        {
            throw new ArgumentOutOfRangeException(nameof(channel), channel, "channel must be First, Second or Mean.");
        }

        var from = new Cursor(stream, name);
        Span<byte> head = stackalloc byte[12];
        from.Fill(head, "the header of the file");
        string kind = Text(head[..4]);
        if (kind != "RIFF" || Text(head[8..]) != "WAVE")
        {
            throw new WaveFileException(name, 0, kind is "RF64" or "RIFX" or "BW64"
                ? $"the file is of the kind {kind}, which is not read. Save it as ordinary WAV."
                : $"this is not a WAV file: it must begin with RIFF and WAVE, it begins with {Printable(head[..4])} and {Printable(head[8..])}. A file renamed to .wav stays what it was.");
        }

        WaveFormat? format = null;
        Span<byte> chunkHead = stackalloc byte[8], chunk = stackalloc byte[40];
        while (true)
        {
            long at = from.Position;
            from.Fill(chunkHead, "the next chunk; no sound data came");
            string id = Text(chunkHead[..4]);
            uint length = BinaryPrimitives.ReadUInt32LittleEndian(chunkHead[4..]);
            switch (id)
            {
                case "fmt ":
                    if (length < 16)
                    {
                        throw new WaveFileException(name, at + 4, $"the format chunk has {length} bytes; expected 16 or more.");
                    }

                    Span<byte> part = chunk[..(int)Math.Min(length, 40)];
                    from.Fill(part, "the format chunk");
                    format = WaveFormat.Read(part, at + 8, name);
                    from.Skip(length - part.Length + (length & 1), "the format chunk");
                    break;
                case "data":
                    return Data(from, format ?? throw new WaveFileException(name, at, "sound data come before the format chunk."), length, at, channel);
                default:
                    from.Skip((long)length + (length & 1), $"the chunk {Printable(chunkHead[..4])}"); // a chunk of odd length is padded
                    break;
            }
        }
    }

    static Recording Data(Cursor from, WaveFormat format, uint length, long at, WaveChannel channel)
    {
        if (length is 0 or uint.MaxValue)
        {
            throw new WaveFileException(from.Name, at + 4, "the length of the sound data was never filled in: the recorder stopped before it finished. Open the file in a sound editor and save it again.");
        }

        if (length % format.BytesPerFrame != 0)
        {
            throw new WaveFileException(from.Name, at + 4, $"the sound data take {length} bytes, which is no whole number of frames of {format.BytesPerFrame} bytes.");
        }

        long frames = length / format.BytesPerFrame;
        if (frames > LongestSamples)
        {
            throw new WaveFileException(from.Name, at + 4, $"the recording has {frames} samples a channel; at most {LongestSamples} are read. Cut out the shots.");
        }

        if (channel != WaveChannel.First && format.Channels == 1)
        {
            throw new WaveFileException(from.Name, at, $"the file has one channel, so {channel} cannot be taken; take {nameof(WaveChannel.First)}.");
        }

        var samples = new List<float>(); // grown while read: a length that lies costs no memory
        byte[] block = new byte[Block / format.BytesPerFrame * format.BytesPerFrame];
        for (long left = length; left > 0;)
        {
            long here = from.Position;
            Span<byte> bytes = block.AsSpan(0, (int)Math.Min(left, block.Length));
            from.Fill(bytes, "the sound data");
            Take(bytes, format, channel, samples, here, from.Name);
            left -= bytes.Length;
        }

        return new(samples.ToArray(), format.Rate);
    }

    static void Take(ReadOnlySpan<byte> bytes, WaveFormat format, WaveChannel channel, List<float> to, long at, string name)
    {
        for (int i = 0; i < bytes.Length; i += format.BytesPerFrame)
        {
            double first = format.Sample(bytes[i..]), second = format.Channels == 2 ? format.Sample(bytes[(i + format.BytesPerSample)..]) : first;
            double sample = channel switch { WaveChannel.First => first, WaveChannel.Second => second, _ => (first + second) / 2 };
            if (!(Math.Abs(sample) <= 1000))
            {
                throw new WaveFileException(name, at + i, "a sample is not a number or far beyond full scale; expected -1 to 1.");
            }

            to.Add((float)sample);
        }
    }

    static string Text(ReadOnlySpan<byte> bytes) => Encoding.Latin1.GetString(bytes);

    static string Printable(ReadOnlySpan<byte> bytes) => $"\"{string.Concat(Text(bytes).Select(c => c is >= ' ' and <= '~' ? c : '?'))}\"";

    /// <summary>A stream read forwards that knows where it is.</summary>
    sealed class Cursor(Stream stream, string name)
    {
        internal string Name => name;

        internal long Position { get; private set; }

        internal void Fill(Span<byte> bytes, string what)
        {
            int got = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            Position += got;
            if (got < bytes.Length)
            {
                throw new WaveFileException(name, Position, $"the file ends in the middle of {what}. It was cut off; copy it again.");
            }
        }

        internal void Skip(long count, string what)
        {
            Span<byte> bytes = stackalloc byte[4096];
            for (; count > 0; count -= Math.Min(count, bytes.Length))
            {
                Fill(bytes[..(int)Math.Min(count, bytes.Length)], what);
            }
        }
    }
}
