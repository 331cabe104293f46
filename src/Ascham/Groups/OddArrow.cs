namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;

/// <summary>The search for a numbered arrow that does not belong with the others.</summary>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <remarks>
/// <para><b>Model.</b> Each arrow against all others together, F on as many degrees of freedom as axes; the probability of the most extreme one is multiplied by the number of
/// arrows (Bonferroni). A named arrow is taken out and the rest looked at again, because one odd arrow drags the mean and makes good ones look odd.</para>
/// <para><b>Limits.</b> The false-alarm rate holds when all arrows are alike. Where ordinary arrows differ too (tau well above zero), the outermost of them is named
/// more often. Shooting on until an arrow is named raises false alarms as well: decide how many shots beforehand. Of three arrows one can be named, but whether the other two are alike
/// cannot be looked at then: with two of three about as far out, either may be the odd one (<see cref="SuspectProbability"/> says so).</para>
/// </remarks>
public sealed class OddArrow<T>
{
    readonly double shrunkenInSigmas, shotsNow;
    readonly int arrows, axes;

    internal OddArrow(ArrowFit fit, IReadOnlyList<ArrowMark> marks, Axis? axis, Func<double, T> unit, double level, double falseAlarm, OddArrowPrior prior)
    {
        (FalseAlarm, arrows, axes) = (falseAlarm, fit.Names.Length, fit.Axes);
        List<OddArrowStep<T>> steps = [];
        ArrowFit rest = fit;
        IReadOnlyList<ArrowMark> left = marks;
        // At least three must stay, and more than have gone: the odd ones are the few.
        while (true)
        {
            int most = Extreme(rest);
            steps.Add(Step(rest, most, axis, unit, level, falseAlarm));
            if (!steps[^1].Named || rest.Names.Length <= 3 || steps.Count * 2 >= arrows)
            {
                break;
            }

            (string[] names, left) = Without(rest, left, most);
            if (Refit(names, left) is not { } refit)
            {
                break;
            }

            rest = refit;
        }

        Steps = steps;
        string[] named = [.. steps.Where(s => s.Named).Select(s => s.Arrow)];
        // Two pairs apart: either might be the odd one.
        Odd = 2 * named.Length < arrows ? named : [];
        (Probabilities, NoneProbability) = prior.Weigh(fit);
        int suspect = Array.IndexOf(fit.Names, steps[0].Arrow);
        double information = fit.Information[suspect, suspect], believed = prior.OffsetInSigmas * prior.OffsetInSigmas * information;
        shotsNow = information / (1 - (1.0 / arrows));
        shrunkenInSigmas = fit.Sums.Row(suspect).L2Norm() / information / Math.Sqrt(fit.MeanSquareWithin) * believed / (1 + believed);
    }

    /// <summary>How often any arrow at all is named when all are alike.</summary>
    public double FalseAlarm { get; }

    /// <summary>
    /// The arrows named as odd, the most extreme first; empty for none. Empty too when half or more of the arrows would be named: they differ then, but which of them are the odd ones cannot be told
    /// (<see cref="Steps"/> shows it).
    /// </summary>
    public IReadOnlyList<string> Odd { get; }

    /// <summary>The most extreme arrow, named or not.</summary>
    public string Suspect => Steps[0].Arrow;

    /// <summary>What was looked at in turn: the last one is not named, unless the arrows ran out.</summary>
    public IReadOnlyList<OddArrowStep<T>> Steps { get; }

    /// <summary>Probability, after the shots, that each arrow is the one odd one.</summary>
    public IReadOnlyDictionary<string, double> Probabilities { get; }

    /// <summary>Probability, after the shots, that there is no odd arrow.</summary>
    public double NoneProbability { get; }

    /// <summary>Probability, after the shots, that <see cref="Suspect"/> is the odd one.</summary>
    public double SuspectProbability => Probabilities[Suspect];

    /// <summary>How many more shots of every arrow would most likely settle it.</summary>
    /// <param name="power">Probability of then naming the suspect if it is as far off as now believed, between 0 and 1.</param>
    /// <returns>Shots of each arrow beyond those shot; zero when those should do; null above a thousand of each.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="power"/> is not between 0 and 1.</exception>
    /// <remarks>
    /// Plans with the offset shrunk by the prior, because the most extreme of many looks farther off than it is. It counts old shots and new together; to keep the
    /// false-alarm rate exactly, judge the suspect by new shots alone.
    /// </remarks>
    public int? MoreShots(double power)
    {
        int? needed = OddArrowPlan.Needed(arrows, axes, shrunkenInSigmas, FalseAlarm, Require.Level(power));
        return needed is { } n ? (int)Math.Max(0, Math.Ceiling(n - shotsNow - 1e-9)) : null;
    }

    static int Extreme(ArrowFit fit) => Enumerable.Range(0, fit.Names.Length).MaxBy(i => Square(fit, i));

    static double Square(ArrowFit fit, int arrow) => fit.Sums.Row(arrow).DotProduct(fit.Sums.Row(arrow)) / fit.Information[arrow, arrow];

    static OddArrowStep<T> Step(ArrowFit fit, int arrow, Axis? axis, Func<double, T> unit, double level, double falseAlarm)
    {
        double f = Square(fit, arrow) / fit.Axes / fit.MeanSquareWithin, alone = NoncentralF.Survival(f, fit.Axes, fit.FreedomWithin), information = fit.Information[arrow, arrow];
        double error = Math.Sqrt(fit.MeanSquareWithin / information), half = error * Quantiles.StudentT(fit.FreedomWithin, level);
        Estimate<T> Along(int column)
        {
            double value = fit.Sums[arrow, column] / information;
            return new Estimate<double>(value, error, value - half, value + half, level, fit.Shots[arrow], "mean less that of the others, normal impacts").Map(unit);
        }

        double adjusted = Math.Min(1, fit.Names.Length * alone);
        return new(
            fit.Names[arrow], f, alone, adjusted, adjusted <= falseAlarm,
            axis == Axis.Vertical ? null : Along(0), axis == Axis.Horizontal ? null : Along(fit.Axes - 1));
    }

    static (string[] Names, IReadOnlyList<ArrowMark> Marks) Without(ArrowFit fit, IReadOnlyList<ArrowMark> marks, int gone) => (
        [.. fit.Names.Where((_, i) => i != gone)],
        [.. marks.Where(m => m.Arrow != gone).Select(m => m with { Arrow = m.Arrow > gone ? m.Arrow - 1 : m.Arrow })]);

    // The named arrow may have been what held the others together.
    static ArrowFit? Refit(string[] names, IReadOnlyList<ArrowMark> marks)
    {
        try
        {
            return ArrowFit.Of(names, marks);
        }
        catch (CannotTellException)
        {
            return null;
        }
    }
}

/// <summary>One look at the most extreme arrow.</summary>
/// <remarks>
/// <b>Limits.</b> The intervals of <paramref name="Right"/> and <paramref name="Up"/> are those of an arrow picked beforehand. This one was picked because it lies far out, so that they lean outwards and hold the truth
/// far less often than stated (docs/limits.md): for where the arrow strikes, take its <see cref="ArrowOffset{T}"/> or new shots.
/// </remarks>
/// <typeparam name="T">Length at one distance, or Angle over distances.</typeparam>
/// <param name="Arrow">The arrow.</param>
/// <param name="F">Its distance from the others, squared, over what scatter gives.</param>
/// <param name="Alone">How often one arrow picked beforehand would lie so far off if all were alike.</param>
/// <param name="Adjusted">The same for the most extreme of all arrows still in.</param>
/// <param name="Named">Whether that is rare enough to name it odd.</param>
/// <param name="Right">How far right of the others it strikes, not shrunken and picked for being far out; null when only heights were asked for.</param>
/// <param name="Up">How far above the others it strikes, likewise; null when only the other axis was asked for.</param>
public sealed record OddArrowStep<T>(string Arrow, double F, double Alone, double Adjusted, bool Named, Estimate<T>? Right, Estimate<T>? Up);
