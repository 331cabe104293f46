namespace Ascham.Tests.GroupsTests;

using System.Globalization;

/// <summary>The whole study, written to docs/validation/coverage.md.</summary>
static class IntervalStudyPage
{
    internal const string Path = "docs/validation/coverage.md";

    internal static readonly (string Name, (double Fixed, double Angle, double Drop) Parts)[] Growths =
    [
        ("angle 1 mrad, drop 0.16 m", (-1, 1, 0.16)), ("angle 1 mrad, drop 0", (-1, 1, 0)), ("fixed 0.03 m, angle 1 mrad", (0.03, 1, -1)), ("fixed 0.03 m, angle 1 mrad, drop 0.16 m", (0.03, 1, 0.16)),
    ];

    internal static void Write() => File.WriteAllText(House.Path(Path), $"""
        # Intervals: how often they hold

        Written by `IntervalStudyPage` (tests; run `IntervalStudyTests.Write_the_whole_study` with `-explicit only` after a change of an interval, it takes minutes on two quiet cores).
        Share of simulated cases, in percent, in which a 90 % statement was true; fixed seeds. Sigma across is 1. "Stretched" groups have twice the sigma up as across.
        "One wild": one arrow is thrown 5 further in a random direction; truth is that of the sound arrows. Blank: no such statement from so few arrows.

        ## One group ({IntervalStudy.Groups} groups a row; one simulation standard error is 0.5)

        Truth of "both axes" and of the extreme spread in stretched groups: the root mean square of the two sigmas. Radius of nine tenths: of the true law. The next arrow is a sound one.

        {Table("arrows", from c in Sampling.All from n in IntervalStudy.Sizes select (c.Name, $"{n}", new Func<Tally>(() => IntervalStudy.OneGroup(c, n))))}

        {OneGroupReading}

        ## Two groups ({IntervalStudy.Pairs} pairs a row; 0.9)

        Equal spread, n arrows each, centres one sigma apart at a slant; the wild arrow is in the second. Same hole: the radius that matters is that very sigma, so that yes and no are both wrong by a hair, and 5 % of each
        are allowed. Larger and smaller distances, unlike spreads and error rates of the tests: groups-comparison.md.

        {Table("arrows each", from c in Sampling.All from n in IntervalStudy.Sizes select (c.Name, $"{n}", new Func<Tally>(() => IntervalStudy.TwoGroups(c, n))))}

        {TwoGroupsReading}

        ## Strings ({IntervalStudy.Pairs} strings a row; 0.9)

        One string whose heights sink by a tenth of a sigma an arrow; the wild arrow has any place in it.

        {Table("arrows", from c in Sampling.All from n in IntervalStudy.Sizes select (c.Name, $"{n}", new Func<Tally>(() => IntervalStudy.Strings(c, n))))}

        {StringsReading}

        ## Hits ({IntervalStudy.Hits} groups a row; 3)

        A circle of radius 1.5. "On aim": centred scatter. "As shot": centre half a sigma off, and not known. Lower end, and the farthest distance not claimed too far: 95 % promised.

        {Table("arrows", from c in Sampling.All from n in IntervalStudy.Sizes select (c.Name, $"{n}", new Func<Tally>(() => IntervalStudy.Hit(c, n))))}

        {HitsReading}

        ## Numbered arrows ({IntervalStudy.Sets} sets a row; 1.7)

        Each arrow shot once in each of four ends. Truth of an offset: the arrow's own less the mean of all; of the suspect's plain offset (`OddArrowStep`): its own less the mean of the others.

        {Table("arrows", from tau in new[] { 0, 0.5 } from c in Sampling.All from n in IntervalStudy.Sizes select ($"tau {tau.ToString(CultureInfo.InvariantCulture)}, {c.Name}", $"{n}", new Func<Tally>(() => IntervalStudy.Numbered(c, n, tau))))}

        {NumberedReading}

        ## Scatter that grows with distance ({IntervalStudy.Growths} sets a row; 1.7)

        One axis, n arrows at each of 20, 35, 50, 65 and 80 m; only the parts planted are looked for. The wild arrow is 5 sigmas off at one of the distances. At 80 m 1 mrad is 0.08 m.

        {Table("arrows each", from wild in new[] { 0, 5 } from p in Growths from n in IntervalStudy.Sizes select (p.Name + (wild > 0 ? ", one wild" : ""), $"{n}", new Func<Tally>(() => IntervalStudy.Growth(wild, n, p.Parts))))}

        {GrowthReading}

        """.ReplaceLineEndings("\n"));

    const string OneGroupReading = "Reading: in round groups all hold as stated. In stretched groups what pools both axes falls short. One wild arrow breaks every statement of the spread, most with few arrows; regions of the centre and of the next arrow hold, being wider.";
    const string TwoGroupsReading = "Reading: the distance is cautious for every model. A single coordinate of a round model is held 80 times in 100 along the longer axis of stretched groups: use an any-shape model there. The ratio of spreads fails with a wild arrow.";
    const string StringsReading = "Reading: slopes hold, with a wild arrow too, which widens them; sigma does not then.";
    const string HitsReading = "Reading: with the sight on, one sigma and round groups the interval is exact. About a group's own centre few arrows give intervals that lie too low: the lower end, which a hunter needs, holds more often than promised, the upper one less. One wild arrow makes every such interval far too low, on the safe side.";
    const string NumberedReading = "Reading: in round groups scatter, tau and share hold, and shrunken offsets nearly (85 to 89 where arrows differ by half a sigma), of the outermost arrow too; stretched groups take some points off. The plain offset of the suspect does not hold: it was picked for being far out, and the more arrows, the farther.";
    const string GrowthReading = "Reading: parts hold about as stated in sound groups; one wild arrow takes a tenth to a fifth off.";

    internal static string Row(string name, string n, Tally tally) => $"| {name} | {n} | {tally.Cells()} |";

    static string Table(string count, IEnumerable<(string Name, string N, Func<Tally> Study)> rows)
    {
        (string Name, string N, Tally Tally)[] told = [.. rows.ToArray().AsParallel().AsOrdered().Select(r => (r.Name, r.N, r.Study()))];
        string[] statements = [.. told[0].Tally.Statements];
        return $"| case | {count} | {string.Join(" | ", statements)} |\n|{string.Concat(Enumerable.Repeat("---|", statements.Length + 2))}\n"
            + string.Join("\n", told.Select(r => Row(r.Name, r.N, r.Tally)));
    }
}
