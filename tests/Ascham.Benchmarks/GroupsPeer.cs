namespace Ascham.Benchmarks;

using System.Diagnostics;
using Ascham.Groups;
using MathNet.Numerics.Statistics;
using UnitsNet;

/// <summary>A million impacts: means, spreads and intervals by the library, of columns of metres or of impacts with units; means and spreads of the two columns by MathNet.</summary>
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

    public static double Columns()
    {
        Group group = Group.OfMetres(Right, Up);
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

    /// <summary>Ten million impacts: time, and memory beyond that of the caller's own data, while summarising and kept by the group.</summary>
    public static void TenMillion()
    {
        const int count = 10_000_000;
        var random = new Random(3);
        double[] right = new double[count], up = new double[count];
        for (int i = 0; i < count; i++)
        {
            (right[i], up[i]) = (random.NextDouble(), random.NextDouble());
        }

        Measure("columns of metres", () => Group.OfMetres(right, up));
        Impact[] impacts = [.. right.Zip(up, (r, u) => new Impact(Length.FromMeters(r), Length.FromMeters(u)))];
        Measure("impacts with units", () => Group.Of(impacts));
    }

    static void Measure(string what, Func<Group> make)
    {
        long before = GC.GetTotalMemory(true), allocated = GC.GetTotalAllocatedBytes(true), start = Stopwatch.GetTimestamp();
        Group group = make();
        Centre centre = group.Centre(0.9);
        Dispersion<Length> dispersion = group.Dispersion(0.9);
        TimeSpan time = Stopwatch.GetElapsedTime(start);
        long spent = GC.GetTotalAllocatedBytes(true) - allocated, kept = GC.GetTotalMemory(true) - before;
        Console.WriteLine(FormattableString.Invariant(
            $"{what}: {time.TotalMilliseconds:F0} ms, {spent / 1e6:F0} MB allocated, {kept / 1e6:F0} MB kept; mean {centre.Right.Value.Meters:F6} m, sigma {dispersion.BothAxes.Estimate.Value.Meters:F6} m"));
        GC.KeepAlive(group);
    }
}
