namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using CsCheck;
using UnitsNet;
using Xunit;

public class RelationTests
{
    [Fact]
    public void Moving_every_impact_moves_the_centre_and_keeps_the_spread() =>
        Gen.Select(Simulated.Impacts, Gen.Double[-50, 50], Gen.Double[-50, 50]).Sample((impacts, right, up) =>
        {
            Group before = Group.Of(impacts), after = Group.Of(Moved(impacts, right, up));
            Assert.Equal(before.Centre(0.9).Up.Value.Meters + up, after.Centre(0.9).Up.Value.Meters, 1e-12);
            Assert.Equal(before.Centre(0.9).Right.Value.Meters + right, after.Centre(0.9).Right.Value.Meters, 1e-12);
            Assert.Equal(before.Dispersion(0.9).Vertical.Sample.Meters, after.Dispersion(0.9).Vertical.Sample.Meters, 1e-12);
            Assert.Equal(before.Centre(0.9).Disc.Radius.Meters, after.Centre(0.9).Disc.Radius.Meters, 1e-11);
        }, seed: "0000KOIPZlo4", iter: 200);

    [Fact]
    public void Turning_the_face_turns_the_ellipse_and_keeps_disc_and_round_spread() =>
        Gen.Select(Simulated.Impacts, Gen.Double[0, 2 * Math.PI]).Sample((impacts, turn) =>
        {
            Centre before = Group.Of(impacts).Centre(0.9), after = Group.Of(Turned(impacts, turn)).Centre(0.9);
            Assert.Equal(before.Disc.Radius.Meters, after.Disc.Radius.Meters, 1e-11);
            Assert.Equal(before.Ellipse!.SemiMajor.Meters, after.Ellipse!.SemiMajor.Meters, 1e-6 * before.Ellipse.SemiMajor.Meters);
            // Half axes turn by the same angle: twice the angle, so that an axis and its opposite are one.
            double difference = 2 * (after.Ellipse.Orientation.Radians - before.Ellipse.Orientation.Radians - turn);
            double roundness = before.Ellipse.SemiMajor / before.Ellipse.SemiMinor;
            Assert.True(roundness < 1.001 || Math.Cos(difference) > 1 - 1e-9);
            Assert.Equal(
                Group.Of(impacts).Dispersion(0.9).BothAxes.Sample.Meters, Group.Of(Turned(impacts, turn)).Dispersion(0.9).BothAxes.Sample.Meters, 1e-11);
        }, seed: "0000KOIPZlo4", iter: 200);

    [Fact]
    public void Units_change_no_answer() =>
        Simulated.Impacts.Sample(impacts =>
        {
            Impact[] inches = [.. impacts.Select(i => new Impact(Length.FromInches(i.Right.Inches), Length.FromInches(i.Up.Inches)))];
            Assert.Equal(Group.Of(impacts).Centre(0.9).Up.High.Meters, Group.Of(inches).Centre(0.9).Up.High.Meters, 1e-10);
            Assert.Equal(Group.Of(impacts).Dispersion(0.9).BothAxes.Estimate.Low.Inches, Group.Of(inches).Dispersion(0.9).BothAxes.Estimate.Low.Inches, 1e-10);
        }, seed: "0000KOIPZlo4", iter: 200);

    [Fact]
    public void The_order_of_impacts_changes_no_answer() =>
        Simulated.Impacts.Sample(impacts => Assert.Equal(
            Group.Of(impacts).Centre(0.9).Up.Value.Meters, Group.Of(impacts.Reverse().ToArray()).Centre(0.9).Up.Value.Meters, 1e-13), seed: "0000KOIPZlo4", iter: 200);

    [Fact]
    public void Duplicated_impacts_keep_the_mean_and_shrink_its_standard_error() =>
        Simulated.Impacts.Sample(impacts =>
        {
            int n = impacts.Length;
            Group once = Group.Of(impacts), twice = Group.Of([.. impacts, .. impacts]);
            Assert.Equal(once.Centre(0.9).Up.Value.Meters, twice.Centre(0.9).Up.Value.Meters, 1e-12);
            // SS doubles: s²/n goes from SS/(n(n - 1)) to 2 SS/(2n(2n - 1)).
            double expected = Math.Sqrt((n - 1.0) / ((2 * n) - 1));
            Assert.Equal(expected, twice.Centre(0.9).Up.StandardError / once.Centre(0.9).Up.StandardError, 1e-9);
        }, seed: "0000KOIPZlo4", iter: 200);

    [Fact]
    public void A_higher_level_is_never_narrower() =>
        Gen.Select(Simulated.Impacts, Gen.Double[0.05, 0.9], Gen.Double[0.001, 0.099]).Sample((impacts, level, more) =>
        {
            Group group = Group.Of(impacts);
            Assert.True(group.Centre(level + more).Disc.Radius > group.Centre(level).Disc.Radius);
            Assert.True(group.Centre(level + more).Up.High > group.Centre(level).Up.High);
            Assert.True(group.Dispersion(level + more).BothAxes.Estimate.Low < group.Dispersion(level).BothAxes.Estimate.Low);
        }, seed: "0000KOIPZlo4", iter: 200);

    static Impact[] Moved(Impact[] impacts, double right, double up) => [.. impacts.Select(i => Simulated.At(i.Right.Meters + right, i.Up.Meters + up))];

    static Impact[] Turned(Impact[] impacts, double turn)
    {
        var (sine, cosine) = Math.SinCos(turn);
        return [.. impacts.Select(i => Simulated.At((cosine * i.Right.Meters) - (sine * i.Up.Meters), (sine * i.Right.Meters) + (cosine * i.Up.Meters)))];
    }
}
