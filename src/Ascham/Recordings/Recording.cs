namespace Ascham.Recordings;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Sound of one microphone against time.</summary>
public sealed class Recording
{
    // Recorders clip a little below full scale.
    const float Full = 0.998f;

    readonly ReadOnlyMemory<float> samples;

    internal Recording(ReadOnlyMemory<float> samples, double rate) => (this.samples, Rate) = (samples, rate);

    /// <summary>Samples a second.</summary>
    public Frequency SampleRate => Frequency.FromHertz(Rate);

    /// <summary>How long it runs.</summary>
    public Duration Length => Duration.FromSeconds(samples.Length / Rate);

    /// <summary>Share of the samples that stand at full scale, where the microphone or the recorder could not follow. Times of onsets suffer little, levels do.</summary>
    public Ratio Clipped
    {
        get
        {
            int count = 0;
            foreach (float sample in Samples)
            {
                count += Math.Abs(sample) >= Full ? 1 : 0;
            }

            return Ratio.FromDecimalFractions(samples.IsEmpty ? 0 : count / (double)samples.Length);
        }
    }

    internal double Rate { get; }

    internal ReadOnlySpan<float> Samples => samples.Span;

    /// <summary>From samples already in memory, which are copied.</summary>
    /// <param name="samples">Full scale at -1 and +1; finite; shape (n).</param>
    /// <param name="sampleRate">8 kHz to 192 kHz.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="ArgumentException">A sample is not a finite number.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The sample rate is outside its range.</exception>
    public static Recording FromSamples(ReadOnlySpan<float> samples, Frequency sampleRate)
    {
        double rate = Require.InRange(sampleRate.Hertz, 8000, 192_000, "Hz", nameof(sampleRate));
        for (int i = 0; i < samples.Length; i++)
        {
            if (!float.IsFinite(samples[i]))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Sample {i} is not a finite number."), nameof(samples));
            }
        }

        return new(samples.ToArray(), rate);
    }

    /// <summary>A part, for one shot out of several; its own time starts at zero.</summary>
    /// <remarks>Leave half a second before the release, where the noise is judged, and some tenths of a second after the impact.</remarks>
    /// <param name="from">Start, from the start of this recording.</param>
    /// <param name="to">End; after the start and not beyond the end of this recording.</param>
    /// <returns>The part; the samples are shared.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The span is empty or leaves the recording.</exception>
    public Recording Between(Duration from, Duration to)
    {
        double start = Require.InRange(from.Seconds, 0, Length.Seconds, "s", nameof(from));
        double end = Require.InRange(to.Seconds, start, Length.Seconds, "s", nameof(to));
        int first = (int)Math.Round(start * Rate), last = Math.Min(samples.Length, (int)Math.Round(end * Rate));
        return last > first
            ? new(samples[first..last], Rate)
            : throw new ArgumentOutOfRangeException(nameof(to), end, $"{nameof(to)} must lie after {nameof(from)}.");
    }
}
