namespace Ascham.Causes;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Says in plain words what a ranking found, how sure it is, and what would tell more.</summary>
public static class CauseSentences
{
    /// <summary>A cause in a word or two, for a list.</summary>
    /// <param name="cause">The cause.</param>
    /// <returns>Lower case, without article.</returns>
    public static string Name(this Cause cause) => cause switch
    {
        Cause.PeakWeight => "draw weight",
        Cause.ArrowMass => "arrow mass",
        Cause.Drag => "drag",
        Cause.Elevation => "launch angle up or down",
        Cause.Lateral => "launch angle left or right",
        Cause.Cant => "cant",
        Cause.SightAxis => "sight bar tilted",
        Cause.Air => "air",
        Cause.Wind => "wind",
        Cause.Distance => "distances",
        Cause.Fatigue => "fatigue",
        Cause.ArcherDay => "the archer's day",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "There is no such cause."),
    };

    /// <summary>The check, away from the target, that speaks for or against a cause.</summary>
    /// <param name="cause">The cause.</param>
    /// <returns>What to do, in a few words.</returns>
    public static string BenchCheck(this Cause cause) => cause switch
    {
        // common practice, no source, all of them
        Cause.PeakWeight => "draw the bow on a scale",
        Cause.ArrowMass => "weigh the arrows",
        Cause.Drag => "powder vanes, rest and cable and look for marks, or read the speed at the bow and down the range",
        Cause.Elevation => "hold sight, peep, nocking point and rest against their marks and measures",
        Cause.Lateral => "hold sight and rest against their marks, and shoot bare shafts close",
        Cause.Cant => "check the level against a plumb line, and have it watched at full draw",
        Cause.SightAxis => "run the sight down a plumb line",
        Cause.Air => "read thermometer and barometer at the range",
        Cause.Wind => "shoot again in still air",
        Cause.Distance => "measure the distances with a tape",
        Cause.Fatigue => "shoot again rested, in short strings",
        Cause.ArcherDay => "shoot again on another day",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "There is no such cause."),
    };

    /// <summary>Says what a cause is doing, if it is at work, and how probable that is.</summary>
    /// <param name="cause">The cause, ranked.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <returns>A sentence such as "The bow pulls about 3.8 lb less (2.7 to 4.8): 96 in 100." A cause below one half says so first.</returns>
    public static string Sentence(this RankedCause cause, CauseUnits units)
    {
        ArgumentNullException.ThrowIfNull(cause);
        ArgumentNullException.ThrowIfNull(units);
        string does = Does(cause, units);
        return cause.Probability >= 0.5
            ? $"{Capital(does)}: {InHundred(cause.Probability)}."
            : $"{Capital(cause.Cause.Name())}, {InHundred(cause.Probability)}: if so, {does}.";
    }

    /// <summary>Says what the evidence cannot tell from the most probable cause, and which check can.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <returns>A sentence, or <see langword="null"/> when nothing is confused with it.</returns>
    public static string? ConfusionSentence(this Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        if (ranking.ConfusedWith.Count == 0)
        {
            return null;
        }

        Cause[] all = [ranking.Causes[0].Cause, .. ranking.ConfusedWith];
        string names = string.Join(", ", all[..^1].Select(c => c.Name())) + " and " + all[^1].Name(), checks = string.Join("; or ", all.Select(BenchCheck));
        return $"This evidence cannot tell {names} apart (together {InHundred(ranking.BestSetProbability)}). To separate them: {checks}.";
    }

    /// <summary>Says what is missing before any cause may be named.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <returns>A sentence or more, or <see langword="null"/> when nothing is missing.</returns>
    public static string? MissingSentence(this Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        return ranking.Missing.Count == 0 ? null : "Cannot tell, whatever the probabilities: " + string.Join(" ", ranking.Missing);
    }

    /// <summary>Says the outcome in a sentence or three.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <param name="confidence">Probability from which something counts as found, between 0 and 1.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <returns>What was found, or that nothing can be told, and why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    public static string Verdict(this Ranking ranking, double confidence, CauseUnits units)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        Require.Level(confidence);
        if (ranking.MissingSentence() is { } missing)
        {
            return missing;
        }

        if (ranking.Best == "none_fits" && ranking.NoneFits >= confidence)
        {
            return $"Cannot tell: none of the causes considered explains this ({InHundred(ranking.NoneFits)}). Read the instruments again, and look for what is not in the list.";
        }

        string best = ranking.Best switch
        {
            "nothing" => $"Nothing changed beyond what an ordinary day brings: {InHundred(ranking.Nothing)}.",
            "none_fits" => $"None of the causes considered explains it: {InHundred(ranking.NoneFits)}.",
            _ => ranking.Causes[0].Sentence(units),
        };
        string[] parts = ranking.IsSettled(confidence) ? [best] : [$"Cannot tell yet: nothing reaches {InHundred(confidence)}.", "Most probable: " + best];
        return string.Join(" ", ranking.Best is "nothing" or "none_fits" || ranking.ConfusionSentence() is not { } confused ? parts : [.. parts, confused]);
    }

    static string Does(RankedCause cause, CauseUnits units)
    {
        string One(int i) => Amount(cause.Sizes[i], units);
        return cause.Cause switch
        {
            Cause.PeakWeight => $"the bow pulls {One(0)}",
            Cause.ArrowMass => $"the arrows weigh {One(0)}",
            Cause.Drag => $"the air holds the arrows back {One(0)}",
            Cause.Elevation or Cause.Lateral => $"the arrows leave {One(0)}, {OnFace(cause.Sizes[0], units)}",
            Cause.Cant => $"the bow's top leans {One(0)}",
            Cause.SightAxis => $"the sight's bar is tilted {One(0)} as the pin goes down",
            Cause.Air => $"the air is {One(0)} than recorded",
            Cause.Wind => $"the wind blew {One(0)} and {One(1)}",
            Cause.Distance => $"the targets stood {One(0)} than believed",
            Cause.Fatigue => $"each arrow of a string goes {One(0)} than the one before",
            _ => $"the archer shot {One(0)} and {One(1)} of the usual that day",
        };
    }

    // "about 3.8 lb less (2.7 to 4.8)", or with both words where the interval holds zero.
    static string Amount(SizeEstimate size, CauseUnits units)
    {
        var (number, unit, less, more) = units.Said(size.Size);
        double value = number(size.Value.Value), low = number(size.Value.Low), high = number(size.Value.High);
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(Math.Max(1e-4, (high - low) / 3.3))), 0, 3);
        string Text(double x) => Math.Abs(x).ToString("F" + decimals, CultureInfo.InvariantCulture);
        string Word(double x) => x < 0 ? less : more;
        string span = low < 0 == high < 0
            ? $"{Text(Math.Abs(low) < Math.Abs(high) ? low : high)} to {Text(Math.Abs(low) < Math.Abs(high) ? high : low)}"
            : $"{Text(low)} {less} to {Text(high)} {more}";
        return $"about {Text(value)}{unit} {Word(value)} ({span})";
    }

    static string OnFace(SizeEstimate size, CauseUnits units)
    {
        Length at = Length.From(100, units.Far) * Math.Abs(size.Value.Value) / 1000;
        return FormattableString.Invariant($"{at.As(units.Near):0.0} {Length.GetAbbreviation(units.Near, CultureInfo.InvariantCulture)} at 100 {Length.GetAbbreviation(units.Far, CultureInfo.InvariantCulture)}");
    }

    static string InHundred(double probability) => probability switch
    {
        > 0.995 => "more than 99 in 100",
        < 0.005 => "less than 1 in 100",
        _ => FormattableString.Invariant($"{100 * probability:0} in 100"),
    };

    static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
