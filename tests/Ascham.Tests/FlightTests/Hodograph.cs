namespace Ascham.Tests.FlightTests;

using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

/// <summary>The exact solution in still air with a constant k: everything is an integral over the angle of the path.</summary>
/// <remarks>
/// Classical; see G. W. Parker, Am. J. Phys. 45 (1977) 606-610. With p = tan(angle) and G(p) = (p sqrt(1 + p²) + asinh p)/2,
/// 1/vx² = 1/vx0² + (2k/g)(G(p0) - G(p)); dx = -vx²/g dp, dy = p dx, dt = -vx/g dp.
/// The integrals are MathNet's Gauss-Legendre rule on short pieces of the angle, so no step of the library is used.
/// </remarks>
sealed class Hodograph(double speed, double elevation, double k, double g = 9.80665)
{
    readonly double p0 = Math.Tan(elevation), vx0 = speed * Math.Cos(elevation);

    /// <summary>Level velocity where the path has this angle.</summary>
    public double Vx(double angle) => 1 / Math.Sqrt(1 / (vx0 * vx0) + 2 * k / g * (G(p0) - G(Math.Tan(angle))));

    /// <summary>Displacement and time from the launch to where the path has this angle.</summary>
    public (double X, double Y, double T) To(double angle)
    {
        double x = 0, y = 0, t = 0;
        const int Pieces = 12;
        var rule = new GaussLegendreRule(-1, 1, 20);
        double half = (elevation - angle) / Pieces / 2;
        for (int i = 0; i < Pieces; i++)
        {
            for (int j = 0; j < rule.Order; j++)
            {
                double at = angle + half * (2 * i + 1 + rule.GetAbscissa(j));
                double v = Vx(at), cos = Math.Cos(at), weight = half * rule.GetWeight(j) / (g * cos * cos);
                x += weight * v * v;
                y += weight * v * v * Math.Tan(at);
                t += weight * v;
            }
        }

        return (x, y, t);
    }

    /// <summary>State on a face square to a line, met at no more than 75° to its normal.</summary>
    public (double X, double Y, double T, double Vx, double Vy) OnFace(double distance, double line = 0)
    {
        (double sin, double cos) = Math.SinCos(line);
        double Past(double angle)
        {
            var (x, y, _) = To(angle);
            return x * cos + y * sin - distance;
        }

        double steepest = Math.Max(line - 75 * Math.PI / 180, -1.56);
        double angle = Brent.FindRoot(Past, steepest, elevation, 1e-15, 200);
        var end = To(angle);
        return (end.X, end.Y, end.T, Vx(angle), Math.Tan(angle) * Vx(angle));
    }

    /// <summary>State where the path comes back to the level of the launch.</summary>
    public (double Range, double T, double Vx, double Vy) BackToLevel()
    {
        double angle = Brent.FindRoot(a => To(a).Y, -1.55, -0.5 * elevation, 1e-15, 200);
        var end = To(angle);
        return (end.X, end.T, Vx(angle), Math.Tan(angle) * Vx(angle));
    }

    static double G(double p) => 0.5 * (p * Math.Sqrt(1 + p * p) + Math.Asinh(p));
}
