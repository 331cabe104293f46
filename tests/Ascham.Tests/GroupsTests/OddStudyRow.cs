namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using UnitsNet;

/// <summary>How often the search for an odd arrow names any, and names the planted one; false alarms asked for: 5 %.</summary>
public sealed record OddStudyRow(int Arrows, int Shots, double Offset, double Tau, double AnyNamed, double RightNamed, double WrongNamed)
{
    public static OddStudyRow Run(int arrows, int shots, double offset, double tau, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        double any = 0, right = 0, wrong = 0;
        for (int k = 0; k < repeats; k++)
        {
            double[] rights = [.. Enumerable.Range(0, arrows).Select(_ => tau * simulated.Normal())], ups = [.. rights.Select(_ => tau * simulated.Normal())];
            // The odd arrow lies at a slant, so that both axes have a part in it.
            rights[0] += 0.6 * offset;
            ups[0] += 0.8 * offset;
            OddArrow<Length> odd = NumberedArrows.Of([Group.Of(ArrowStudyRow.Shoot(simulated, rights, ups, shots))], 0.9).FindOdd(0.05, new(0.5, 2, 0));
            any += odd.Odd.Count > 0 ? 1 : 0;
            right += odd.Odd.Contains("1") ? 1 : 0;
            wrong += odd.Odd.Any(a => a != "1") ? 1 : 0;
        }

        return new(arrows, shots, offset, tau, any / repeats, right / repeats, wrong / repeats);
    }
}

/// <summary>Whether the probabilities of the suspect come true when arrows are drawn as the prior says.</summary>
public sealed record OddProbabilityStudy(double MeanClaimed, double ShareRight, IReadOnlyList<(double Claimed, double Right, int Count)> Bins)
{
    public static OddProbabilityStudy Run(int arrows, int shots, OddArrowPrior prior, int repeats, int seed)
    {
        var simulated = new Simulated(seed);
        var chance = new Random(seed);
        List<(double Claimed, bool Right)> claims = [];
        for (int k = 0; k < repeats; k++)
        {
            double[] rights = [.. Enumerable.Range(0, arrows).Select(_ => prior.OrdinaryInSigmas * simulated.Normal())], ups = [.. rights.Select(_ => prior.OrdinaryInSigmas * simulated.Normal())];
            int odd = chance.NextDouble() < prior.Probability ? chance.Next(arrows) : -1;
            if (odd >= 0)
            {
                rights[odd] += prior.OffsetInSigmas * simulated.Normal();
                ups[odd] += prior.OffsetInSigmas * simulated.Normal();
            }

            OddArrow<Length> found = NumberedArrows.Of([Group.Of(ArrowStudyRow.Shoot(simulated, rights, ups, shots))], 0.9).FindOdd(0.05, prior);
            claims.Add((found.SuspectProbability, found.Suspect == $"{odd + 1}"));
        }

        return new(claims.Average(c => c.Claimed), claims.Count(c => c.Right) / (double)repeats,
            [.. claims.GroupBy(c => Math.Min(4, (int)(5 * c.Claimed))).OrderBy(g => g.Key).Select(g => (g.Average(c => c.Claimed), g.Average(c => c.Right ? 1.0 : 0), g.Count()))]);
    }
}
