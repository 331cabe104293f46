namespace Ascham.Tests.CausesTests;

using System.Globalization;
using System.Text;
using Ascham.Causes;

/// <summary>The long study of the ranking, written to docs/validation/causes.md with its picture and the first cases of it.</summary>
static class CauseStudyPage
{
    internal const int Slice = 40;
    const int Many = 4_000, Wrong = 3_000, Told = 900, Plans = 360;

    static readonly CausePriors Usual = CausePriors.Usual;

    internal static CausePriors WrongOnes { get; } = Usual with
    {
        // rates in the opposite order, sizes alternately six tenths and one and six tenths of what is believed
        Causes = [.. Usual.Causes.Select((c, i) => c with
        {
            Rate = Usual.Causes[^(i + 1)].Rate,
            Sizes = [.. c.Sizes.Select(s => s with { Mean = s.Mean * Factor(i), Sd = s.Sd * Factor(i) })],
        })],
    };

    static double Factor(int i) => i % 2 == 0 ? 0.6 : 1.6;

    internal static string SlicePath => House.Path("docs/validation/causes-first-cases.csv");

    internal static string SliceText() => Lines(CauseStudy.Run(1, Slice, Usual, Usual));

    internal static void Write()
    {
        var impacts = CauseStudy.Run(1, Many, Usual, Usual, bare: true);
        var mixed = CauseStudy.Run(1, Many, Usual, Usual);
        var wrong = CauseStudy.Run(20_001, Wrong, WrongOnes, Usual);
        File.WriteAllText(SlicePath, Lines(mixed.Take(Slice)));
        File.WriteAllText(House.Path("docs/validation/causes-reliability.svg"), Diagram([("impacts alone", impacts), ("with some readings", mixed), ("wrong beliefs", wrong)]));
        CauseStudy.Outcome[] both = [.. impacts, .. mixed];
        File.WriteAllText(House.Path("docs/validation/causes.md"), $"""
            # What changed: is the ranking to be believed?

            Written by `CauseStudyPage` (tests). Simulated changes, seeds 1 to {Many} with impacts alone and again with each instrument and each sign at hand in 3 of 10 cases. Bows of 70 to 98 m/s,
            archers of 0.4 to 2 mrad, 2 to 6 distances between 20 and 100 yd, 3 to 12 arrows at each, then and now; nothing, one cause, two, or something else, drawn from `CausePriors.Usual`.
            The simulation knows more than the ranking: rigid arrows that leave with 0.3° of pitch and yaw, gusts of 0.4 m/s, loosing errors skewed to the low side, three wild arrows in a hundred,
            arrows that differ, a power of speed by weight of its own, a launch speed, drag and virtual mass known only within their errors.

            ![Reliability](causes-reliability.svg)

            ## Calibration of the most probable answer

            | cases | number | right | right, or in its set | calibration error, ten bins | sizes of true causes inside 90 % intervals |
            |---|---|---|---|---|---|
            {Calibrated("impacts alone", impacts)}
            {Calibrated("with some readings and signs", mixed)}
            {Calibrated("wrong beliefs: rates reversed, sizes 0.6 and 1.6 of those believed", wrong)}

            Asked for: calibration error at most 0.03 with the stated beliefs, 0.08 with wrong ones; intervals within 3 points of 90 %. By chance alone a calibration error of about 0.01 is to be expected of {Many} cases.

            | said | {Bins(impacts, "impacts alone")} | {Bins(mixed, "with readings")} | {Bins(wrong, "wrong beliefs")} |
            |---|---|---|---|---|---|---|
            {string.Join("\n", Enumerable.Range(2, 8).Select(i => BinRow(i, impacts, mixed, wrong)))}

            ## Nothing had changed

            {NothingChanged(impacts, mixed)}

            ## Who is taken for whom

            Rows: the truth (single causes; pairs together). Columns: the answer. Impacts alone and with readings together, in percent of the row.

            {Confusion(both)}

            Reading: most single causes of the usual size are small beside the scatter of a few arrows, and the answer then is `nothing`, with a probability that says so. Air is hardly ever found: it is too small.

            ## Against rules of thumb

            Right answers on the same cases, impacts alone. "Laws" fits a straight, a square and a cubic law to the shifts and takes the best that passes 6 of chi-square; "far and near" is what is said at the range:
            low far but not near is weight, low near as well is the sight, sideways is the rest.

            {Rules(impacts)}

            ## With every instrument

            One of peak weight, arrow mass and drag had changed, and launch and downrange chronograph, bow scale and arrow scale were read then and now. "Signal" is the size of the change over the error of the
            instrument that sees it best. "Told apart": the guilty one is the most probable of the three. "Answer right": it is the most probable of all answers, nothing among them. "The three alone": the same ranking
            when no other cause is considered and the true scatter is told, which bounds what these three can be told apart by.

            {ToldApart()}

            ## The next test

            A single cause, impacts of one outing at hand, and in the log a reading of every instrument from when all was well. Then on until the true cause, or the set it cannot be told from, has 90 %: by the plan
            (best per minute), or by six more arrows at every distance; ten steps at most. {Plans} cases.

            {Efforts()}

            ## Where it fails

            - Probabilities above 0.9 claim too much: see the last bin of the table, and by arrows below it; with wrong beliefs far too much.
            - Wind, an archer's day and a moved rest look alike to the side, and weight, mass, distance and drag look alike up and down: the probabilities say so, and a bench check settles it.
            - Two causes at once are found whole in few cases; one of the two is named as a rule.
            - Half of the single causes of usual size are never found by either way of going on: they are small, or they look like an ordinary day. Cant, wind and fatigue are found no oftener by the plan than by shooting on, if sooner.
            - All of it hangs on the beliefs before the evidence.

            Above 0.9, by arrows at each distance:

            | arrows | cases | said | right |
            |---|---|---|---|
            {TopByArrows(both)}

            """.Replace("\n            ", "\n", StringComparison.Ordinal));
    }

    static string Lines(IEnumerable<CauseStudy.Outcome> outcomes) => string.Concat(outcomes.Select((o, i) => FormattableString.Invariant($"{i + 1},{o.Truth},{o.Answer},{o.Probability:F3}\n")).Prepend("seed,truth,answer,probability\n"));

    static string P(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture);

    static string F(double value, string format = "0.000") => value.ToString(format, CultureInfo.InvariantCulture);

    static string Calibrated(string name, CauseStudy.Outcome[] all) =>
        $"| {name} | {all.Length} | {P(all.Average(o => o.Right ? 1 : 0))} % | {P(all.Average(o => o.SetRight ? 1 : 0))} % | {F(CauseStudy.Calibration(all).Error)} | {P(all.Sum(o => o.Covered) / (double)all.Sum(o => o.Sizes))} % |";

    static string Bins(CauseStudy.Outcome[] all, string name) => $"{name}: cases | said / right";

    static string BinRow(int bin, params CauseStudy.Outcome[][] sets) =>
        $"| {bin * 10}-{bin * 10 + 10} % | {string.Join(" | ", sets.Select(s => CauseStudy.Calibration(s).Bins[bin]).Select(b => $"{b.Count} | {P(b.Said)} / {P(b.Right)}"))} |";

    static string NothingChanged(CauseStudy.Outcome[] impacts, CauseStudy.Outcome[] mixed)
    {
        bool Convicted(CauseStudy.Outcome o) => o.Answer is not ("nothing" or "none_fits" or "archer_day" or "fatigue") && o.Probability > 0.9;
        string Of(CauseStudy.Outcome[] all) => all.Where(o => o.Truth == "nothing").ToList() is var none ? $"{none.Count(Convicted)} of {none.Count} ({P(none.Average(o => Convicted(o) ? 1 : 0))} %)" : "";
        return $"Some cause of the bow or the range was given a probability above 0.9 in {Of(impacts)} cases with impacts alone, and in {Of(mixed)} of the same with some readings and signs. Asked for: under 2 %.";
    }

    static string TopByArrows(CauseStudy.Outcome[] all) => string.Join("\n", new[] { (3, 5), (6, 8), (9, 12) }.Select(range =>
    {
        var top = all.Where(o => o.Probability >= 0.9 && o.Arrows >= range.Item1 && o.Arrows <= range.Item2).ToList();
        return $"| {range.Item1} to {range.Item2} | {top.Count} | {P(top.Average(o => o.Probability))} % | {P(top.Average(o => o.Right ? 1 : 0))} % |";
    }));

    static string Confusion(CauseStudy.Outcome[] all)
    {
        string[] answers = ["nothing", .. Usual.Causes.Select(c => c.Cause.Key()), "none_fits"];
        var text = new StringBuilder($"| truth | cases | {string.Join(" | ", answers)} |\n|---|---|{string.Concat(answers.Select(_ => "---|"))}\n");
        foreach (string truth in answers.Append("pair"))
        {
            var row = all.Where(o => o.Truth.Contains('+') ? truth == "pair" : o.Truth == truth).ToList();
            text.Append(CultureInfo.InvariantCulture, $"| {truth} | {row.Count} | {string.Join(" | ", answers.Select(a => (100.0 * row.Count(o => o.Answer == a) / Math.Max(1, row.Count)).ToString("0", CultureInfo.InvariantCulture)))} |\n");
        }

        return text.ToString().TrimEnd();
    }

    static string Rules(CauseStudy.Outcome[] ranked)
    {
        var cases = Enumerable.Range(1, 1000).AsParallel().WithDegreeOfParallelism(2).Select(seed =>
        {
            var simulated = new SimulatedCase(seed, Usual, true);
            Evidence evidence = simulated.Evidence();
            return (Laws: simulated.IsRight(RulesOfThumb.Laws(evidence)), Far: simulated.IsRight(RulesOfThumb.FarAndNear(evidence)), Changed: simulated.TruthText != "nothing");
        }).ToList();
        var mine = ranked.Take(1000).ToList();
        string Row(string name, double all, double changed) => $"| {name} | {P(all)} % | {P(changed)} % |";
        return "| judged by | right, all cases | right, where something had changed |\n|---|---|---|\n"
            + Row("the ranking", mine.Average(o => o.Right ? 1 : 0), mine.Where(o => o.Truth != "nothing").Average(o => o.Right ? 1 : 0)) + "\n"
            + Row("laws", cases.Average(c => c.Laws ? 1 : 0), cases.Where(c => c.Changed).Average(c => c.Laws ? 1 : 0)) + "\n"
            + Row("far and near", cases.Average(c => c.Far ? 1 : 0), cases.Where(c => c.Changed).Average(c => c.Far ? 1 : 0))
            + "\n\nAccused of something where nothing had changed, in the same order: "
            + $"{P(mine.Where(o => o.Truth == "nothing").Average(o => o.Right ? 0 : 1))} %, {P(cases.Where(c => !c.Changed).Average(c => c.Laws ? 0 : 1))} % and {P(cases.Where(c => !c.Changed).Average(c => c.Far ? 0 : 1))} %.";
    }

    static string ToldApart()
    {
        Cause[] three = [Cause.PeakWeight, Cause.ArrowMass, Cause.Drag];
        CausePriors only = Usual with { Causes = [.. Usual.Causes.Where(c => three.Contains(c.Cause))] };
        var cases = Enumerable.Range(40_001, Told).AsParallel().WithDegreeOfParallelism(2).Select(seed =>
        {
            Cause truth = three[seed % 3];
            var simulated = new SimulatedCase(seed, Usual, forced: [truth], everyInstrument: true);
            Evidence evidence = simulated.Evidence();
            Cause Top(Ranking r) => r.Causes.Where(c => three.Contains(c.Cause)).MaxBy(c => c.Probability)!.Cause;
            double sigma = simulated.SigmaThen;
            Evidence told = evidence with { ScatterThen = new(sigma, sigma, 1e5) };
            Ranking ranking = Ranking.Of(evidence, Usual);
            return (truth, Signal: simulated.SignalOf(truth), Right: Top(ranking) == truth, Answer: ranking.Best == truth.Key(), Best: Top(Ranking.Of(told, only)) == truth);
        }).ToList();
        string Row(string name, IReadOnlyCollection<(Cause truth, double Signal, bool Right, bool Answer, bool Best)> some) =>
            $"| {name} | {some.Count} | {P(some.Average(c => c.Right ? 1 : 0))} % | {P(some.Average(c => c.Answer ? 1 : 0))} % | {P(some.Average(c => c.Best ? 1 : 0))} % |";
        return "| signal | cases | told apart | answer right | the three alone |\n|---|---|---|---|---|\n"
            + Row("4 and more", [.. cases.Where(c => c.Signal >= 4)]) + "\n" + Row("2 to 4", [.. cases.Where(c => c.Signal is >= 2 and < 4)]) + "\n" + Row("below 2", [.. cases.Where(c => c.Signal < 2)]);
    }

    static string Efforts()
    {
        Cause[] causes = [.. Usual.Causes.Select(c => c.Cause)];
        var all = Enumerable.Range(60_001, Plans).AsParallel().AsOrdered().WithDegreeOfParallelism(2)
            .Select(i => (Cause: causes[i % causes.Length], Plan: NextTestStudy.Planned(i, [causes[i % causes.Length]]), Six: NextTestStudy.SixMoreEverywhere(i, [causes[i % causes.Length]]))).ToList();
        string Within(IEnumerable<NextTestStudy.Effort> some, double minutes) => P(some.Average(e => e.Reached && e.Minutes <= minutes ? 1 : 0));
        string Median(IEnumerable<NextTestStudy.Effort> some, Func<NextTestStudy.Effort, double> of)
        {
            double[] sorted = [.. some.Select(e => e.Reached ? of(e) : double.PositiveInfinity).Order()];
            double middle = sorted[sorted.Length / 2];
            return double.IsFinite(middle) ? F(middle, "0") : "not reached";
        }

        string Row(string name, IReadOnlyList<(Cause Cause, NextTestStudy.Effort Plan, NextTestStudy.Effort Six)> some)
        {
            string One(IReadOnlyList<NextTestStudy.Effort> e) =>
                $"{Median(e, x => x.Arrows)} | {Median(e, x => x.Minutes)} | {P(e.Average(x => x.Reached ? 1 : 0))} % | {P(e.Average(x => x.Wrong ? 1 : 0))} %";
            return $"| {name} | {some.Count} | {One([.. some.Select(s => s.Plan)])} | {One([.. some.Select(s => s.Six)])} |";
        }

        var open = all.Where(x => x.Plan.Minutes > 0 && x.Six.Minutes > 0).ToList();
        return "Share of all cases in which the true cause or its set had been found within so many minutes, in percent:\n\n| | at once | 15 | 30 | 60 | 120 | 240 |\n|---|---|---|---|---|---|---|\n"
            + $"| by the plan | {string.Join(" | ", new[] { 0.0, 15, 30, 60, 120, 240 }.Select(m => Within(all.Select(x => x.Plan), m)))} |\n"
            + $"| six more everywhere | {string.Join(" | ", new[] { 0.0, 15, 30, 60, 120, 240 }.Select(m => Within(all.Select(x => x.Six), m)))} |\n\n"
            + "Medians count a case that was never found as endless. Every cause was drawn equally often, the rare ones far oftener than believed, so that another is found more often than one time in ten.\n\n"
            + "| cases | number | plan: arrows, median | minutes, median | found | another found | six more: arrows | minutes | found | another found |\n|---|---|---|---|---|---|---|---|---|---|\n"
            + Row("not found at once", open) + "\n" + Row("found by both ways, not at once", [.. open.Where(x => x.Plan.Reached && x.Six.Reached)]) + "\n"
            + string.Join("\n", all.GroupBy(x => x.Cause).Select(g => Row(g.Key.Key(), [.. g])));
    }

    // Said across, right upwards, a unit square of 400 points; the size of a mark follows the number of cases.
    static string Diagram((string Name, CauseStudy.Outcome[] Cases)[] sets)
    {
        var text = new StringBuilder();
        text.Append("""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 660 500" width="660" height="500" font-family="sans-serif" font-size="14"><rect width="660" height="500" fill="white"/>""");
        text.Append("""<path d="M60 20V440H480" fill="none" stroke="black"/><path d="M60 440L480 20" stroke="gray" stroke-dasharray="4 4"/>""");
        for (int i = 0; i <= 10; i += 2)
        {
            text.Append(CultureInfo.InvariantCulture, $"""<text x="{60 + 42 * i}" y="460" text-anchor="middle">{10 * i}</text><text x="52" y="{445 - 42 * i}" text-anchor="end">{10 * i}</text>""");
        }

        text.Append("""<text x="270" y="486" text-anchor="middle">probability said (%)</text><text transform="translate(18 230) rotate(-90)" text-anchor="middle">share right (%)</text>""");
        string[] colours = ["#1b4f8a", "#b3541e", "#5b6b2f"];
        for (int s = 0; s < sets.Length; s++)
        {
            var bins = CauseStudy.Calibration(sets[s].Cases).Bins.Where(b => b.Count >= 20);
            foreach (var b in bins)
            {
                string at = FormattableString.Invariant($"translate({60 + 420 * b.Said} {440 - 420 * b.Right})"), shape = s switch
                {
                    0 => """<circle r="7"/>""",
                    1 => """<rect x="-6" y="-6" width="12" height="12"/>""",
                    _ => """<path d="M0 -8L8 6H-8Z"/>""",
                };
                text.Append(CultureInfo.InvariantCulture, $"""<g transform="{at}" fill="none" stroke-width="2" stroke="{colours[s]}">{shape}</g>""");
            }

            string mark = s switch { 0 => "○", 1 => "□", _ => "△" };
            text.Append(CultureInfo.InvariantCulture, $"""<text x="490" y="{60 + 24 * s}" fill="{colours[s]}" font-size="12">{mark} {sets[s].Name}</text>""");
        }

        return text.Append("</svg>\n").ToString();
    }
}
