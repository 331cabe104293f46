namespace Ascham.Groups;

using MathNet.Numerics.Distributions;

/// <summary>Normal laws that could have left the shots at hand, spread evenly.</summary>
static class ScatterDraws
{
    internal const int Count = 2048;

    /// <summary>Laws about the aim point: one variance for both axes, or one for each.</summary>
    internal static Scatter[] Centred((double Variance, double Freedom)[] variances) =>
        [.. Points(variances.Length).Select(p => Law(variances, p, 0, 0, double.PositiveInfinity))];

    /// <summary>Laws whose centre is that of n impacts, as far as they tell.</summary>
    internal static Scatter[] AboutMean((double Variance, double Freedom)[] variances, double right, double up, int n) =>
        [.. Points(variances.Length + 2).Select(p => Law(variances, p, right, up, n))];

    static Scatter Law((double Variance, double Freedom)[] variances, double[] point, double right, double up, double n)
    {
        double Drawn(int i) => variances[i].Variance * variances[i].Freedom / ChiSquared.InvCDF(variances[i].Freedom, point[i]);
        double across = Drawn(0), high = variances.Length > 1 ? Drawn(1) : across;
        return double.IsInfinity(n)
            ? Scatter.Si(0, 0, across, high, 0)
            : Scatter.Si(
                right + (Math.Sqrt(across / n) * Normal.InvCDF(0, 1, point[^2])), up + (Math.Sqrt(high / n) * Normal.InvCDF(0, 1, point[^1])), across, high, 0);
    }

    /// <summary>Points of the unit cube: the first coordinate in equal steps, the others by multiples of the powers of a generalised golden ratio.</summary>
    /// <remarks>The ratio is the positive root of x^(d+1) = x + 1 for the d others. Roberts (2018), The unreasonable effectiveness of quasirandom sequences.</remarks>
    static IEnumerable<double[]> Points(int dimensions)
    {
        double ratio = 2;
        for (int i = 0; i < 60; i++)
        {
            ratio = Math.Pow(1 + ratio, 1.0 / dimensions);
        }

        for (int j = 0; j < Count; j++)
        {
            double[] point = new double[dimensions];
            point[0] = (j + 0.5) / Count;
            for (int k = 1; k < dimensions; k++)
            {
                double place = 0.5 + (j * Math.Pow(ratio, -k));
                point[k] = Math.Clamp(place - Math.Floor(place), 1e-12, 1 - 1e-12);
            }

            yield return point;
        }
    }
}
