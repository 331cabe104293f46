namespace Ascham.Recordings;

/// <summary>Keeps what clicks and thuds are made of, and drops the rumble of wind: Butterworth, order 4 below and order 2 above.</summary>
/// <remarks>
/// Second-order sections by the bilinear transform with the corner prewarped (A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, chapter 7). It runs forwards only:
/// run both ways, a filter smears an onset ahead of itself. What it delays it delays alike for release and impact.
/// </remarks>
static class BandPass
{
    internal const double Low = 300; // Hz; the noise of wind at a microphone falls steeply and lies mostly below

    /// <summary>Upper corner for a sample rate, Hz.</summary>
    internal static double High(double rate) => Math.Min(6000, 0.4 * rate);

    /// <summary>Filters into a new array.</summary>
    internal static float[] Apply(ReadOnlySpan<float> sound, double rate)
    {
        // Quality factors of a Butterworth of order 4: 1/(2 cos(pi/8)) and 1/(2 cos(3 pi/8)); of order 2: 1/sqrt(2).
        Span<Section> sections =
        [
            Section.HighPass(Low / rate, 1 / (2 * Math.Cos(Math.PI / 8))),
            Section.HighPass(Low / rate, 1 / (2 * Math.Cos(3 * Math.PI / 8))),
            Section.LowPass(High(rate) / rate, Math.Sqrt(0.5)),
        ];
        float[] filtered = new float[sound.Length];
        (Section a, Section b, Section c) = (sections[0], sections[1], sections[2]);
        for (int i = 0; i < sound.Length; i++)
        {
            filtered[i] = (float)c.Step(b.Step(a.Step(sound[i])));
        }

        return filtered;
    }

    /// <summary>One second-order section, transposed direct form II.</summary>
    struct Section(double b0, double b1, double a1, double a2)
    {
        // b2 equals b0 in a low or high pass.
        readonly double b0 = b0, b1 = b1, a1 = a1, a2 = a2;
        double s1, s2;

        internal static Section HighPass(double corner, double q)
        {
            double k = Math.Tan(Math.PI * corner), norm = 1 / (1 + k / q + k * k);
            return new(norm, -2 * norm, 2 * (k * k - 1) * norm, (1 - k / q + k * k) * norm);
        }

        internal static Section LowPass(double corner, double q)
        {
            double k = Math.Tan(Math.PI * corner), norm = 1 / (1 + k / q + k * k);
            return new(k * k * norm, 2 * k * k * norm, 2 * (k * k - 1) * norm, (1 - k / q + k * k) * norm);
        }

        internal double Step(double x)
        {
            double y = b0 * x + s1;
            s1 = b1 * x - a1 * y + s2;
            s2 = b0 * x - a2 * y;
            return y;
        }
    }
}
