namespace Ascham.Tests.SightsTests;

using System.Globalization;
using Ascham.Sights;

/// <summary>One row of the simulation study of the tape check.</summary>
public sealed record TapeStudyRow(string Case, int Arrows, PlantedFault Fault, int Archers, IReadOnlyDictionary<TapeVerdict, double> Share, double SlideCoverage, double NamedSlideCoverage, double ScaleCoverage, double MarkCoverage)
{
    /// <summary>Share of archers told something false: neither the truth nor "cannot tell".</summary>
    public double Wrong => 1 - Share[Fault.Truth] - Share[TapeVerdict.CannotTell];

    public double Right => Share[Fault.Truth];

    public static TapeStudyRow Run(string name, int arrows, PlantedFault fault, int archers, int seed, Func<SimulatedArcher, SimulatedArcher>? change = null)
    {
        var count = Enum.GetValues<TapeVerdict>().ToDictionary(v => v, _ => 0.0);
        double slide = 0, named = 0, scale = 0, marks = 0;
        for (int i = 0; i < archers; i++)
        {
            var archer = new SimulatedArcher(seed + i);
            var check = (change?.Invoke(archer) ?? archer).Check(fault, arrows);
            count[check.Verdict] += 1.0 / archers;
            slide += Holds(check.Slide.Low.Millimeters, check.Slide.High.Millimeters, fault.SlideMm) / archers;
            var said = check.Verdict == TapeVerdict.Slid ? check.SlideAlone : check.Slide;
            named += Holds(said.Low.Millimeters, said.High.Millimeters, fault.SlideMm) / archers;
            scale += Holds(check.Scale!.Low.Percent, check.Scale.High.Percent, fault.ScalePercent) / archers;
            marks += check.Marks.Average(m => Holds(m.OnTape.Low.Millimeters, m.OnTape.High.Millimeters, ErrorMm(fault, m, check))) / archers;
        }

        return new(name, arrows, fault, archers, count, slide, named, scale, marks);
    }

    public string Line => string.Create(CultureInfo.InvariantCulture, $"| {Case} | {Arrows} | {Percent(Share[TapeVerdict.Agrees])} | {Percent(Share[TapeVerdict.Slid])} | {Percent(Share[TapeVerdict.Scaled])} | {Percent(Share[TapeVerdict.Bent])} | {Percent(Share[TapeVerdict.CannotTell])} | {Percent(Wrong)} | {Percent(NamedSlideCoverage)} | {Percent(ScaleCoverage)} | {Percent(MarkCoverage)} |");

    static double ErrorMm(PlantedFault fault, TapeError mark, TapeCheck check)
    {
        double first = check.Marks[0].Printed.Millimeters, span = check.Marks[^1].Printed.Millimeters - first, t = mark.Printed.Millimeters - first, u = t / span;
        return fault.SlideMm + fault.ScalePercent / 100 * t + fault.BendMm * 4 * u * (1 - u);
    }

    static double Holds(double low, double high, double truth) => low <= truth && truth <= high ? 1 : 0;

    static string Percent(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture);
}
