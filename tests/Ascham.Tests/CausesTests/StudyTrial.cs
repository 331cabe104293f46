namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Xunit;

public class StudyTrial
{
    [Fact]
    public void Trial()
    {
        int n = int.Parse(Environment.GetEnvironmentVariable("N") ?? "40");
        var w = System.Diagnostics.Stopwatch.StartNew();
        Cause[] causes = [.. CausePriors.Usual.Causes.Select(c => c.Cause)];
        var all = Enumerable.Range(1, n).AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(i => (Cause: causes[i % causes.Length], A: NextTestStudy.Planned(i, [causes[i % causes.Length]]), B: NextTestStudy.SixMoreEverywhere(i, [causes[i % causes.Length]]))).ToList();
        double Median(IEnumerable<double> v) { var s = v.Order().ToArray(); return s[s.Length / 2]; }
        Console.WriteLine($"{n}: {w.Elapsed.TotalSeconds:F0} s planned arrows {Median(all.Select(x => x.A.Arrows))} minutes {Median(all.Select(x => x.A.Minutes)):F1} reached {all.Count(x => x.A.Reached)} wrong {all.Count(x => x.A.Wrong)}; six more arrows {Median(all.Select(x => x.B.Arrows))} minutes {Median(all.Select(x => x.B.Minutes)):F1} reached {all.Count(x => x.B.Reached)} wrong {all.Count(x => x.B.Wrong)}");
        foreach (var g in all.GroupBy(x => x.Cause)) Console.WriteLine($"  {g.Key} planned {Median(g.Select(x => x.A.Arrows))}/{Median(g.Select(x => x.A.Minutes)):F0} reached {g.Count(x => x.A.Reached)} wrong {g.Count(x => x.A.Wrong)} of {g.Count()}; six {Median(g.Select(x => x.B.Arrows))}/{Median(g.Select(x => x.B.Minutes)):F0} reached {g.Count(x => x.B.Reached)} wrong {g.Count(x => x.B.Wrong)}");
    }
}
