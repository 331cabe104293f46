namespace Ascham.Tests.RecordingsTests;

using Ascham.Recordings;
using Xunit;

public class OnsetTests
{
    [Fact] // independent: the formula of Maeda (1985) as commonly quoted, each variance summed afresh
    public void The_criterion_is_the_one_quoted()
    {
        var random = new Random(1);
        float[] x = [.. Enumerable.Range(0, 200).Select(i => (float)((i < 120 ? 0.1 : 1) * (random.NextDouble() - 0.5)))];
        double[] criterion = OnsetPicker.Criterion(x);

        for (int k = 5; k < 195; k++)
        {
            double Variance(IEnumerable<float> part) => part.Average(v => (double)v * v); // of zero mean
            double expected = (k * Math.Log(Variance(x.Take(k)))) + ((x.Length - k - 1) * Math.Log(Variance(x.Skip(k))));
            Assert.Equal(expected, criterion[k], 1e-9);
        }
    }

    [Theory] // coverage: the stated standard deviation against the errors found, 2000 onsets each
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(20)]
    public void The_cut_is_found_and_its_error_is_as_stated(double louder)
    {
        var random = new Random(7);
        double squares = 0, stated = 0;
        for (int i = 0; i < 2000; i++)
        {
            int truth = random.Next(100, 300);
            float[] x = [.. Enumerable.Range(0, 400).Select(k => (float)((k < truth ? 1 : louder) * Normal(random)))];
            (int cut, double sd) = OnsetPicker.Pick(x, 1);
            squares += (cut - truth) * (cut - truth);
            stated += sd * sd;
        }

        Assert.InRange(squares / stated, 0.5, 2); // in variance; the error of the cut has heavy tails
    }

    [Fact]
    public void Silence_recorded_as_zeros_has_its_onset_too()
    {
        float[] x = [.. Enumerable.Range(0, 200).Select(k => k < 90 ? 0f : 0.5f * (k % 2 == 0 ? 1 : -1))];
        Assert.InRange(OnsetPicker.Pick(x, 1).Cut, 89, 91);
    }

    [Theory] // derived: a Butterworth's response, 1/sqrt(1 + (corner/f)^8) below and 1/sqrt(1 + (f/corner)^4) above, frequencies warped by the bilinear transform
    [InlineData(75)]
    [InlineData(150)]
    [InlineData(300)]
    [InlineData(1500)]
    [InlineData(6000)]
    [InlineData(10000)]
    public void The_band_pass_has_the_response_of_its_kind(double hertz)
    {
        const double Rate = 44100;
        float[] tone = [.. Enumerable.Range(0, 44100).Select(i => (float)Math.Sin(2 * Math.PI * hertz * i / Rate))];
        double rms = Math.Sqrt(BandPass.Apply(tone, Rate).Skip(22050).Average(y => 2.0 * y * y));
        double Warped(double f) => Math.Tan(Math.PI * f / Rate);
        double low = 1 / Math.Sqrt(1 + Math.Pow(Warped(BandPass.Low) / Warped(hertz), 8)), high = 1 / Math.Sqrt(1 + Math.Pow(Warped(hertz) / Warped(BandPass.High(Rate)), 4));

        Assert.Equal(low * high, rms, 2e-3 * low * high);
    }

    [Fact]
    public void Nothing_comes_before_an_onset()
    {
        float[] click = new float[2000];
        click[1000] = 1;
        Assert.All(BandPass.Apply(click, 48000).Take(1000), y => Assert.Equal(0, y));
    }

    static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
