namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using UnitsNet;
using Xunit;

/// <summary>Groups that tell little or nothing, through every public question: a clear refusal or the right limit, never a number that is not one.</summary>
public class BadGroupsTests
{
    static readonly Group One = Group.Of(Simulated.Of((0.1, 0.2)), 20.Metres), SameHole = Group.Of(Simulated.Of((0.1, 0.2), (0.1, 0.2), (0.1, 0.2), (0.1, 0.2)), 20.Metres),
        AllFlyers = Group.Of([Simulated.Shot(1, 0, 0, called: true), Simulated.Shot(2, 1, 2, called: true), Simulated.Shot(3, 2, 1, called: true)]),
        AllMissed = Group.Of([Simulated.Lost(1, Miss.Low), Simulated.Lost(2, Miss.High)]);

    // Every way to ask one group something; where it takes two, the group against itself.
    static readonly (string What, Func<Group, object?> Ask)[] Questions =
    [
        ("centre", g => g.Centre(0.9)),
        ("centre of one axis", g => g.Centre(Axis.Vertical, 0.9)),
        ("dispersion", g => g.Dispersion(0.9)),
        ("dispersion of one axis", g => g.Dispersion(Axis.Horizontal, 0.9)),
        ("pooled", g => Dispersion.Pooled([g], 0.9)),
        ("pooled angle", g => Dispersion.PooledAngle([g], 0.9)),
        ("shape", g => GroupShape.Of(g, 0.9)),
        ("next arrow, circle", g => NextArrow.Circle(g, 0.9)),
        ("next arrow, ellipse", g => NextArrow.Ellipse(g, 0.9)),
        ("shift from aim", g => CentreShift.FromAim(g, Simulated.At(0, 0), SpreadModel.Recommended, 0.9)),
        ("shift between", g => CentreShift.Between(g, g, SpreadModel.Round, 0.9)),
        ("shift between, any shape", g => CentreShift.Between(g, g, SpreadModel.AnyShape, 0.9)),
        ("same hole in sigmas", g => SameHoleInSigmas.Judge(g, g, 1, 0.9) is { Verdict: Verdict.CannotTell } ? throw new CannotTellException("cannot tell") : null),
        ("same hole", g => Ascham.Groups.SameHole.Judge(g, g, 1.Metres, SpreadModel.Recommended, 0.9) is { Verdict: Verdict.CannotTell } ? throw new CannotTellException("cannot tell") : null),
        ("arrows that stand out", g => OutlierCheck.Round(g, 0.05) is { StandsOut: Verdict.CannotTell } ? throw new CannotTellException("cannot tell") : null),
        ("hit probability", g => ScatterEstimate.From(g, ScatterShape.Round, CentreAssumption.OnAim)),
        ("angular scatter", g => AngularScatter.From([g], ScatterShape.Round)),
        ("scatter growth", g => ScatterGrowth.Of([g], Axis.Vertical, [ShiftKind.Constant], 0.9)),
        ("trend", g => Trend.Of([g], Axis.Vertical, TrendAgainst.ShotOrder, 0.9)),
        ("numbered arrows", g => NumberedArrows.Of([g], 0.9)),
        ("sigma from extreme spread", g => RangeMeasure.Of(g, RangeKind.ExtremeSpread).ToSigma(0.9)),
    ];

    public static TheoryData<string> Names => [.. Questions.Select(q => q.What)];

    [Theory] // ArgumentOutOfRange: an extent of nothing converts to no sigma
    [MemberData(nameof(Names))]
    public void A_group_that_tells_nothing_is_refused_in_words(string what)
    {
        Func<Group, object?> ask = Questions.Single(q => q.What == what).Ask;
        foreach (Group group in new[] { One, SameHole, AllFlyers, AllMissed })
        {
            Exception? refusal = Record.Exception(() => ask(group));
            Assert.True(refusal is CannotTellException or ArgumentException, $"{what}: {refusal}");
            Assert.DoesNotContain("NaN", refusal!.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void All_flyers_are_kept_and_can_be_counted_after_all()
    {
        Assert.Equal((0, 3, 3), (AllFlyers.Counted, AllFlyers.CalledSetAside, AllFlyers.WithCalled().Counted));
        Assert.Equal(1, AllFlyers.WithCalled().Centre(0.9).Up.Value.Meters, 1e-15);
        Assert.Contains("0 counted impacts", Assert.Throws<CannotTellException>(() => AllFlyers.Centre(0.9)).Message, StringComparison.Ordinal);
    }

    [Fact] // the limits: all arrows in one hole have a centre by the median, an extent of nothing, and no spread to be sure by
    public void Arrows_in_one_hole_have_the_limits_they_should()
    {
        Assert.Equal(Simulated.At(0.1, 0.2), SpatialMedian.Of(SameHole).Centre);
        Assert.Equal(0, RangeMeasure.Of(SameHole, RangeKind.ExtremeSpread).Value.Meters);
        Assert.False(SameHole.TryDispersion(0.9, out _, out string? why));
        Assert.Contains("Record them finer", why, StringComparison.Ordinal);
        Assert.Equal(1, HitProbability.OfCircle(Scatter.Round(Simulated.At(0.1, 0.2), Length.Zero), 1.Metres));
    }

    [Fact] // relation: inches, centimetres and metres in one group are the lengths they are
    public void Units_may_be_mixed()
    {
        Group mixed = Group.Of([new Impact(1.Inches, 2.Centimetres), new(25.4.Millimetres, 0.03.Metres), new(0.Metres, 0.5.Inches)]);
        Assert.Equal(0.0508 / 3, mixed.Centre(0.9).Right.Value.Meters, 1e-15);
        Assert.Equal((0.02 + 0.03 + 0.0127) / 3, mixed.Centre(0.9).Up.Value.Meters, 1e-15);
        Group near = Group.Of(mixed.Impacts, 20.Yards), same = Group.Of(mixed.Impacts, 18.288.Metres);
        Assert.Equal(Dispersion.Pooled([near], 0.9).Vertical.Sample.Meters, Dispersion.Pooled([near, same], 0.9).Vertical.Sample.Meters, 1e-12);
    }

    [Fact] // a lone arrow borrows its spread from the other group where one spread is assumed, and only there
    public void One_arrow_can_be_compared_where_one_spread_is_assumed()
    {
        Group sound = new Simulated(3).Group(6, 1);
        Assert.Equal(0.1 - sound.Centre(Axis.Horizontal, 0.9).Value.Meters, CentreShift.Between(sound, One, SpreadModel.Round, 0.9).Right.Value.Meters, 1e-12);
        Assert.Throws<CannotTellException>(() => CentreShift.Between(sound, One, SpreadModel.RoundUnlike, 0.9));
        Assert.Throws<CannotTellException>(() => CentreShift.Between(sound, One, SpreadModel.AnyShapeUnlike, 0.9));
    }

    [Theory] // nothing but finite lengths gets in
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Numbers_that_are_none_get_in_by_no_door(double value)
    {
        Assert.Throws<ArgumentException>(() => Simulated.At(value, 0));
        Assert.Throws<ArgumentException>(() => Group.OfMetres([value], [0]));
        Assert.Throws<ArgumentException>(() => Simulated.At(0, 0) with { Up = Length.FromMeters(value) });
    }
}
