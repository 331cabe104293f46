namespace Ascham.Tests.GroupsTests;

using System.Globalization;
using Ascham.Groups;

/// <summary>The larger study, written to docs/validation/groups-comparison.md.</summary>
static class ComparisonStudyPage
{
    const int Pairs = 10_000, Seed = 500_000;

    static readonly int[] Sizes = [3, 5, 6, 12, 24];

    internal static void Write() => File.WriteAllText(House.Path("docs/validation/groups-comparison.md"), $"""
        # Comparing groups: what the answers are worth

        Written by `ComparisonStudyPage` (tests). {Pairs} simulated groups or pairs of groups a row, fixed seeds; one simulation standard error is 0.2 points
        at 5 % and 0.3 points at 90 %. Impacts are normal, sigma across is 1, n arrows in each group. "Stretched" has twice the sigma up as across.
        All figures in percent unless said.

        ## Shifts found where there is none (5 % promised)

        | groups | n | Round | RoundUnlike | AnyShape | AnyShapeUnlike | James |
        |---|---|---|---|---|---|---|
        {Table(from pair in Pair.All from n in Sizes select new Func<string>(() => Row(pair.Name, n, ComparisonStudy.FalseShifts(pair, n, Pairs, Seed + n))))}

        Reading: `Round` and `RoundUnlike` hold the 5 % in round groups, like or unlike, from three arrows on (equal n), and give 6 to 7 % in groups stretched 2 to 1. The any-shape models
        need no roundness; of those, `AnyShapeUnlike` is the one to trust where spreads differ, and James's series finds shifts that are not there in groups below twelve.
        A wild arrow makes every test more cautious, not less.

        ## The interval of the distance (recommended model; 5 % promised at most on each side)

        | groups | n | true distance | wholly above the truth | wholly below the truth |
        |---|---|---|---|---|
        {Table(from pair in Pair.All from n in Sizes from d in new[] { 0.0, 1, 4 } select new Func<string>(() => Distance(pair, n, d)))}

        Reading: the upper end is cautious when centres are close, as said; the lower end is exact at zero and far out.

        ## Same hole (recommended model, level 0.90)

        Radius that matters 1.5 sigma. At a true distance of 1.5 any yes and any no is a false one by a hair; at 0 a no is false, at 3 a yes.

        | groups | n | true distance | yes | no | yes as planned |
        |---|---|---|---|---|---|
        {Table(from pair in Pair.All from n in new[] { 6, 12, 24 } from d in new[] { 0.0, 1.5, 3 } select new Func<string>(() => Hole(pair, n, d)))}

        The last column is `SameHole.ChanceOfYes`, which supposes round groups of one spread and pooled spread; it is shown for those only.

        ## Arrows that stand out (5 %)

        Off 0: how often a sound group has any arrow flagged. Otherwise: how often the arrow that is off is flagged.

        | group | n | off, sigma | Round | AnyShape | one axis (Grubbs) | round rule as planned |
        |---|---|---|---|---|---|---|
        {Table(from stretch in new[] { 1.0, 2 } from n in new[] { 3, 5, 6, 12, 24 } from off in new[] { 0.0, 3, 5 } select new Func<string>(() => Flags(stretch, n, off)))}

        Reading: below twelve arrows an arrow five sigma off is missed more often than not. The round rule flags too much in stretched groups.

        ## 90 % statements about one group

        The wild arrow is 5 sigma off across; its rows show what flyers do to statements that suppose there are none.

        | group | n | next arrow in circle | next arrow in ellipse | axis ratio | ratio of two spreads |
        |---|---|---|---|---|---|
        {Table(from c in new[] { (1.0, 0.0), (2, 0), (1, 5), (2, 5) } from n in Sizes select new Func<string>(() => Coverage(c.Item1, c.Item2, n)))}

        Reading: the ratio of two spreads supposes roundness and holds less often than stated in stretched groups; compare single axes there. With a wild arrow neither it nor the axis ratio holds.

        ## Leaving out the worst

        Sigma reported over true sigma, on average, when the farthest arrows from the mean of all are left out and the rest is taken for a whole group; {DroppedWorstStudy.Groups} simulated groups a row, seeds from {DroppedWorstStudy.Seed}.

        | arrows shot | worst one left out | standard error | worst two left out | standard error |
        |---|---|---|---|---|
        {Table(from n in Enumerable.Range(3, 28) select new Func<string>(() => Dropped(n)))}

        """.ReplaceLineEndings("\n"));

    static string Table(IEnumerable<Func<string>> rows) => string.Join("\n", rows.ToArray().AsParallel().AsOrdered().Select(row => row()));

    static string Row(string name, int n, params double[] rates) => $"| {name} | {n} | {string.Join(" | ", rates.Select(Percent))} |";

    static string Percent(double rate) => double.IsNaN(rate) ? "" : (100 * rate).ToString("F1", CultureInfo.InvariantCulture);

    static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    // The shift is slanted, so that neither axis of a stretched group is favoured.
    static string Distance(Pair pair, int n, double d)
    {
        var (above, below) = ComparisonStudy.Misses(pair, n, d * 0.6, d * 0.8, Pairs, Seed + (10 * n));
        return $"| {pair.Name} | {n} | {Number(d)} | {Percent(above)} | {Percent(below)} |";
    }

    static string Hole(Pair pair, int n, double d)
    {
        var (yes, no) = ComparisonStudy.Answers(pair, n, 1.5, d, Pairs, Seed + (20 * n));
        double planned = pair == Pair.Round ? SameHole.ChanceOfYes(n, 1.5, d, ComparisonStudy.Level) : double.NaN;
        return $"| {pair.Name} | {n} | {Number(d)} | {Percent(yes)} | {Percent(no)} | {Percent(planned)} |";
    }

    static string Flags(double stretch, int n, double off)
    {
        double[] flags = ComparisonStudy.Flags(n, stretch, off, Pairs, Seed + (30 * n));
        double planned = stretch == 1 && off > 0 ? OutlierCheck.ChanceToFlag(n, off, 0.05) : double.NaN;
        return $"| {(stretch == 1 ? "round" : "stretched")} | {n} | {Number(off)} | {Percent(flags[0])} | {Percent(n > 3 ? flags[1] : double.NaN)} | {Percent(flags[2])} | {Percent(planned)} |";
    }

    static string Coverage(double stretch, double wild, int n) =>
        Row((stretch == 1 ? "round" : "stretched") + (wild > 0 ? ", one wild arrow" : ""), n, ComparisonStudy.Coverage(n, stretch, wild, Pairs / 2, Seed + (40 * n)));

    static string Dropped(int n)
    {
        var (one, oneError, two, twoError) = DroppedWorstStudy.Of(n, DroppedWorstStudy.Groups);
        return string.Create(CultureInfo.InvariantCulture, $"| {n} | {one:F4} | {oneError:F4} | ") + (n > 3 ? string.Create(CultureInfo.InvariantCulture, $"{two:F4} | {twoError:F4} |") : " | |");
    }
}
