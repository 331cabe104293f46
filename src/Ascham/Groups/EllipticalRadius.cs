namespace Ascham.Groups;

using MathNet.Numerics.RootFinding;

/// <summary>The circle that holds a share of a centred stretched group.</summary>
static class EllipticalRadius
{
    /// <summary>Radius over the larger sigma.</summary>
    /// <param name="ratio">Smaller sigma over larger, 0 to 1.</param>
    /// <param name="share">Share of impacts, between 0 and 1.</param>
    internal static double Of(double ratio, double share)
    {
        double outside = Math.Log(1 - share), high = Math.Sqrt(-2 * outside);
        // The circle is never larger than that of the round group with the larger sigma; its logarithm keeps digits far out.
        return ratio == 1 ? high : Brent.FindRoot(r => Math.Log(Outside(r, ratio)) - outside, 0, high * (1 + 1e-9), 1e-13, 200);
    }

    // Seen from the group's own standardised plane the direction is uniform and the radius Rayleigh, so P(r > R) is the mean over directions
    // of exp(−R²/(2(cos² + c² sin²))): periodic and smooth, hence equal steps converge beyond any power.
    static double Outside(double radius, double ratio)
    {
        const int steps = 512;
        double sum = 0;
        for (int k = 0; k < steps; k++)
        {
            var (sine, cosine) = Math.SinCos(Math.PI * (k + 0.5) / steps);
            sum += Math.Exp(-radius * radius / (2 * ((cosine * cosine) + (ratio * ratio * sine * sine))));
        }

        return sum / steps;
    }
}
