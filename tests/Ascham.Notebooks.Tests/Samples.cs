namespace Ascham.Notebooks.Tests;

using Ascham.Air;
using Ascham.Causes;
using Ascham.Flight;
using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Invented shots, estimates and figures, the same in every run.</summary>
static class Samples
{
    /// <summary>A name as nobody should type it, and somebody will.</summary>
    public const string Hostile = "<script>alert('x')</script> & \"friends\"";

    public static Estimate<Length> Inches(double value, double error, double level = 0.90) =>
        new(value.Inches, error.Inches, (value - (1.645 * error)).Inches, (value + (1.645 * error)).Inches, level, 12, "invented");

    public static Estimate<Length> Millimetres(double value, double error) =>
        new(value.Millimetres, error.Millimetres, (value - (1.645 * error)).Millimetres, (value + (1.645 * error)).Millimetres, 0.90, 12, "invented");

    /// <summary>Six arrows at each distance, lower the farther; one called flyer and one miss at the last distance.</summary>
    public static IReadOnlyList<Shot> Shots(params double[] yards)
    {
        var random = new Random(20260901);
        double Offset() => (random.NextDouble() + random.NextDouble() - 1) * 2.2;
        List<Shot> shots = [];
        foreach (double distance in yards)
        {
            for (int arrow = 1; arrow <= 6; arrow++)
            {
                bool last = distance == yards[^1];
                shots.Add(new Shot
                {
                    Session = "evening",
                    Distance = distance.Yards,
                    Number = shots.Count + 1,
                    Arrow = arrow.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Called = last && arrow == 5,
                    Impact = last && arrow == 6 ? null : new Impact((Offset() * distance / 40).Inches, ((Offset() * distance / 40) - (distance * distance / 1600)).Inches),
                    Missed = last && arrow == 6 ? Miss.Low : null,
                });
            }
        }

        return shots;
    }

    static FaceCentre Centre(IReadOnlyList<Impact> impacts) =>
        new(new(impacts.Average(i => i.Right.Inches).Inches, impacts.Average(i => i.Up.Inches).Inches), 0.9.Inches, 0.90);

    static PathCurve Path(string name, double drop) =>
        new(name, [.. Enumerable.Range(0, 81).Select(i => (((double)i).Yards, ((i * 0.55) - (drop * i * i) - 5.2).Inches))]);

    public static Figure Face => TargetFace.Draw("Where the arrows went", FacePanel.PerDistance(Shots(20, 40, 60), LengthUnit.Yard, Centre), LengthUnit.Inch, 6.Inches);

    public static Figure NamedFace => TargetFace.Draw("One distance, arrows by number", Shots(60), LengthUnit.Yard, LengthUnit.Centimeter, nameArrows: true);

    public static Figure TwoGroups => TargetFace.Draw("Two kinds of point at two distances",
        FacePanel.PerDistance([.. Shots(30, 50).Select((s, i) => s with { PointType = i % 2 == 0 ? "field point" : "broadhead" })], LengthUnit.Yard, Centre, s => s.PointType),
        LengthUnit.Inch, 4.Inches);

    public static Figure ManyPanels => TargetFace.Draw("Five distances", Shots(20, 30, 40, 50, 60), LengthUnit.Yard, LengthUnit.Inch, 8.Inches);

    public static Figure Drop => DropPath.Draw("Height of the arrow along its way",
        [Path("50 lb, 420 gr", 0.0080), Path("60 lb, 420 gr", 0.0070), Path("60 lb, 350 gr, long name for a setup", 0.0071)], LengthUnit.Yard, LengthUnit.Inch);

    public static Figure Intervals => IntervalPlot.Draw("How far the groups sit from the aim", "height of the group's centre",
        [("20 yd", Inches(0.2, 0.3)), ("40 yd", Inches(-0.9, 0.5)), ("60 yd, second evening with wind", Inches(-3.1, 0.8))], LengthUnit.Inch, 2.Inches);

    public static Figure OpenIntervals => IntervalPlot.Draw("How far the setups differ", "spread against the first setup",
        [("second setup", new(1.2, 0.1, 1.03, 1.37, 0.90, 12, "invented")), ("two arrows only", new(1.1, 0.6, double.NegativeInfinity, double.PositiveInfinity, 0.90, 2, "invented"))], "times");

    public static Figure Residuals => ResidualByDistance.Draw("The tape against the impacts", "tape error, arrow low is positive",
        [(20.0.Yards, Millimetres(-0.05, 0.12)), (40.0.Yards, Millimetres(0.31, 0.11)), (60.0.Yards, Millimetres(0.62, 0.13)), (80.0.Yards, Millimetres(1.15, 0.20))],
        Enumerable.Range(0, 31).Select(i => ((20 + (2.0 * i)).Yards, Millimetres((0.02 * 2 * i) - 0.05, 0.08 + (0.002 * Math.Abs(i - 15))))),
        LengthUnit.Yard, LengthUnit.Millimeter, marginAt: d => (15 / d.Yards).Millimetres);

    static Estimate<double> Chance(double value) => new(value, 0.04, Math.Max(0, value - 0.08), Math.Min(1, value + 0.06), 0.90, 24, "invented");

    public static Figure Circled => TargetFace.Draw("A group and its next arrow",
        [new("40 yd", [new FaceGroup("arrows", [new(new(1.Inches, -2.Inches)), new(new(2.Inches, 0.5.Inches))], Centre([new(1.5.Inches, -0.75.Inches)])) { Circles = [new("next arrow, 90 %", new(1.5.Inches, -0.75.Inches), 4.Inches)] }], [])], LengthUnit.Inch);

    public static Figure Repeats => RepeatPlot.Draw("Sigma, again and again", "sigma estimated",
        new[] { 3, 12 }.Select(n => ($"{n} arrows", (IReadOnlyList<Length>)[.. Enumerable.Range(1, 30).Select(i => (2 + (Math.Sin(i) * 3 / n)).Inches)])), LengthUnit.Inch, 2.Inches);

    public static Figure Series => IntervalSeries.Draw("Group after group", "sigma", "group", Enumerable.Range(1, 12).Select(i => ((double)i, Inches(2 + (0.5 * Math.Sin(i)), 0.25))), LengthUnit.Inch, 2.Inches);

    public static Figure HitChances => HitByDistance.Draw("Chance to hit",
        [new("with wind and distance error", [.. Enumerable.Range(1, 12).Select(i => ((5.0 * i).Yards, Chance(1 - (0.003 * i * i))))]), new("from pegs", [.. Enumerable.Range(1, 12).Select(i => ((5.0 * i).Yards, Chance(1 - (0.002 * i * i))))])],
        [(20.0.Yards, Chance(0.95)), (40.0.Yards, Chance(0.85))], 0.8, Enumerable.Range(1, 12).Select(i => ((5.0 * i).Yards, Duration.FromSeconds(0.06 * i))), LengthUnit.Yard);

    static Evidence Lowered { get; } = new()
    {
        Bow = new()
        {
            Sight = new() { Geometry = new() { PeepToPin = 31.Inches, PeepHeight = 4.2.Inches, TapePerPinTravel = 1, Increases = ScaleDirection.Down }, LaunchSpeed = 266.FeetPerSecond, Drag = Drag.FromConstant(0.0017.PerMetre), Air = Air.StandardAt(Length.Zero), Gravity = Gravity.Standard },
            PeakWeight = 57.PoundsForce,
            ArrowMass = 418.Grains,
            VirtualMass = 80.Grains,
            SpeedSd = 0.01,
            DragSd = 0.2,
        },
        Stations = [.. from y in (int[])[20, 40, 60] from after in (bool[])[false, true]
                       select new StationMean { Session = after ? "now" : "then", Now = after, Distance = y.Yards, Up = (after ? -0.0011 * y * y : 0).Inches, Right = Length.Zero, Arrows = 6, ShotBefore = 2.5 }],
        ScatterThen = new(1.1, 1.1, 15),
        ScatterNow = new(1.1, 1.1, 15),
    };

    /// <summary>A ranking in honest doubt.</summary>
    public static Ranking Doubt { get; } = Ranking.Of(Lowered, CausePriors.Usual);

    public static TestPlan Plan { get; } = NextTest.Plan(Doubt, new() { LongestSafeDistance = 80.Yards, Distances = [20.Yards, 40.Yards, 60.Yards, 80.Yards] });

    public static Figure Shifts => ShiftByDistance.Draw("Shift and suspects", "shift up", StationShift.Of(Lowered, 0.9).Select(s => (s.Distance, s.Up)),
        Doubt.Causes.Take(3).Select(c => new ShiftCurve($"{c.Cause.Name()} ({100 * c.Probability:0} %)", [.. Signature.Of(Lowered.Bow, c.Cause, [.. c.Sizes.Select(s => s.Value.Value)], Enumerable.Range(1, 12).Select(i => (5 * i).Yards)).Select(p => (p.Distance, p.Up))])),
        0.4.Milliradians, LengthUnit.Yard, LengthUnit.Inch);

    public static Figure Suspects => ProbabilityBars.Draw("Before and after", Doubt.Causes.Select(c => (c.Cause.Name(), (IReadOnlyList<double>)[c.Probability, c.Probability / 2])), ["impacts alone", "with the log"], 0.9);

    public static Figure Apart => ApartnessGrid.Draw("Told apart?", Apartness.Of(Doubt));

    public static Figure Ladder => TestLadder.Draw("Next", Plan);

    public static IReadOnlyList<Figure> AllFigures => [Face, NamedFace, TwoGroups, ManyPanels, Drop, Intervals, OpenIntervals, Residuals, Circled, Repeats, Series, HitChances, Shifts, Suspects, Apart, Ladder];

    /// <summary>A page as a runner lays it out: script once in the head, then what the cells show.</summary>
    public static string Page(IEnumerable<string> outputs) => $$"""
        <!doctype html>
        <html lang="en"><head><meta charset="utf-8"/><meta name="viewport" content="width=device-width,initial-scale=1"/><title>Charts</title>
        <style>
        :root{color-scheme:light dark}
        body{font:16px/1.5 system-ui,'DejaVu Sans',sans-serif;max-width:60rem;margin:1rem auto;padding:0 1rem;background:#fff;color:#1a1a1a}
        @media (prefers-color-scheme:dark){body{background:#161616;color:#e8e8e8} }
        @media print{body{background:#fff;color:#000} }
        table{border-collapse:collapse}td,th{padding:.1rem .6rem;border-bottom:1px solid #8888}
        </style><script>{{FigureScript.Page}}</script></head><body>
        {{string.Join("\n", outputs)}}
        </body></html>
        """;
}
