namespace Ascham.Groups;

using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

/// <summary>Sums of deviations from a point, of their squares and of their products.</summary>
readonly record struct Deviations(double Right, double Up, double SquareRight, double SquareUp, double Cross)
{
    /// <summary>Sums four lanes side by side; the order of the sum, and so its last digit, is the same on every machine.</summary>
    internal static Deviations About(double right, double up, ReadOnlySpan<double> rights, ReadOnlySpan<double> ups)
    {
        ReadOnlySpan<Vector256<double>> x = MemoryMarshal.Cast<double, Vector256<double>>(rights), y = MemoryMarshal.Cast<double, Vector256<double>>(ups);
        var (centreX, centreY) = (Vector256.Create(right), Vector256.Create(up));
        Vector256<double> sumX = default, sumY = default, squareX = default, squareY = default, cross = default;
        for (int i = 0; i < x.Length && i < y.Length; i++)
        {
            Vector256<double> dx = x[i] - centreX, dy = y[i] - centreY;
            (sumX, sumY, squareX, squareY, cross) = (sumX + dx, sumY + dy, squareX + (dx * dx), squareY + (dy * dy), cross + (dx * dy));
        }

        Deviations sum = new(Vector256.Sum(sumX), Vector256.Sum(sumY), Vector256.Sum(squareX), Vector256.Sum(squareY), Vector256.Sum(cross));
        for (int i = 4 * x.Length; i < rights.Length; i++)
        {
            double dx = rights[i] - right, dy = ups[i] - up;
            sum = sum.Plus(new(dx, dy, dx * dx, dy * dy, dx * dy));
        }

        return sum;
    }

    internal Deviations Plus(Deviations other) =>
        new(Right + other.Right, Up + other.Up, SquareRight + other.SquareRight, SquareUp + other.SquareUp, Cross + other.Cross);
}
