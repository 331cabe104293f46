namespace Ascham.Recordings;

using System.Buffers.Binary;

/// <summary>What the format chunk of a WAVE file says.</summary>
/// <remarks>
/// IBM Corporation and Microsoft Corporation, "Multimedia Programming Interface and Data Specifications 1.0" (1991), chapter on RIFF and WAVE;
/// numbers of compressed formats by RFC 2361 (1998), appendix A. The extensible form is Microsoft's of 2001 (from memory).
/// </remarks>
readonly record struct WaveFormat(int Tag, int Channels, int Rate, int Bits)
{
    const int Pcm = 1, Float = 3, Extensible = 0xFFFE;

    internal int BytesPerSample => Bits / 8;

    internal int BytesPerFrame => BytesPerSample * Channels;

    /// <summary>Reads the chunk.</summary>
    /// <param name="chunk">Its bytes; shape (16 or more).</param>
    /// <param name="at">Where it starts in the file.</param>
    /// <param name="file">Name for messages.</param>
    internal static WaveFormat Read(ReadOnlySpan<byte> chunk, long at, string file)
    {
        int Word(ReadOnlySpan<byte> from, int offset) => BinaryPrimitives.ReadUInt16LittleEndian(from[offset..]);
        int tag = Word(chunk, 0), channels = Word(chunk, 2), align = Word(chunk, 12), bits = Word(chunk, 14);
        uint rate = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
        if (tag == Extensible && chunk.Length >= 40)
        {
            tag = Word(chunk, 24); // the sub-format's identifier begins with the plain number
        }

        if (tag is not (Pcm or Float))
        {
            throw new WaveFileException(file, at, $"the sound is coded as {Name(tag)}, which is not read. Save it as uncompressed WAV (PCM); squeezing to a compressed format and back may move a click by some milliseconds, so record uncompressed if you can.");
        }

        if (channels is not (1 or 2))
        {
            throw new WaveFileException(file, at + 2, $"the file has {channels} channels; expected 1 or 2. Save one microphone by itself.");
        }

        if (rate is < 8000 or > 192_000)
        {
            throw new WaveFileException(file, at + 4, $"the sample rate is {rate} Hz; expected 8000 to 192000 Hz.");
        }

        if (!(tag == Pcm ? bits is 8 or 16 or 24 or 32 : bits is 32 or 64))
        {
            throw new WaveFileException(file, at + 14, $"a sample has {bits} bits; expected 8, 16, 24 or 32 for PCM, 32 or 64 for floating point.");
        }

        return align == channels * bits / 8
            ? new(tag, channels, (int)rate, bits)
            : throw new WaveFileException(file, at + 12, $"a frame is said to take {align} bytes, but {channels} samples of {bits} bits take {channels * bits / 8}.");
    }

    /// <summary>One sample, full scale at -1 and +1; 8 bits are unsigned, all others signed (specification of 1991).</summary>
    internal double Sample(ReadOnlySpan<byte> at) => (Tag, Bits) switch
    {
        (Pcm, 8) => (at[0] - 128) / 128.0,
        (Pcm, 16) => BinaryPrimitives.ReadInt16LittleEndian(at) / 32768.0,
        (Pcm, 24) => ((at[0] << 8 | at[1] << 16 | at[2] << 24) >> 8) / 8388608.0,
        (Pcm, _) => BinaryPrimitives.ReadInt32LittleEndian(at) / 2147483648.0,
        (_, 32) => BinaryPrimitives.ReadSingleLittleEndian(at),
        _ => BinaryPrimitives.ReadDoubleLittleEndian(at),
    };

    // RFC 2361, appendix A.
    static string Name(int tag) => tag switch
    {
        0x0002 or 0x0011 => "ADPCM (compressed)",
        0x0006 => "A-law (compressed)",
        0x0007 => "mu-law (compressed)",
        0x0031 => "GSM 6.10 (compressed)",
        0x0050 or 0x0055 => "MPEG audio (compressed)",
        _ => $"format 0x{tag:X4}",
    };
}
