namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Numerics;

/// <summary>Simulates what leaving out the worst arrows does to sigma; the source of the table in DroppedWorst.cs.</summary>
static class DroppedWorstStudy
{
    internal const int Groups = 400_000, Seed = 20_000;

    /// <summary>Mean over groups of s/c of the rest, and its standard error, with one and with two arrows left out.</summary>
    internal static (double One, double OneError, double Two, double TwoError) Of(int shot, int groups)
    {
        var simulated = new Simulated(Seed + shot);
        double one = 0, oneSquare = 0, two = 0, twoSquare = 0;
        for (int k = 0; k < groups; k++)
        {
            Impact[] byRadius = ByRadius(simulated.Group(shot, 1));
            double a = Sigma(byRadius[..^1]), b = shot > 3 ? Sigma(byRadius[..^2]) : double.NaN;
            one += a;
            oneSquare += a * a;
            two += b;
            twoSquare += b * b;
        }

        return (one / groups, Error(one, oneSquare), two / groups, Error(two, twoSquare));

        double Error(double sum, double square) => Math.Sqrt(((square / groups) - (sum / groups * sum / groups)) / groups);
    }

    // Nearest the mean of all first.
    static Impact[] ByRadius(Group group)
    {
        Moments m = group.Moments;
        return [.. group.Impacts.OrderBy(i => double.Hypot(i.Right.Meters - m.MeanRight, i.Up.Meters - m.MeanUp))];
    }

    static double Sigma(Impact[] rest)
    {
        Moments m = Moments.Of(rest);
        double nu = 2 * (rest.Length - 1);
        return Math.Sqrt((m.SumRight + m.SumUp) / nu) / Quantiles.C4(nu);
    }
}
