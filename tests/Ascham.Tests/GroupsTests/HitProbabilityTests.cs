namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Numerics;
using Ascham.Quantities;
using Ascham.Tests.AirTests;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;

public class HitProbabilityTests
{
    public static TheoryData<int> CircleRows => AuthorityFile.Rows("circle-probability.csv");

    public static TheoryData<int> RadiusRows => AuthorityFile.Rows("ellipse-radii.csv");

    static readonly Impact OnTarget = Simulated.At(0, 0);

    [Theory]
    [MemberData(nameof(CircleRows))]
    public void Probability_agrees_with_the_table(int row)
    {
        var table = new AuthorityFile("circle-probability.csv");
        double Value(string column) => table.Value(row, column);
        Scatter scatter = Scatter.Stretched(Simulated.At(Value("mu1"), Value("mu2")), Value("sigma1").Metres, Value("sigma2").Metres, 0);

        table.Cell(row, "exact")!.Matches(HitProbability.OfCircle(scatter, Value("R").Metres), 2); // 2: the reference quadrature stops at 1e-14
        // Centred: also Marcum's Q twice over (Hoyt 1947).
        double a = Value("R") / 2 * Math.Abs((1 / Value("sigma2")) - (1 / Value("sigma1"))), b = Value("R") / 2 * ((1 / Value("sigma2")) + (1 / Value("sigma1")));
        table.Cell(row, "hoyt_marcum")?.Matches(MarcumQ.Upper(b, a) - MarcumQ.Upper(a, b));
    }

    [Fact] // computed, not published: SciPy 1.10.1; simulation of 2e7 with seed 12345 gave 0.515823 with standard error 0.000112
    public void A_tilted_stretch_agrees_with_the_reference()
    {
        // Sigma = [[4, 1.2], [1.2, 1]]: standard deviations 2 and 1, correlation 0.6
        Scatter scatter = Scatter.Stretched(Simulated.At(1, -0.5), 2.Metres, 1.Metres, 0.6);
        new Printed("0.5158190589153", "SciPy").Matches(HitProbability.OfCircle(scatter, 2.Metres));
    }

    [Theory] // offset cost of a circle of two sigmas; computed, SciPy 1.10.1
    [InlineData(0, ".864665")]
    [InlineData(0.25, ".856207")]
    [InlineData(0.5, ".830859")]
    [InlineData(1, ".730988")]
    [InlineData(1.5, ".576321")]
    [InlineData(2, ".396499")]
    public void An_offset_costs_what_the_table_says(double offset, string printed) =>
        new Printed(printed, "SciPy").Matches(HitProbability.OfCircle(Scatter.Round(Simulated.At(0, offset), 1.Metres), 2.Metres));

    [Theory] // P(r < sigma), P(r < sqrt2 sigma): 1 − exp(−1/2) and 1 − exp(−1)
    [InlineData(1, "0.3934693403")]
    [InlineData(1.4142135623730951, "0.6321205588")]
    public void A_centred_round_scatter_is_rayleigh(double radius, string printed) =>
        new Printed(printed, "closed form").Matches(HitProbability.OfCircle(Scatter.Round(OnTarget, 1.Metres), radius.Metres));

    [Theory]
    [MemberData(nameof(RadiusRows))]
    public void Radius_holding_a_share_agrees_with_the_table(int row)
    {
        var table = new AuthorityFile("ellipse-radii.csv");
        Scatter scatter = Scatter.Stretched(OnTarget, 1.Metres, table.Value(row, "c").Metres, 0);
        foreach (int percent in new[] { 50, 90, 95, 99 })
        {
            table.Cell(row, $"K{percent}")!.Matches(HitProbability.RadiusHolding(scatter, percent / 100.0).Meters);
        }
    }

    static readonly Gen<Scatter> Scatters = Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[0.02, 3], Gen.Double[0.02, 3], Gen.Double[-0.99, 0.99],
        (right, up, across, high, tilt) => Scatter.Stretched(Simulated.At(right, up), across.Metres, high.Metres, tilt));

    [Fact] // independent: polar quadrature of the density written out, by the trapezium rule in the angle and Simpson's in the radius
    public void Probability_agrees_with_the_density_summed_in_polar_coordinates() =>
        Gen.Select(Scatters.Where(s => s.Principal().SmallSd > 0.15), Gen.Double[0.1, 4]).Sample(
            (s, r) => Assert.Equal(Polar(s, r), HitProbability.OfCircle(s, r.Metres), 1e-6), iter: 60);

    [Fact] // relation: turning scatter and offset together about the target's centre changes nothing
    public void Turning_the_target_changes_nothing() =>
        Gen.Select(Scatters, Gen.Double[0.1, 4], Gen.Double[0, 6]).Sample((s, r, angle) =>
            Assert.Equal(HitProbability.OfCircle(s, r.Metres), HitProbability.OfCircle(Turned(s, angle), r.Metres), 1e-11), iter: 300);

    [Fact] // relation: probability depends on ratios only
    public void Units_do_not_matter() =>
        Gen.Select(Scatters, Gen.Double[0.1, 4]).Sample((s, r) => Assert.Equal(
            HitProbability.OfCircle(s, r.Metres),
            HitProbability.OfCircle(Scatter.Si(1e-3 * s.MeanRight, 1e-3 * s.MeanUp, 1e-6 * s.VarianceRight, 1e-6 * s.VarianceUp, 1e-6 * s.Covariance), r.Millimetres), 1e-11), iter: 300);

    [Fact] // relation: a wider circle holds more, and a very wide one all
    public void A_wider_circle_holds_more() =>
        Gen.Select(Scatters, Gen.Double[0.1, 4], Gen.Double[0.01, 1]).Sample((s, r, more) =>
        {
            Assert.True(HitProbability.OfCircle(s, (r + more).Metres) >= HitProbability.OfCircle(s, r.Metres) - 1e-12);
            Assert.Equal(1, HitProbability.OfCircle(s, 60.Metres), 1e-12);
        }, iter: 300);

    [Theory] // round scatter: quadrature against Marcum's Q, also where the circle is tens of sigmas wide and its rim is sharp
    [InlineData(0.3, 0.1)]
    [InlineData(5, 7)]
    [InlineData(30, 30)]
    [InlineData(35, 34)]
    public void Quadrature_agrees_with_marcum(double offset, double radius)
    {
        Assert.Equal(MarcumQ.Lower(offset, radius), CircleQuadrature.Integral(1, 1, 0, offset, radius), 1e-12);
        Assert.Equal(MarcumQ.Lower(offset, radius), CircleQuadrature.Integral(1, 1, offset, 0, radius), 1e-12);
        double part = offset / Math.Sqrt(2);
        Assert.Equal(MarcumQ.Lower(offset, radius), CircleQuadrature.Integral(1, 1, part, -part, radius), 1e-12);
    }

    [Fact] // half the plane: a circle of a thousand sigmas whose edge passes the centre of the scatter
    public void A_huge_circle_has_a_straight_edge()
    {
        // to first order the curvature costs 1/(2 R sqrt(2 pi))
        double half = 0.5 - (1 / (2 * 1000 * Math.Sqrt(2 * Math.PI)));
        Assert.Equal(half, HitProbability.OfCircle(Scatter.Round(Simulated.At(1000, 0), 1.Metres), 1000.Metres), 1e-6);
        Assert.Equal(half, CircleQuadrature.Integral(1, 1, 1000, 0, 1000), 1e-6);
    }

    [Fact]
    public void All_in_one_hole_hits_or_misses()
    {
        Assert.Equal(1, HitProbability.OfCircle(Scatter.Round(Simulated.At(0.03, 0.04), Length.Zero), 6.Centimetres));
        Assert.Equal(0, HitProbability.OfCircle(Scatter.Round(Simulated.At(0.03, 0.04), Length.Zero), 4.Centimetres));
        Assert.Throws<CannotTellException>(() => HitProbability.RadiusHolding(Scatter.Round(OnTarget, Length.Zero), 0.5));
    }

    [Fact] // the error function: a scatter with no width across is a line
    public void All_on_one_line_is_the_one_dimensional_law() =>
        Assert.Equal(0.6826894921370859, HitProbability.OfCircle(Scatter.Stretched(OnTarget, Length.Zero, 1.Metres, 0), 1.Metres), 1e-12);

    [Fact]
    public void Added_reasons_to_miss_widen_and_shift()
    {
        Scatter scatter = Scatter.Round(OnTarget, 3.Centimetres).Plus(new(Simulated.At(0.01, -0.02), 4.Centimetres, Length.Zero));
        Assert.Equal(HitProbability.OfCircle(Scatter.Stretched(Simulated.At(0.01, -0.02), 5.Centimetres, 3.Centimetres, 0), 6.Centimetres), HitProbability.OfCircle(scatter, 6.Centimetres), 1e-12);
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Assert.Contains("sigma must be zero or more", Assert.Throws<ArgumentOutOfRangeException>(() => Scatter.Round(OnTarget, (-1).Metres)).Message, StringComparison.Ordinal);
        Assert.Contains("across must be zero or more", Assert.Throws<ArgumentOutOfRangeException>(() => Scatter.Stretched(OnTarget, (-1).Metres, 1.Metres, 0)).Message, StringComparison.Ordinal);
        Assert.Contains("correlation must be from -1 to 1", Assert.Throws<ArgumentOutOfRangeException>(() => Scatter.Stretched(OnTarget, 1.Metres, 1.Metres, double.NaN)).Message, StringComparison.Ordinal);
        Assert.Contains("radius must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => HitProbability.OfCircle(Scatter.Round(OnTarget, 1.Metres), Length.Zero)).Message, StringComparison.Ordinal);
        Assert.Contains("share must be between", Assert.Throws<ArgumentOutOfRangeException>(() => HitProbability.RadiusHolding(Scatter.Round(OnTarget, 1.Metres), 1)).Message, StringComparison.Ordinal);
        Assert.Contains("Up must be zero or more", Assert.Throws<ArgumentOutOfRangeException>(() => new AddedScatter(OnTarget, 1.Metres, (-1).Metres)).Message, StringComparison.Ordinal);
        Assert.Contains("Across must be zero or more", Assert.Throws<ArgumentOutOfRangeException>(() => new AddedScatter(OnTarget, 1.Metres, 1.Metres) with { Across = (-1).Metres }).Message, StringComparison.Ordinal);
    }

    static Scatter Turned(Scatter s, double angle)
    {
        var (sine, cosine) = Math.SinCos(angle);
        return Scatter.Si(
            (cosine * s.MeanRight) - (sine * s.MeanUp), (sine * s.MeanRight) + (cosine * s.MeanUp),
            (cosine * cosine * s.VarianceRight) + (sine * sine * s.VarianceUp) - (2 * sine * cosine * s.Covariance),
            (sine * sine * s.VarianceRight) + (cosine * cosine * s.VarianceUp) + (2 * sine * cosine * s.Covariance),
            (sine * cosine * (s.VarianceRight - s.VarianceUp)) + (((cosine * cosine) - (sine * sine)) * s.Covariance));
    }

    static double Polar(Scatter s, double radius)
    {
        const int angles = 400, steps = 400;
        double determinant = (s.VarianceRight * s.VarianceUp) - (s.Covariance * s.Covariance), sum = 0;
        for (int i = 0; i <= steps; i++)
        {
            double r = radius * i / steps, weight = i == 0 || i == steps ? 1 : i % 2 == 0 ? 2 : 4;
            for (int j = 0; j < angles; j++)
            {
                var (sine, cosine) = Math.SinCos(2 * Math.PI * j / angles);
                double x = (r * cosine) - s.MeanRight, y = (r * sine) - s.MeanUp;
                double square = ((s.VarianceUp * x * x) - (2 * s.Covariance * x * y) + (s.VarianceRight * y * y)) / determinant;
                sum += weight * r * Math.Exp(-square / 2);
            }
        }

        return sum * radius / steps / 3 / angles / Math.Sqrt(determinant);
    }
}
