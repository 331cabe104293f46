namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using Xunit;

/// <summary>Drag known to a factor: a log-normal deviation.</summary>
public class LogNormalTests
{
    const double Factor = 1.2;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    static readonly FlightBatch Batch = BatchTests.Everything with { Faces = [60.Metres], DragArea = Deviation.LogNormal(Factor) };

    // Closed form: the logarithm is normal with mean 0 and standard deviation ln 1.2; mean exp(s²/2), relative standard deviation sqrt(exp(s²) - 1).
    [Theory]
    [InlineData(Sampling.Random)]
    [InlineData(Sampling.EvenlySpread)]
    public void The_draws_are_log_normal_about_the_median(Sampling sampling)
    {
        const int Chunks = 1024;
        BatchPlan plan = Batch.Plan();
        var draws = new BatchDraws(plan.Inputs, sampling, 5);
        double[] rows = new double[plan.Inputs.Length * BatchChunk.Arrows];
        double sum = 0, squares = 0, inside = 0, below = 0;
        for (int chunk = 0; chunk < Chunks; chunk++)
        {
            draws.Fill(chunk, rows);
            foreach (double shift in rows.AsSpan((int)Input.Drag * BatchChunk.Arrows, BatchChunk.Arrows))
            {
                double x = 1 + shift;
                (sum, squares) = (sum + x, squares + x * x);
                inside += x is > 1 / Factor and < Factor ? 1 : 0;
                below += x < 1 ? 1 : 0;
            }
        }

        double n = Chunks * BatchChunk.Arrows, mean = sum / n, s = Math.Log(Factor);
        Assert.Equal(Math.Exp(0.5 * s * s), mean, 1e-3);
        Assert.Equal(Math.Sqrt(Math.Exp(s * s) - 1), Math.Sqrt(squares / n - mean * mean) / mean, 1e-3);
        Assert.Equal(0.6826895, inside / n, 3e-3);
        Assert.Equal(0.5, below / n, 3e-3);
    }

    [Theory]
    [InlineData(Sampling.Random)]
    [InlineData(Sampling.EvenlySpread)]
    public void The_same_bits_come_out_on_one_thread_and_on_two(Sampling sampling)
    {
        BatchStrikes one = new(40_960, 1), two = new(40_960, 1);
        Batch.Fly(one, 7, sampling, 1, cancellation: Stop);
        Batch.Fly(two, 7, sampling, 2, cancellation: Stop);
        Assert.True(one.UpMetres(0).SequenceEqual(two.UpMetres(0)) && one.RightMetres(0).SequenceEqual(two.RightMetres(0)));

        BatchOptions options = new() { Arrows = 40_960, Seed = 7, Level = 0.9, Sampling = sampling, Circle = 10.Centimetres };
        Assert.Equal(
            Batch.Summarise(options with { Threads = 1 }, cancellation: Stop).Faces[0].SdUp,
            Batch.Summarise(options with { Threads = 2 }, cancellation: Stop).Faces[0].SdUp);
    }

    [Fact] // independent: the same arrow with its drag multiplied, flown alone
    public void An_arrow_flies_with_its_drag_multiplied()
    {
        BatchPlan plan = Batch.Plan();
        double[] drawn = new double[plan.Inputs.Length];
        foreach (double sizes in (double[])[-3, -1, 0, 1, 3])
        {
            drawn[(int)Input.Drag] = plan.Inputs[(int)Input.Drag].ShiftAt(sizes);
            plan.Arrow(drawn, 1, out BatchArrow<Real> arrow);
            PointMass alone = Batch.Flight with { Drag = Batch.Flight.Drag.Times(Math.Pow(Factor, sizes)) };
            Assert.Equal(alone.AtSlant(Batch.Launch, 60.Metres, Batch.Inclination).AboveLine(Batch.Inclination).Meters, plan.FlyStepByStep(arrow, 0).Up, 1e-7);
        }
    }
}
