namespace Ascham.Tests.FlightTests;

using MathNet.Numerics.Integration;

/// <summary>The exact solution in still air with a constant k: everything as an integral over p = tan(angle of the path).</summary>
/// <remarks>
/// Classical; see G. W. Parker, Am. J. Phys. 45 (1977) 606-610. With G(p) = (p sqrt(1 + p²) + asinh p)/2,
/// 1/vx² = 1/vx0² + (2k/g)(G(p0) - G(p)); dx = -vx²/g dp, dy = p dx, dt = -vx/g dp.
/// The integrals are done by MathNet's Gauss-Legendre rule on short pieces, so no step of the library is used.
/// </remarks>
sealed class Hodograph(double speed, double elevation, double k, double g = 9.80665)
{
    readonly double p0 = Math.Tan(elevation), vx0 = speed * Math.Cos(elevation);

    /// <summary>Level velocity where the path has this tangent.</summary>
    public double Vx(double p) => 1 / Math.Sqrt(1 / (vx0 * vx0) + 2 * k / g * (G(p0) - G(p)));

    /// <summary>Displacement and time from the launch to the tangent p.</summary>
    public (double X, double Y, double T) To(double p)
    {
        double v(double s) => Vx(s);
        return (
            Integral(s => v(s) * v(s) / g, p),
            Integral(s => v(s) * v(s) * s / g, p),
            Integral(s => v(s) / g, p));
    }

    /// <summary>State on a face square to a line at an inclination: x, y, t and the velocity.</summary>
    public (double X, double Y, double T, double Vx, double Vy) OnFace(double distance, double inclination = 0)
    {
        (double sin, double cos) = Math.SinCos(inclination);
        double Past(double q)
        {
            var (x, y, _) = To(q);
            return x * cos + y * sin - distance;
        }

        // Newton on p: d(distance along the line)/dp = -vx²/g (cos + p sin). Started at the parabola's answer.
        double p = p0 - 9.80665 * distance / (vx0 * vx0) * cos;
        for (int i = 0; i < 60; i++)
        {
            double change = Past(p) / (Vx(p) * Vx(p) / g * (cos + p * sin));
            p += Math.Clamp(change, -0.3 * (1 + Math.Abs(p)), 0.3 * (1 + Math.Abs(p)));
            if (Math.Abs(change) < 1e-15 * (1 + Math.Abs(p)))
            {
                break;
            }
        }

        var end = To(p);
        return (end.X, end.Y, end.T, Vx(p), p * Vx(p));
    }

    double Integral(Func<double, double> f, double p)
    {
        const int Pieces = 16;
        double sum = 0, width = (p0 - p) / Pieces;
        for (int i = 0; i < Pieces; i++)
        {
            sum += GaussLegendreRule.Integrate(f, p + i * width, p + (i + 1) * width, 20);
        }

        return sum;
    }

    static double G(double p) => 0.5 * (p * Math.Sqrt(1 + p * p) + Math.Asinh(p));
}
