namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Numerics;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

/// <summary>Whole tables computed elsewhere (SciPy 1.10.1, files under tests/authorities), row by row through the public doors where there is one.</summary>
public class ReferenceTableTests
{
    const string SciPy = "SciPy 1.10.1";

    [Theory] // closed forms of the round normal law, sigma one
    [InlineData(0.5, "1.1774100225")]
    [InlineData(0.9, "2.1459660263")]
    [InlineData(0.95, "2.4477468307")]
    [InlineData(0.99, "3.0348542588")]
    public void Radii_that_hold_a_share_are_the_constants(double share, string printed) =>
        new Printed(printed, "closed form").Matches(HitProbability.RadiusHolding(Scatter.Round(Simulated.At(0, 0), 1.Metres), share).Meters);

    [Fact]
    public void Shares_within_one_sigma_and_within_the_root_mean_square_radius_are_the_constants()
    {
        Scatter law = Scatter.Round(Simulated.At(0, 0), 1.Metres);
        new Printed("0.3934693403", "closed form").Matches(HitProbability.OfCircle(law, 1.Metres));
        new Printed("0.6321205588", "closed form").Matches(HitProbability.OfCircle(law, Math.Sqrt(2).Metres));
        // The mean radius of a group tends to that of the law, sqrt(pi/2), as n grows: sqrt((n - 1)/n) of it.
        new Printed("1.25331414", "closed form").Matches(RangeMeasure.Expected(RangeKind.MeanRadius, 20, 1.Metres).Meters / Math.Sqrt(0.95), 200); // the table has seven digits
    }

    [Fact]
    public void Limits_of_sigma_agree() => Assert.All(Authority.Rows("sigma-multipliers.csv"), row =>
    {
        Group group = new Simulated((int)row[0]).Group((int)row[0], 1);
        Sigma<Length> wide = group.Dispersion(0.95).BothAxes, narrow = group.Dispersion(0.90).BothAxes;
        Assert.Equal(row[1], wide.DegreesOfFreedom);
        Assert.Equal(row[2], wide.Estimate.Low / wide.Sample, 1e-6);
        Assert.Equal(row[3], wide.Estimate.High / wide.Sample, 1e-6);
        Assert.Equal(row[4], narrow.Estimate.Low / narrow.Sample, 1e-6);
        Assert.Equal(row[5], narrow.Estimate.High / narrow.Sample, 1e-6);
    });

    [Fact]
    public void Power_to_tell_two_spreads_apart_agrees()
    {
        double[] ratios = [1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.75, 2, 2.5, 3];
        Assert.All(Authority.Rows("spread-power.csv"), row => Assert.All(ratios.Zip(row.Skip(1)), cell =>
            Assert.Equal(cell.Second, TwoSpreads.ChanceToShow((int)row[0], cell.First, 0.05, eitherWay: true), 6e-6)));
        Assert.All(Authority.Rows("spread-arrows.csv"), row => Assert.Equal<double[]>(
            row[1..],
            [
                TwoSpreads.ArrowsNeeded(row[0], 0.8, 0.05, true), TwoSpreads.ArrowsNeeded(row[0], 0.9, 0.05, true),
                TwoSpreads.ArrowsNeeded(row[0], 0.8, 0.05, false), TwoSpreads.ArrowsNeeded(row[0], 0.9, 0.05, false),
            ]));
    }

    [Fact] // known sigma, the third column: the limit of many degrees of freedom, sqrt(chi-square / n)
    public void Regions_of_the_centre_agree() => Assert.All(Authority.Rows("centre-radii.csv"), row =>
    {
        int n = (int)row[0];
        Group group = new Simulated(n).Group(n, 1);
        Centre centre = group.Centre(0.95);
        Assert.Equal(row[1], centre.Disc.Radius / group.Dispersion(0.95).BothAxes.Sample, 1e-6);
        if (n > 2)
        {
            GroupShape shape = GroupShape.Of(group, 0.95);
            Assert.Equal(row[2], centre.Ellipse!.SemiMajor / shape.MajorSigma, 1e-6 * row[2]);
            Assert.Equal(row[2], centre.Ellipse.SemiMinor / shape.MinorSigma, 1e-6 * row[2]);
        }

        Assert.Equal(row[3], Math.Sqrt(2 * Quantiles.FisherTwo(1e9, 0.95) / n), 1e-6);
    });

    [Fact] // columns: n, nu, c, 1/c, cv of the corrected sigma in %; mean, standard error, sd, cv of extreme spread; mean, sd, cv of diagonal, figure of merit, mean radius
    public void Expected_statistics_of_groups_agree() => Assert.All(Authority.Rows("range-statistics.csv"), row =>
    {
        int n = (int)row[0];
        Sigma<Length> sigma = new Simulated(n).Group(n, 1).Dispersion(0.9).BothAxes;
        Assert.Equal(row[2], sigma.Sample / sigma.Estimate.Value, 1e-7);
        Assert.Equal(row[4], 100 * (sigma.Estimate.StandardError / sigma.Estimate.Value), 1e-4);
        Assert.Equal(row[5], Mean(RangeKind.ExtremeSpread, n), 6e-7 + row[6]);
        Assert.Equal(row[9], Mean(RangeKind.Diagonal, n), 6e-7);
        Assert.Equal(row[12], Mean(RangeKind.FigureOfMerit, n), 6e-7);
        Assert.Equal(row[15], Mean(RangeKind.MeanRadius, n), 6e-7);
        Assert.Equal(row[8], Variation(RangeKind.ExtremeSpread, n), 2e-3);
        Assert.Equal(row[11], Variation(RangeKind.Diagonal, n), 2e-5);
        Assert.Equal(row[14], Variation(RangeKind.FigureOfMerit, n), 2e-5);
        Assert.Equal(row[17], Variation(RangeKind.MeanRadius, n), 1e-3); // the last digits of its sd are from simulation
    });

    [Theory] // (variation of sigma from all arrows / variation from the measure) squared; SciPy and the simulation of the table
    [InlineData(3, ".961", ".990", ".957", ".987")]
    [InlineData(5, ".884", ".949", ".932", ".957")]
    [InlineData(10, ".744", ".840", ".839", ".935")]
    [InlineData(20, ".586", ".689", ".696", ".925")]
    public void Range_measures_waste_arrows_as_computed(int n, params string[] printed)
    {
        double c = Quantiles.C4(2 * (n - 1)), variation = Math.Sqrt(1 - (c * c)) / c;
        RangeKind[] kinds = [RangeKind.ExtremeSpread, RangeKind.Diagonal, RangeKind.FigureOfMerit, RangeKind.MeanRadius];
        Assert.All(kinds.Zip(printed), k => new Printed(k.Second, SciPy).Matches(Math.Pow(variation / RangeTable.Of(k.First, n).Variation, 2)));
    }

    [Fact]
    public void Same_hole_in_sigmas_agrees() => Assert.All(Authority.Rows("same-hole-sigmas.csv"), row =>
    {
        Assert.Equal(row[2], SameHoleInSigmas.Critical((int)row[0], row[1], 0.9), 1e-6 * row[2]);
        Assert.Equal(row[3], SameHoleInSigmas.ChanceOfYes((int)row[0], row[1], 0, 0.9), 1e-6);
    });

    [Theory] // spoiled by a share e of arrows with k times the sigma, s grows by sqrt(1 - e + e k²); here as the mean square of such a mixture
    [InlineData(0.05, 3, "1.1832")]
    [InlineData(0.10, 2, "1.1402")]
    public void Flyers_kept_widen_sigma_as_the_formula_says(double share, double wide, string printed)
    {
        const int n = 100_000;
        var simulated = new Simulated(19);
        double[] right = new double[n], up = new double[n];
        for (int i = 0; i < n; i++)
        {
            double sigma = i < share * n ? wide : 1;
            (right[i], up[i]) = (sigma * simulated.Normal(), sigma * simulated.Normal());
        }

        // relative standard error of s from 2e5 numbers with heavy tails: about half a percent
        Assert.Equal(new Printed(printed, "closed form").Value, Group.OfMetres(right, up).Dispersion(0.9).BothAxes.Sample.Meters, 0.015);
    }

    static double Variation(RangeKind kind, int n) => 100 * RangeTable.Of(kind, n).Variation;

    static double Mean(RangeKind kind, int n) => RangeMeasure.Expected(kind, n, 1.Metres).Meters;
}
