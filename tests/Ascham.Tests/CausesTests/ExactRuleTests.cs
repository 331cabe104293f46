namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Ascham.Flight;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using Xunit;

/// <summary>
/// Independent: small changes, impacts alone, scatter known from very many arrows. There the best possible rule is exact: densities of normal
/// vectors, here from MathNet's matrices and signatures by differences of public flights.
/// </summary>
public class ExactRuleTests
{
    const int Cases = 250;
    const double Sigma = 0.5, Arrows = 200, Shrunk = 0.25, Day = 0.03; // mrad; causes a quarter of their usual size, so that all is linear, and many arrows of a steady archer

    static readonly double[] Yards = [20, 40, 60, 80];

    static readonly CausePriors Priors = CausePriors.Usual with
    {
        Causes = [.. CausePriors.Usual.Causes.Where(c => c.Cause != Cause.Fatigue).Select(c => c with
        {
            Growth = 0, GrowthSd = 0, Sizes = [.. c.Sizes.Select(s => s with { Mean = Shrunk * s.Mean, Sd = Shrunk * s.Sd })],
        })],
        SomethingElse = 0,
        OrdinaryDay = Day,
        HabitSlope = 0,
        OrdinarySlope = 0,
    };

    readonly Hypothesis[] hypotheses = Hypothesis.All(Priors, []);
    readonly Matrix<double>[] spread;
    readonly Vector<double>[] mean;
    readonly Matrix<double> noise;
    readonly Matrix<double> root;
    readonly Dictionary<int, Vector<double>> signatures = [];

    public ExactRuleTests()
    {
        for (int size = 0; size < CauseText.Sizes; size++)
        {
            signatures[size] = Signature(size);
        }

        noise = Noise();
        root = noise.Cholesky().Factor;
        mean = [.. hypotheses.Select(h => Total(h, h.Means))];
        spread = [.. hypotheses.Select(h => h.Sizes.Select((s, k) => signatures[s].OuterProduct(signatures[s]) * (h.Sds[k] * h.Sds[k])).Aggregate(noise, (a, b) => a + b))];
    }

    [Fact]
    public void Small_changes_are_judged_as_by_the_best_possible_rule()
    {
        var random = new Random(41);
        int agreed = 0, right = 0, best = 0, accused = 0;
        double farthest = 0;
        for (int i = 0; i < Cases; i++)
        {
            var (truth, y) = Draw(random);
            double[] exact = Exact(y);
            Ranking ranking = Ranking.Of(EvidenceOf(y), Priors);
            var (label, _) = Best(exact);
            agreed += ranking.Best == label ? 1 : 0;
            farthest = Math.Max(farthest, Priors.Causes.Select(c => c.Cause.Key()).Append("nothing").Max(l => Math.Abs(Said(exact, l) - Probability(ranking, l))));
            accused += label == "nothing" ? 0 : 1;
            right += IsRight(truth, ranking.Best) ? 1 : 0;
            best += IsRight(truth, label) ? 1 : 0;
        }

        Assert.True(accused >= 0.3 * Cases, $"only {accused} cases ask anything of the rule");
        Assert.True(agreed >= 0.98 * Cases, $"{agreed} of {Cases} alike");
        Assert.InRange(right, best - 0.03 * Cases, best + 0.03 * Cases);
        Assert.InRange(farthest, 0, 0.05); // of 13 probabilities in all cases: second order of the flight
        TestContext.Current.TestOutputHelper?.WriteLine($"{agreed} of {Cases} alike; a cause in {accused}; right {right}, by the exact rule {best}; probabilities apart by {farthest:F4} at most");
    }

    static bool IsRight(Hypothesis truth, string label) => label == "nothing" ? truth.Causes.Count == 0 : truth.Causes.Any(c => c.Key() == label);

    static double Probability(Ranking ranking, string label) => label == "nothing" ? ranking.Nothing : ranking.Causes.First(c => c.Cause.Key() == label).Probability;

    (string Label, double Probability) Best(double[] exact)
    {
        return Priors.Causes.Select(c => c.Cause.Key()).Append("nothing").Select(l => (l, Said(exact, l))).MaxBy(c => c.Item2);
    }

    double Said(double[] exact, string label) => label == "nothing" ? exact[0] : hypotheses.Select((h, i) => h.Causes.Any(c => c.Key() == label) ? exact[i] : 0).Sum();

    double[] Exact(Vector<double> y)
    {
        double[] logs = [.. hypotheses.Select((h, i) => h.LogOdds - (spread[i].Cholesky().DeterminantLn + (y - mean[i]) * spread[i].Cholesky().Solve(y - mean[i])) / 2)];
        double top = logs.Max(), sum = logs.Sum(l => Math.Exp(l - top));
        return [.. logs.Select(l => Math.Exp(l - top) / sum)];
    }

    (Hypothesis Truth, Vector<double> Seen) Draw(Random random)
    {
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double pick = random.NextDouble() * hypotheses.Sum(h => Math.Exp(h.LogOdds));
        Hypothesis truth = hypotheses.First(h => (pick -= Math.Exp(h.LogOdds)) <= 0);
        Vector<double> y = root * Vector<double>.Build.Dense(noise.RowCount, _ => Normal());
        return (truth, y + Total(truth, [.. truth.Means.Select((m, k) => m + truth.Sds[k] * Normal())]));
    }

    Vector<double> Total(Hypothesis h, double[] sizes) =>
        h.Sizes.Select((s, k) => signatures[s] * sizes[k]).Aggregate(Vector<double>.Build.Dense(noise.RowCount), (a, b) => a + b);

    // Rows: then up, then right, now up, now right of each distance in turn.
    static Evidence EvidenceOf(Vector<double> y) => new()
    {
        Bow = Bench.Bow,
        Stations = [.. Bench.Session("then", false, Arrows, Yards.Select((d, i) => (d, y[4 * i], y[4 * i + 1]))), .. Bench.Session("now", true, Arrows, Yards.Select((d, i) => (d, y[4 * i + 2], y[4 * i + 3])))],
        ScatterThen = new(Sigma, Sigma, 1e7),
        ScatterNow = new(Sigma, Sigma, 1e7),
    };

    // By differences of public flights.
    static Vector<double> Signature(int size)
    {
        var s = Vector<double>.Build.Dense(4 * Yards.Length);
        double step = size is (int)CauseSize.Distance or (int)CauseSize.Air or (int)CauseSize.Drag ? 1e-4 : 0.01;
        for (int i = 0; i < Yards.Length; i++)
        {
            var (up, right) = Strike(Yards[i], (CauseSize)size, step);
            var (down, left) = Strike(Yards[i], (CauseSize)size, -step);
            (s[4 * i + 2], s[4 * i + 3]) = ((up - down) / (2 * step), (right - left) / (2 * step));
        }

        return s;
    }

    static (double Up, double Right) Strike(double yards, CauseSize size, double by, double speed = 1, double drag = 1)
    {
        KnownBow bow = Bench.Bow;
        double Of(CauseSize one) => one == size ? by : 0;
        double angle = bow.Sight.SightAngle(Length.FromYards(yards)).Radians, cant = Of(CauseSize.Cant) * Math.PI / 180, h = bow.Sight.Geometry.PeepHeight.Meters;
        double m = bow.ArrowMass.Grains, changed = m + Of(CauseSize.ArrowMass), k = bow.VirtualMass.Grains;
        double v = 84 * speed * Math.Sqrt((m + k) / (changed + k) * (60 + Of(CauseSize.PeakWeight)) / 60);
        double up = angle * Math.Cos(cant) + (Of(CauseSize.Elevation) + Of(CauseSize.DayUp)) / 1000;
        double side = angle * Math.Sin(cant) + (Of(CauseSize.Lateral) + Of(CauseSize.DayRight)) / 1000
            + (angle - bow.Sight.SightAngle(bow.SideSetAt).Radians) * Of(CauseSize.SightAxis) * Math.PI / 180;
        var flight = new PointMass
        {
            Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015 * drag * Math.Exp(Of(CauseSize.Drag) + Of(CauseSize.Air)) * m / changed)),
            Air = bow.Sight.Air,
            Gravity = bow.Sight.Gravity,
            Wind = Ascham.Air.Wind.Of(Speed.FromMetersPerSecond(Of(CauseSize.TailWind)), Speed.FromMetersPerSecond(Of(CauseSize.CrossWind))),
        };
        var launch = new Launch
        {
            Speed = Speed.FromMetersPerSecond(v),
            Elevation = Angle.FromRadians(up),
            Azimuth = Angle.FromRadians(side),
            Up = Length.FromMeters(-h * Math.Cos(cant)),
            Right = Length.FromMeters(-h * Math.Sin(cant)),
        };
        FlightState state = flight.At(launch, Length.FromYards(yards * (1 + Of(CauseSize.Distance))));
        return (state.Up.Meters, state.Right.Meters);
    }

    static Matrix<double> Noise()
    {
        int n = 4 * Yards.Length;
        var v = Matrix<double>.Build.Dense(n, n);
        var speed = Vector<double>.Build.Dense(n);
        var drag = Vector<double>.Build.Dense(n);
        for (int i = 0; i < Yards.Length; i++)
        {
            double x = 0.9144e-3 * Yards[i], own = Sigma * Sigma * x * x / Arrows;
            for (int row = 0; row < 4; row++)
            {
                v[4 * i + row, 4 * i + row] += own;
                for (int j = 0; j < Yards.Length; j++)
                {
                    for (int other = row % 2; other < 4; other += 2)
                    {
                        double both = 0.9144e-3 * Yards[i] * 0.9144e-3 * Yards[j];
                        v[4 * i + row, 4 * j + other] += both * (1.0 * 1.0 + (i == j ? 0.2 * 0.2 : 0) + (row / 2 == other / 2 ? Day * Day : 0));
                    }
                }
            }

            double s = (Strike(Yards[i], CauseSize.Drag, 0, speed: 1.0001).Up - Strike(Yards[i], CauseSize.Drag, 0, speed: 0.9999).Up) / 2e-4 * 0.015;
            double d = (Strike(Yards[i], CauseSize.Drag, 0, drag: 1.0001).Up - Strike(Yards[i], CauseSize.Drag, 0, drag: 0.9999).Up) / 2e-4 * 0.2;
            (speed[4 * i], speed[4 * i + 2], drag[4 * i], drag[4 * i + 2]) = (s, s, d, d);
        }

        return v + speed.OuterProduct(speed) + drag.OuterProduct(drag);
    }
}
