namespace Ascham.Causes;

using Ascham.Quantities;

/// <summary>How well the evidence tells one cause from another.</summary>
/// <param name="True">The cause taken as true, at its most probable size.</param>
/// <param name="Rival">The cause it is held against; <see langword="null"/> for nothing at all.</param>
/// <param name="Odds">Odds for the true one that impacts and readings like these would be expected to give, with the signs seen, before beliefs; 1 tells nothing.</param>
public sealed record Apartness(Cause True, Cause? Rival, double Odds)
{
    /// <summary>Holds the leading causes of a ranking against one another.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <param name="considerable">Causes of less than this probability of being at work alone are not taken as true, but the most probable one always is; between 0 and 1.</param>
    /// <param name="most">Most causes to hold against one another; 2 or more.</param>
    /// <returns>Each cause that may be at work alone against the most probable causes, and against nothing; row by row, the most probable cause first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static IReadOnlyList<Apartness> Of(Ranking ranking, double considerable = 0.02, int most = 5)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        Require.Level(considerable);
        Require.InRange(most, 2, 12, "", nameof(most));
        Cause[] leading = [.. ranking.Causes.Take(most).Select(c => c.Cause)];
        Weighed nothing = ranking.Weighed.First(w => w.Hypothesis is { Causes.Count: 0, SomethingElse: false });
        Weighed Alone(Cause cause) => ranking.Weighed.First(w => w.Hypothesis.Causes is [var only] && only == cause);
        double Odds(Weighed truth, Weighed rival) => Math.Exp(Math.Min(700, ranking.Weighing.ExpectedLogOdds(truth, rival)));
        return
        [
            .. from cause in leading.Where((c, i) => i == 0 || Alone(c).Probability >= considerable)
               from rival in leading.Select(c => (Cause?)c).Append(null)
               where rival != cause
               select new Apartness(cause, rival, Odds(Alone(cause), rival is { } other ? Alone(other) : nothing)),
        ];
    }
}
