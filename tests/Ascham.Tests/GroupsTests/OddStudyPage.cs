namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;

/// <summary>The long study of the odd arrow, written to docs/validation/odd-arrow.md.</summary>
static class OddStudyPage
{
    const int Repeats = 10_000, Seed = 600_000;

    static readonly OddArrowPrior Usual = new(0.5, 2, 0.25);

    internal static void Write() => File.WriteAllText(House.Path("docs/validation/odd-arrow.md"), $"""
        # The odd arrow: what its name is worth

        Written by `OddStudyPage` (tests). {Repeats} simulated sets of numbered arrows a row, fixed seeds; one simulation standard error is 0.2 points at 5 % and 0.5 points at 50 %.
        Impacts are normal and round, the archer's sigma is 1. "One end": all shots about one centre. "Ends": every arrow once an end, each end with its own centre.
        Offsets are distances in sigmas. All figures in percent unless said. Asked for: 5 % false alarms.

        ## Names given where all arrows are alike, and where ordinary ones differ

        `tau` is how much ordinary arrows differ, over the archer's sigma. 5 % is promised at tau 0 only.

        | arrows | shots of each | shot in | tau | any named |
        |---|---|---|---|---|
        {Table(from d in Alike select new Func<string>(() => Row(d, Percent(OddStudyRow.Run(d, 0, Repeats, Seed + d.Salted(1)).AnyNamed))))}

        Reading: the rate is held with alike arrows. Where ordinary arrows differ by a quarter of the scatter it is 8 to 40 %, growing with the shots, and where they differ by half of it, with many shots,
        the outermost of them is named more often than not: there is no odd one then, the arrows just differ, and the shrunken offsets are the answer.

        ## The odd one named

        | arrows | shots of each | shot in | offset | named | as planned | a sound one named too |
        |---|---|---|---|---|---|---|
        {Table(from d in Odd from offset in new[] { 1, 1.5, 2, 3 } select new Func<string>(() => Power(d, offset)))}

        Reading: `OddArrowPlan.Power` supposes one centre, and is right for one end. Ends that keep their own centres cost a little. A sound arrow is named beside the odd one at about the rate asked for:
        the odd one is taken out before the rest are looked at again.

        ## Looking after every round

        Stopping as soon as an arrow is named, and otherwise shooting on: how often sound arrows are accused.

        | arrows | rounds | shot in | named |
        |---|---|---|---|
        {Table(from d in new[] { new OddDesign(6, 6), new(6, 12), new(12, 6), new(12, 6, true), new(12, 12, true) } select new Func<string>(() => $"| {d.Arrows} | {d.Shots} | {In(d)} | {Percent(OddStudyRow.NamedByLookingOften(d, Repeats / 5, Seed + 7))} |"))}

        Reading: decide the number of shots beforehand, or judge the suspect by new shots alone.

        ## More shots

        An odd arrow drawn with sigma 2 along each axis that is the suspect but not yet named: shots of each asked for by `MoreShots`, and how often it is named after them (cases that ask for forty or more left out).

        | arrows | shots of each | wanted | cases | more shots, mean | named after them |
        |---|---|---|---|---|---|
        {Table(from d in new[] { new OddDesign(6, 3), new(12, 3), new(12, 5) } from power in new[] { 0.5, 0.8, 0.9 } select new Func<string>(() => More(d, power)))}

        Reading: it plans with the offset as now believed. The truth lies about that, so high wishes are met a little less often than asked, and low ones more often.

        ## Probabilities

        Arrows drawn with probability 0.5 of an odd one, offset sigma 2, ordinary ones differing by 0.25, and judged by that or another belief. Of suspects given a probability in a range: mean given, share right.

        | arrows | shots of each | judged with | 0-20 | 20-40 | 40-60 | 60-80 | 80-100 |
        |---|---|---|---|---|---|---|---|
        {Table(from d in new[] { (6, 3), (6, 6), (12, 4) } from b in Beliefs select new Func<string>(() => Probability(d.Item1, d.Item2, b.Name, b.Prior)))}

        Reading: calibrated where the belief is right; figures are given / right. Believing that ordinary arrows are all alike when they are not accuses too surely; that number matters most.

        """.ReplaceLineEndings("\n"));

    static IEnumerable<OddDesign> Alike =>
        (from k in new[] { 3, 6, 12 } from n in new[] { 2, 3, 5, 12 } from ends in new[] { false, true } select new OddDesign(k, n, ends))
        .Concat(from k in new[] { 6, 12 } from n in new[] { 3, 6, 12 } from tau in new[] { 0.25, 0.5 } select new OddDesign(k, n, true, tau));

    static IEnumerable<OddDesign> Odd => from k in new[] { 6, 12 } from n in new[] { 3, 4, 6, 10 } from ends in new[] { false, true } select new OddDesign(k, n, ends);

    static IEnumerable<(string Name, OddArrowPrior Prior)> Beliefs =>
        [("the truth", Usual), ("half as likely", Usual with { Probability = 0.25 }), ("half as far off", Usual with { OffsetInSigmas = 1 }), ("ordinary ones alike", Usual with { OrdinaryInSigmas = 0 })];

    static string Table(IEnumerable<Func<string>> rows) => string.Join("\n", rows.ToArray().AsParallel().AsOrdered().Select(row => row()));

    static int Salted(this OddDesign d, int salt) => (1000 * d.Arrows) + (10 * d.Shots) + (d.Ends ? 1 : 0) + (int)(100_000 * d.Tau) + salt;

    static string In(OddDesign d) => d.Ends ? "ends" : "one end";

    static string Row(OddDesign d, string rest) => string.Create(CultureInfo.InvariantCulture, $"| {d.Arrows} | {d.Shots} | {In(d)} | {d.Tau:0.##} | {rest} |");

    static string Percent(double rate) => (100 * rate).ToString("F1", CultureInfo.InvariantCulture);

    static string Power(OddDesign d, double offset)
    {
        OddStudyRow row = OddStudyRow.Run(d, offset, Repeats / 2, Seed + d.Salted(3));
        return string.Create(CultureInfo.InvariantCulture,
            $"| {d.Arrows} | {d.Shots} | {In(d)} | {offset:0.#} | {Percent(row.RightNamed)} | {Percent(OddArrowPlan.Power(d.Arrows, d.Shots, offset, 0.05))} | {Percent(row.WrongNamed)} |");
    }

    static string More(OddDesign d, double power)
    {
        var (named, more, cases) = OddStudyRow.AfterMoreShots(d, new(0.5, 2, 0), power, Repeats, Seed + d.Salted(5));
        return string.Create(CultureInfo.InvariantCulture, $"| {d.Arrows} | {d.Shots} | {Percent(power)} | {cases} | {more:F1} | {Percent(named)} |");
    }

    static string Probability(int arrows, int shots, string name, OddArrowPrior believed)
    {
        OddProbabilityStudy study = OddProbabilityStudy.Run(arrows, shots, Usual, believed, Repeats, Seed + (10 * arrows) + shots);
        string Bin(int i) => study.Bins.FirstOrDefault(b => Math.Min(4, (int)(5 * b.Claimed)) == i) is { Count: > 50 } bin ? $"{Percent(bin.Claimed)} / {Percent(bin.Right)}" : "";
        return $"| {arrows} | {shots} | {name} | {string.Join(" | ", Enumerable.Range(0, 5).Select(Bin))} |";
    }
}
