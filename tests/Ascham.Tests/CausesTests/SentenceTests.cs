namespace Ascham.Tests.CausesTests;

using Ascham.Causes;
using Ascham.Quantities;
using Xunit;

public class SentenceTests
{
    static RankedCause Of(Cause cause, double probability, params (double Value, double Low, double High)[] sizes) => new(cause, probability,
        [.. cause.SizesOf().Zip(sizes, (size, s) => new SizeEstimate(size, new(s.Value, (s.High - s.Low) / 3.3, s.Low, s.High, 0.9, 0, "invented")))]);

    [Fact]
    public void A_probable_cause_is_said_outright_and_smaller_numbers_come_first() =>
        Assert.Equal("The bow pulls about 3.8 lb less (2.7 to 4.8): 96 in 100.", Of(Cause.PeakWeight, 0.96, (-3.8, -4.8, -2.7)).Sentence(CauseUnits.Imperial));

    [Fact]
    public void An_improbable_cause_says_its_doubt_first() =>
        Assert.Equal("Arrow mass, 6 in 100: if so, the arrows weigh about 12 gr more (3 to 21).", Of(Cause.ArrowMass, 0.06, (12, 3, 21)).Sentence(CauseUnits.Imperial));

    [Fact]
    public void An_interval_that_holds_zero_says_both_directions() =>
        Assert.Equal("The bow pulls about 0.4 lb less (1.9 less to 1.1 more): 55 in 100.", Of(Cause.PeakWeight, 0.55, (-0.4, -1.9, 1.1)).Sentence(CauseUnits.Imperial));

    [Theory] // 3.8 lbf = 16.9 N; exp(0.336) = 1.4; 2 m/s = 4.47 mph: international units
    [InlineData(Cause.PeakWeight, "The bow pulls about 17 N less (12 to 21): more than 99 in 100.", -3.8, -4.8, -2.7)]
    [InlineData(Cause.Drag, "The air holds the arrows back about 40 % more (22 to 60): more than 99 in 100.", 0.336472, 0.2, 0.47)]
    [InlineData(Cause.Elevation, "The arrows leave about 1.2 mrad lower (0.8 to 1.6), 12.0 cm at 100 m: more than 99 in 100.", -1.2, -1.6, -0.8)]
    [InlineData(Cause.Lateral, "The arrows leave about 1.2 mrad to the right (0.8 to 1.6), 12.0 cm at 100 m: more than 99 in 100.", 1.2, 0.8, 1.6)]
    [InlineData(Cause.Cant, "The bow's top leans about 1.2° to the left (0.8 to 1.6): more than 99 in 100.", -1.2, -1.6, -0.8)]
    [InlineData(Cause.SightAxis, "The sight's bar is tilted about 1.2° to the right (0.8 to 1.6) as the pin goes down: more than 99 in 100.", 1.2, 0.8, 1.6)]
    [InlineData(Cause.Air, "The air is about 4 % denser (2 to 6) than recorded: more than 99 in 100.", 0.04, 0.0202, 0.06)]
    [InlineData(Cause.Distance, "The targets stood about 2.0 % farther (1.0 to 3.0) than believed: more than 99 in 100.", 0.02, 0.01, 0.03)]
    [InlineData(Cause.Fatigue, "Each arrow of a string goes about 0.20 mrad lower (0.10 to 0.30) than the one before: more than 99 in 100.", -0.2, -0.3, -0.1)]
    public void Every_cause_is_said_in_units_of_its_own(Cause cause, string sentence, double value, double low, double high) =>
        Assert.Equal(sentence, Of(cause, 0.999, (value, low, high)).Sentence(CauseUnits.Metric));

    [Fact]
    public void Causes_of_two_sizes_say_both()
    {
        Assert.Equal("The wind blew about 4 mph against you (2 to 7) and about 2 mph from the left (0 to 4): 80 in 100.", Of(Cause.Wind, 0.8, (-2, -3, -1), (1, 0.1, 1.9)).Sentence(CauseUnits.Imperial));
        Assert.Equal("The archer shot about 1.2 mrad lower (0.8 to 1.6) and about 0.5 mrad to the left (0.9 to the left to 0.1 to the right) of the usual that day: 80 in 100.",
            Of(Cause.ArcherDay, 0.8, (-1.2, -1.6, -0.8), (-0.45, -0.9, 0.1)).Sentence(CauseUnits.Imperial));
    }

    [Fact]
    public void Every_cause_has_a_name_and_a_check_of_its_own()
    {
        Assert.Equal(12, Enum.GetValues<Cause>().Select(c => c.Name()).Distinct().Count());
        Assert.Equal(12, Enum.GetValues<Cause>().Select(c => c.BenchCheck()).Distinct().Count());
        Assert.Throws<ArgumentOutOfRangeException>(() => ((Cause)99).Name());
        Assert.Throws<ArgumentOutOfRangeException>(() => ((Cause)99).BenchCheck());
    }

    [Fact] // with every other cause ruled out, speed is all that impacts can tell of these two
    public void What_impacts_cannot_tell_apart_is_said_with_the_check_that_can()
    {
        CausePriors two = CausePriors.Usual with { Causes = [.. CausePriors.Usual.Causes.Where(c => c.Cause is Cause.PeakWeight or Cause.ArrowMass)] };
        Ranking ranking = Ranking.Of(Bench.Case([20, 40, 60], 12, 0.8, (CauseSize.PeakWeight, -2.0)), two);
        Assert.Equal("peak_weight", ranking.Best);
        Assert.Contains("This evidence cannot tell draw weight and arrow mass apart (together ", ranking.ConfusionSentence(), StringComparison.Ordinal);
        Assert.EndsWith("To separate them: draw the bow on a scale; or weigh the arrows.", ranking.Verdict(0.9999, CauseUnits.Imperial), StringComparison.Ordinal);
        Assert.StartsWith("Cannot tell yet: nothing reaches more than 99 in 100.", ranking.Verdict(0.9999, CauseUnits.Imperial), StringComparison.Ordinal);
        Assert.All(Apartness.Of(ranking).Where(p => p.Rival is not null), p => Assert.InRange(p.Odds, 0.1, 3));
    }

    [Fact] // relation: what is told apart from nothing at all by a factor has that factor both from rows and from the whole list
    public void Rows_are_causes_that_may_be_at_work_alone_and_every_row_stands_against_nothing()
    {
        var pairs = Apartness.Of(Ranking.Of(Bench.Case([20, 40, 60], 12, 0.8, (CauseSize.PeakWeight, -3.5)).With(
            Reading.PeakWeight(Bench.Bow.PeakWeight, 0.2.PoundsForce, now: false), Reading.PeakWeight(56.5.PoundsForce, 0.2.PoundsForce, now: true)), CausePriors.Usual));
        Assert.Equal([Cause.PeakWeight], pairs.Select(p => p.True).Distinct());
        Assert.Equal(5, pairs.Count);
        Assert.All(pairs, p => Assert.True(p.Odds > 1000));
        Assert.Null(pairs[^1].Rival);
        Assert.Throws<ArgumentOutOfRangeException>(() => Apartness.Of(Ranking.Of(Bench.Case([20, 40], 6, 0.8), CausePriors.Usual), most: 1));
    }

    [Fact]
    public void What_is_missing_comes_before_any_cause()
    {
        Evidence thin = Bench.Case([40], 12, 0.8, (CauseSize.PeakWeight, -4.0));
        Ranking ranking = Ranking.Of(thin with { Stations = [.. thin.Stations.Where(s => s.Now)] }, CausePriors.Usual);
        string verdict = ranking.Verdict(0.9, CauseUnits.Imperial);
        Assert.StartsWith("Cannot tell, whatever the probabilities: No session from when all was well", verdict, StringComparison.Ordinal);
        Assert.Contains("All arrows from now were shot at about one distance", verdict, StringComparison.Ordinal);
    }

    [Fact] // slower by 3 %, though weight, arrow and impacts are as they were
    public void Readings_that_contradict_one_another_convict_nobody()
    {
        Evidence told = Bench.Case([20, 40, 60], 12, 0.8).With(
            Reading.LaunchSpeed(84.0.MetresPerSecond, 0.25.MetresPerSecond, now: false), Reading.LaunchSpeed(81.5.MetresPerSecond, 0.25.MetresPerSecond, now: true),
            Reading.PeakWeight(60.PoundsForce, 0.3.PoundsForce, now: false), Reading.PeakWeight(60.PoundsForce, 0.3.PoundsForce, now: true),
            Reading.ArrowMass(415.Grains, 0.5.Grains, now: false), Reading.ArrowMass(415.Grains, 0.5.Grains, now: true));
        Ranking ranking = Ranking.Of(told, CausePriors.Usual);
        Assert.False(ranking.IsSettled(0.5));
        Assert.Equal("none_fits", ranking.Best);
        string verdict = ranking.Verdict(0.9, CauseUnits.Imperial);
        Assert.StartsWith("Cannot tell", verdict, StringComparison.Ordinal);
        Assert.Contains("None of the causes explains this evidence", verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_said_when_nothing_changed()
    {
        Ranking ranking = Ranking.Of(Bench.Case([20, 40, 60], 12, 0.8), CausePriors.Usual);
        Assert.Equal("nothing", ranking.Best);
        Assert.Contains("Nothing changed beyond what an ordinary day brings: ", ranking.Verdict(0.9, CauseUnits.Imperial), StringComparison.Ordinal);
    }

    [Fact] // the forward model of the tests, by another door
    public void A_signature_is_the_shift_of_the_forward_model()
    {
        var point = Signature.Of(Bench.Bow, Cause.PeakWeight, [-3.5], [60.Yards]).Single();
        Assert.Equal(Bench.Shift(60, (CauseSize.PeakWeight, -3.5)).Up, point.Up.Meters, 1e-12);
        Assert.True(point.Up.Meters < -0.05);
        Assert.Contains("has 2 sizes (TailWind, CrossWind); 1 were given", Assert.Throws<ArgumentException>(() => Signature.Of(Bench.Bow, Cause.Wind, [1], [60.Yards])).Message, StringComparison.Ordinal);
    }

    [Fact] // by hand: 12 arrows each, 0.8 mrad: standard error 0.8 √(2/12) = 0.327 mrad; Student's t at 95 % one-sided, 33 degrees of freedom: 1.692 (from memory)
    public void A_shift_is_the_difference_of_means_with_its_interval()
    {
        var shifts = StationShift.Of(Bench.Case([20, 40, 60], 12, 0.8, (CauseSize.PeakWeight, -3.5)), 0.9);
        Assert.Equal([20.0, 40.0, 60.0], shifts.Select(s => Math.Round(s.Distance.Yards, 6)));
        Assert.Equal(Bench.Shift(60, (CauseSize.PeakWeight, -3.5)).Up, shifts[2].Up.Value.Meters, 1e-9);
        double metres = 60 * 0.9144, half = 1.692 * 0.8e-3 * Math.Sqrt(2.0 / 12) * metres;
        Assert.Equal(half, (shifts[2].Up.High - shifts[2].Up.Value).Meters, 1e-4);
        Assert.All(shifts, s => Assert.True(s.AgainstBaseline));
    }
}
