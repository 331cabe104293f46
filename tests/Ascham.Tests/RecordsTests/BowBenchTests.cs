namespace Ascham.Tests.RecordsTests;

using Ascham.Bows;
using Ascham.Records;
using CsCheck;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

/// <summary>The bow on the bench in <c>setup.json</c>: draw curve, chronographed arrows, limb bolts, limits.</summary>
public class BowBenchTests
{
    const string Bench = """
        "hand": "left",
            "kind": "compound",
            "brace_height": "6.5 in",
            "draw_curve_sd": "0.5 lbf",
            "draw_curve": { "12 in": "40 lbf", "14 in": "58 lbf", "20 in": "61.5 lbf", "26 in": "48 lbf", "28.5 in": "13 lbf" },
            "let_down": { "28.5 in": "12 lbf", "26 in": "45 lbf", "20 in": "58 lbf", "14 in": "54 lbf", "12 in": "37 lbf" },
            "virtual_mass": "77 gr", "virtual_mass_sd": "8 gr",
            "chronographed": {
              "380 gr": { "speed": "288.1 ft/s", "shot_sd": "1.2 ft/s", "shots": 10 },
              "520 gr": { "speed": "252.0 ft/s", "shot_sd": "1.1 ft/s", "shots": 10 }
            },
            "rated_speed": "332 ft/s",
            "limb_bolts_turns_out": 1.5, "limb_bolts_most_out": 4, "weight_per_turn": "3.2 lbf",
            "least_grains_per_pound": 5.5
        """;

    static readonly string Text = Example.SetupText.Replace("\"hand\": \"left\"", Bench, StringComparison.Ordinal);

    [Fact]
    public void A_bow_on_the_bench_is_read_as_it_stands_in_the_file()
    {
        Bow bow = Read(Text).Bow;
        Assert.Equal(BowKind.Compound, bow.Kind);
        Assert.Equal(8.25, bow.DrawCurve!.AtRest.Inches, 1e-12); // the brace height gives the point at rest
        Assert.Equal(61.5, bow.DrawCurve.PeakWeight.PoundsForce, 1e-12);
        Assert.Equal(0.5, bow.DrawCurve.Points[2].ForceSd!.Value.PoundsForce, 1e-12);
        Assert.Equal(13, bow.DrawCurve.HoldingWeight.PoundsForce, 1e-12);
        Assert.True(bow.LetDown!.StoredEnergy < bow.DrawCurve.StoredEnergy);
        Assert.Equal(520, bow.ArrowSpeeds!.Arrows[1].Mass.Grains, 1e-12);
        Assert.Equal(10, bow.ArrowSpeeds.Arrows[0].Shots);
        Assert.Equal(Speed.FromFeetPerSecond(332), bow.RatedSpeed);
        Assert.Equal(new LimbBolts { TurnsOut = 1.5, MostTurnsOut = 4, WeightPerTurn = Force.FromPoundsForce(3.2) }, bow.LimbBolts);
        Assert.Equal(5.5, bow.LeastGrainsPerPound);
        Assert.Equal(Mass.FromGrains(77), bow.VirtualMass);
    }

    [Fact]
    public void What_is_not_in_the_file_stays_unknown()
    {
        Bow bow = Read(Example.SetupText).Bow;
        Assert.Null(bow.Kind);
        Assert.Null(bow.DrawCurve);
        Assert.Null(bow.ArrowSpeeds);
        Assert.Null(bow.LimbBolts);
    }

    [Theory] // the first two texts say what is changed
    [InlineData("\"draw_curve\":", "\"draw_curv\":", "(bow.draw_curv): key \"draw_curv\" is not known; did you mean \"draw_curve\"?")]
    [InlineData("\"kind\": \"compound\"", "\"kind\": \"crossbow\"", "(bow.kind): \"crossbow\" is none of the words known here; expected compound, recurve or longbow.")]
    [InlineData("\"14 in\": \"58 lbf\"", "\"11 in\": \"58 lbf\"", "(bow.draw_curve): draw lengths must go one way: 11 in (58 lbf) follows 12 in (40 lbf). Measure these two again; readings while drawing and while letting down are two curves.")]
    [InlineData("\"14 in\": \"58 lbf\"", "\"14in\": \"58 lbf\"", "(bow.draw_curve.14in): \"14in\" is not a number, a space and a unit; expected a draw length such as \"20.5 in\" (units: m, mm, cm, in, ft, yd).")]
    [InlineData("\"14 in\": \"58 lbf\"", "\"14 in\": 58", "(bow.draw_curve.14 in): \"58\" is not a force in quotes; expected such as \"41.5 lbf\".")]
    [InlineData("\"brace_height\": \"6.5 in\",", "", "(bow.draw_curve): the curve begins at 12 in with 40 lbf; it must begin with the string at rest. Measure the brace height and give it, or add the point of zero force at brace height plus 1.75 in.")]
    [InlineData("\"virtual_mass_sd\": \"8 gr\",", "", "(bow.virtual_mass): \"virtual_mass\" is given without \"virtual_mass_sd\"; expected all of them or none.")]
    [InlineData("\"520 gr\"", "\"380.0 gr\"", "(bow.chronographed): two arrows have the same mass, 380 gr; put their shots together, or weigh them again.")]
    [InlineData("\"speed\": \"252.0 ft/s\", ", "", "(bow.chronographed.520 gr): \"bow.chronographed.520 gr\" lacks \"speed\".")]
    [InlineData("\"shots\": 10 },", "\"shots\": 2.5 },", "(bow.chronographed.380 gr.shots): \"2.5\" is no whole number; expected a whole number of shots without quotes, 2 or more.")]
    [InlineData("\"limb_bolts_turns_out\": 1.5", "\"limb_bolts_turns_out\": 5", "(bow.limb_bolts_turns_out): \"5\" is beyond the most the maker states; expected at most 4 turns; turn the bolts in before drawing the bow.")]
    [InlineData("\"weight_per_turn\": \"3.2 lbf\",", "", "(bow.limb_bolts_turns_out): \"limb_bolts_turns_out\" is given without \"weight_per_turn\"; expected all of them or none.")]
    [InlineData("\"least_grains_per_pound\": 5.5", "\"least_grains_per_pound\": \"5.5\"", "(bow.least_grains_per_pound): \"5.5\" is not a number; expected a number without quotes, 3 to 30.")]
    [InlineData("\"least_grains_per_pound\": 5.5", "\"least_grains_per_pound\": 55", "(bow.least_grains_per_pound): \"55\" is out of range; expected a number without quotes, 3 to 30.")]
    public void A_bad_bench_is_told_in_one_sentence(string good, string bad, string sentence)
    {
        Assert.Contains(good, Text, StringComparison.Ordinal);
        string message = Example.ErrorOf("setup.json", Text.Replace(good, bad, StringComparison.Ordinal));
        Assert.StartsWith("setup.json, line ", message, StringComparison.Ordinal);
        Assert.EndsWith(sentence, message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bow_on_the_bench_reads_back_as_it_was_written() => Benches.Sample(bow =>
    {
        using var folder = new ScratchFolder();
        var setup = Example.Setup with { Bow = bow };
        SetupFile.Write(folder.Path("setup.json"), setup);
        Assert.Equal(setup, SetupFile.Read(folder.Path("setup.json")));
    });

    [Fact]
    public void Every_key_of_the_bench_is_on_the_page_on_files()
    {
        string page = File.ReadAllText(House.Path("docs/files.md"));
        string[] keys = ["kind", "brace_height", "draw_curve", "let_down", "draw_curve_sd", "virtual_mass", "virtual_mass_sd", "chronographed", "rated_speed", "limb_bolts_turns_out", "limb_bolts_most_out", "weight_per_turn", "least_grains_per_pound"];
        Assert.All(keys, key => Assert.Contains($"`bow.{key}`", page, StringComparison.Ordinal));
        Assert.All(keys, key => Assert.Contains($"\"{key}\":", Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_curve_the_file_cannot_hold_is_refused()
    {
        using var folder = new ScratchFolder();
        DrawCurve sketch = DrawCurve.Recurve(Force.FromPoundsForce(40), Length.FromInches(8), Length.FromInches(28));
        Assert.Contains("sketched", Assert.Throws<ArgumentException>(() => Write(sketch)).Message, StringComparison.Ordinal);
        DrawPoint[] uneven = [.. Read(Text).Bow.DrawCurve!.Points];
        uneven[2] = uneven[2] with { ForceSd = Force.FromNewtons(1) };
        Assert.Contains("one standard deviation", Assert.Throws<ArgumentException>(() => Write(DrawCurve.FromPoints(uneven))).Message, StringComparison.Ordinal);

        void Write(DrawCurve curve) => SetupFile.Write(folder.Path("setup.json"), Example.Setup with { Bow = Example.Setup.Bow with { DrawCurve = curve } });
    }

    static Setup Read(string text)
    {
        using var folder = new ScratchFolder();
        return SetupFile.Read(folder.Put("setup.json", text));
    }

    static readonly Gen<DrawCurve> Curves =
        from steps in Gen.Double[0.01, 0.1].Array[4, 12]
        from forces in Gen.Double[1, 400].Array[12]
        from unit in Gen.OneOf(LengthUnit.Inch, LengthUnit.Centimeter, LengthUnit.Meter)
        from forceUnit in Gen.OneOf(ForceUnit.PoundForce, ForceUnit.Newton)
        let draw = steps.Select((_, i) => 0.1 + steps.Take(i + 1).Sum()).ToArray()
        select DrawCurve.FromPoints(draw.Select((d, i) => new DrawPoint
        {
            Draw = Length.From(Length.FromMeters(d).As(unit), unit),
            Force = Force.From(i == 0 ? 0 : Force.FromNewtons(forces[i]).As(forceUnit), forceUnit),
            ForceSd = i == 0 ? null : Force.FromPoundsForce(0.5),
        }));

    static readonly Gen<ArrowSpeeds> Speeds =
        from masses in Gen.Double[10, 40].Array[2, 5]
        from speed in Gen.Double[40, 100]
        from sd in Gen.Double[0, 2]
        from shots in Gen.Int[2, 20]
        select ArrowSpeeds.Of(masses.Distinct().Append(45).Select(m => new ChronographedArrow
        {
            Mass = Mass.FromGrams(m),
            Speed = Speed.FromMetersPerSecond(speed),
            ShotSd = Speed.FromFeetPerSecond(sd),
            Shots = shots,
        }));

    static readonly Gen<Bow> Benches =
        from kind in Gen.Nullable(Gen.OneOf(BowKind.Compound, BowKind.Recurve, BowKind.Longbow))
        from brace in Gen.Nullable(Gen.Double[5, 9].Select(v => Length.FromInches(v)))
        from curve in Gen.Null(Curves)
        from down in Gen.Null(Curves)
        from mass in Gen.Nullable(Gen.Double[0, 190].Select(v => Mass.FromGrams(v)))
        from speeds in Gen.Null(Speeds)
        from rated in Gen.Nullable(Gen.Double[50, 120].Select(v => Speed.FromMetersPerSecond(v)))
        from turns in Gen.Double[0, 4]
        from least in Gen.Nullable(Gen.Double[3, 30])
        select Example.Setup.Bow with
        {
            Kind = kind,
            BraceHeight = brace,
            DrawCurve = curve,
            LetDown = down,
            VirtualMass = mass,
            VirtualMassSd = mass / 10,
            ArrowSpeeds = speeds,
            RatedSpeed = rated,
            LimbBolts = turns > 2 ? null : new LimbBolts { TurnsOut = turns, MostTurnsOut = 4, WeightPerTurn = Force.FromPoundsForce(3 + turns) },
            LeastGrainsPerPound = least,
        };
}
