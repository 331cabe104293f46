namespace Ascham.Sights;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Says a tape check in a sentence or two.</summary>
static class TapeReason
{
    const string WhatNext = "More arrows at the ends of what your range allows, the sight set at each, say more soonest.";

    internal static string Of(TapeCheck check)
    {
        string level = Percent(check.Slide.Level), margin = $"{Number(check.Margin.Inches)} in ({Number(check.Margin.Centimeters)} cm)";
        return check.Verdict switch
        {
            TapeVerdict.Agrees when check.Bends => $"The errors bend by {Bend(check)}, but at every mark of the tape the centre stays within {margin} of the aim, at the {level} level.",
            TapeVerdict.Agrees => $"At every mark of the tape the centre stays within {margin} of the aim, at the {level} level.",
            TapeVerdict.Slid => $"Every mark is out by the same travel: move the marks by {Slide(check, check.SlideAlone)}. Beyond that these shots show no change of scale ({Scale(check)}).",
            TapeVerdict.Scaled when check.BothDiffer => $"The marks should stand {Scale(check)} about the {Text(check.Marks[0].Distance)} mark, and the tape has slid as well, by {Slide(check)}: sliding alone cannot mend it.",
            TapeVerdict.Scaled => $"The marks should stand {Scale(check)} about the {Text(check.Marks[0].Distance)} mark; at that mark itself these shots show no error (slide {Slide(check)}).",
            TapeVerdict.Bent => $"Neither a slide nor a scale explains the shots: what they leave at mid-tape is {Bend(check)}. Look for one wrong mark, a wrong distance, or drag or peep height far from the setup's.",
            _ when check.Distances == 1 => $"One distance cannot tell a slide from a scale: at the distance shot the mark is out by {Slide(check)}. Shoot two more distances.",
            _ when check.Distances == 2 => $"Two distances fit any slide and any scale and cannot show a bend; shoot a third. So far: slide {Slide(check)}, scale {Scale(check)}.",
            _ when check.SoundTo is { } sound => $"As far as {Text(sound)} the centre stays within {margin} of the aim, at the {level} level; beyond, these shots cannot tell: slide {Slide(check)}, scale {Scale(check)}. {WhatNext}",
            _ => $"These shots neither show an error nor earn agreement within {margin}: slide {Slide(check)}, scale {Scale(check)}. {WhatNext}",
        };
    }

    static string Slide(TapeCheck check) => Slide(check, check.Slide);

    static string Slide(TapeCheck check, Estimate<Length> slide)
    {
        bool larger = slide.Value.Meters > 0, lower = larger == (check.Increases == ScaleDirection.Down);
        return $"{Interval(slide.Map(l => l.Millimeters), "mm")}, towards {(larger ? "larger" : "smaller")} numbers, the pin {(lower ? "lower" : "higher")}";
    }

    static string Scale(TapeCheck check) => $"{Interval(check.Scale!.Map(r => r.Percent), "%")} {(check.Scale!.Value.Percent > 0 ? "wider apart" : "closer together")}";

    static string Bend(TapeCheck check) => Interval(check.Bend!.Map(l => l.Millimeters), "mm");

    static string Interval(Estimate<double> e, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{e.Value:+0.00;-0.00;0.00} {unit} ({Percent(e.Level)}: {e.Low:+0.00;-0.00;0.00} to {e.High:+0.00;-0.00;0.00})");

    static string Percent(double level) => string.Create(CultureInfo.InvariantCulture, $"{100 * level:0.##} %");

    static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    static string Text(Length distance) => distance.ToString("0.###", CultureInfo.InvariantCulture);
}
