namespace Ascham.Benchmarks;

using Ascham.Groups;
using MathNet.Numerics.Statistics;
using UnitsNet;

/// <summary>A million impacts: means, spreads and intervals by the library; means and spreads of the two columns by MathNet.</summary>
static class GroupsPeer
{
    public const int Count = 1_000_000;

    static readonly double[] Right = Column(1), Up = Column(2);

    static readonly Impact[] Impacts = [.. Right.Zip(Up, (r, u) => new Impact(Length.FromMeters(r), Length.FromMeters(u)))];

    static double[] Column(int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, Count).Select(_ => 0.1 * (random.NextDouble() + random.NextDouble() - 1))];
    }

    public static double Here()
    {
        Group group = Group.Of(Impacts);
        return Dispersion.Pooled([group], 0.9).BothAxes.Estimate.Value.Meters + group.Centre(0.9).Right.Value.Meters;
    }

    public static double MathNet()
    {
        RunningStatistics right = new(), up = new();
        for (int i = 0; i < Count; i++)
        {
            right.Push(Right[i]);
            up.Push(Up[i]);
        }

        return right.Mean + right.StandardDeviation + up.Mean + up.StandardDeviation;
    }
}
