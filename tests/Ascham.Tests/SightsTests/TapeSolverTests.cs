namespace Ascham.Tests.SightsTests;

using Ascham.Flight;
using Ascham.Quantities;
using Ascham.Sights;
using Ascham.Tests.FlightTests;
using CsCheck;
using UnitsNet;
using Xunit;

public class TapeSolverTests
{
    static readonly double[] Yards = [.. Enumerable.Range(20, 81).Select(y => 0.9144 * y)];

    [Fact] // independent: Newton on single flights, as marks are solved one by one
    public void Every_mark_is_the_one_solved_by_itself() =>
        Gen.Select(Gen.Double[50, 120], Gen.Double[0, 0.004], Gen.Double[0.03, 0.3]).Sample((speed, k, peep) =>
        {
            SightModel sight = Sight(speed, peep, Drag.FromConstant(k.PerMetre));
            double[] angles = Angles(new(k, 9.80665, 0, 0, 0), speed, peep);
            for (int i = 0; i < Yards.Length; i += 8)
            {
                double miss = (angles[i] - sight.SightAngle(Yards[i].Metres).Radians) * Yards[i];
                bool steep = double.IsNaN(angles[i]) && sight.SightAngle(Yards[^1].Metres).Radians + sight.SightAngle(Yards[0].Metres).Radians > 0.15;
                Assert.True(Math.Abs(miss) < 1e-6 || steep, FormattableString.Invariant($"{miss:E1} m off at {Yards[i]:F1} m, {speed:F1} m/s, k {k:F5}, peep {peep:F3}"));
            }
        }, iter: 300);

    [Fact] // a drag that changes with speed: laminar below a Reynolds number, turbulent above
    public void With_any_drag_law_every_mark_is_the_one_solved_by_itself()
    {
        foreach (string name in new[] { "laminar", "ordinary point", "sharp", "table", "tanh" })
        {
            Drag drag = AnyDrag.Named(name);
            SightModel sight = Sight(80, 0.1, drag);
            double[] angles = Angles(PointMassSi.Of(drag, sight.Air, 9.80665), 80, 0.1);
            for (int i = 0; i < Yards.Length; i += 5)
            {
                Assert.Equal(sight.SightAngle(Yards[i].Metres).Radians * Yards[i], angles[i] * Yards[i], 1e-6);
            }
        }
    }

    [Fact]
    public void A_tape_stays_whole_however_many_marks_it_has_and_however_steep()
    {
        SightModel sight = Sight(50, 0.1, Drag.FromConstant(0.003.PerMetre));
        Length[] marks = [.. Enumerable.Range(50, 700).Select(i => (0.2 * i).Metres)];
        Tape tape = sight.MakeTape(marks, new(20.Metres, Length.Zero));
        foreach (Length d in marks.Where((_, i) => i % 37 == 0))
        {
            Assert.Equal((sight.ScaleTravel(d) - sight.ScaleTravel(20.Metres)), tape.PositionAt(d).Meters, 1e-7);
        }
    }

    [Fact]
    public void Marks_too_steep_or_out_of_reach_are_left_open()
    {
        double[] far = [50, 400], angles = new double[2];
        TapeSolver.SightAngles(new(0.002, 9.80665, 0, 0, 0), 50, 0.1, far, angles);
        Assert.All(angles, a => Assert.True(double.IsNaN(a)));
    }

    static SightModel Sight(double speed, double peep, Drag drag)
    {
        SightModel sight = SightModelTests.Sight(0) with { LaunchSpeed = speed.MetresPerSecond, Drag = drag };
        return sight with { Geometry = sight.Geometry with { PeepHeight = peep.Metres } };
    }

    static double[] Angles(PointMassSi mass, double speed, double peep)
    {
        double[] angles = new double[Yards.Length];
        TapeSolver.SightAngles(mass, speed, peep, Yards, angles);
        return angles;
    }
}
