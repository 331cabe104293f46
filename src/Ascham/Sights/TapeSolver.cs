namespace Ascham.Sights;

using Ascham.Flight;
using Ascham.Numerics;

/// <summary>The sight angles of a whole tape at once: eight arrows at launch slopes that span the tape fly side by side, and every mark is read off between them.</summary>
/// <remarks>
/// The paths are stepped by <see cref="RungeKutta8"/>, and within a step the height is the polynomial of degree five that
/// meets height, slope and bend at both ends. At a mark the launch slope is a smooth function of the height of the
/// strike, so the slope that strikes at zero is interpolated between the four paths about it. Still air and a level line,
/// as <see cref="SightModel"/>; any drag law. Nothing is allocated.
/// </remarks>
static class TapeSolver
{
    const double LongestStep = 10;   // m; the polynomial is then good to 1e-9 m
    const double Steepest = 0.36;    // launch slope, 20 degrees; steeper marks are left open
    const double Margin = 0.04;      // of the steepest slope, beyond the estimates at both ends

    /// <summary>Finds the sight angle for each distance.</summary>
    /// <param name="speed">Launch speed, m/s.</param>
    /// <param name="gravity">m/s².</param>
    /// <param name="drag">Drag law.</param>
    /// <param name="peepHeight">How far below the line of sight the flight starts, m; positive.</param>
    /// <param name="distances">Along the line of sight, m; ascending and positive.</param>
    /// <param name="angles">Filled with the angles, rad; not a number where a mark lies outside the slopes tried, and has to be solved by itself.</param>
    internal static void SightAngles<TDrag>(
        double speed, double gravity, TDrag drag, double peepHeight, ReadOnlySpan<double> distances, Span<double> angles)
        where TDrag : struct, IDragLaw<Lanes>
    {
        var (low, high) = Slopes(speed, gravity, drag.At(Lanes.Of(speed)).Value, peepHeight, distances[0], distances[^1]);
        if (!(high < Steepest))
        {
            angles[..distances.Length].Fill(double.NaN);
            return;
        }

        Span<double> slopes = stackalloc double[Lanes.Count];
        for (int i = 0; i < Lanes.Count; i++)
        {
            slopes[i] = low + (high - low) * i / (Lanes.Count - 1);
        }

        Lanes slope = Lanes.From(slopes), height = Lanes.Of(-peepHeight);
        var field = new TowardFace<Lanes, TDrag>(drag, Lanes.Of(0), Lanes.Of(gravity), Lanes.Of(1), Lanes.Of(0));
        var state = new PathState<Lanes>(1 / speed * Lanes.SquareRoot(Lanes.Of(1) + slope * slope), slope);
        double x = 0, step = distances[^1] * (1 + 1e-12) / Math.Ceiling(distances[^1] / LongestStep);
        Lanes h = Lanes.Of(step);
        for (int mark = 0; mark < distances.Length; x += step)
        {
            PathState<Lanes> next = RungeKutta8.Step<TowardFace<Lanes, TDrag>, PathState<Lanes>, Lanes>(field, Lanes.Of(x), state, h, out var at);
            Lanes rise = field.Add(default, h, at).Slid;
            var within = new StepHeight(
                height, step * state.Slope, step * step * field.At(Lanes.Of(x), state).Slope, rise, step * next.Slope, step * step * field.At(Lanes.Of(x), next).Slope);
            for (; mark < distances.Length && distances[mark] <= x + step; mark++)
            {
                angles[mark] = Math.Atan(SlopeAtZero(slopes, within.At((distances[mark] - x) / step)));
            }

            (state, height) = (next, height + rise);
        }
    }

    /// <summary>Launch slopes between which those of all marks should lie.</summary>
    static (double Low, double High) Slopes(double speed, double gravity, double k, double peepHeight, double nearest, double farthest)
    {
        // Flat shots with a constant k: drop = g x²/(2 v²) f(2 k x), f(e) = 2 (exp(e) - 1 - e)/e², here to third order.
        double Slope(double x)
        {
            double e = 2 * k * x;
            return (peepHeight + gravity * x * x / (2 * speed * speed) * (1 + e / 3 + e * e / 12 + e * e * e / 60)) / x;
        }

        double turn = Math.Clamp(speed * Math.Sqrt(2 * peepHeight / gravity), nearest, farthest), high = Math.Max(Slope(nearest), Slope(farthest));
        return (Slope(turn) - Margin * high, (1 + Margin) * high);
    }

    /// <summary>The launch slope that strikes at zero, by the cubic through four paths about it.</summary>
    static double SlopeAtZero(ReadOnlySpan<double> slopes, Lanes heights)
    {
        Span<double> y = stackalloc double[Lanes.Count];
        heights.To(y);
        int above = 1;
        while (above < Lanes.Count - 1 && y[above] < 0)
        {
            above++;
        }

        int first = Math.Clamp(above - 2, 0, Lanes.Count - 4);
        y = y[first..(first + 4)];
        slopes = slopes[first..(first + 4)];
        if (!(y[0] < 0 && y[3] > 0))
        {
            return double.NaN;
        }

        // Neville's scheme at zero.
        double s01 = Between(slopes[0], slopes[1], y[0], y[1]), s12 = Between(slopes[1], slopes[2], y[1], y[2]), s23 = Between(slopes[2], slopes[3], y[2], y[3]);
        double s02 = Between(s01, s12, y[0], y[2]), s13 = Between(s12, s23, y[1], y[3]);
        return Between(s02, s13, y[0], y[3]);
    }

    static double Between(double a, double b, double ya, double yb) => a + (b - a) * (ya / (ya - yb));

    /// <summary>Height within a step, as the quintic of Hermite: values, slopes and bends at both ends, the latter two per whole step.</summary>
    readonly struct StepHeight
    {
        readonly Lanes c0, c1, c2, c3, c4, c5;

        internal StepHeight(Lanes start, Lanes slope, Lanes bend, Lanes rise, Lanes endSlope, Lanes endBend)
        {
            Lanes d = rise - slope - 0.5 * bend, e = endSlope - slope - bend, f = endBend - bend;
            (c0, c1, c2) = (start, slope, 0.5 * bend);
            c3 = 10 * d - 4 * e + 0.5 * f;
            c4 = 7 * e - 15 * d - f;
            c5 = 6 * d - 3 * e + 0.5 * f;
        }

        internal Lanes At(double part)
        {
            Lanes u = Lanes.Of(part);
            return Lanes.MultiplyAdd(u, Lanes.MultiplyAdd(u, Lanes.MultiplyAdd(u, Lanes.MultiplyAdd(u, Lanes.MultiplyAdd(u, c5, c4), c3), c2), c1), c0);
        }
    }
}
