namespace Ascham.Tests.RecordsTests;

using System.Text;
using Ascham.Records;
using Xunit;

public class LimitTests
{
    const long TwoGigabytes = 2L << 30;

    [Fact]
    public void A_line_without_end_is_refused_before_it_fills_the_memory()
    {
        using var endless = new RepeatingStream("distance_m,position_mm\n20,", "1,", TwoGigabytes);
        Assert.Equal("marks.csv, line 2: the line is too long; expected at most 1048576 characters.", ErrorOf(endless));
        Assert.InRange(endless.Served, CharsOfLine, CharsOfLine + (1 << 16));
    }

    [Fact]
    public void A_header_without_end_is_refused_too()
    {
        using var endless = new RepeatingStream("", "x", TwoGigabytes);
        Assert.Equal("marks.csv, line 1: the line is too long; expected at most 1048576 characters.", ErrorOf(endless));
        Assert.InRange(endless.Served, CharsOfLine, CharsOfLine + (1 << 16));
    }

    [Fact]
    public void A_quote_that_is_never_closed_is_refused_after_one_field()
    {
        using var endless = new RepeatingStream("distance_m,position_mm\n20,\"", "30,2\n", TwoGigabytes);
        Assert.Equal("marks.csv, line 2: a field is too long, or the quote that opened it is not closed; expected at most 65536 characters.", ErrorOf(endless));
        Assert.InRange(endless.Served, CsvTable.LongestField, 4 * CsvTable.LongestField);
    }

    [Fact]
    public void A_field_without_end_is_refused_sooner()
    {
        using var endless = new RepeatingStream("distance_m,position_mm\n20,", "1", TwoGigabytes);
        Assert.Equal("marks.csv, line 2: a field is too long, or the quote that opened it is not closed; expected at most 65536 characters.", ErrorOf(endless));
        Assert.InRange(endless.Served, CsvTable.LongestField, 4 * CsvTable.LongestField);
    }

    [Fact]
    public void A_field_too_long_is_refused_though_its_line_is_not()
    {
        using var stream = new RepeatingStream("distance_m,position_mm\n20,", "1", CsvTable.LongestField + 1);
        Assert.Equal("marks.csv, line 2: a field is too long, or the quote that opened it is not closed; expected at most 65536 characters.", ErrorOf(stream));
    }

    [Fact]
    public void Rows_without_end_are_refused_at_the_limit()
    {
        using var endless = new RepeatingStream("a,b\n", "1,2\n", TwoGigabytes);
        using var table = new CsvTable(endless, "x.csv");
        var error = Assert.Throws<RecordException>(() => table.Rows().Count());
        Assert.Equal("x.csv, line 1000002: the file has too many rows; expected at most 1000000.", error.Message);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void A_long_file_of_short_lines_is_fine_whatever_ends_them(string end)
    {
        using var stream = new RepeatingStream($"a,b{end}", $"1234567,2{end}", (2 * GuardedReader.LongestLine / (9 + end.Length)) * (9 + end.Length));
        using var table = new CsvTable(stream, "x.csv");
        var rows = table.Rows().ToArray();
        Assert.Equal(2 * GuardedReader.LongestLine / (9 + end.Length), rows.Length);
        Assert.Equal(rows.Length + 1, rows[^1].Line);
    }

    [Fact]
    public void A_failure_of_the_disk_while_reading_is_told()
    {
        using var broken = new RepeatingStream("distance_m,position_mm\n20,1\n", "", 1);
        Assert.Equal("marks.csv: the system could not read or write it: the cable came off.", ErrorOf(broken));
    }

    const long CharsOfLine = GuardedReader.LongestLine;

    static string ErrorOf(Stream stream) => Assert.Throws<RecordException>(() => MarksFile.Read(stream, "marks.csv", null, null)).Message;

    /// <summary>A text, then another over and over, up to a length; fails when there is nothing to repeat.</summary>
    sealed class RepeatingStream(string start, string repeated, long length) : Stream
    {
        readonly byte[] head = Encoding.UTF8.GetBytes(start), tail = Encoding.UTF8.GetBytes(repeated);

        public long Served { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Served; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            int taken = (int)Math.Min(count, head.Length + length - Served);
            for (int i = 0; i < taken; i++, Served++)
            {
                if (Served >= head.Length && tail.Length == 0)
                {
                    return i > 0 ? i : throw new IOException("the cable came off");
                }

                buffer[offset + i] = Served < head.Length ? head[Served] : tail[(Served - head.Length) % tail.Length];
            }

            return taken;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
