namespace Ascham.Tests.BowsTests;

using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using Ascham.Tests.GroupsTests;
using CsCheck;
using UnitsNet;
using Xunit;
using static Ascham.Tests.BowsTests.BowExample;

public class VirtualMassTests
{
    [Fact] // Independent: K = (m2 v2² - m1 v1²)/(v1² - v2²) by hand
    public void Two_arrows_give_the_virtual_mass_of_the_formula()
    {
        VirtualMassFit fit = Fit(Arrow(400, 312.2192), Arrow(500, 283.8686));
        new Printed("76.829", "two-arrow inversion by hand").Matches(fit.VirtualMass.Value.Grains);
        new Printed("103.19", "1/2 (m + K) v² of the same pair").Matches(fit.LaunchEnergy.Value.FootPounds);
        new Printed("0.8389", "m/(m + K) at 400 gr").Matches(fit.Efficiency(Mass.FromGrains(400)).Value.DecimalFractions);
        Assert.Null(fit.FitProbability);
    }

    [Fact] // Independent: the same pair, the heavier one read 1 ft/s too fast
    public void One_foot_per_second_in_one_of_two_arrows_moves_it_by_a_quarter()
    {
        VirtualMassFit fit = Fit(Arrow(400, 312.2192, 2, 5), Arrow(500, 284.8686, 2, 5));
        new Printed("96.9", "two-arrow inversion by hand").Matches(fit.VirtualMass.Value.Grains);
        Assert.True(fit.IsIllConditioned);
        Assert.Contains("moves it by about 19 gr", Fit(Arrow(400, 312.2192, 2, 5), Arrow(500, 283.8686, 2, 5)).Warnings[0], StringComparison.Ordinal);
    }

    [Fact] // Published: measured recurve limbs, K = 5.770 g + 0.0583 m, 43.0 J; a line in m has then the intercept 5.770/1.0583
    public void A_virtual_mass_that_grows_with_the_arrow_comes_out_small()
    {
        var arrows = new double[] { 15, 20, 25, 30 }.Select(g => new ChronographedArrow
        {
            Mass = Mass.FromGrams(g),
            Speed = Speed.FromMetersPerSecond(Math.Sqrt(2 * 43.0 / (1e-3 * (g + 5.770 + 0.0583 * g)))),
            ShotSd = Speed.FromMetersPerSecond(0.3),
            Shots = 10,
        });
        var fit = ArrowSpeeds.Of(arrows).FitVirtualMass(Ninety, Ratio.Zero);
        Assert.Equal(5.770 / 1.0583, fit.VirtualMass.Value.Grams, 1e-6);
        Assert.Equal(43.0 / 1.0583, fit.LaunchEnergy.Value.Joules, 1e-6);
        new Printed("56.50", "measured recurve, 20 g").Matches(fit.SpeedOf(Mass.FromGrams(20)).Value.MetersPerSecond);
        new Printed("51.66", "measured recurve, 25 g").Matches(fit.SpeedOf(Mass.FromGrams(25)).Value.MetersPerSecond);
    }

    [Theory] // Coverage; four masses over 150 gr, and a poor pair: there the interval is wide, not wrong
    [InlineData(new double[] { 350, 400, 450, 500 }, 10, 1.2)]
    [InlineData(new double[] { 350, 500, 650 }, 4, 1.2)]
    [InlineData(new double[] { 350, 450 }, 6, 0.8)]
    public void The_intervals_hold_the_truth_as_often_as_stated(double[] masses, int shots, double sd)
    {
        const int Bows = 1500;
        const double K = 76.83, Power = 103.19 * 450436.7;
        var random = new Simulated(20260202);
        int mass = 0, energy = 0, speed = 0;
        for (int i = 0; i < Bows; i++)
        {
            VirtualMassFit fit = Fit([.. masses.Select(m => ChronographedArrow.Of(Mass.FromGrains(m), Enumerable.Range(0, shots).Select(_ => Speed.FromFeetPerSecond(Math.Sqrt(Power / (m + K)) + sd * random.Normal()))))]);
            mass += Holds(fit.VirtualMass.Map(x => x.Grains), K);
            energy += Holds(fit.LaunchEnergy.Map(x => x.FootPounds), 103.19);
            speed += Holds(fit.SpeedOf(Mass.FromGrains(520)).Map(x => x.FeetPerSecond), Math.Sqrt(Power / (520 + K)));
        }

        Assert.All([mass, energy, speed], held => Assert.InRange(held / (double)Bows, Ninety - Allowed, Ninety + Allowed));
        static int Holds(Estimate<double> e, double truth) => e.Low <= truth && truth <= e.High ? 1 : 0;
    }

    const double Allowed = 0.031; // 4 standard errors of a share of 0.9 in 1500

    [Fact] // Coverage: a chronograph that reads all speeds up to some per cent wrong leaves K alone and widens E
    public void The_scale_of_the_chronograph_cancels_in_the_virtual_mass()
    {
        ChronographedArrow[] arrows = [Arrow(350, 330), Arrow(425, 304.34), Arrow(500, 283.87)];
        VirtualMassFit right = Fit(arrows), fast = Fit([.. arrows.Select(a => a with { Speed = 1.02 * a.Speed, ShotSd = 1.02 * a.ShotSd })]);
        Assert.Equal(right.VirtualMass.High.Grains, fast.VirtualMass.High.Grains, 1e-9);
        Assert.Equal(1.02 * 1.02, fast.LaunchEnergy.Value / right.LaunchEnergy.Value, 1e-12);
        var unsure = ArrowSpeeds.Of(arrows).FitVirtualMass(Ninety, Ratio.FromPercent(1));
        Assert.True(unsure.LaunchEnergy.StandardError.Joules > 0.0199 * unsure.LaunchEnergy.Value.Joules);
        Assert.Equal(right.VirtualMass, unsure.VirtualMass);
    }

    [Fact] // Relation
    public void The_order_of_the_arrows_does_not_matter() =>
        Gen.Shuffle(new[] { 350.0, 400, 450, 520 }).Sample(order =>
            Assert.Equal(76.8, Fit([.. order.Select(m => Arrow(m, Math.Sqrt(4.6e7 / (m + 76.8))))]).VirtualMass.Value.Grains, 1e-6));

    [Fact] // Relation: a heavier arrow is never faster, and takes a larger share
    public void Heavier_arrows_are_slower_and_take_more() =>
        Gen.Select(Gen.Double[350, 700], Gen.Double[0.1, 40]).Sample((m, more) =>
        {
            VirtualMassFit fit = Fit(Arrow(350, 330), Arrow(425, 304.34), Arrow(500, 283.87));
            Assert.True(fit.SpeedOf(Mass.FromGrains(m + more)).Value < fit.SpeedOf(Mass.FromGrains(m)).Value);
            Assert.True(fit.Efficiency(Mass.FromGrains(m + more)).Value > fit.Efficiency(Mass.FromGrains(m)).Value);
        });

    [Fact]
    public void A_negative_virtual_mass_is_refused_and_says_what_to_measure_again()
    {
        var error = Assert.Throws<VirtualMassUnknownException>(() => Fit(Arrow(350, 330), Arrow(500, 270)));
        Assert.StartsWith("These speeds imply a negative virtual mass (-", error.Message, StringComparison.Ordinal);
        Assert.Contains("Measure again the arrow of 350 gr at 330.0 ft/s and the one of 500 gr at 270.0 ft/s: weigh them", error.Message, StringComparison.Ordinal);
        Assert.True(error.ImpliedGrains < 0);
        Assert.Contains("do not fall with arrow mass", Assert.Throws<VirtualMassUnknownException>(() => Fit(Arrow(350, 300), Arrow(500, 300))).Message, StringComparison.Ordinal);
        Assert.Contains("do not fall with arrow mass", Assert.Throws<VirtualMassUnknownException>(() => Fit(Arrow(350, 300), Arrow(500, 301))).Message, StringComparison.Ordinal);
        Assert.Contains("do not bound the virtual mass", Assert.Throws<VirtualMassUnknownException>(() => Fit(Arrow(350, 330, 3, 2), Arrow(352, 329.3, 3, 2))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_arrow_off_the_line_is_named()
    {
        VirtualMassFit fit = Fit(Arrow(350, 330), Arrow(400, 312.22), Arrow(450, 307), Arrow(500, 283.87));
        Assert.Contains(fit.Warnings, w => w.Contains("most the arrow of 450 gr", StringComparison.Ordinal));
        Assert.True(fit.FitProbability < 1e-6);
    }

    [Fact]
    public void Speeds_that_cannot_answer_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ArrowSpeeds.Of([Arrow(350, 330)]));
        Assert.Contains("same mass", Assert.Throws<ArgumentException>(() => ArrowSpeeds.Of([Arrow(350, 330), Arrow(350, 331)])).Message, StringComparison.Ordinal);
        Assert.Contains("differ at all", Assert.Throws<InvalidOperationException>(() => Fit(Arrow(350, 330, 0), Arrow(450, 300, 0))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Arrow(350, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Arrow(350, 330, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Arrow(350, 330, 1, 1));
    }

    [Fact]
    public void No_speed_is_told_of_an_arrow_lighter_than_those_shot()
    {
        VirtualMassFit fit = Fit(Arrow(350, 330), Arrow(500, 283.87));
        var error = Assert.Throws<BeyondCautionException>(() => fit.SpeedOf(Mass.FromGrains(345)));
        Assert.StartsWith("An arrow of 345 gr is lighter than the lightest one shot, 350 gr; nothing is computed there.", error.Message, StringComparison.Ordinal);
        Assert.Equal(330, fit.SpeedOf(Mass.FromGrains(350)).Value.FeetPerSecond, 1e-6);
        Assert.Contains("750 gr", Assert.Throws<ArgumentOutOfRangeException>(() => fit.SpeedOf(Mass.FromGrains(760))).Message, StringComparison.Ordinal);
    }

    [Theory] // Independent: K = m (1/efficiency - 1)
    [InlineData(BowKind.Compound, 0.825)]
    [InlineData(BowKind.Recurve, 0.725)]
    [InlineData(BowKind.Longbow, 0.65)]
    public void The_usual_virtual_mass_follows_the_usual_efficiency(BowKind kind, double efficiency)
    {
        var usual = UsualVirtualMass.For(kind, Mass.FromGrains(400), Ninety);
        Assert.Equal(400 * (1 / efficiency - 1), usual.Value.Grains, 1e-9);
        Assert.True(Mass.Zero < usual.Low && usual.Low < usual.Value && usual.Value < usual.High);
    }

    static VirtualMassFit Fit(params ChronographedArrow[] arrows) => ArrowSpeeds.Of(arrows).FitVirtualMass(Ninety, Ratio.Zero);
}
