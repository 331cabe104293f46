namespace Ascham.Tests.SightsTests;

/// <summary>The larger study, written to docs/validation/tape-check.md.</summary>
static class TapeStudyPage
{
    const int Archers = 4000, Seed = 1000000;

    internal static void Write() => File.WriteAllText(House.Path("docs/validation/tape-check.md"), $"""
        # Tape check: what the verdict and the intervals are worth

        Written by `TapeStudyPage` (tests). {Archers} simulated archers a row, seeds from {Seed} on; one simulation standard error is
        0.5 points at 90 %. Invented bow: 84 m/s, k = 0.0015 1/m, peep 0.11 m above the arrow, 0.80 m from peep to pin; tape with marks every
        10 yd from 20 to 100 yd. Unless the row says otherwise: scatter 1 mrad a side, five stations at 20, 40, 60, 80 and 100 yd, ranging error 0.3 yd
        and setting error 0.2 mm shared by the arrows of a station, sight set at each distance, target 6 in, confidence 0.90.
        All figures in percent. "Wrong" is a verdict that is neither the truth nor "cannot tell"; the truth of a sound tape is "agrees".
        The last column is the share of all marks whose 90 % interval holds the right mark.
        "Slide covered" is of the slide that the sentence names, which is the slide alone when the verdict is slid; being chosen by the verdict it holds a planted
        slide a little less often. The answer slide_mm is always the slide beside a scale and keeps its level (TapeRecoveryTests).

        | planted | arrows a station | agrees | slid | scaled | bent | cannot tell | wrong | slide covered | scale covered | marks covered |
        |---|---|---|---|---|---|---|---|---|---|---|
        {string.Join("\n", Rows().AsParallel().AsOrdered().Select(row => row().Line))}

        Reading: a slide or a scale of half the size is found less often. A slide is called a scale about one time in twenty, a scale a slide less than one in thirty.
        Where the tape bends, slide and scale are not the truth, and their intervals do not cover what was planted: the verdict comes first.
        A tape that is both slid and scaled is called scaled; the sentence beside the verdict says both.

        """.ReplaceLineEndings("\n"));

    static IEnumerable<Func<TapeStudyRow>> Rows()
    {
        PlantedFault none = new(0, 0, 0);
        yield return () => Row("nothing", 6, none);
        yield return () => Row("nothing", 12, none);
        yield return () => Row("nothing", 24, none);
        yield return () => Row("slide 1.5 mm", 6, new(1.5, 0, 0));
        yield return () => Row("slide -1.5 mm", 6, new(-1.5, 0, 0));
        yield return () => Row("slide 0.75 mm", 6, new(0.75, 0, 0));
        yield return () => Row("slide 0.75 mm", 24, new(0.75, 0, 0));
        yield return () => Row("scale 5 %", 6, new(0, 5, 0));
        yield return () => Row("scale -5 %", 6, new(0, -5, 0));
        yield return () => Row("scale 2.5 %", 6, new(0, 2.5, 0));
        yield return () => Row("scale 2.5 %", 24, new(0, 2.5, 0));
        yield return () => Row("bend 2 mm", 6, new(0, 0, 2));
        yield return () => Row("bend 1 mm", 6, new(0, 0, 1));
        yield return () => Row("bend 1 mm", 24, new(0, 0, 1));
        yield return () => Row("slide 1.5 mm and scale 5 %", 6, new(1.5, 5, 0));
        yield return () => Row("nothing, marked distances", 6, none, a => new(a) { RangingSdYards = 0 });
        yield return () => Row("nothing, 20 to 50 yd, sight left at 20 yd", 6, none, Fixed);
        yield return () => Row("scale 5 %, 20 to 50 yd, sight left at 20 yd", 6, new(0, 5, 0), Fixed);
        yield return () => Row("slide 1.5 mm, 20 to 50 yd, sight left at 20 yd", 6, new(1.5, 0, 0), Fixed);
    }

    internal static SimulatedArcher Fixed(SimulatedArcher a) => new(a) { FixedSetting = true, Yards = [20, 27, 35, 42, 50] };

    static TapeStudyRow Row(string name, int arrows, PlantedFault fault, Func<SimulatedArcher, SimulatedArcher>? change = null) =>
        TapeStudyRow.Run(name, arrows, fault, Archers, Seed, change);
}
