namespace Ascham.Notebooks.Tests;

using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Records;
using UnitsNet;
using Xunit;

public class WeightTrialTests
{
    static readonly Setup Compound = SetupFile.Read(Ascham.Tests.House.Path("data-demo/draw-weight/setup.json")), Recurve = SetupFile.Read(Ascham.Tests.House.Path("data-demo/draw-weight-recurve/setup.json"));

    static WeightTrial Now(Setup? setup = null) => WeightTrial.Of(setup ?? Compound);

    // Derived elsewhere for this bow and arrow: 425 gr at 84 m/s, 70 lbf, virtual mass 76.8 gr; see the comments beside each value.
    static WeightTrial Reference() => Now(Compound with
    {
        Arrow = Compound.Arrow with { Mass = 425.Grains, DragConstant = 0.0015.PerMetre },
        Bow = Compound.Bow with { LaunchSpeed = 84.MetresPerSecond, PeakWeight = 70.PoundsForce, ArrowSpeeds = null, VirtualMass = 76.8.Grains, VirtualMassSd = 5.Grains },
        Sight = Compound.Sight with { PeepToPin = 0.8.Metres, PeepHeight = 0.11.Metres },
    });

    static IReadOnlyList<Unknown<WeightTrial>> Unknowns(WeightTrial trial) => trial.Unknowns(0.3.PoundsForce, Ratio.FromPercent(1));

    [Fact]
    public void A_pound_is_worth_the_speed_that_the_energy_says()
    {
        double perPound = (Reference().Less((-0.5).PoundsForce).LaunchSpeed - Reference().Less(0.5.PoundsForce).LaunchSpeed).FeetPerSecond;
        Assert.Equal(1.97, perPound, 5e-3);   // derived: dv/dF = v/(2F), ft/s per lb
    }

    [Theory] // Derived by another integrator: centimetres lower with one pound less
    [InlineData(20, -0.34)]
    [InlineData(40, -1.40)]
    [InlineData(60, -3.21)]
    [InlineData(80, -5.82)]
    [InlineData(100, -9.29)]
    public void A_pound_less_drops_the_arrow_as_worked_out_elsewhere(int yards, double centimetres)
    {
        double lower = Reference().Less(1.PoundsForce).StrikeWithSightOf(Reference(), yards.Yards).Centimeters;
        // 1.5 %: the worked values are slopes or whole pounds, which differ by 0.7 %; and half a unit of the last digit.
        Assert.Equal(centimetres, lower, 0.015 * Math.Abs(centimetres) + 0.005);
    }

    [Fact]
    public void Column_load_goes_in_step_with_the_weight()
    {
        var now = Reference();
        Assert.Equal(69.0 / 70, now.Less(1.PoundsForce).ColumnLoad!.Ratio / now.ColumnLoad!.Ratio, 1e-12);   // derived: 1.4 % per pound
        Assert.Null(Now(Compound with { ArrowBench = null }).ColumnLoad);
    }

    [Fact]
    public void A_turn_takes_the_weight_it_is_said_to_and_the_sweep_of_the_library_agrees()
    {
        var turned = Now().WithBoltsAt(2);
        Assert.Equal(58.9, turned.PeakWeight.PoundsForce, 1e-9);
        var row = LimbBoltSweep.ByTurns(Now().Model, Now().Loading, Compound.Bow.LimbBolts!, [2], 0.90, (Compound.ArrowBuild!, turned.Spine!)).Single();
        Assert.Equal(row.Speed.Value.MetersPerSecond, turned.LaunchSpeed.MetersPerSecond, 1e-9);
        Assert.Equal(row.ColumnLoadRatio!.Value, turned.ColumnLoad!.Ratio, 1e-9);
        Assert.Equal(row.Energy.Value.Joules, turned.Energy.Joules, 1e-9);
        Assert.Equal(row.GrainsPerPound, turned.GrainsPerPound, 1e-9);
    }

    [Fact]
    public void More_weight_is_never_slower_and_never_lower()
    {
        var now = Now();
        double before = double.NegativeInfinity, strike = double.NegativeInfinity;
        foreach (int pounds in Enumerable.Range(40, 40))
        {
            var at = now.WithWeight(pounds.PoundsForce);
            Assert.True(at.LaunchSpeed.MetersPerSecond > before && at.StrikeWithSightOf(now, 60.Yards).Meters > strike);
            (before, strike) = (at.LaunchSpeed.MetersPerSecond, at.StrikeWithSightOf(now, 60.Yards).Meters);
        }
    }

    [Fact]
    public void The_interval_of_a_change_is_the_one_that_the_model_of_the_bow_gives()
    {
        var now = Now();
        var budget = new ErrorBudget<WeightTrial>(now, Unknowns(now), 0.90);
        var steps = budget.Of(t => (t.Less(3.PoundsForce).LaunchSpeed - t.LaunchSpeed).MetersPerSecond)!;
        var model = now.Model.SpeedChange(now.Loading, now.Less(3.PoundsForce).Loading, 0.90);
        Assert.Equal(model.StandardError.MetersPerSecond, steps.StandardError, 0.01 * steps.StandardError);
        Assert.Equal(model.Value.MetersPerSecond, steps.Value, 1e-9);
    }

    [Fact]
    public void Each_unknown_moves_only_what_it_names()
    {
        var now = Now();
        double Effect(string name, Func<WeightTrial, double> of) => new ErrorBudget<WeightTrial>(now, Unknowns(now), 0.90).Effects(of).Single(e => e.Unknown.Name == name).Effect;
        Assert.Equal(1.5, Effect("launch speed", t => t.LaunchSpeed.FeetPerSecond), 1e-9);
        Assert.Equal(0, Effect("bow scale as a whole", t => t.LaunchSpeed.FeetPerSecond), 1e-12);
        Assert.Equal(0.01 * now.ColumnLoad!.Ratio, Effect("bow scale as a whole", t => t.ColumnLoad!.Ratio), 1e-9);
        Assert.Equal(-0.01 * now.GrainsPerPound, Effect("bow scale as a whole", t => t.GrainsPerPound), 1e-4 * now.GrainsPerPound);
        Assert.Equal(-0.3, Effect("weight per turn", t => t.WithBoltsAt(2).PeakWeight.PoundsForce), 1e-9);
        Assert.Equal(0, Effect("virtual mass of the bow", t => t.Less(3.PoundsForce).LaunchSpeed.FeetPerSecond), 1e-12);   // the same arrow: K cancels
        Assert.Equal(0, Effect("how energy follows weight", t => t.LaunchSpeed.FeetPerSecond), 1e-12);                        // at the weight measured
        Assert.Throws<ArgumentOutOfRangeException>(() => now.Unknowns((-1).PoundsForce, Ratio.Zero));
    }

    [Fact]
    public void Turns_beyond_the_maker_and_arrows_too_light_are_refused_as_the_library_refuses_them()
    {
        var turns = Assert.Throws<BeyondCautionException>(() => Now().WithBoltsAt(4.25));
        Assert.Same(BowCaution.LimbBoltTurns, turns.Caution);
        var light = Assert.Throws<BeyondCautionException>(() => Now().WithWeight(84.PoundsForce));   // 418 gr / 84 lbf = 4.98 gr/lbf
        Assert.Same(BowCaution.LightArrow, light.Caution);
        Assert.True(Now().WithWeight(83.PoundsForce).GrainsPerPound > 5);
        Assert.Same(BowCaution.LightArrow, Assert.Throws<BeyondCautionException>(() => Now(Recurve).WithWeight(200.0.Newtons)).Caution);   // 6.90, below the 7 usual for recurves
    }

    [Fact]
    public void What_the_setup_lacks_is_named_by_its_keys()
    {
        var bare = Compound with { Bow = Compound.Bow with { Kind = null, LaunchSpeedSd = null } };
        Assert.Contains("lacks bow.launch_speed_sd; bow.kind (or both", Assert.Throws<ArgumentException>(() => Now(bare)).Message, StringComparison.Ordinal);
        var unbolted = Now(Compound with { Bow = Compound.Bow with { LimbBolts = null } });
        Assert.Contains("bow.limb_bolts_turns_out", Assert.Throws<ArgumentException>(() => unbolted.With(Wanted.ChangeOfWeight("1 turn out", "change"))).Message, StringComparison.Ordinal);
        Assert.Equal(59, unbolted.With(Wanted.ChangeOfWeight("3 lbf less", "change")).PeakWeight.PoundsForce, 1e-9);
    }

    [Fact]
    public void A_new_mark_hits()
    {
        var (now, turned) = (Now(), Now().WithBoltsAt(2));
        var travel = turned.MarkTravelFrom(now, 60.Yards);
        Assert.True(travel > Length.Zero);   // slower: the pin goes down, the numbers up
        Assert.Equal(0, turned.Sight.HeightWithPinAt(now.Sight.PinBelowPeep(60.Yards) + travel, 60.Yards).Millimeters, 1e-3);
        Assert.True(now.Reaches(100.Yards));
        Assert.False(Now(Recurve with { Bow = Recurve.Bow with { LaunchSpeed = 20.MetresPerSecond } }).Reaches(100.Yards));
    }

    [Theory]
    [InlineData("1 turn out", 1.0)]
    [InlineData("0.5 turns in", -0.5)]
    public void Turns_are_read(string text, double turnsOut) => Assert.Equal(turnsOut, Wanted.ChangeOfWeight(text, "change").TurnsOut);

    [Theory]
    [InlineData("3 lbf less", 13.34466)]
    [InlineData("10 N more", -10)]
    public void Weights_are_read(string text, double newtons) => Assert.Equal(newtons, Wanted.ChangeOfWeight(text, "change").Lost!.Value.Newtons, 1e-4);

    [Theory]
    [InlineData("1 turn")]
    [InlineData("-1 turn out")]
    [InlineData("0 turns out")]
    [InlineData("31 turns out")]
    [InlineData("3 lbf")]
    [InlineData("3 gr less")]
    [InlineData("3,5 lbf less")]
    [InlineData("")]
    public void What_is_no_change_is_refused_with_examples(string text) =>
        Assert.Contains("such as \"1 turn out\"", Assert.Throws<ArgumentException>(() => Wanted.ChangeOfWeight(text, "change")).Message, StringComparison.Ordinal);

    [Fact]
    public void Forces_and_shares_out_of_range_are_refused()
    {
        Assert.Equal(0.3, Wanted.Force("0.3 lbf", "p").PoundsForce, 1e-12);
        Assert.Throws<ArgumentException>(() => Wanted.Force("0 lbf", "p"));
        Assert.Throws<ArgumentException>(() => Wanted.Force("2000 N", "p"));
        Assert.Throws<ArgumentException>(() => Wanted.PercentSd(double.NaN, "p"));
        Assert.Throws<ArgumentException>(() => Wanted.PercentSd(-1, "p"));
    }
}
