namespace Ascham.Tests.CausesTests;

using Ascham.Causes;

/// <summary>Two ways to go on until the cause, or the set it cannot be told from, has a probability of 90 %.</summary>
static class NextTestStudy
{
    const double Enough = 0.90;
    const int Steps = 10;

    /// <summary>What a way took, and how it ended.</summary>
    /// <param name="Arrows">Arrows.</param>
    /// <param name="Minutes">Minutes.</param>
    /// <param name="Reached">Whether the true cause or its set got there.</param>
    /// <param name="Wrong">Whether another did.</param>
    internal sealed record Effort(double Arrows, double Minutes, bool Reached, bool Wrong);

    internal static Effort Planned(int seed, IReadOnlyList<Cause> truth)
    {
        var simulated = new SimulatedCase(seed, CausePriors.Usual, bareOfReadings: true, forced: truth, logged: true);
        double arrows = 0, minutes = 0;
        for (int step = 0; ; step++)
        {
            Ranking ranking = Ranking.Of(simulated.Evidence(), CausePriors.Usual);
            if (Judge(ranking, simulated) is { } end)
            {
                return new(arrows, minutes, end, !end);
            }

            if (step == Steps || NextTest.Plan(ranking, simulated.Costs, Enough).Tests.FirstOrDefault(t => t.Information > 0) is not { } next)
            {
                return new(arrows, minutes, false, false);
            }

            simulated.Do(next.Test);
            (arrows, minutes) = (arrows + next.Test.Arrows, minutes + next.Test.Minutes);
        }
    }

    internal static Effort SixMoreEverywhere(int seed, IReadOnlyList<Cause> truth)
    {
        var simulated = new SimulatedCase(seed, CausePriors.Usual, bareOfReadings: true, forced: truth, logged: true);
        TestCosts costs = simulated.Costs;
        double arrows = 0, minutes = 0;
        for (int step = 0; ; step++)
        {
            Ranking ranking = Ranking.Of(simulated.Evidence(), CausePriors.Usual);
            if (Judge(ranking, simulated) is { } end)
            {
                return new(arrows, minutes, end, !end);
            }

            if (step == Steps)
            {
                return new(arrows, minutes, false, false);
            }

            simulated.Shoot(simulated.Yards, 6, false);
            int shot = 6 * simulated.Yards.Length;
            arrows += shot;
            minutes += costs.GettingReady + shot * costs.MinutesPerArrow + simulated.Yards.Sum(y => 2 * 0.9144 * y / costs.Walk / 60);
        }
    }

    // True: the set with the truth is probable enough; false: one without it is; null: go on.
    static bool? Judge(Ranking ranking, SimulatedCase simulated) =>
        ranking.Causes[0].Probability < ranking.Nothing || ranking.BestSetProbability < Enough
            ? null
            : simulated.IsRight(ranking.Causes[0].Cause.Key()) || ranking.ConfusedWith.Any(c => simulated.IsRight(c.Key()));
}
