namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using Xunit;

public class BatchContractTests
{
    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static readonly FlightBatch Batch = new()
    {
        Flight = BatchTests.Flight(0.0017, Wind.Calm),
        Launch = new() { Speed = 85.MetresPerSecond, Elevation = 2.5.Degrees },
        Faces = [60.Metres],
        LaunchSpeed = Deviation.Normal(1.MetresPerSecond),
    };

    static readonly BatchOptions Options = new() { Arrows = 1000, Seed = 1, Level = 0.9 };

    [Fact]
    public void A_negative_or_missing_size_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Deviation.Normal(-1.MetresPerSecond));
        Assert.Throws<ArgumentOutOfRangeException>(() => Deviation.Uniform((-1).Milliradians));
    }

    [Fact]
    public void A_size_that_would_turn_an_input_round_is_refused_with_its_range()
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => (Batch with { DragArea = Deviation.Normal(20.Percent) }).Summarise(Options, cancellation: Stop));
        Assert.Contains("DragArea", e.Message);
        Assert.Contains("from 0 to 0.11", e.Message);
        Assert.Contains("8.6 standard deviations", e.Message);
        Assert.Contains("Deviation.Uniform may be 0.88 wide", e.Message);
        Assert.Contains("Deviation.LogNormal", e.Message);
        var speed = Assert.Throws<ArgumentOutOfRangeException>(() => (Batch with { LaunchSpeed = Deviation.Normal(10.MetresPerSecond) }).Summarise(Options, cancellation: Stop));
        Assert.Contains("to 9.35 m/s; it was 10 m/s", speed.Message);
        Assert.DoesNotContain("LogNormal", speed.Message);
        (Batch with { DragArea = Deviation.Uniform(20.Percent) }).Summarise(Options, cancellation: Stop);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(2.1)]
    [InlineData(double.NaN)]
    public void A_factor_outside_its_range_is_refused(double factor) => Assert.Equal("factor", Assert.Throws<ArgumentOutOfRangeException>(() => Deviation.LogNormal(factor)).ParamName);

    [Fact]
    public void A_mass_may_differ_by_a_small_factor_only()
    {
        FlightBatch heavy = Batch with { SpeedPerMass = -1, Mass = Deviation.LogNormal(1.08) };
        heavy.Summarise(Options, cancellation: Stop);
        Assert.Contains("Mass", Assert.Throws<ArgumentOutOfRangeException>(() => (heavy with { Mass = Deviation.LogNormal(1.09) }).Summarise(Options, cancellation: Stop)).Message);
    }

    [Fact]
    public void A_cell_outside_the_histogram_is_refused_with_the_cells_there_are()
    {
        StrikeHistogram histogram = Batch.Summarise(Options with { HistogramHalfWidth = 1.Metres, HistogramCells = 8 }, cancellation: Stop).Faces[0].Histogram!;
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => histogram[-1, 0]);
        Assert.Contains("column must be from 0 to 7; it was -1", e.Message);
        Assert.Contains("row must be from 0 to 7; it was 8", Assert.Throws<ArgumentOutOfRangeException>(() => histogram[0, 8]).Message);
    }

    [Fact]
    public void All_cells_are_read_at_once_in_the_order_of_rows()
    {
        StrikeHistogram histogram = Batch.Summarise(Options with { HistogramHalfWidth = 1.Metres, HistogramCells = 8 }, cancellation: Stop).Faces[0].Histogram!;
        Assert.Equal(64, histogram.Counts.Length);
        long sum = histogram.Outside;
        for (int i = 0; i < 64; i++)
        {
            Assert.Equal(histogram[i % 8, i / 8], histogram.Counts[i]);
            sum += histogram.Counts[i];
        }

        Assert.Equal(1000, sum);
    }

    [Fact]
    public void A_mass_that_differs_needs_to_know_what_it_does_to_the_speed() =>
        Assert.Contains("SpeedPerMass", Assert.Throws<ArgumentException>(() => (Batch with { Mass = Deviation.Normal(1.Percent) }).Summarise(Options, cancellation: Stop)).Message);

    [Theory]
    [InlineData(7)]
    [InlineData(double.NaN)]
    public void A_speed_that_follows_the_mass_in_no_possible_way_is_refused(double perMass) =>
        Assert.Contains("SpeedPerMass", Assert.Throws<ArgumentOutOfRangeException>(() => (Batch with { SpeedPerMass = perMass }).Summarise(Options, cancellation: Stop)).Message);

    [Fact]
    public void A_face_out_of_reach_is_named_with_the_reach()
    {
        var e = Assert.Throws<OutOfReachException>(() => (Batch with { Faces = [60.Metres, 2000.Metres] }).Summarise(Options, cancellation: Stop));
        Assert.Equal(2000, e.Asked.Meters, 1e-9);
        Assert.InRange(e.Reach.Meters, 100, 800);
    }

    [Fact]
    public void A_face_behind_the_launch_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => (Batch with { Launch = Batch.Launch with { Forward = 70.Metres } }).Summarise(Options, cancellation: Stop));

    [Theory]
    [InlineData(1, Sampling.Random, "at least 2")]
    [InlineData(5000, Sampling.EvenlySpread, "a multiple of 4096")]
    public void A_number_of_arrows_that_cannot_be_is_refused(long arrows, Sampling sampling, string text) =>
        Assert.Contains(text, Assert.Throws<ArgumentOutOfRangeException>(() => Batch.Summarise(Options with { Arrows = arrows, Sampling = sampling }, cancellation: Stop)).Message);

    [Fact]
    public void No_faces_and_no_threads_are_refused()
    {
        Assert.Throws<ArgumentException>(() => (Batch with { Faces = [] }).Summarise(Options, cancellation: Stop));
        Assert.Throws<ArgumentOutOfRangeException>(() => Batch.Summarise(Options with { Threads = 0 }, cancellation: Stop));
        Assert.Throws<ArgumentOutOfRangeException>(() => Batch.Summarise(Options with { Level = 1 }, cancellation: Stop));
        Assert.Throws<ArgumentException>(() => Batch.Fly(new(10, 2), 1, cancellation: Stop));
    }

    [Fact]
    public void Progress_ends_at_one_and_never_falls()
    {
        var told = new List<double>();
        Batch.Summarise(Options with { Arrows = 100_000 }, new Told(told), cancellation: Stop);
        Assert.Equal(1, told[^1]);
        Assert.Equal(told.Order(), told);
        Assert.True(told.Count > 10);
    }

    [Fact]
    public void Work_that_is_stopped_says_so()
    {
        using var source = new CancellationTokenSource();
        var stop = new Told([], source);
        Assert.ThrowsAny<OperationCanceledException>(() => Batch.Summarise(Options with { Arrows = 100_000_000 }, stop, source.Token));
    }

    sealed class Told(List<double> told, CancellationTokenSource? stop = null) : IProgress<double>
    {
        public void Report(double value)
        {
            told.Add(value);
            stop?.Cancel();
        }
    }
}
