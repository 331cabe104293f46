namespace Ascham.Numerics;

/// <summary>A smooth curve through points that never swings past them: between two points it stays between their values.</summary>
/// <remarks>
/// Piecewise cubic with a continuous slope. F. N. Fritsch, R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer.
/// Anal. 17 (1980) 238-246; slopes by the weighted harmonic mean of F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
/// Inside a piece the curve is a polynomial; at a knot its second derivative jumps, so a method of high order must not step across one.
/// </remarks>
sealed class MonotoneCubic
{
    readonly double[] x, y, slope;

    /// <summary>Through these points.</summary>
    /// <param name="x">Increasing; at least two.</param>
    /// <param name="y">As many.</param>
    internal MonotoneCubic(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        (this.x, this.y, slope) = (x.ToArray(), y.ToArray(), new double[x.Length]);
        int last = x.Length - 1;
        for (int i = 1; i < last; i++)
        {
            slope[i] = Inner(x[i] - x[i - 1], x[i + 1] - x[i], Chord(i - 1), Chord(i));
        }

        slope[0] = last == 1 ? Chord(0) : Outer(x[1] - x[0], x[2] - x[1], Chord(0), Chord(1));
        slope[last] = last == 1 ? Chord(0) : Outer(x[last] - x[last - 1], x[last - 1] - x[last - 2], Chord(last - 1), Chord(last - 2));
    }

    internal double Low => x[0];

    internal double High => x[^1];

    /// <summary>The curve; beyond its ends the outermost piece goes on, which a caller must not use.</summary>
    internal T At<T>(T at)
        where T : struct, IReal<T>
    {
        int i = Piece(at.Value);
        double h = x[i + 1] - x[i], chord = Chord(i);
        T s = at - T.Of(x[i]);
        double square = (3 * chord - 2 * slope[i] - slope[i + 1]) / h, cube = (slope[i] + slope[i + 1] - 2 * chord) / (h * h);
        return T.Of(y[i]) + s * (T.Of(slope[i]) + s * (T.Of(square) + cube * s));
    }

    /// <summary>How far one may go from here in one step: to the next knot, by a fifth of a piece at most, and across a knot that is nearer than a hundredth.</summary>
    /// <param name="at">From here.</param>
    /// <param name="falling">Down or up; <see langword="null"/> for either.</param>
    internal double Room(double at, bool? falling)
    {
        // A fifth: over more of a piece the cubic bends more than a step of order 8 follows to 1e-6 m. A hundredth: so near before
        // a knot a step may cross it, for the jump of the second derivative then acts over a hundredth of a piece only.
        const double Most = 0.2, Least = 0.01;
        int i = Piece(at);
        double width = x[i + 1] - x[i], below = at - x[i], above = x[i + 1] - at;
        double knot = falling is null ? Math.Min(below, above) : falling.Value ? below : above;
        return Math.Clamp(knot, Least * width, Most * width);
    }

    int Piece(double at)
    {
        int i = Array.BinarySearch(x, at);
        return Math.Clamp(i < 0 ? ~i - 1 : i, 0, x.Length - 2);
    }

    double Chord(int i) => (y[i + 1] - y[i]) / (x[i + 1] - x[i]);

    static double Inner(double before, double after, double left, double right)
    {
        if (!(left * right > 0))
        {
            return 0;
        }

        double a = 2 * after + before, b = after + 2 * before;
        return (a + b) / (a / left + b / right);
    }

    // One-sided three-point slope, held to the sign of the chord and to three times it, within which the piece is monotone.
    static double Outer(double near, double far, double chord, double next)
    {
        double slope = ((2 * near + far) * chord - near * next) / (near + far);
        return slope * chord <= 0 ? 0 : Math.Abs(slope) > 3 * Math.Abs(chord) ? 3 * chord : slope;
    }
}
