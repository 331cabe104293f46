namespace Ascham.Recordings;

/// <summary>Finds sudden sounds: a short average of the energy against a long one just before, as earthquakes are found.</summary>
/// <remarks>
/// R. Allen, "Automatic earthquake recognition and timing from single traces", Bull. Seism. Soc. Am. 68 (1978) 1521-1532, for the ratio of averages; the long average follows gusts, and a
/// floor from the median of the half second keeps hiss from counting. The spans and levels below were set on simulated recordings with seeds of their own.
/// </remarks>
sealed class SuddenSounds
{
    const double Hop = 0.0005, Short = 0.002, Long = 0.040, Gap = 0.002; // s
    const double Block = 0.5; // s
    const double Silence = 1e-14; // mean square; silence may be recorded as zeros
    const double Jump = 5; // 7 dB over the noise before: five standard deviations of two milliseconds of steady noise
    const double FromPeak = 0.1; // 10 dB below its peak a sound counts as there; the sliding of the arrow on the way out is fainter
    const double Span = 0.025, Rise = 16; // s; 12 dB

    readonly float[] sound;
    readonly double rate;
    readonly int hop;
    readonly double[] energy;   // mean square by hop
    readonly double[] running;  // its sums
    readonly double[] floor;    // median by block

    internal SuddenSounds(Recording recording)
    {
        rate = recording.Rate;
        sound = BandPass.Apply(recording.Samples, rate);
        hop = Math.Max(1, (int)Math.Round(Hop * rate));
        energy = new double[sound.Length / hop];
        running = new double[energy.Length + 1];
        for (int i = 0; i < energy.Length; i++)
        {
            double sum = 0;
            foreach (float x in sound.AsSpan(i * hop, hop))
            {
                sum += (double)x * x;
            }

            energy[i] = sum / hop;
            running[i + 1] = running[i] + energy[i];
        }

        int perBlock = Hops(Block);
        floor = [.. energy.Chunk(perBlock).Select(Median)];
    }

    /// <summary>Time of a hop, s.</summary>
    internal double HopSeconds => hop / rate;

    internal int HopCount => energy.Length;

    /// <summary>Mean square over the millisecond from a hop on.</summary>
    internal double Power(int at) => Mean(at, at + Hops(0.001));

    /// <summary>Mean square at which a sound counts as sudden there.</summary>
    internal double Threshold(int at) => Jump * Noise(at);

    /// <summary>All of them, in order of time.</summary>
    internal List<Sudden> Find()
    {
        List<Sudden> found = [];
        for (int i = Hops(Gap) + Hops(Long) / 2; i < energy.Length - Hops(Short); i++)
        {
            if (Mean(i, i + Hops(Short)) >= Threshold(i) && Describe(i) is { } sudden)
            {
                if (found.Count == 0 || sudden.At - found[^1].At > 0.004)
                {
                    found.Add(sudden);
                }

                i = Math.Max(i, (int)(sudden.At / HopSeconds)) + Hops(Span);
            }
        }

        return found;
    }

    /// <summary>How alike the wave forms of two sounds are: largest normalised correlation of their first 15 ms, -1 to 1, over shifts of 2 ms.</summary>
    internal double Likeness(Sudden first, Sudden second)
    {
        int lead = (int)(0.001 * rate), length = (int)(0.015 * rate), slack = (int)(0.002 * rate);
        int a = (int)(first.At * rate) - lead, b = (int)(second.At * rate) - lead;
        if (a < 0 || b - slack < 0 || a + length > sound.Length || b + slack + length > sound.Length)
        {
            return 0;
        }

        double best = 0;
        ReadOnlySpan<float> x = sound.AsSpan(a, length);
        double xx = Dot(x, x);
        for (int shift = -slack; shift <= slack; shift++)
        {
            ReadOnlySpan<float> y = sound.AsSpan(b + shift, length);
            best = Math.Max(best, Math.Abs(Dot(x, y)) / Math.Sqrt(xx * Dot(y, y) + 1e-30)); // a wall may turn the sign
        }

        return best;
    }

    /// <summary>Where the sound that made a hop trigger begins, and how loud it is.</summary>
    Sudden? Describe(int trigger)
    {
        int end = Math.Min(trigger + Hops(Span), energy.Length - Hops(0.001));
        double peak = 0, noise = Noise(trigger);
        for (int i = trigger; i < end; i++)
        {
            peak = Math.Max(peak, Power(i));
        }

        double there = Math.Max(FromPeak * peak, 4 * noise);
        int first = trigger;
        while (first < end && Power(first) < there)
        {
            first++;
        }

        int crest = first;
        for (int i = first; i < Math.Min(first + Hops(0.004), end); i++)
        {
            crest = Power(i) > Power(crest) ? i : crest;
        }

        // From well before the crossing to the crest, so that the second stretch is loud throughout.
        int from = Math.Max(0, first * hop - (int)(0.010 * rate)), to = Math.Min(sound.Length, Math.Max((crest + Hops(0.001)) * hop, first * hop + (int)(0.002 * rate)));
        if (to - from < 32)
        {
            return null;
        }

        double bandwidth = BandPass.High(rate) - BandPass.Low;
        (int cut, double sd) = OnsetPicker.Pick(sound.AsSpan(from, to - from), Math.Min(1, 2 * bandwidth / rate));
        double at = (from + cut) / rate, rise = Math.Max(crest * HopSeconds - at, HopSeconds);

        // An onset that swells is lost in the noise until it has grown as large; and a tenth of a millisecond for the filter. A cut at the very start means that the noise itself
        // was falling off, and no start was seen: then all that was looked at is in doubt.
        double swell = cut < 0.001 * rate ? (to - from) / (2 * rate) : rise * Math.Sqrt(noise / peak);
        return new(at, Math.Sqrt(sd * sd / (rate * rate) + swell * swell + 1e-8), peak, peak / noise, StartsTwice(first, crest, end));
    }

    /// <summary>Whether it falls off and comes back within the span, about as loud.</summary>
    bool StartsTwice(int first, int crest, int end)
    {
        double least = double.PositiveInfinity, loudest = Power(crest);
        for (int i = crest; i < end; i++)
        {
            double power = Mean(i, i + Hops(Short)); // over two milliseconds, so that the beat of two tones is not taken for a second start
            least = Math.Min(least, power);
            if (i - first > Hops(0.004) && power > Rise * least && power > loudest / 4)
            {
                return true;
            }
        }

        return false;
    }

    double Noise(int at)
    {
        double before = Mean(Math.Max(0, at - Hops(Gap) - Hops(Long)), Math.Max(0, at - Hops(Gap)));
        return Math.Max(before, floor[Math.Min(floor.Length - 1, at / Hops(Block))]);
    }

    double Mean(int from, int to)
    {
        to = Math.Min(to, energy.Length);
        return Math.Max(Silence, (running[to] - running[from]) / Math.Max(1, to - from));
    }

    int Hops(double seconds) => Math.Max(1, (int)Math.Round(seconds / HopSeconds));

    static double Median(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }

    static double Dot(ReadOnlySpan<float> x, ReadOnlySpan<float> y)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            sum += (double)x[i] * y[i];
        }

        return sum;
    }
}

/// <summary>A sudden sound: start and its standard error in seconds, mean square of its loudest millisecond, and that over the noise before.</summary>
readonly record struct Sudden(double At, double Error, double Power, double OverNoise, bool StartsTwice);
