namespace Ascham.Tests.GroupsTests;

using Ascham.Numerics;

/// <summary>Simulates what leaving out the worst arrows does to sigma; the source of the table in DroppedWorst.cs.</summary>
static class DroppedWorstStudy
{
    internal const int Groups = 400_000, Seed = 20_000;

    /// <summary>Mean over groups of s/c of the rest, and its standard error, with one and with two arrows left out.</summary>
    internal static (double One, double OneError, double Two, double TwoError) Of(int shot, int groups)
    {
        var simulated = new Simulated(Seed + shot);
        double[] right = new double[shot], up = new double[shot];
        double one = 0, oneSquare = 0, two = 0, twoSquare = 0;
        for (int k = 0; k < groups; k++)
        {
            for (int i = 0; i < shot; i++)
            {
                (right[i], up[i]) = (simulated.Normal(), simulated.Normal());
            }

            PutFarthestLast(right, up);
            double a = Sigma(right, up, shot - 1), b = shot > 3 ? Sigma(right, up, shot - 2) : double.NaN;
            one += a;
            oneSquare += a * a;
            two += b;
            twoSquare += b * b;
        }

        return (one / groups, Error(one, oneSquare), two / groups, Error(two, twoSquare));

        double Error(double sum, double square) => Math.Sqrt(((square / groups) - (sum / groups * sum / groups)) / groups);
    }

    // The farthest from the mean of all comes last, the next farthest last but one.
    static void PutFarthestLast(double[] right, double[] up)
    {
        double meanRight = right.Average(), meanUp = up.Average();
        for (int last = right.Length - 1; last >= right.Length - 2; last--)
        {
            int farthest = 0;
            double most = -1;
            for (int i = 0; i <= last; i++)
            {
                double square = ((right[i] - meanRight) * (right[i] - meanRight)) + ((up[i] - meanUp) * (up[i] - meanUp));
                (farthest, most) = square > most ? (i, square) : (farthest, most);
            }

            (right[farthest], right[last]) = (right[last], right[farthest]);
            (up[farthest], up[last]) = (up[last], up[farthest]);
        }
    }

    static double Sigma(double[] right, double[] up, int kept)
    {
        double meanRight = 0, meanUp = 0, squares = 0, nu = 2 * (kept - 1);
        for (int i = 0; i < kept; i++)
        {
            meanRight += right[i] / kept;
            meanUp += up[i] / kept;
        }

        for (int i = 0; i < kept; i++)
        {
            squares += ((right[i] - meanRight) * (right[i] - meanRight)) + ((up[i] - meanUp) * (up[i] - meanUp));
        }

        return Math.Sqrt(squares / nu) / Factor[kept];
    }

    static readonly double[] Factor = [double.NaN, double.NaN, .. Enumerable.Range(2, 29).Select(n => Quantiles.C4(2 * (n - 1)))];
}
