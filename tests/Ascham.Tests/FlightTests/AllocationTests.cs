namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Sights;
using Xunit;

public class AllocationTests
{
    [Fact]
    public void An_arrow_of_a_batch_allocates_nothing()
    {
        var plan = BatchTests.Everything.Plan();
        foreach (Sampling sampling in new[] { Sampling.Random, Sampling.EvenlySpread })
        {
            var chunk = new BatchChunk(plan, new(plan.Inputs, sampling, 5));
            var sums = default(FaceSums);
            var histogram = new StrikeHistogram(1, 64);
            Assert.Equal(0, Bytes(() =>
            {
                chunk.Fly(3, 250);
                sums.Add(chunk, 1, default, 0.2);
                histogram.Add(chunk, 1, 250);
                chunk.FlyAlone(7, 2);
            }));
            Assert.True(sums.Arrived > 0);
        }
    }

    [Fact] // what a run allocates besides (workspaces, a few sums per 16384 arrows) does not grow with the arrows but by a hundredth of a byte each
    public void A_million_arrows_allocate_no_more_than_workspaces()
    {
        BatchOptions Of(long arrows) => new() { Arrows = arrows, Seed = 1, Level = 0.9, Threads = 1, HistogramHalfWidth = UnitsNet.Length.FromMeters(1), HistogramCells = 64 };
        long Run(long arrows) => Bytes(() => BatchTests.Everything.Summarise(Of(arrows)));
        long few = Run(16_384), many = Run(16_384 * 9);
        Assert.InRange((many - few) / (16_384.0 * 8), -0.1, 0.1);
    }

    [Fact]
    public void A_tape_allocates_nothing()
    {
        double[] distances = [.. Enumerable.Range(20, 81).Select(yards => 0.9144 * yards)], angles = new double[81];
        foreach (string drag in new[] { "constant", "table", "ordinary point" })
        {
            PointMassSi mass = AnyDrag.Flight(drag);
            Assert.Equal(0, Bytes(() => TapeSolver.SightAngles(mass, 85, 0.11, distances, angles)));
            Assert.True(angles[80] > angles[0]);
        }
    }

    // On this thread, by one run of several, after the code is compiled.
    static long Bytes(Action run)
    {
        long least = long.MaxValue;
        for (int i = 0; i < 40; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            run();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }
}
