namespace Ascham.Tests.SightsTests;

using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Quantities;
using Ascham.Sights;
using CsCheck;
using Xunit;

public class TapeSolverTests
{
    static readonly double[] Yards = [.. Enumerable.Range(20, 81).Select(y => 0.9144 * y)];

    [Fact] // independent: Newton on single flights, as marks are solved one by one
    public void Every_mark_is_the_one_solved_by_itself() =>
        Gen.Select(Gen.Double[50, 120], Gen.Double[0, 0.004], Gen.Double[0.03, 0.3]).Sample((speed, k, peep) =>
        {
            SightModel sight = SightModelTests.Sight(k) with { LaunchSpeed = speed.MetresPerSecond };
            sight = sight with { Geometry = sight.Geometry with { PeepHeight = peep.Metres } };
            double[] angles = new double[Yards.Length];
            TapeSolver.SightAngles(speed, 9.80665, new ConstantDrag<Lanes>(Lanes.Of(k)), peep, Yards, angles);
            for (int i = 0; i < Yards.Length; i += 8)
            {
                double miss = (angles[i] - sight.SightAngle(Yards[i].Metres).Radians) * Yards[i];
                Assert.True(Math.Abs(miss) < 1e-6, FormattableString.Invariant($"{miss:E1} m off at {Yards[i]:F1} m, {speed:F1} m/s, k {k:F5}, peep {peep:F3}"));
            }
        }, iter: 300);

    [Fact] // a law that changes with speed: the angle found, flown by fine steps, strikes the aim point
    public void With_any_drag_law_every_mark_strikes_the_aim_point()
    {
        double[] angles = new double[Yards.Length];
        var law = new Rising<Lanes>();
        TapeSolver.SightAngles(70, 9.80665, law, 0.1, Yards, angles);
        for (int i = 0; i < Yards.Length; i += 5)
        {
            var (sin, cos) = Math.SinCos(angles[i]);
            Outcome outcome = March.Fly(
                new Triple<Real>(new(70 * cos), new(70 * sin), new(0)), default, new(9.80665), new Rising<Real>(), Face.Square(Yards[i], 0), 64, out _, out Triple<Real> moved, out _, out _);
            Assert.Equal(Outcome.Met, outcome);
            Assert.Equal(0.1, moved.Y.Value, 1e-6);
        }
    }

    [Fact]
    public void Marks_too_steep_or_out_of_reach_are_left_open()
    {
        double[] far = [50, 400], angles = new double[2];
        TapeSolver.SightAngles(50, 9.80665, new ConstantDrag<Lanes>(Lanes.Of(0.002)), 0.1, far, angles);
        Assert.All(angles, a => Assert.True(double.IsNaN(a)));
    }

    /// <summary>k from 0.0017 to 0.0025 1/m across 60 m/s.</summary>
    readonly struct Rising<T> : IDragLaw<T>
        where T : struct, IReal<T>
    {
        public T At(T airSpeed)
        {
            T u = 0.2 * (airSpeed - T.Of(60));
            return T.Of(0.0021) + 0.0004 * (u / T.SquareRoot(T.Of(1) + u * u));
        }

        public double Room(double airSpeed, bool? slowing) => double.PositiveInfinity;

        public bool Covers(double airSpeed) => true;
    }
}
