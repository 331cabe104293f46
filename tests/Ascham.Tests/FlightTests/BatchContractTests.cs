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
        (Batch with { DragArea = Deviation.Uniform(20.Percent) }).Summarise(Options, cancellation: Stop);
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
