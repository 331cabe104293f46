namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Quantities;
using Xunit;

/// <summary>An interval is a claim about long-run frequency, so the frequency is tested; and evenly spread arrows must be worth their name.</summary>
public class BatchIntervalTests
{
    static readonly FlightBatch Batch = new()
    {
        Flight = BatchTests.Flight(0.0017, Wind.Of(0.MetresPerSecond, 3.MetresPerSecond)), Launch = new() { Speed = 85.MetresPerSecond, Elevation = 3.5.Degrees }, Faces = [80.Metres],
        LaunchSpeed = Scatter.Normal(0.6.MetresPerSecond), DragArea = Scatter.Normal(3.Percent), TailWind = Scatter.Normal(1.MetresPerSecond),
        WindFromLeft = Scatter.Normal(1.MetresPerSecond), AimUp = Scatter.Normal(1.Milliradians), AimRight = Scatter.Normal(1.Milliradians),
    };

    static readonly FaceResult Truth = Run(1 << 20, 999, Sampling.EvenlySpread);

    [Theory]
    [InlineData(Sampling.Random, 200)]
    [InlineData(Sampling.Random, 40_960)]
    [InlineData(Sampling.EvenlySpread, 4096)]
    public void Ninety_percent_intervals_cover_the_truth_nine_times_in_ten(Sampling sampling, int arrows)
    {
        const int Batches = 300;
        int mean = 0, sd = 0, correlation = 0, within = 0;
        for (int i = 0; i < Batches; i++)
        {
            FaceResult face = Run(arrows, (ulong)i, sampling);
            mean += Covers(face.MeanUp.Map(l => l.Meters), Truth.MeanUp.Value.Meters);
            sd += Covers(face.SdRight.Map(l => l.Meters), Truth.SdRight.Value.Meters);
            correlation += Covers(face.Correlation, Truth.Correlation.Value);
            within += Covers(face.Within!, Truth.Within!.Value);
        }

        double allowed = 4 * Math.Sqrt(0.9 * 0.1 / Batches) + 0.01; // 4 standard errors, and 1 % for the shape of the sample
        Assert.All([mean, sd, correlation], covered => Assert.InRange(covered / (double)Batches, 0.9 - allowed, 0.9 + allowed));
        Assert.InRange(within / (double)Batches, 0.9 - allowed, 1); // a share of few hits has a wide interval on purpose
    }

    [Fact]
    public void Four_thousand_evenly_spread_arrows_are_worth_forty_times_as_many_by_chance()
    {
        FaceResult even = Run(4096, 3, Sampling.EvenlySpread), chance = Run(163_840, 3, Sampling.Random);
        Assert.True(even.MeanUp.StandardError < chance.MeanUp.StandardError, $"{even.MeanUp.StandardError} against {chance.MeanUp.StandardError}");
        Assert.True(even.SdUp.StandardError < chance.SdUp.StandardError, $"{even.SdUp.StandardError} against {chance.SdUp.StandardError}");
    }

    static FaceResult Run(long arrows, ulong seed, Sampling sampling) =>
        Batch.Summarise(new() { Arrows = arrows, Seed = seed, Level = 0.9, Sampling = sampling, Circle = 60.Centimetres }).Faces[0];

    static int Covers(Estimate<double> estimate, double truth) => estimate.Low <= truth && truth <= estimate.High ? 1 : 0;
}
