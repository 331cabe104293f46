namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Xunit;

public class StudyTrial
{
    [Fact]
    public void Trial()
    {
        int n = int.Parse(Environment.GetEnvironmentVariable("N") ?? "200");
        var w = System.Diagnostics.Stopwatch.StartNew();
        foreach (bool bare in new[] { true, false })
        {
            var o = CauseStudy.Run(1, n, CausePriors.Usual, CausePriors.Usual, bare);
            var (e, bins) = CauseStudy.Calibration(o);
            Console.WriteLine($"bare {bare} {n} cases {w.Elapsed.TotalSeconds:F1} s; right {o.Count(x => x.Right) / (double)n:F3} set {o.Count(x => x.SetRight) / (double)n:F3} ECE {e:F3} sizes {o.Sum(x => x.Covered)}/{o.Sum(x => x.Sizes)} = {o.Sum(x => x.Covered) / (double)o.Sum(x => x.Sizes):F3}");
            foreach (var b in bins) Console.WriteLine($"   {b.Count} said {b.Said:F3} right {b.Right:F3}");
            var none = o.Where(x => x.Truth == "nothing").ToList();
            Console.WriteLine($"nothing: {none.Count} convicted>0.9 {none.Count(x => x.Answer is not "nothing" and not "none_fits" && x.Probability > .9)}");
            foreach (var g in o.GroupBy(x => x.Truth.Contains('+') ? "pair" : x.Truth)) Console.WriteLine($"  {g.Key} {g.Count()}: right {g.Average(x => x.Right ? 1 : 0):F2} set {g.Average(x => x.SetRight ? 1 : 0):F2} p {g.Average(x => x.Probability):F2} cov {g.Sum(x => x.Covered)}/{g.Sum(x => x.Sizes)} answers {string.Join(",", g.GroupBy(x => x.Answer).OrderByDescending(x => x.Count()).Take(4).Select(x => x.Key + ":" + x.Count()))}");
        }
    }
}
