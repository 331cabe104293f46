namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class ScatterEstimateTests
{
    static readonly Group Five = Group.Of(Simulated.Of((0.01, 0.02), (-0.03, 0.01), (0.02, -0.04), (0.00, 0.03), (-0.01, -0.02)), 20.Metres);

    [Fact] // exact: with one sigma and the centre on the aim, the interval of the probability is that of sigma turned over
    public void A_centred_round_group_has_the_exact_interval()
    {
        HitEstimate hit = HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Round, CentreAssumption.OnAim), 5.Centimetres, 0.9);
        Sigma<Length> sigma = Five.Dispersion(0.9).BothAxes;
        Assert.Equal(1 - Math.Exp(-0.05 * 0.05 / (2 * Math.Pow(sigma.Estimate.High.Meters, 2))), hit.Probability.Low, 1e-5);
        Assert.Equal(1 - Math.Exp(-0.05 * 0.05 / (2 * Math.Pow(sigma.Estimate.Low.Meters, 2))), hit.Probability.High, 1e-5);
        Assert.Equal((0.9, 5), (hit.Probability.Level, hit.Probability.Count));
    }

    [Fact] // exact: averaged over sigma, the next arrow follows (1 + R²/(nu s²))^(−nu/2)
    public void The_next_arrow_of_a_centred_round_group_has_the_closed_form()
    {
        HitEstimate hit = HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Round, CentreAssumption.OnAim), 5.Centimetres, 0.9);
        double s = Five.Dispersion(0.9).BothAxes.Sample.Meters;
        Assert.Equal(1 - Math.Pow(1 + (0.05 * 0.05 / (8 * s * s)), -4), hit.NextArrow, 1e-5);
    }

    // Predictive circles for the next arrow about the sample mean, R over s: computed, closed form. The circle that holds a share must be hit with that share.
    [Theory]
    [InlineData(5, 0.5, "1.34773")]
    [InlineData(5, 0.9, "2.73340")]
    [InlineData(5, 0.95, "3.27132")]
    [InlineData(10, 0.9, "2.40264")]
    [InlineData(30, 0.95, "2.55387")]
    public void The_next_arrow_agrees_with_the_predictive_circle(int n, double share, string printed)
    {
        Group group = new Simulated(n).Group(n, 1);
        Centre centre = group.Centre(0.9);
        ScatterEstimate estimate = ScatterEstimate.From(group, ScatterShape.Round, CentreAssumption.AsShot)
            .Plus(new(new(-centre.Right.Value, -centre.Up.Value), Length.Zero, Length.Zero));
        double radius = new Printed(printed, "closed form").Value * group.Dispersion(0.9).BothAxes.Sample.Meters;
        Assert.Equal(share, HitProbability.OfCircle(estimate, radius.Metres, 0.9).NextArrow, 1e-3); // 2048 laws in three dimensions
    }

    [Fact]
    public void A_better_known_scatter_has_a_narrower_interval()
    {
        HitEstimate few = HitProbability.OfCircle(ScatterEstimate.From(new Simulated(3).Group(4, 1), ScatterShape.Round, CentreAssumption.OnAim), 2.Metres, 0.9);
        HitEstimate many = HitProbability.OfCircle(ScatterEstimate.From(new Simulated(3).Group(60, 1), ScatterShape.Round, CentreAssumption.OnAim), 2.Metres, 0.9);
        Assert.True(many.Probability.High - many.Probability.Low < 0.4 * (few.Probability.High - few.Probability.Low));
    }

    [Fact] // a sigma that missed arrows took part in enters by the same door
    public void A_sigma_from_elsewhere_gives_the_same_as_its_group()
    {
        HitEstimate direct = HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Stretched, CentreAssumption.OnAim), 5.Centimetres, 0.9);
        Dispersion<Length> dispersion = Five.Dispersion(0.5);
        Assert.Equal(direct, HitProbability.OfCircle(ScatterEstimate.OnAim(dispersion.Horizontal, dispersion.Vertical), 5.Centimetres, 0.9));
        Assert.Equal(
            HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Round, CentreAssumption.OnAim), 5.Centimetres, 0.9),
            HitProbability.OfCircle(ScatterEstimate.OnAim(dispersion.BothAxes), 5.Centimetres, 0.9));
    }

    [Fact]
    public void Added_reasons_to_miss_lower_the_probability()
    {
        ScatterEstimate estimate = ScatterEstimate.From(Five, ScatterShape.Round, CentreAssumption.OnAim);
        Assert.True(
            HitProbability.OfCircle(estimate.Plus(new(Simulated.At(0, 0.02), Length.Zero, 5.Centimetres)), 5.Centimetres, 0.9).Probability.High
            < HitProbability.OfCircle(estimate, 5.Centimetres, 0.9).Probability.High);
    }

    [Fact]
    public void Scores_carry_their_interval()
    {
        ScatterEstimate estimate = ScatterEstimate.From(Five, ScatterShape.Round, CentreAssumption.OnAim);
        FaceGeometry face = FaceGeometry.TenZones(40.Centimetres);
        ScoreEstimate score = RingScore.Of(face, 6.Millimetres, estimate, 0.9);
        Sigma<Length> sigma = Five.Dispersion(0.9).BothAxes;
        Assert.Equal(RingScore.Of(face, 6.Millimetres, Scatter.Round(Simulated.At(0, 0), sigma.Estimate.High)).Mean, score.PerArrow.Low, 1e-3);
        Assert.Equal(RingScore.Of(face, 6.Millimetres, Scatter.Round(Simulated.At(0, 0), sigma.Estimate.Low)).Mean, score.PerArrow.High, 1e-3);
        Assert.Equal(1, score.NextArrow.Zones.Sum(z => z.Probability) + score.NextArrow.Miss, 1e-12);
    }

    [Fact] // exact: lower bound of the probability at a distance is that of the upper end of sigma; solved for the distance by hand
    public void The_farthest_distance_is_where_the_lower_bound_meets_the_threshold()
    {
        Group far = Group.Of(Simulated.Of((0.05, 0.1), (-0.15, 0.05), (0.1, -0.2), (0, 0.15), (-0.05, -0.1)), 80.Metres);
        FarthestDistance farthest = HitProbability.Farthest(AngularScatter.From([far], ScatterShape.Round), 8.Centimetres, 0.8, 0.9, null);
        double sigma = Dispersion.PooledAngle([far], 0.9).BothAxes.Estimate.High.Radians;
        Assert.Equal(0.08 / (sigma * Math.Sqrt(-2 * Math.Log(0.2))), farthest.Distance!.Value.Meters, 0.01);
        Assert.False(farthest.LimitedByShots);
        Assert.Equal(0.8, farthest.There!.Probability.Low, 1e-3);
        Assert.True(farthest.AtFarthestShot.Probability.Low < 0.8);
    }

    [Fact]
    public void Nothing_is_said_beyond_the_farthest_shot()
    {
        AngularScatter scatter = AngularScatter.From([Five], ScatterShape.Round);
        FarthestDistance farthest = HitProbability.Farthest(scatter, 1.Metres, 0.8, 0.9, null);
        Assert.Equal((20, true), (farthest.Distance!.Value.Meters, farthest.LimitedByShots));
        Assert.Contains("Nothing is said of 21 m", Assert.Throws<CannotTellException>(() => scatter.At(21.Metres)).Message, StringComparison.Ordinal);
        // A lone arrow far out says nothing of scatter and carries no claim.
        Assert.Equal(20, AngularScatter.From([Five, Group.Of(Simulated.Of((0, 0)), 60.Metres)], ScatterShape.Round).Farthest.Meters);
    }

    [Fact] // wind that grows with distance, entered by the caller; and a threshold that holds nowhere
    public void Added_wind_brings_the_distance_in()
    {
        AngularScatter scatter = AngularScatter.From([Five], ScatterShape.Stretched);
        Length calm = HitProbability.Farthest(scatter, 4.Centimetres, 0.5, 0.9, null).Distance!.Value;
        Length windy = HitProbability.Farthest(scatter, 4.Centimetres, 0.5, 0.9, d => new(Simulated.At(0, 0), d * 0.002, Length.Zero)).Distance!.Value;
        Assert.True(windy < calm);
        FarthestDistance never = HitProbability.Farthest(scatter, 4.Centimetres, 0.5, 0.9, _ => new(Simulated.At(0.2, 0), Length.Zero, Length.Zero));
        Assert.Null(never.Distance);
        Assert.Null(never.There);
    }

    [Fact] // the quick rule behind uncertain scatter, against the fine one
    public void The_quick_quadrature_is_within_a_hundred_thousandth()
    {
        foreach (double up in new[] { 0.2, 0.7, 1.5, 6 })
        {
            foreach (double mean in new[] { 0, 0.8, 3 })
            {
                foreach (double radius in new[] { 0.3, 1, 2.5, 30 })
                {
                    var scatter = Scatter.Stretched(Simulated.At(mean, -mean / 2), 1.Metres, up.Metres, 0);
                    Assert.Equal(CircleQuadrature.Inside(scatter, radius), CircleQuadrature.Roughly(scatter, radius), 1e-5);
                }
            }
        }
    }

    [Fact]
    public void Scatter_that_grows_with_distance_is_noticed()
    {
        var simulated = new Simulated(61);
        Group Shot(double metres, double mrad, int n) => Group.Of(simulated.Group(n, 1).Impacts.Select(i => new Impact(i.Right * mrad * metres / 1000, i.Up * mrad * metres / 1000)), metres.Metres);
        Assert.True(AngularScatter.From([Shot(20, 1, 12), Shot(60, 2.5, 12)], ScatterShape.Round).GrowthProbability < 0.01);
        Assert.True(AngularScatter.From([Shot(20, 1, 12), Shot(60, 1, 12)], ScatterShape.Round).GrowthProbability > 0.05);
        Assert.Null(AngularScatter.From([Five], ScatterShape.Round).GrowthProbability);
    }

    [Fact]
    public void The_same_shots_give_the_same_answer() =>
        Assert.Equal(
            HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Stretched, CentreAssumption.AsShot), 5.Centimetres, 0.9),
            HitProbability.OfCircle(ScatterEstimate.From(Five, ScatterShape.Stretched, CentreAssumption.AsShot), 5.Centimetres, 0.9));

    [Fact]
    public void What_cannot_tell_says_so()
    {
        Assert.Throws<CannotTellException>(() => ScatterEstimate.From(Group.Of(Simulated.Of((0, 0))), ScatterShape.Round, CentreAssumption.OnAim));
        Assert.Throws<CannotTellException>(() => ScatterEstimate.From(Group.Of(Simulated.Of((0.1, 0.1), (0.1, 0.1), (0.1, 0.1))), ScatterShape.Round, CentreAssumption.OnAim));
        Assert.Throws<MissedArrowsException>(() => ScatterEstimate.From(Group.Of([Simulated.Shot(1, 0, 0), Simulated.Shot(2, 1, 1), Simulated.Lost(3, Miss.Low)]), ScatterShape.Round, CentreAssumption.OnAim));
        Assert.Contains("threshold must be", Assert.Throws<ArgumentOutOfRangeException>(() => HitProbability.Farthest(AngularScatter.From([Five], ScatterShape.Round), 5.Centimetres, double.NaN, 0.9, null)).Message, StringComparison.Ordinal);
        Assert.Contains("farthest must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => AngularScatter.From(Dispersion.PooledAngle([Five], 0.9).BothAxes, Length.Zero)).Message, StringComparison.Ordinal);
    }

    [Theory] // coverage of 90 % intervals of the hit probability; 4 standard errors of 0.9 in 150 are 0.098
    [InlineData(ScatterShape.Round, CentreAssumption.OnAim)]
    [InlineData(ScatterShape.Round, CentreAssumption.AsShot)]
    [InlineData(ScatterShape.Stretched, CentreAssumption.AsShot)]
    public void Hit_probability_is_covered_as_stated(ScatterShape shape, CentreAssumption centre) =>
        Assert.InRange(HitStudyRow.Run(shape, centre, shape == ScatterShape.Round ? 1 : 2, 6, 0.5, 1.5, 150, 900).Held, 0.81, 1);

    [Theory] // a mean all but on the aim, and a draw far out: the root lies far below the first guess
    [InlineData(5.7548e-5, 0.99997113)]
    [InlineData(1.5480e-4, 0.99989235)]
    [InlineData(0.5, 0.9999999)]
    [InlineData(3, 0.4)]
    public void Centres_are_drawn_for_any_mean(double found, double share)
    {
        double distance = Noncentrality.Axial(found, share), root = Math.Sqrt(2);
        double farther = (MathNet.Numerics.SpecialFunctions.Erfc((found - distance) / root) + MathNet.Numerics.SpecialFunctions.Erfc((found + distance) / root)) / 2;
        Assert.Equal(share, farther, 1e-5);
        Assert.InRange(distance, 0.1, found + 6);
    }

    [Fact]
    public void First_arrows_are_kept_apart()
    {
        Shot[] shots = [Simulated.Shot(2, 0, 1), Simulated.Shot(1, 0, 0), Simulated.Shot(2, 0, 3, session: "late"), Simulated.Shot(1, 1, 1, session: "autumn"), Simulated.Shot(2, 1, 2, session: "autumn")];
        Assert.Equal([("spring", 1), ("autumn", 1)], FirstArrows.Of(shots).Select(s => (s.Session, s.Number)));
        Assert.Equal(3, FirstArrows.Without(shots).Count);
        Assert.Throws<ArgumentException>(() => FirstArrows.Of([]));
    }
}
