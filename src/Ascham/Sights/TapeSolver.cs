namespace Ascham.Sights;

using Ascham.Flight;
using Ascham.Numerics;

/// <summary>The sight angles of a whole tape at once: eight arrows at launch slopes that span the tape, and every mark read off between them.</summary>
/// <remarks>
/// At a mark the launch slope is a smooth function of the height of the strike, so the slope that strikes at zero is
/// interpolated between the four paths about it. Under a constant k the eight paths are one power series side by side;
/// under any other law they are stepped one by one. Still air and a level line, as <see cref="SightModel"/>. Nothing is allocated.
/// </remarks>
static class TapeSolver
{
    const double Steepest = 0.2;     // launch slope, 11 degrees; beyond, the cubic would leave more than 1e-6 m
    const double Margin = 0.04;      // of the steepest slope, beyond the estimates at both ends
    const double LastTerm = 3e-9;    // of the series, in slope: 3e-7 m at 100 m, and the rest of the series is less
    const int FewestTerms = 8, MostMarks = 128;

    /// <summary>Finds the sight angle for each distance.</summary>
    /// <param name="mass">Drag and gravity; its wind is not looked at.</param>
    /// <param name="speed">Launch speed, m/s.</param>
    /// <param name="peepHeight">How far below the line of sight the flight starts, m; positive.</param>
    /// <param name="distances">Along the line of sight, m; ascending and positive.</param>
    /// <param name="angles">Filled with the angles, rad; not a number where a mark lies outside the slopes tried, and has to be solved by itself.</param>
    internal static void SightAngles(in PointMassSi mass, double speed, double peepHeight, ReadOnlySpan<double> distances, Span<double> angles)
    {
        for (int done = 0; done < distances.Length; done += MostMarks)
        {
            int end = Math.Min(distances.Length, done + MostMarks);
            Piece(mass, speed, peepHeight, distances[done..end], angles[done..end]);
        }
    }

    static void Piece(in PointMassSi mass, double speed, double peepHeight, ReadOnlySpan<double> distances, Span<double> angles)
    {
        var (low, high) = Slopes(speed, mass.Gravity, mass.DragAt(speed), peepHeight, distances[0], distances[^1]);
        if (!(high < Steepest))
        {
            angles.Fill(double.NaN);
            return;
        }

        Span<double> slopes = stackalloc double[Lanes.Count], rises = stackalloc double[Lanes.Count * distances.Length];
        for (int i = 0; i < Lanes.Count; i++)
        {
            slopes[i] = low + (high - low) * i / (Lanes.Count - 1);
        }

        if (mass.Curve is not null || !BySeries(mass, speed, slopes, distances, rises))
        {
            ByPaths(mass, speed, slopes, distances, rises);
        }

        for (int i = 0; i < distances.Length; i++)
        {
            angles[i] = Math.Atan(SlopeThrough(peepHeight, slopes, rises.Slice(Lanes.Count * i, Lanes.Count)));
        }
    }

    /// <summary>All paths as one series; false when it would need too many terms.</summary>
    static bool BySeries(in PointMassSi mass, double speed, ReadOnlySpan<double> slopes, ReadOnlySpan<double> distances, Span<double> rises)
    {
        var slope = Lanes.From(slopes);
        var path = default(TaylorPath<Lanes>);
        path.Begin(1 / speed * Lanes.SquareRoot(Lanes.Of(1) + slope * slope), slope, Lanes.Of(mass.K), Lanes.Of(mass.Gravity), Lanes.Of(distances[^1]));
        for (int order = FewestTerms; order <= TaylorPath<Lanes>.MostTerms; order++)
        {
            path.Extend(order);
            var (w, s) = path.LastTerms;
            Lanes allowed = Lanes.Of(LastTerm * LastTerm);
            if (Lanes.Lesser(allowed - w * w, allowed - s * s).AllPositive)
            {
                for (int i = 0; i < distances.Length; i++)
                {
                    (distances[^1] * path.RiseAt(Lanes.Of(distances[i] / distances[^1]))).To(rises[(Lanes.Count * i)..]);
                }

                return true;
            }
        }

        return false;
    }

    static void ByPaths(in PointMassSi mass, double speed, ReadOnlySpan<double> slopes, ReadOnlySpan<double> distances, Span<double> rises)
    {
        Span<double> path = stackalloc double[distances.Length];
        for (int i = 0; i < slopes.Length; i++)
        {
            mass.Heights(speed, slopes[i], distances, path);
            for (int j = 0; j < path.Length; j++)
            {
                rises[slopes.Length * j + i] = path[j];
            }
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

    /// <summary>The launch slope whose path rises by so much, by the cubic through four paths about it.</summary>
    static double SlopeThrough(double rise, ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        int above = 1;
        while (above < rises.Length - 1 && rises[above] < rise)
        {
            above++;
        }

        int first = Math.Clamp(above - 2, 0, rises.Length - 4);
        double y0 = rises[first] - rise, y1 = rises[first + 1] - rise, y2 = rises[first + 2] - rise, y3 = rises[first + 3] - rise;
        if (!(y0 < 0 && y3 > 0))
        {
            return double.NaN;
        }

        // Neville's scheme at zero.
        double s01 = Between(slopes[first], slopes[first + 1], y0, y1), s12 = Between(slopes[first + 1], slopes[first + 2], y1, y2), s23 = Between(slopes[first + 2], slopes[first + 3], y2, y3);
        return Between(Between(s01, s12, y0, y2), Between(s12, s23, y1, y3), y0, y3);
    }

    static double Between(double a, double b, double ya, double yb) => a + (b - a) * (ya / (ya - yb));
}
