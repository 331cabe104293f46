namespace Ascham.Tests.RecordingsTests;

using System.Text;
using Ascham.Recordings;
using CsCheck;
using UnitsNet;
using Xunit;

public class WaveFileTests
{
    // Independent: written by the module "wave" of the standard library of Python 3.11 from the samples 0, 1, -1, greatest, least, half, minus a quarter.
    [Theory]
    [InlineData(8, "UklGRisAAABXQVZFZm10IBAAAAABAAEARKwAAESsAAABAAgAZGF0YQcAAACAgX//AMBg")]
    [InlineData(16, "UklGRjIAAABXQVZFZm10IBAAAAABAAEARKwAAIhYAQACABAAZGF0YQ4AAAAAAAEA////fwCAAEAA4A==")]
    [InlineData(24, "UklGRjkAAABXQVZFZm10IBAAAAABAAEARKwAAMwEAgADABgAZGF0YRUAAAAAAAABAAD//////38AAIAAAEAAAOA=")]
    [InlineData(32, "UklGRkAAAABXQVZFZm10IBAAAAABAAEARKwAABCxAgAEACAAZGF0YRwAAAAAAAAAAQAAAP////////9/AAAAgAAAAEAAAADg")]
    public void A_file_of_another_writer_is_read_to_the_last_bit(int bits, string file)
    {
        Recording read = Read(Convert.FromBase64String(file));
        double step = Math.Pow(2, 1 - bits);

        Assert.Equal(44100, read.SampleRate.Hertz);
        Assert.Equal([0, (float)step, (float)-step, (float)(1 - step), -1, 0.5f, -0.25f], read.Samples.ToArray());
    }

    [Fact] // independent: as above, two channels, 48 kHz
    public void Two_channels_are_told_apart_and_averaged()
    {
        byte[] file = Convert.FromBase64String("UklGRjAAAABXQVZFZm10IBAAAAABAAIAgLsAAADuAgAEABAAZGF0YQwAAABkADj/LAFw/v9/AIA=");

        Assert.Equal([100, 300, 32767], Whole(Read(file, WaveChannel.First)));
        Assert.Equal([-200, -400, -32768], Whole(Read(file, WaveChannel.Second)));
        Assert.Equal([-50, -50, -0.5f], Whole(Read(file, WaveChannel.Mean)));
        static float[] Whole(Recording recording) => [.. recording.Samples.ToArray().Select(s => s * 32768)];
    }

    [Fact]
    public void Floating_point_the_extensible_form_and_other_chunks_are_read()
    {
        byte[] single = [.. new[] { 0.25f, -1f }.SelectMany(BitConverter.GetBytes)], whole = [.. new[] { 0.25, -1.0 }.SelectMany(BitConverter.GetBytes)];
        byte[] list = [.. Chunk("LIST", 1, 2, 3), 0]; // odd, so padded

        Assert.Equal([0.25f, -1], Read(File(Format(3, 1, 96000, 32), single)).Samples.ToArray());
        Assert.Equal([0.25f, -1], Read(File(Format(3, 1, 96000, 64), whole)).Samples.ToArray());
        Assert.Equal([0.5f], Read(File([.. list, .. Format(0xFFFE, 1, 48000, 16, 1)], [0, 0x40])).Samples.ToArray());
    }

    [Theory]
    [InlineData(0x55, 1, 44100, 16, 20, "MPEG audio")] // RFC 2361, appendix A: 0x0055
    [InlineData(6, 1, 44100, 8, 20, "A-law")]
    [InlineData(0x99, 1, 44100, 16, 20, "format 0x0099")]
    [InlineData(1, 6, 44100, 16, 22, "6 channels")]
    [InlineData(1, 1, 4000, 16, 24, "4000 Hz")]
    [InlineData(1, 1, 44100, 12, 34, "12 bits")]
    public void What_is_not_read_is_refused_at_its_place(int tag, int channels, int rate, int bits, long offset, string said)
    {
        var refused = Assert.Throws<WaveFileException>(() => Read(File(Format(tag, channels, rate, bits), [0, 0])));

        Assert.Equal(offset, refused.ByteOffset);
        Assert.StartsWith($"shot.wav, byte {offset}: ", refused.Message, StringComparison.Ordinal);
        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_cut_off_says_where()
    {
        byte[] file = File(Format(1, 1, 44100, 16), new byte[100]);
        var refused = Assert.Throws<WaveFileException>(() => Read(file[..80]));

        Assert.Equal(80, refused.ByteOffset);
        Assert.Contains("ends in the middle of the sound data", refused.Message, StringComparison.Ordinal);
        Assert.Equal("shot.wav", refused.File);
    }

    [Fact]
    public void Other_kinds_of_file_and_files_that_contradict_themselves_are_refused()
    {
        Refused(Encoding.ASCII.GetBytes("OggS________________"), 0, "not a WAV file");
        Refused(Encoding.ASCII.GetBytes("RF64____WAVE________"), 0, "kind RF64");
        Refused(File([], [0, 0]), 12, "before the format chunk");
        Refused(File(Format(1, 1, 44100, 16), [0, 0, 0]), 40, "no whole number of frames");
        Refused(File(Format(1, 1, 44100, 16), []), 40, "never filled in");
        Refused(File(Format(3, 1, 44100, 32), BitConverter.GetBytes(float.NaN)), 44, "not a number");
        Refused(File([.. Format(1, 1, 44100, 16)[..20], 9, 0, 16, 0], [0, 0]), 32, "a frame is said to take 9 bytes");
        Refused([.. File(Format(1, 1, 44100, 8), [])[..40], 0, 0, 0, 0x60], 40, "at most 30000000");
        Assert.Contains("has one channel", Assert.Throws<WaveFileException>(() => Read(File(Format(1, 1, 44100, 16), [0, 0]), WaveChannel.Second)).Message, StringComparison.Ordinal);
        static void Refused(byte[] file, long offset, string said)
        {
            var refused = Assert.Throws<WaveFileException>(() => Read(file));
            Assert.Contains(said, refused.Message, StringComparison.Ordinal);
            Assert.Equal(offset, refused.ByteOffset);
        }
    }

    [Fact] // contract: whatever the bytes, the only failure is the one documented
    public void A_spoilt_file_is_read_or_refused_and_nothing_else() =>
        Gen.Select(Gen.Int[0, 143], Gen.Byte, Gen.Int[12, 144]).Sample((at, spoilt, length) =>
        {
            byte[] file = File(Format(1, 2, 44100, 16), new byte[100]);
            file[at] = spoilt;
            try
            {
                Read(file[..length]);
            }
            catch (WaveFileException)
            {
            }
        });

    [Fact]
    public void A_part_of_a_recording_starts_anew()
    {
        Recording whole = Recording.FromSamples(Enumerable.Range(0, 16000).Select(i => i / 16000f).ToArray(), Frequency.FromHertz(8000));
        Recording part = whole.Between(Duration.FromSeconds(0.5), Duration.FromSeconds(1.5));

        Assert.Equal(8000, part.Samples.Length);
        Assert.Equal(0.25f, part.Samples[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => whole.Between(Duration.FromSeconds(1), Duration.FromSeconds(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => whole.Between(Duration.FromSeconds(1), Duration.FromSeconds(1)));
        Assert.Throws<ArgumentException>(() => Recording.FromSamples([0, float.NaN], Frequency.FromHertz(8000)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Recording.FromSamples([0], Frequency.FromHertz(100)));
    }

    static Recording Read(byte[] file, WaveChannel channel = WaveChannel.First)
    {
        using var stream = new MemoryStream(file);
        return WaveFile.Read(stream, "shot.wav", channel);
    }

    static byte[] File(byte[] before, byte[] data) => [.. Encoding.ASCII.GetBytes("RIFF"), 0, 0, 0, 0, .. Encoding.ASCII.GetBytes("WAVE"), .. before, .. Chunk("data", data)];

    static byte[] Chunk(string name, params byte[] bytes) => [.. Encoding.ASCII.GetBytes(name), .. BitConverter.GetBytes(bytes.Length), .. bytes];

    static byte[] Format(int tag, int channels, int rate, int bits, int? inner = null)
    {
        int frame = channels * bits / 8;
        byte[] plain = [.. Word(tag), .. Word(channels), .. BitConverter.GetBytes(rate), .. BitConverter.GetBytes(rate * frame), .. Word(frame), .. Word(bits)];
        return inner is { } number ? Chunk("fmt ", [.. plain, .. Word(22), .. Word(bits), 0, 0, 0, 0, .. Word(number), .. new byte[14]]) : Chunk("fmt ", plain);
    }

    static byte[] Word(int number) => BitConverter.GetBytes((ushort)number);
}
