namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>Heights of one path at many distances, by dense output.</summary>
/// <remarks>
/// The path is stepped by <see cref="RungeKutta8"/>, and within a step the height is the polynomial of degree five that
/// meets height, slope and bend at both ends. Level line, still air. Nothing is allocated.
/// </remarks>
static class PathHeights
{
    const double LongestStep = 20; // m; the polynomial is then good to 1e-7 m

    /// <summary>Fills in the heights above the launch point.</summary>
    /// <param name="drag">Drag law.</param>
    /// <param name="speed">Launch speed, m/s.</param>
    /// <param name="gravity">m/s².</param>
    /// <param name="slope">Tangent of the launch elevation.</param>
    /// <param name="distances">Level distances, m; ascending and positive.</param>
    /// <param name="heights">Filled with heights, m; not a number from where the path or the drag law ends.</param>
    internal static void Along<TDrag>(TDrag drag, double speed, double gravity, double slope, ReadOnlySpan<double> distances, Span<double> heights)
        where TDrag : struct, IDragLaw<Real>
    {
        var field = new TowardFace<Real, TDrag>(drag, new(0), new(gravity), new(1), new(0));
        var state = new PathState<Real>(new(Math.Sqrt(1 + slope * slope) / speed), new(slope));
        double x = 0, height = 0;
        for (int i = 0; i < distances.Length;)
        {
            double step = Math.Min(LongestStep, field.StepFrom(x, state)), left = distances[^1] - x;
            step = step >= left ? left : Math.Min(step, 0.5 * left); // no sliver at the end
            PathState<Real> next = RungeKutta8.Step<TowardFace<Real, TDrag>, PathState<Real>, Real>(field, new(x), state, new(step), out var at);
            if (!field.Covers(x, state) || !field.IsSound(next) || !field.Covers(x + step, next))
            {
                heights[i..].Fill(double.NaN);
                return;
            }

            double rise = field.Add(default, new(step), at).Slid.Value;
            var within = new StepHeight(
                height, rise, step * state.Slope.Value, step * next.Slope.Value, step * step * field.At(new(x), state).Slope.Value, step * step * field.At(new(x), next).Slope.Value);
            double end = step == left ? double.PositiveInfinity : x + step;
            for (; i < distances.Length && distances[i] <= end; i++)
            {
                heights[i] = within.At((distances[i] - x) / step);
            }

            (state, height, x) = (next, height + rise, x + step);
        }
    }

    /// <summary>Height within a step, as the quintic of Hermite: values, slopes and bends at both ends, the latter two per whole step.</summary>
    readonly struct StepHeight
    {
        readonly double c0, c1, c2, c3, c4, c5;

        internal StepHeight(double start, double rise, double slope, double endSlope, double bend, double endBend)
        {
            double d = rise - slope - 0.5 * bend, e = endSlope - slope - bend, f = endBend - bend;
            (c0, c1, c2) = (start, slope, 0.5 * bend);
            c3 = 10 * d - 4 * e + 0.5 * f;
            c4 = 7 * e - 15 * d - f;
            c5 = 6 * d - 3 * e + 0.5 * f;
        }

        internal double At(double u) => c0 + u * (c1 + u * (c2 + u * (c3 + u * (c4 + u * c5))));
    }
}
