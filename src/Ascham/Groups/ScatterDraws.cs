namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics.Distributions;

/// <summary>Normal laws that could have left the shots at hand, spread evenly.</summary>
sealed record ScatterDraws
{
    internal const int Count = 2048;

    // Coordinates between 0 and 1 for the centre along each axis; null when the centre is on the aim.
    readonly double[][]? points;
    readonly double[] varianceRight, varianceUp;
    readonly double right, up, addedRight, addedUp;
    readonly int n;
    readonly bool round;

    ScatterDraws((double Variance, double Freedom)[] variances, double right, double up, int n)
    {
        double[][] cube = [.. Cube(variances.Length + (n > 0 ? 2 : 0))];
        double[] Drawn(int i) => [.. cube.Select(p => variances[i].Variance * variances[i].Freedom / ChiSquareQuantile.At(variances[i].Freedom, p[i]))];
        varianceRight = Drawn(0);
        (round, varianceUp) = variances.Length > 1 ? (false, Drawn(1)) : (true, varianceRight);
        (this.right, this.up, this.n, points) = (right, up, n, n > 0 ? cube : null);
    }

    // One law for each draw, a distance farther on, with more variance and an offset.
    ScatterDraws(ScatterDraws from, double scale, AddedScatter? added)
        : this(from)
    {
        double square = scale * scale;
        varianceRight = [.. from.varianceRight.Select(v => v * square)];
        varianceUp = [.. from.varianceUp.Select(v => v * square)];
        if (added is not null)
        {
            (right, up) = (right + added.Offset.Right.Meters, up + added.Offset.Up.Meters);
            (addedRight, addedUp) = (addedRight + (added.Across.Meters * added.Across.Meters), addedUp + (added.Up.Meters * added.Up.Meters));
        }
    }

    /// <summary>Laws about the aim point: one variance for both axes, or one for each.</summary>
    internal static ScatterDraws Centred(params (double Variance, double Freedom)[] variances) => new(variances, 0, 0, 0);

    /// <summary>Laws whose centre is that of n impacts, as far as they tell.</summary>
    internal static ScatterDraws AboutMean((double Variance, double Freedom)[] variances, double right, double up, int n) => new(variances, right, up, n);

    internal ScatterDraws Scaled(double distance) => new(this, distance, null);

    internal ScatterDraws Plus(AddedScatter added) => new(this, 1, added);

    /// <summary>Whether one variance serves both axes.</summary>
    internal bool Round => round;

    /// <summary>Whether the laws for the next arrow and those for an interval are the same.</summary>
    internal bool CentreKnown => points is null;

    /// <summary>Laws whose average is right for the next arrow: the centre normal about the mean.</summary>
    internal IEnumerable<Scatter> ForNextArrow() => Laws((i, side) => (
        right + (side.Right * Normal.InvCDF(0, 1, points![i][^2])), up + (side.Up * Normal.InvCDF(0, 1, points[i][^1]))));

    /// <summary>Laws whose spread is right for the long run: the centre's distance from the target's centre drawn as <see cref="Noncentrality"/> says.</summary>
    internal IEnumerable<Scatter> ForInterval() => Laws((i, side) =>
    {
        double found = double.Hypot(right, up);
        if (!round || found == 0)
        {
            return (side.Right * Noncentrality.Axial(Math.Abs(right) / side.Right, points![i][^2]), side.Up * Noncentrality.Axial(Math.Abs(up) / side.Up, points[i][^1]));
        }

        double distance = side.Right * Noncentrality.Radial(found / side.Right, points![i][^1]);
        return (distance * right / found, distance * up / found);
    });

    IEnumerable<Scatter> Laws(Func<int, (double Right, double Up), (double Right, double Up)> centre)
    {
        for (int i = 0; i < Count; i++)
        {
            var (x, y) = points is null ? (right, up) : centre(i, (Math.Sqrt(varianceRight[i] / n), Math.Sqrt(varianceUp[i] / n)));
            yield return Scatter.Si(x, y, varianceRight[i] + addedRight, varianceUp[i] + addedUp, 0);
        }
    }

    /// <summary>Points of the unit cube: the first coordinate in equal steps, the others by multiples of the powers of a generalised golden ratio.</summary>
    /// <remarks>The ratio is the positive root of x^(d+1) = x + 1 for the d others. Roberts (2018), The unreasonable effectiveness of quasirandom sequences.</remarks>
    static IEnumerable<double[]> Cube(int dimensions)
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
