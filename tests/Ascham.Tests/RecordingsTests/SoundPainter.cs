namespace Ascham.Tests.RecordingsTests;

using Ascham.Numerics;

/// <summary>Paints sounds into a recording: modes, bursts, reflections, noises. It knows nothing of how they are found again.</summary>
sealed class SoundPainter(int rate, double seconds, int seed)
{
    // Hashed: the first numbers of neighbouring seeds are not independent of each other.
    readonly Random random = new((int)(Xoshiro.SplitMix((ulong)seed) >> 33));
    readonly float[] sound = new float[(int)(rate * seconds)];

    internal int Rate => rate;

    internal float[] Sound => sound;

    internal double Even(double low, double high) => low + ((high - low) * random.NextDouble());

    internal double Normal(double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    internal bool Chance(double share) => random.NextDouble() < share;

    internal static double Amplitude(double decibels) => Math.Pow(10, decibels / 20);

    /// <summary>A struck thing: decaying modes and a burst of noise, each with its own attack, silent before time zero; loudest about 1.</summary>
    internal float[] Strike(double lowHz, double highHz, double attackMs, double decayMs, double noise)
    {
        float[] wave = new float[(int)(0.08 * rate)];
        int modes = random.Next(4, 9);
        for (int m = 0; m < modes; m++)
        {
            double hertz = lowHz * Math.Pow(highHz / lowHz, random.NextDouble()), phase = Even(0, 2 * Math.PI), attack = attackMs * Even(0.5, 2), decay = decayMs * Even(0.5, 2), size = Even(0.3, 1);
            Add(wave, attack, decay, t => size * Math.Sin((2 * Math.PI * hertz * t) + phase));
        }

        double before = 0, share = Even(0.3, 0.9); // a one-pole colour for the burst
        Add(wave, attackMs * Even(0.3, 1), decayMs * Even(0.3, 1), _ => noise * 3 * (before += share * (Even(-1, 1) - before)));
        float peak = wave.Max(Math.Abs);
        return [.. wave.Select(w => w / peak)];
    }

    /// <summary>Noise that swells from nothing over its length: the arrow sliding along as it is pushed.</summary>
    internal float[] Slide(double seconds)
    {
        float[] wave = new float[Math.Max(1, (int)(seconds * rate))];
        double before = 0;
        for (int i = 0; i < wave.Length; i++)
        {
            double white = Even(-1, 1);
            wave[i] = (float)((white - before) * i / wave.Length);
            before = white;
        }

        return wave;
    }

    /// <summary>Adds a wave that starts at a time, exact to a part of a sample.</summary>
    internal void Put(float[] wave, double at, double size)
    {
        double place = at * rate;
        int first = (int)Math.Floor(place);
        double late = place - first;
        for (int i = Math.Max(0, -first); i <= wave.Length && first + i < sound.Length; i++)
        {
            double here = i < wave.Length ? wave[i] : 0, back = i > 0 ? wave[i - 1] : 0;
            sound[first + i] += (float)(size * ((here * (1 - late)) + (back * late)));
        }
    }

    /// <summary>Adds a wave with the ground's reflection and the many weak ones of a place with trees or walls.</summary>
    internal void PutWithSurroundings(float[] wave, double at, double size, double reverberation)
    {
        Put(wave, at, size);
        float[] dull = Dulled(wave, 0.4);
        Put(dull, at + Even(0.0008, 0.006), size * Even(0.2, 0.7) * (Chance(0.5) ? 1 : -1));
        for (int i = 0; i < 30; i++)
        {
            double late = 0.005 + (-0.04 * Math.Log(1 - random.NextDouble()));
            Put(dull, at + late, size * reverberation * Math.Exp(-late / 0.05) * Even(-1, 1));
        }
    }

    /// <summary>Through a one-pole low pass: what is left after a wall, or far away.</summary>
    internal static float[] Dulled(float[] wave, double share)
    {
        float[] dull = new float[wave.Length];
        double y = 0;
        for (int i = 0; i < wave.Length; i++)
        {
            dull[i] = (float)(y += share * (wave[i] - y));
        }

        return dull;
    }

    /// <summary>Pink noise.</summary>
    internal void Pink(double rms)
    {
        // Voss's way: eight random numbers of which one is drawn anew at each sample, each half as often as the one before.
        double[] dice = new double[8];
        double sum = 0, scale = rms / Math.Sqrt(3);
        for (int i = 1; i <= sound.Length; i++)
        {
            int which = Math.Min(7, System.Numerics.BitOperations.TrailingZeroCount(i));
            double drawn = Even(-1, 1);
            sum += drawn - dice[which];
            dice[which] = drawn;
            sound[i - 1] += (float)(scale * (sum + Even(-1, 1)));
        }
    }

    /// <summary>Wind at the microphone: rumble that falls steeply with frequency, in gusts, with now and then a thump.</summary>
    internal void Wind(double rms)
    {
        double a = 0, b = 0, gust = 0, loud = rms;
        for (int i = 0; i < sound.Length; i++)
        {
            if (i % 100 == 0)
            {
                gust += 0.02 * (Even(-6, 6) - gust);
                loud = 50 * rms * Math.Exp(Math.Clamp(gust, -1.5, 1.5));
            }

            a += 0.01 * (Even(-1, 1) - a);
            b += 0.03 * (a - b);
            sound[i] += (float)(loud * b);
        }

        for (double t = Even(0, 1); t < seconds; t += Even(0.2, 2))
        {
            Put(Strike(40, 180, 8, 25, 0.05), t, rms * Even(1, 5));
        }
    }

    /// <summary>Louder by a factor, cut at full scale, rounded to 16 bits.</summary>
    internal float[] Recorded(double gain)
    {
        for (int i = 0; i < sound.Length; i++)
        {
            sound[i] = (float)(Math.Round(Math.Clamp(sound[i] * gain, -1, 32767.0 / 32768) * 32768) / 32768);
        }

        return sound;
    }

    void Add(float[] wave, double attackMs, double decayMs, Func<double, double> at)
    {
        for (int i = 0; i < wave.Length; i++)
        {
            double t = (double)i / rate;
            wave[i] += (float)((1 - Math.Exp(-t * 1000 / attackMs)) * Math.Exp(-t * 1000 / decayMs) * at(t));
        }
    }
}
