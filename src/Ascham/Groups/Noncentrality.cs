namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

/// <summary>How far off a centre may truly lie when its mean was found so far off.</summary>
/// <remarks>
/// A mean lies farther out than its true centre more often than not, because scatter adds to the distance on all sides. Taking the truth as normal about the mean
/// would add it once more. Instead the distance is drawn so that a share u of repeated experiments would have found the mean farther out; zero when even a centre
/// without offset would often enough be found there. With sigma known this is exact for the distance (Kent and Hainsworth 1995, Stat. Comput. 5, 125).
/// </remarks>
static class Noncentrality
{
    /// <summary>Distance in the plane, in standard errors.</summary>
    internal static double Radial(double found, double share)
    {
        if (Math.Exp(-found * found / 2) >= share)
        {
            return 0;
        }

        double near = found + Normal.InvCDF(0, 1, share);
        // Far out the circle about the target is straight, and the distance normal with mean δ + 1/(2δ).
        return found > 12
            ? near - (1 / (2 * found))
            : Brent.FindRoot(distance => MarcumQ.Upper(distance, found) - share, 0, Math.Max(near, 0) + 1, 1e-6, 100);
    }

    /// <summary>Distance along one axis, in standard errors; not negative.</summary>
    internal static double Axial(double found, double share)
    {
        double Farther(double distance) => Normal.CDF(0, 1, distance - found) + Normal.CDF(0, 1, -distance - found);
        double near = found + Normal.InvCDF(0, 1, share);
        return Farther(0) >= share ? 0
            : found > 6 ? near
            : Brent.FindRoot(distance => Farther(distance) - share, 0, Math.Max(0, near) + 0.1, 1e-6, 100);
    }
}
