namespace Ascham.Flight;

/// <summary>Where the cross speed at the middle of the shaft is next, or was last, at its smallest, so that steps can end there.</summary>
/// <remarks>
/// The crossflow term goes with |w| w, which turns sharply where the cross speed w is small: in one plane it passes through
/// zero. A step across that place loses the order of the method; steps that end there keep it. Until then w goes round an
/// ellipse about what the bending of the path makes of it: w = rest + w0 cos + w1 sin of the phase. Found by trial over
/// releases of 0.3° to 8°, in one plane and in two.
/// </remarks>
readonly struct CrossflowSwing
{
    // Amplitude (radians) too slight to matter; the phase at which the place counts as passed, and from which it is met in one
    // step, after one that stops short; and, where w stays larger than zero, steps over the distance to the complex root of |w|.
    const double Slight = 0.002, Passed = 1e-3, Last = 0.1, Approach = 0.93, Narrow = 0.01, Grading = 2;

    readonly Vec rest, w0, w1;
    readonly double perMetre;

    /// <summary>The swing from here on.</summary>
    /// <param name="cross">Cross speed at the balance point.</param>
    /// <param name="rate">Rate of the axis.</param>
    /// <param name="bend">Rate at which gravity bends the path.</param>
    /// <param name="lag">Cross speed per rate of the axis at rest in the bending path, m.</param>
    /// <param name="arm">Middle of the shaft behind the balance point, m.</param>
    /// <param name="perMetre">Radians of the swing per metre.</param>
    internal CrossflowSwing(Vec cross, Vec rate, Vec bend, double lag, double arm, double perMetre)
    {
        Vec c0 = cross - lag * bend, c1 = (-1 / perMetre) * (rate - bend);
        double turn = arm * perMetre;
        (rest, w0, w1, this.perMetre) = ((lag - arm) * bend, c0 + turn * c1, c1 - turn * c0, perMetre);
    }

    /// <summary>Longest step, in metres of path.</summary>
    internal double Step(double speed)
    {
        double a = w0.Dot(w0), b = w1.Dot(w1), mixed = w0.Dot(w1);
        double large = 0.5 * (a + b) + Math.Sqrt(0.25 * (a - b) * (a - b) + mixed * mixed);
        if (large < Slight * Slight * speed * speed)
        {
            return double.PositiveInfinity;
        }

        double phase = Smallest(0.5 * Math.Atan2(-2 * mixed, b - a), out double square), width = square / large;
        double step = phase > Passed ? phase < Last ? phase : Approach * phase : double.PositiveInfinity;
        return Math.Min(step, width > Narrow * Narrow ? Grading * Math.Sqrt(phase * phase + width) : step) / perMetre;
    }

    // From where the ellipse itself is smallest, by two steps of Newton on the derivative of the square.
    double Smallest(double phase, out double square)
    {
        Vec w = default;
        for (int i = 0; i < 3; i++)
        {
            (double sin, double cos) = Math.SinCos(phase);
            w = rest + cos * w0 + sin * w1;
            Vec change = cos * w1 - sin * w0;
            double bent = change.Dot(change) + w.Dot(rest - w);
            phase -= i < 2 && bent > 0 ? w.Dot(change) / bent : 0;
        }

        square = w.Dot(w);
        return phase;
    }
}
