namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;

/// <summary>Groups whose comparison was worked out elsewhere.</summary>
static class WorkedExample
{
    /// <summary>Drawn with seed 20240615 and rounded to 0.1; results computed with NumPy 1.24 and SciPy 1.10.</summary>
    public static Group G1 { get; } = Group.Of(Simulated.Of((-1.7, 1.1), (-1.8, -3.8), (2.7, 0.1), (-0.7, -2.5), (-1.8, 1.3), (-0.4, 0)));

    /// <summary>Its partner.</summary>
    public static Group G2 { get; } = Group.Of(Simulated.Of((-1.2, -4.0), (-0.7, -2.4), (5.5, -1.3), (1.4, -1.6), (4.4, -4.0), (1.7, 0)));

    /// <summary>A group with a stated mean and covariance, as printed in a source that gives no data.</summary>
    /// <remarks>A balanced pattern of unit covariance, turned into the one asked for by its Cholesky factor.</remarks>
    public static Group With(int n, double right, double up, double varianceRight, double covariance, double varianceUp)
    {
        // cos and sin of equal steps have mean 0, mean square 1/2, no cross product (n >= 3).
        double unit = Math.Sqrt(2.0 * (n - 1) / n), a = Math.Sqrt(varianceRight), b = covariance / a, c = Math.Sqrt(varianceUp - (b * b));
        return Group.Of(Enumerable.Range(0, n).Select(k =>
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * k / n);
            return Simulated.At(right + (a * unit * cosine), up + (unit * ((b * cosine) + (c * sine))));
        }).ToArray());
    }
}
