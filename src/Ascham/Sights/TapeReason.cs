namespace Ascham.Sights;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Says a tape check in a sentence or two.</summary>
static class TapeReason
{
    internal static string Of(TapeCheck check, TapePattern line, int distances)
    {
        string slide = Interval(check.Slide.Map(l => l.Millimeters), "mm"), scale = Interval(check.Scale.Map(r => r.Percent), "%");
        string shortest = Text(check.Marks[0].Distance);
        return check.Verdict switch
        {
            TapeVerdict.Agrees => $"At every mark of the tape the centre stays within {Number(check.Margin.Inches)} in ({Number(check.Margin.Centimeters)} cm) of the aim, at the {Percent(check.Slide.Level)} level.",
            TapeVerdict.Slid => $"Every mark is out by the same travel: move the tape by {slide}. No change of scale is needed (scale {scale}).",
            TapeVerdict.Scaled when line.Significance(0) < 0.05 => $"The marks need spreading by {scale} about the {shortest} mark, and the tape has slid as well, by {slide}: sliding alone cannot mend it.",
            TapeVerdict.Scaled => $"The marks need spreading by {scale} about the {shortest} mark; the shortest mark itself is sound (slide {slide}).",
            TapeVerdict.Bent => $"Neither a slide nor a scale explains the shots: what they leave at mid-tape is {Interval(check.Bend!.Map(l => l.Millimeters), "mm")}. Look for one wrong mark, a wrong distance, or drag or peep height far from the setup's.",
            _ when distances < 3 => $"Two distances fit any slide and any scale and cannot show a bend; shoot a third. So far: slide {slide}, scale {scale}.",
            _ when check.SoundTo is { } sound => $"As far as {Text(sound)} the centre stays within {Number(check.Margin.Inches)} in ({Number(check.Margin.Centimeters)} cm) of the aim, at the {Percent(check.Slide.Level)} level; beyond, these shots cannot tell: slide {slide}, scale {scale}. Arrows at the far end of the tape say more soonest.",
            _ => $"These shots neither show an error nor earn agreement within {Number(check.Margin.Inches)} in ({Number(check.Margin.Centimeters)} cm): slide {slide}, scale {scale}. More arrows at the two ends of the tape say more soonest.",
        };
    }

    static string Interval(Estimate<double> e, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{e.Value:+0.00;-0.00;0.00} {unit} ({Percent(e.Level)}: {e.Low:+0.00;-0.00;0.00} to {e.High:+0.00;-0.00;0.00})");

    static string Percent(double level) => string.Create(CultureInfo.InvariantCulture, $"{100 * level:0.#} %");

    static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    static string Text(Length distance) => distance.ToString("0.###", CultureInfo.InvariantCulture);
}
