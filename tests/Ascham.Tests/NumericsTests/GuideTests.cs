namespace Ascham.Tests.NumericsTests;

using Ascham.Groups;
using Ascham.Numerics;
using Ascham.Tests.Checks;
using Ascham.Tests.GroupsTests;
using UnitsNet;
using Xunit;

/// <summary>
/// Examples of the Guide to the expression of uncertainty (JCGM 100 and 101:2008). The library has no general propagation of uncertainty: its parts are shown to give the guide's numbers.
/// </summary>
public class GuideTests
{
    const string Guide = "JCGM 100:2008, H.2";

    // H.2: V, I and phi observed together five times; means, standard errors and correlations are those of groups of two columns.
    [Fact]
    public void Simultaneous_observations_have_the_means_errors_and_correlations_of_H2()
    {
        double[][] rows = [.. Authority.Rows("gum-h2.csv")];
        double[][] quantities = [[.. rows.Select(r => r[^3])], [.. rows.Select(r => r[^2])], [.. rows.Select(r => r[^1])]];
        Group[] pairs = [Group.OfMetres(quantities[0], quantities[1]), Group.OfMetres(quantities[0], quantities[2]), Group.OfMetres(quantities[1], quantities[2])];
        var (v, i, phi) = (pairs[0].Centre(Axis.Horizontal, 0.9), pairs[0].Centre(Axis.Vertical, 0.9), pairs[1].Centre(Axis.Vertical, 0.9));
        double milli = i.Value.Meters > 1 ? 1e-3 : 1; // the current may be given in milliamperes
        new Printed("4.9990", Guide).Matches(v.Value.Meters);
        new Printed("0.0032", Guide).Matches(v.StandardError.Meters);
        new Printed("19.6610", Guide).Matches(1000 * milli * i.Value.Meters);
        new Printed("0.0095", Guide).Matches(1000 * milli * i.StandardError.Meters);
        new Printed("1.04446", Guide).Matches(phi.Value.Meters);
        new Printed("0.00075", Guide).Matches(phi.StandardError.Meters);
        double[] r = [.. pairs.Select(p => p.Moments.SumCross / Math.Sqrt(p.Moments.SumRight * p.Moments.SumUp))];
        new Printed("-0.36", Guide).Matches(r[0]);
        new Printed("0.86", Guide).Matches(r[1]);
        new Printed("-0.65", Guide).Matches(r[2]);

        // R = V/I cos phi, X = V/I sin phi, Z = V/I; relative slopes by hand.
        double z = v.Value.Meters / (milli * i.Value.Meters), relativeV = v.StandardError / v.Value, relativeI = i.StandardError / i.Value, u = phi.StandardError.Meters;
        var (sine, cosine) = Math.SinCos(phi.Value.Meters);
        double Error(double value, double slope) => value * Math.Sqrt((relativeV * relativeV) + (relativeI * relativeI) + (slope * slope * u * u)
            - (2 * r[0] * relativeV * relativeI) + (2 * slope * u * ((r[1] * relativeV) - (r[2] * relativeI))));
        new Printed("127.732", Guide).Matches(z * cosine);
        new Printed("0.071", Guide).Matches(Error(z * cosine, -sine / cosine));
        new Printed("219.847", Guide).Matches(z * sine);
        new Printed("0.2956", "computed with NumPy; the guide prints 0.295").Matches(Error(z * sine, cosine / sine));
        new Printed("254.260", Guide).Matches(z);
        new Printed("0.236", Guide).Matches(Error(z, 0));
    }

    [Fact] // H.1: t for 99 % and 16 degrees of freedom, and the expanded uncertainty of the gauge block with the guide's own u of 32 nm
    public void Student_factor_of_H1_agrees()
    {
        new Printed("2.92", "JCGM 100:2008, H.1").Matches(Quantiles.StudentT(16, 0.99));
        new Printed("93", "JCGM 100:2008, H.1").Matches(Quantiles.StudentT(16, 0.99) * 32);
        new Printed("92.62", "computed with SciPy").Matches(Quantiles.StudentT(16, 0.99) * 31.7106096);
    }

    // NIST TN 1900, example E13: coefficient of expansion from two lengths and two temperatures; slopes exact by numbers that carry them.
    [Fact]
    public void First_order_propagation_agrees_with_the_example_of_expansion()
    {
        double[] value = [1.4999, 1.5021, 288.15, 373.10], error = [1e-4, 2e-4, 0.02, 0.05];
        Gradient[] x = [.. value.Select(Gradient.Input)];
        Gradient expansion = (x[1] - x[0]) / (x[0] * (x[3] - x[2]));
        new Printed("1.7266e-5", "NIST TN 1900, E13, as tested in suncal").Matches(expansion.Value);
        new Printed("1.75548e-6", "computed with NumPy; printed 1.76e-6").Matches(Math.Sqrt(error.Select((e, i) => Math.Pow(e * expansion[i], 2)).Sum()));
    }

    [Fact] // JCGM 101:2008, 9.2.2 to 9.2.4: sums of four inputs, by sampling; ends exact, computed with SciPy
    public void Sampled_sums_have_the_coverage_intervals_of_the_supplement()
    {
        const int draws = 1 << 19;
        var random = Xoshiro.ForChunk(101, 0);
        double[][] normal = [.. Enumerable.Range(0, 4).Select(_ => new double[draws])], even = [.. Enumerable.Range(0, 4).Select(_ => new double[draws])];
        Array.ForEach(normal, n => Variates.FillNormal(ref random, n));
        Array.ForEach(even, e => Variates.FillEven(ref random, e));
        double root = Math.Sqrt(3);

        // standard error of a 95 % end from half a million draws: about 0.008 of the standard deviation
        Assert.Equal(3.92, End(i => normal.Sum(n => n[i])), 0.03);
        Assert.Equal(3.879407, End(i => root * even.Sum(e => e[i])), 0.03);
        Assert.Equal(17.01581, End(i => (root * (even[0][i] + even[1][i] + even[2][i])) + (10 * root * even[3][i])), 0.06);

        double End(Func<int, double> sum)
        {
            double[] size = [.. Enumerable.Range(0, draws).Select(i => Math.Abs(sum(i))).Order()];
            return size[(int)(0.95 * draws)];
        }
    }

    // JCGM 101:2008, 9.4: y = x1² + x2² with u = 0.005 each, in units of 1e-6; shortest 95 % intervals, computed with SciPy. First order gives 0, 100 and 2500 and misses the mean by 50.
    [Theory]
    [InlineData(0.000, 0, 149.79)]
    [InlineData(0.010, 0, 366.01)]
    [InlineData(0.050, 1593.57, 3548.57)]
    public void Marcum_gives_the_exact_intervals_of_a_sum_of_squares(double x1, double low, double high)
    {
        const double u = 0.005;
        double Above(double y) => MarcumQ.Upper(x1 / u, Math.Sqrt(y * 1e-6) / u);
        Assert.Equal(0.95, Above(low) - Above(high), 5e-6);
        // shortest: as dense at the one end as at the other, unless the one is the edge
        double Density(double y) => Above(y - 0.01) - Above(y + 0.01);
        Assert.True(low == 0 || Math.Abs((Density(low) / Density(high)) - 1) < 1e-3);
    }

    [Fact] // means 50, 150 and 2550 of the same: the squares of the slope vanish at nought, where first order says nothing is uncertain
    public void First_order_is_blind_where_a_slope_vanishes()
    {
        Gradient[] x = [Gradient.Input(0, 0), Gradient.Input(0, 1)];
        Gradient sum = (x[0] * x[0]) + (x[1] * x[1]);
        Assert.Equal((0, 0, 0), (sum.Value, sum[0], sum[1]));
        double[] draws = new double[1 << 18], others = new double[1 << 18];
        var random = Xoshiro.ForChunk(94, 0);
        Variates.FillNormal(ref random, draws);
        Variates.FillNormal(ref random, others);
        double[] y = [.. draws.Zip(others, (a, b) => 25 * ((a * a) + (b * b)))];
        Assert.Equal(50, y.Average(), 0.5);
        Assert.Equal(50, Math.Sqrt(y.Average(v => v * v) - Math.Pow(y.Average(), 2)), 1);
    }
}
