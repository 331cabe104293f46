namespace Ascham.Tests.BowsTests;

using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Quantities;
using Ascham.Tests.ArrowsTests;
using Ascham.Tests.Checks;
using CsCheck;
using UnitsNet;
using Xunit;
using static Ascham.Tests.BowsTests.BowExample;

public class CautionTests
{
    [Fact]
    public void What_ifs_refuse_arrows_too_light_for_the_bow()
    {
        var error = Assert.Throws<BeyondCautionException>(() => Model.SpeedAt(Load(340, 70), Ninety));
        Assert.Equal("An arrow of 340 gr at 70 lbf has 4.86 gr/lbf, below 5 gr/lbf (common practice for compounds, no source); nothing is computed there. Use 350 gr or more, or 68 lbf or less.", error.Message);
        Assert.Same(BowCaution.LightArrow, error.Caution);
        Assert.Throws<BeyondCautionException>(() => Model.SpeedChange(Load(425, 70), Load(340, 70), Ninety));
        Assert.Throws<BeyondCautionException>(() => Model.PeakAcceleration(Load(340, 70), Ninety));
        Assert.Throws<BeyondCautionException>(() => LimbBoltSweep.ByWeight(Model, Load(425, 70), [Pounds(70), Pounds(86)], Ninety));
    }

    [Fact] // Relation: whatever is asked, nothing below the floor is ever answered
    public void No_loading_below_the_floor_is_answered() =>
        Gen.Select(Gen.Double[215, 520], Gen.Double[36, 120]).Sample((m, f) =>
        {
            VirtualMassFit fit = ArrowSpeeds.Of([Arrow(350, 330), Arrow(500, 283.87)]).FitVirtualMass(Ninety, Ratio.Zero);
            bool allowed = m / f >= 5;
            Assert.Equal(allowed, Answers(() => Model.SpeedAt(Load(m, f), Ninety)));
            Assert.Equal(allowed, Answers(() => Model.SpeedChange(Load(425, 70), Load(m, f), Ninety)));
            Assert.Equal(allowed, Answers(() => Model.PeakAcceleration(Load(m, f), Ninety)));
            Assert.Equal(allowed, Answers(() => LimbBoltSweep.ByWeight(Model, Load(m, 70), [Pounds(f)], Ninety)));
            Assert.Equal(allowed, Answers(() => LaunchModel.SpeedFromEnergy(Sure(Energy.FromFootPounds(1.4 * f)), Sure(Ratio.Zero), Sure(Mass.FromGrains(76.8)), Load(m, f), Model.Floor, Ninety)));
            Assert.Equal(m >= 350, Answers(() => fit.SpeedOf(Mass.FromGrains(m))));
        });

    static bool Answers(Action ask)
    {
        try
        {
            ask();
            return true;
        }
        catch (BeyondCautionException)
        {
            return false;
        }
    }

    static Estimate<T> Sure<T>(T value)
        where T : struct, IQuantity => new(value, (T)Quantity.From(0, value.Unit), value, value, Ninety, 1, "given");

    [Fact]
    public void A_makers_limit_below_the_usual_one_comes_with_a_warning()
    {
        var bow = new Bow { PeakWeight = Pounds(60), LaunchSpeed = Speed.FromFeetPerSecond(190), LaunchSpeedSd = Speed.FromFeetPerSecond(2), Kind = BowKind.Longbow, LeastGrainsPerPound = 6 };
        Assert.Contains("below the usual 8", MassFloor.Of(bow).Warning, StringComparison.Ordinal);
        Assert.Contains("below the usual 8", LaunchModel.From(bow, new() { Mass = Mass.FromGrains(540) }).HowObtained, StringComparison.Ordinal);
        Assert.Contains("below the usual 5", MassFloor.OfMaker(4).Warning, StringComparison.Ordinal);
        Assert.Null(MassFloor.Of(bow with { LeastGrainsPerPound = 9 }).Warning);
        Assert.Null(MassFloor.For(BowKind.Recurve).Warning);
        Assert.Contains("State the kind", MassFloor.OfOrLowest(bow with { LeastGrainsPerPound = null, Kind = null }).Warning, StringComparison.Ordinal);
        Assert.Equal(MassFloor.Of(bow), MassFloor.OfOrLowest(bow));
    }

    [Fact]
    public void A_sweep_by_weight_stays_where_the_limb_bolts_may_stand()
    {
        Assert.Equal(2, LimbBoltSweep.ByWeight(Model, Load(425, 64), [Pounds(55), Pounds(67)], Ninety, bolts: Bolts).Count);
        var error = Assert.Throws<BeyondCautionException>(() => LimbBoltSweep.ByWeight(Model, Load(425, 64), [Pounds(54)], Ninety, bolts: Bolts));
        Assert.Equal("54 lbf is outside 55 to 67 lbf, which the limb bolts give between 4 turns out, the most the maker states, and none; nothing is computed there.", error.Message);
        Assert.Same(BowCaution.LimbBoltTurns, error.Caution);
        Assert.Throws<BeyondCautionException>(() => LimbBoltSweep.ByWeight(Model, Load(425, 64), [Pounds(68)], Ninety, bolts: Bolts));
    }

    [Fact]
    public void Limb_bolts_cannot_stand_farther_out_than_the_maker_states()
    {
        Assert.Contains("turn the bolts in", Assert.Throws<BeyondCautionException>(() => new LimbBolts { TurnsOut = 5, MostTurnsOut = 4, WeightPerTurn = Pounds(3) }).Message, StringComparison.Ordinal);
        Assert.Throws<BeyondCautionException>(() => new LimbBolts { MostTurnsOut = 4, TurnsOut = 5, WeightPerTurn = Pounds(3) });
        Assert.Throws<BeyondCautionException>(() => Bolts with { TurnsOut = 4.5 });
        Assert.Equal(0, new LimbBolts { TurnsOut = 0, MostTurnsOut = 0, WeightPerTurn = Pounds(3) }.MostTurnsOut);
    }

    [Fact]
    public void The_makers_limit_comes_before_the_usual_one_and_recurves_and_longbows_need_more()
    {
        var bow = new Bow { PeakWeight = Pounds(60), LaunchSpeed = Speed.FromFeetPerSecond(270), Kind = BowKind.Compound };
        Assert.Equal(5, MassFloor.Of(bow).GrainsPerPound);
        Assert.Equal(6.5, MassFloor.Of(bow with { LeastGrainsPerPound = 6.5 }).GrainsPerPound);
        Assert.True(MassFloor.For(BowKind.Recurve).GrainsPerPound > 5);
        Assert.True(MassFloor.For(BowKind.Longbow).GrainsPerPound > MassFloor.For(BowKind.Recurve).GrainsPerPound);
        Assert.Contains("Kind", Assert.Throws<InvalidOperationException>(() => MassFloor.Of(bow with { Kind = null })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Limb_bolts_stay_within_the_turns_the_maker_states()
    {
        Assert.Equal(58, Bolts.WeightAt(Pounds(64), 3).PoundsForce, 1e-9);
        Assert.Equal(67, Bolts.WeightAt(Pounds(64), 0).PoundsForce, 1e-9);
        var error = Assert.Throws<BeyondCautionException>(() => Bolts.WeightAt(Pounds(64), 4.5));
        Assert.Equal("4.5 turns out is beyond the 4 the maker states; nothing is computed there.", error.Message);
        Assert.Same(BowCaution.LimbBoltTurns, error.Caution);
        Assert.Throws<ArgumentOutOfRangeException>(() => Bolts.WeightAt(Pounds(64), -1));
    }

    [Fact] // Independent: the table of column loads and the powers of weight, worked by hand
    public void The_sweep_moves_speed_energy_momentum_load_and_mass_per_pound()
    {
        ArrowBuild build = FlexureTests.Worked(0, 145, nock: 28);
        Loading now = new() { ArrowMass = build.Mass, PeakWeight = Pounds(70) };
        LaunchModel model = Model with { Known = now, VirtualMass = Mass.FromGrains(76.83) };
        var rows = LimbBoltSweep.ByWeight(model, now, [Pounds(70), Pounds(60)], Ninety, (build, FlexureTests.Spine(340)));
        new Printed("1.271", "table of column loads, 70 lbf").Matches(rows[0].ColumnLoadRatio!.Value, slack: 1.2); // the table's acceleration is rounded
        new Printed("1.090", "table of column loads, 60 lbf").Matches(rows[1].ColumnLoadRatio!.Value, slack: 1.2);
        Assert.Equal(84 * Math.Sqrt(60 / 70.0), rows[1].Speed.Value.MetersPerSecond, 1e-9);
        Assert.Equal(60 / 70.0, rows[1].Energy.Value / rows[0].Energy.Value, 1e-9);
        Assert.Equal(Math.Sqrt(60 / 70.0), rows[1].Momentum.Value / rows[0].Momentum.Value, 1e-9);
        Assert.Equal(build.Mass.Grains / 60, rows[1].GrainsPerPound, 1e-9);
        Assert.True(rows[1].Speed.StandardError > rows[0].Speed.StandardError);
    }

    [Fact]
    public void A_sweep_by_turns_follows_the_turns_and_another_arrow_is_refused()
    {
        var rows = LimbBoltSweep.ByTurns(Model, Load(425, 64), Bolts, [0, 1, 2, 3, 4], Ninety);
        Assert.Equal([67, 64, 61, 58, 55], rows.Select(r => Math.Round(r.PeakWeight.PoundsForce, 9)));
        Assert.Equal([0, 1, 2, 3, 4], rows.Select(r => r.TurnsOut!.Value));
        Assert.Null(rows[0].ColumnLoadRatio);
        ArrowBuild build = FlexureTests.Worked(0, 145, nock: 28);
        Assert.Contains("same arrow", Assert.Throws<ArgumentException>(() => LimbBoltSweep.ByWeight(Model, Load(380, 64), [Pounds(64)], Ninety, (build, FlexureTests.Spine(340)))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_caution_has_words_and_a_source_and_the_law_is_left_to_the_local_code()
    {
        Assert.Equal(BowCaution.All.Count, BowCaution.All.Select(c => c.Name).Distinct().Count());
        Assert.All(BowCaution.All, c => Assert.True(c.Text.EndsWith('.') && c.Source.Length > 0));
        Assert.Contains("check your local code", BowCaution.LocalCode.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(BowCaution.LocalCode.Text, char.IsAsciiDigit);
    }

    static LimbBolts Bolts => new() { TurnsOut = 1, MostTurnsOut = 4, WeightPerTurn = Pounds(3) };
}
