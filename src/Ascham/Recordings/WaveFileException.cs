namespace Ascham.Recordings;

using System.Globalization;

/// <summary>A sound file that cannot be read, with the place where it goes wrong.</summary>
public sealed class WaveFileException : Exception
{
    internal WaveFileException(string file, long byteOffset, string what)
        : base(string.Create(CultureInfo.InvariantCulture, $"{file}, byte {byteOffset}: {what}"))
        => (File, ByteOffset) = (file, byteOffset);

    /// <summary>Name of the file, as it was given.</summary>
    public string File { get; }

    /// <summary>Bytes before the place, counted from the start of the file.</summary>
    public long ByteOffset { get; }
}
