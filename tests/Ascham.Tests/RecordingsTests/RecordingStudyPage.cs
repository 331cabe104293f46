namespace Ascham.Tests.RecordingsTests;

using System.Globalization;

/// <summary>The study of synthesised recordings, written to docs/validation/recordings.md.</summary>
static class RecordingStudyPage
{
    internal const int Each = 100, Seed = 270_000;
    const int More = 500, MoreSeed = 1_700_000;

    internal static IEnumerable<RecordingStudy> Five => Enum.GetValues<Trouble>().Select(t => RecordingStudy.Run(t, Each, Seed + (1000 * (int)t)));

    internal static void Write() => File.WriteAllText(House.Path("docs/validation/recordings.md"), $"""
        # Speed from a recording: what a time between two sounds is worth

        Written by `RecordingStudyPage` (tests). Invented shots at 20 to 60 yd, 60 to 95 m/s; the phone up to 3 m behind and 1 to 4 m beside the archer. Release: a faint slide and click 0.01 s ahead of a blow of 4 to 8 decaying tones and noise.
        Impact: a duller blow, at its place from 6 dB softer to 8 dB louder. Ground reflection, thirty weak late ones, pink noise from -75 to -42 dB of full scale, in one of ten a bump of something put down.
        Truth is drawn about what is stated with the errors stated: distance 5 cm, temperature 1.5 K, wind 1 m/s, place of the point 2 cm, delay of the exit 2 ms, answer of the target 0.5 ms.
        The archer believes in a mean speed that is off by 5 % (one standard deviation) and gives a span from a fifth below to a quarter above it.
        The synthesis shares nothing with the listening: flight and sound are in closed form, the sounds have no model of onset that the listening knows. The levels in the listening were set on other seeds.

        "Wrong": taken, and off by more than 10 ms because a wrong sound was taken. "Held": of those taken, intervals (90 %) of the mean speed that hold the truth.
        Timing error: half of the times lie within the first number, nine in ten within the second; beside it the median of what was stated as one standard error.

        ## Five hundred recordings, seeds {Seed} and on

        {Table([.. Five])}

        ## The same, {More} of each

        One simulation standard error of "held" is 1.6 points for 350 taken.

        {Table([.. Enum.GetValues<Trouble>().Select(t => RecordingStudy.Run(t, More, MoreSeed + (10_000 * (int)t)))])}

        Reading: the intervals hold about as often as stated, except beside a second archer: there 74 % hold, with 4 of the 27 taken wrong. The wrong ones are another archer's shot whose sounds hide one's own and take their place, or a bump in the place of an impact that was not heard;
        of what is taken while another archer shoots, one in six or so is wrong, so record when nobody does. Narrow spans of speed help, and several shots in one fit show a wrong one (`ShotsDisagreeException`).
        Wind: faint impacts and thumps of the wind lead to refusals. "NoPair" is mostly an impact that was not heard.

        """.ReplaceLineEndings("\n"));

    static string Table(RecordingStudy[] studies) => $"""
        | trouble | recordings | taken | wrong | held, % | half width, % | timing error, ms | stated, ms | refused |
        |---|---|---|---|---|---|---|---|---|
        {string.Join("\n", studies.Select(Row))}
        {Row(new(null, [.. studies.SelectMany(s => s.All)]))}
        """;

    static string Row(RecordingStudy study)
    {
        Heard[] taken = [.. study.Taken];
        double[] errors = [.. taken.Where(h => !h.Wrong).Select(h => Math.Abs(1000 * h.TimingError)).Order()];
        double At(double share) => errors.Length == 0 ? double.NaN : errors[(int)(share * errors.Length)];
        string refused = string.Join(", ", study.All.Where(h => !h.Taken).GroupBy(h => h.Unclear).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => $"{g.Key} {g.Count()}"));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {study.Trouble?.ToString() ?? "all"} | {study.All.Count} | {taken.Length} | {study.Wrong} | {100.0 * study.Held / taken.Length:F0} | {100 * taken.Average(h => h.HalfWidth):F2} | {At(0.5):F2}, {At(0.9):F2} | {1000 * taken.Select(h => h.Stated).Order().ElementAt(taken.Length / 2):F2} | {refused} |");
    }
}
