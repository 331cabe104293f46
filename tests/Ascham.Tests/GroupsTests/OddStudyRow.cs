namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;

/// <summary>Made-up numbered arrows: how many, how often each is shot, in how many ends, how much ordinary ones differ over the archer's sigma.</summary>
public sealed record OddDesign(int Arrows, int Shots, bool Ends = false, double Tau = 0)
{
    /// <summary>Shoots them once and looks for an odd one; offsets of the first arrow added to its own.</summary>
    internal OddArrow<Length> Search(Simulated simulated, double right, double up, OddArrowPrior prior, double falseAlarm = 0.05) => Search(Marks(simulated, right, up, 0, Shots), prior, falseAlarm);

    internal OddArrow<Length> Search(List<ArrowMark> marks, OddArrowPrior prior, double falseAlarm = 0.05)
    {
        string[] names = [.. Enumerable.Range(1, Arrows).Select(i => $"{i}")];
        // The search alone, since studies are long: NumberedArrows would work out intervals too.
        return new(ArrowFit.Of(names, marks), marks, null, metres => Length.FromMeters(metres), 0.9, falseAlarm, prior);
    }

    internal List<ArrowMark> Marks(Simulated simulated, double right, double up, int firstEnd, int shots, double[][]? own = null)
    {
        own ??= [.. Enumerable.Range(0, Arrows).Select(i => new[] { (Tau * simulated.Normal()) + (i == 0 ? right : 0), (Tau * simulated.Normal()) + (i == 0 ? up : 0) })];
        return [.. Enumerable.Range(0, shots * Arrows).Select(i => new ArrowMark(
            i % Arrows, Ends ? firstEnd + (i / Arrows) : 0, [own[i % Arrows][0] + simulated.Normal(), own[i % Arrows][1] + simulated.Normal()]))];
    }
}

/// <summary>How often the search for an odd arrow names any, the planted one, and a sound one; false alarms asked for: 5 %.</summary>
public sealed record OddStudyRow(double AnyNamed, double RightNamed, double WrongNamed)
{
    static readonly OddArrowPrior Prior = new(0.5, 2, 0);

    public static OddStudyRow Run(OddDesign design, double offset, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        double any = 0, right = 0, wrong = 0;
        for (int k = 0; k < repeats; k++)
        {
            // The odd arrow lies at a slant, so that both axes have a part in it.
            OddArrow<Length> odd = design.Search(simulated, 0.6 * offset, 0.8 * offset, Prior);
            any += odd.Odd.Count > 0 ? 1 : 0;
            right += odd.Odd.Contains("1") ? 1 : 0;
            wrong += odd.Odd.Any(a => a != "1") ? 1 : 0;
        }

        return new(any / repeats, right / repeats, wrong / repeats);
    }

    /// <summary>Looks after every round until an arrow is named or the shots are spent: how often sound arrows are accused so.</summary>
    public static double NamedByLookingOften(OddDesign design, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        int named = 0;
        for (int k = 0; k < repeats; k++)
        {
            List<ArrowMark> marks = design.Marks(simulated, 0, 0, 0, 1);
            for (int round = 1; round < design.Shots; round++)
            {
                marks.AddRange(design.Marks(simulated, 0, 0, round, 1));
                if (design.Search(marks, Prior).Odd.Count > 0)
                {
                    named++;
                    break;
                }
            }
        }

        return named / (double)repeats;
    }

    /// <summary>Shoots on as many as the search asks for: how often the odd arrow, if it was the suspect, is then named.</summary>
    /// <returns>Share named, mean number of further shots each, and how many cases there were.</returns>
    public static (double Named, double More, int Cases) AfterMoreShots(OddDesign design, OddArrowPrior prior, double power, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        int cases = 0, named = 0;
        double more = 0;
        for (int k = 0; k < repeats; k++)
        {
            double[][] own = [.. Enumerable.Range(0, design.Arrows).Select(i => new[] { i == 0 ? prior.OffsetInSigmas * simulated.Normal() : 0, i == 0 ? prior.OffsetInSigmas * simulated.Normal() : 0 })];
            List<ArrowMark> marks = design.Marks(simulated, 0, 0, 0, design.Shots, own);
            OddArrow<Length> first = design.Search(marks, prior);
            if (first.Suspect == "1" && first.Odd.Count == 0 && first.MoreShots(power) is { } shots and < 40)
            {
                marks.AddRange(design.Marks(simulated, 0, 0, design.Shots, shots, own));
                (cases, more, named) = (cases + 1, more + shots, named + (design.Search(marks, prior).Odd.Contains("1") ? 1 : 0));
            }
        }

        return (named / (double)cases, more / cases, cases);
    }
}

/// <summary>Whether the probabilities of the suspect come true when arrows are drawn as the prior says.</summary>
public sealed record OddProbabilityStudy(double MeanClaimed, double ShareRight, IReadOnlyList<(double Claimed, double Right, int Count)> Bins)
{
    /// <summary>Draws arrows as <paramref name="drawn"/> says and judges them by <paramref name="believed"/>.</summary>
    public static OddProbabilityStudy Run(int arrows, int shots, OddArrowPrior drawn, OddArrowPrior believed, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        var chance = new Random(seed);
        var design = new OddDesign(arrows, shots);
        List<(double Claimed, bool Right)> claims = [];
        for (int k = 0; k < repeats; k++)
        {
            double[][] own = [.. Enumerable.Range(0, arrows).Select(_ => new[] { drawn.OrdinaryInSigmas * simulated.Normal(), drawn.OrdinaryInSigmas * simulated.Normal() })];
            int odd = chance.NextDouble() < drawn.Probability ? chance.Next(arrows) : -1;
            if (odd >= 0)
            {
                own[odd][0] += drawn.OffsetInSigmas * simulated.Normal();
                own[odd][1] += drawn.OffsetInSigmas * simulated.Normal();
            }

            OddArrow<Length> found = design.Search(design.Marks(simulated, 0, 0, 0, shots, own), believed);
            claims.Add((found.SuspectProbability, found.Suspect == $"{odd + 1}"));
        }

        return new(claims.Average(c => c.Claimed), claims.Count(c => c.Right) / (double)repeats,
            [.. claims.GroupBy(c => Math.Min(4, (int)(5 * c.Claimed))).OrderBy(g => g.Key).Select(g => (g.Average(c => c.Claimed), g.Average(c => c.Right ? 1.0 : 0), g.Count()))]);
    }
}
