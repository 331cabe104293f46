namespace Ascham.Tests.CausesTests;

using Ascham.Causes;

/// <summary>What an archer with a pencil does, to measure the ranking against. // common practice, no source</summary>
static class RulesOfThumb
{
    /// <summary>Fits each plain law to the shifts of the means by least squares and takes the best if it explains enough.</summary>
    internal static string Laws(Evidence evidence)
    {
        var shifts = Shifts(evidence);
        var best = (Gain: 6.0, Cause: "nothing"); // a fall of chi-square that chance makes once in seventy
        foreach (var (law, power, up) in new[] { ("elevation", 1, true), ("peak_weight", 2, true), ("drag", 3, true), ("lateral", 1, false), ("cant", 2, false) })
        {
            double top = 0, bottom = 0;
            foreach (var s in shifts)
            {
                double f = Math.Pow(s.Distance, power), y = up ? s.Up : s.Right;
                (top, bottom) = (top + f * y / (s.Error * s.Error), bottom + f * f / (s.Error * s.Error));
            }

            best = top * top / bottom > best.Gain ? (top * top / bottom, law) : best;
        }

        return best.Cause;
    }

    /// <summary>Low far but not near is weight, low near as well is the sight, sideways is the rest or the grip.</summary>
    internal static string FarAndNear(Evidence evidence)
    {
        var shifts = Shifts(evidence);
        var near = shifts.MinBy(s => s.Distance);
        var far = shifts.MaxBy(s => s.Distance);
        double up = Math.Abs(far.Up) / far.Error, side = Math.Abs(far.Right) / far.Error;
        return Math.Max(up, side) < 2 ? "nothing" : side > up ? "lateral" : Math.Abs(near.Up) / near.Error < 2 ? "peak_weight" : "elevation";
    }

    static List<(double Distance, double Up, double Right, double Error)> Shifts(Evidence evidence)
    {
        double sigma = Math.Sqrt((evidence.ScatterThen.Up * evidence.ScatterThen.Up + evidence.ScatterNow.Up * evidence.ScatterNow.Up) / 2) / 1000;
        return
        [
            .. from now in evidence.Stations.Where(s => s.Now)
               let then = evidence.Stations.First(s => !s.Now && Math.Abs((s.Distance - now.Distance).Meters) < 1e-6)
               let x = now.Distance.Meters
               select (x, (now.Up - then.Up).Meters, (now.Right - then.Right).Meters, sigma * x * Math.Sqrt(1 / now.Arrows + 1 / then.Arrows)),
        ];
    }
}
