namespace Ascham.Tests.RecordsTests;

using Ascham.Arrows;
using Ascham.Records;
using CsCheck;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

/// <summary>What the bench says of an arrow, in setup.json.</summary>
public class ArrowBenchTests
{
    const string Arrow = """
        "arrow": { "mass": "412 gr", "shaft_diameter": "5.2 mm", "length": "28 in", "drag_constant": "0.0025 1/m" },
        """;

    // The arrow of 29.0 in with a point of 125 gr whose totals are worked out in docs/models/arrows.md, and three things more.
    const string Bench = """
        "arrow": {
            "mass": "418 gr",
            "length": "29 in",
            "balance_point": "18.95 in",
            "spine": "0.340 in",
            "parts": {
              "shaft": { "mass_per_length": "8.5 gr/in", "from": "0.5 in", "length": "28.5 in" },
              "nock": { "mass": "10 gr", "at": "0.25 in" },
              "vanes": { "mass": "18 gr", "from": "1.5 in", "length": "2 in", "count": 3, "height": "0.5 in", "tip_length": "1 in", "sweep": "0.75 in", "offset": "2 deg" },
              "insert": { "mass": "20 gr", "at": "28.6 in" },
              "point": { "mass": "125 gr", "from": "29 in", "length": "0.7 in" }
            }
          },
        """;

    static string Text(string bench = Bench) => Example.SetupText.Replace(Arrow, bench, StringComparison.Ordinal);

    static Setup Read(string text)
    {
        using var folder = new ScratchFolder();
        return SetupFile.Read(folder.Put("setup.json", text));
    }

    [Fact]
    public void Parts_become_a_build_whose_totals_are_those_worked_out_by_hand()
    {
        var build = Read(Text()).ArrowBuild!;
        Assert.Equal(415.25, build.ComputedMass.Grains, 1e-6);   // derived, docs/models/arrows.md
        Assert.Equal(18.9318, build.ComputedBalance.Inches, 5e-5);
        Assert.Equal(8.5, build.GrainsPerInch, 1e-9);
        Assert.Equal(29, build.Length.Inches, 1e-9);
    }

    [Fact]
    public void Weighed_mass_and_measured_balance_override_and_the_differences_are_kept()
    {
        var build = Read(Text()).ArrowBuild!;
        Assert.Equal((418, 18.95), (Math.Round(build.Mass.Grains, 9), Math.Round(build.BalancePoint.Inches, 9)));
        Assert.Equal(2.75, build.MassDifference!.Value.Grains, 1e-6);
        Assert.Equal(0.0182, build.BalanceDifference!.Value.Inches, 5e-5);
    }

    [Fact]
    public void A_spine_reading_becomes_a_stiffness_and_a_vane_shape_a_fletching()
    {
        var setup = Read(Text());
        Assert.Equal(7.4888, setup.ArrowBench!.Spine!.BendingStiffness, 5e-5);   // derived, docs/models/arrows.md
        var vanes = setup.FletchingWith(Ratio.FromPercent(80))!;
        Assert.Equal(3, vanes.Count);
        Assert.Equal(29.7 - 3.5, vanes.FromTip.Inches, 1e-9);
        Assert.Equal((2, 2), (vanes.RootChord.Inches, vanes.Offset.Degrees));
    }

    [Fact]
    public void The_older_reading_of_wooden_shafts_is_its_own_key()
    {
        var spine = Read(Text(Bench.Replace("\"spine\": \"0.340 in\"", "\"wood_spine\": \"0.650 in\"", StringComparison.Ordinal))).ArrowBench!.Spine!;
        Assert.Equal(40, spine.WoodPounds, 1e-9);                // 26 over the sag in inches
        Assert.Equal(0.7875, spine.Deflection.Inches, 5e-5);     // derived, docs/models/arrows.md
    }

    [Fact]
    public void A_setup_without_parts_has_no_build_and_one_without_vane_shape_no_fletching()
    {
        var bare = Read(Example.SetupText);
        Assert.Null(bare.ArrowBench);
        Assert.Null(bare.ArrowBuild);
        Assert.Null(Read(Text(Bench.Replace(", \"count\": 3, \"height\": \"0.5 in\", \"tip_length\": \"1 in\", \"sweep\": \"0.75 in\", \"offset\": \"2 deg\"", "", StringComparison.Ordinal))).FletchingWith(Ratio.FromPercent(80)));
    }

    [Theory]
    [InlineData("\"0.340 in\"", "\"0 in\"", "setup.json, line 9, column 14 (arrow.spine): \"0 in\" is out of range; expected inches from 0.1 to 2.5.")]
    [InlineData("\"0.340 in\"", "\"340\"", "setup.json, line 9, column 14 (arrow.spine): \"340\" is not a number, a space and a unit; expected a spine reading such as \"0.340 in\" (units: mm, cm, in).")]
    [InlineData("\"spine\": \"0.340 in\"", "\"spine\": \"0.340 in\", \"wood_spine\": \"0.3 in\"", "setup.json, line 9, column 26 (arrow.wood_spine): \"wood_spine\" and \"spine\" are both given, and may contradict each other; expected one of them.")]
    [InlineData("\"18.95 in\"", "\"29.5 in\"", "setup.json, line 8, column 22 (arrow.balance_point): \"29.5 in\" lies outside the shaft; expected 0.5 in to 29 in from the bottom of the nock slot: balance the complete arrow again, and measure from the slot, not from the tip.")]
    [InlineData("\"length\": \"29 in\"", "\"length\": \"28.5 in\"", "setup.json, line 7, column 15 (arrow.length): \"28.5 in\" differs from where the shaft ends; expected 29 in: measure from the bottom of the nock slot to the front end of the shaft again.")]
    [InlineData("\"from\": \"29 in\", \"length\": \"0.7 in\"", "\"from\": \"28.5 in\", \"length\": \"0.7 in\"", "setup.json, line 15, column 7 (arrow.parts.point): the parts \"shaft\", 0.5 to 29 in, and \"point\", 28.5 to 29.2 in, overlap. Measure both from the bottom of the nock slot; of a point or nock count only what stands out of the shaft.")]
    [InlineData("\"at\": \"28.6 in\"", "\"at\": \"40 in\"", "setup.json, line 14, column 7 (arrow.parts.insert): the part \"insert\", at 40 in, lies off the shaft, 0.5 to 29 in; it must lie within 0.5 to 30.18 in from the bottom of the nock slot. Measure its place again.")]
    [InlineData("\"insert\":", "\"insrt\":", "setup.json, line 14, column 7 (arrow.parts.insrt): part \"insrt\" is no kind of part known here; did you mean \"insert\"? If not, say what it is with \"kind\"; expected shaft, point, insert, outsert, nock, wrap, vanes, adhesive or other.")]
    [InlineData("\"insert\": { \"mass\"", "\"insert\": { \"maas\"", "setup.json, line 14, column 19 (arrow.parts.insert.maas): key \"maas\" is not known; did you mean \"mass\"?")]
    [InlineData("\"mass\": \"20 gr\", \"at\": \"28.6 in\"", "\"mass\": \"20 gr\"", "setup.json, line 14, column 17 (arrow.parts.insert): \"arrow.parts.insert\" lacks \"from\" and \"length\".")]
    [InlineData("\"at\": \"28.6 in\"", "\"at\": \"28.6 in\", \"from\": \"28 in\"", "setup.json, line 14, column 53 (arrow.parts.insert.from): \"from\" and \"at\" are both given, and may contradict each other; expected one of them.")]
    [InlineData("\"mass\": \"20 gr\"", "\"mass\": \"-20 gr\"", "setup.json, line 14, column 27 (arrow.parts.insert.mass): \"-20 gr\" is out of range; expected grains from 0 to 2315.")]
    [InlineData("\"insert\": {", "\"nock two\": {", "setup.json, line 14, column 7 (arrow.parts.nock two): part \"nock two\" is no kind of part known here; say what it is with \"kind\"; expected shaft, point, insert, outsert, nock, wrap, vanes, adhesive or other.")]
    [InlineData("\"count\": 3", "\"count\": 2.5", "setup.json, line 13, column 80 (arrow.parts.vanes.count): \"2.5\" is out of range; expected a whole number without quotes, 3 to 8.")]
    [InlineData("\"count\": 3, ", "", "setup.json, line 13, column 16 (arrow.parts.vanes): \"arrow.parts.vanes\" lacks \"count\".")]
    [InlineData("\"insert\": { \"mass\": \"20 gr\", \"at\": \"28.6 in\" }", "\"insert\": 20", "setup.json, line 14, column 17 (arrow.parts.insert): \"20\" is not a section; expected keys and values in braces, { ... }.")]
    public void Bad_parts_are_told_with_file_line_and_key(string good, string bad, string message)
    {
        Assert.Contains(good, Bench, StringComparison.Ordinal);
        Assert.Equal(message, Example.ErrorOf("setup.json", Text(Bench.Replace(good, bad, StringComparison.Ordinal))));
    }

    [Fact]
    public void An_arrow_without_a_point_or_with_two_shafts_is_refused_at_its_place()
    {
        string none = Bench.Replace(",\n      \"point\": { \"mass\": \"125 gr\", \"from\": \"29 in\", \"length\": \"0.7 in\" }", "", StringComparison.Ordinal);
        Assert.Equal("setup.json, line 10, column 14 (arrow.parts): an arrow has one point; the parts list 0.", Example.ErrorOf("setup.json", Text(none)));
        string two = Bench.Replace("\"insert\": { \"mass\": \"20 gr\", \"at\": \"28.6 in\" }", "\"sleeve\": { \"kind\": \"shaft\", \"mass\": \"9 gr\", \"from\": \"1 in\", \"length\": \"2 in\" }", StringComparison.Ordinal);
        Assert.Equal("setup.json, line 14, column 7 (arrow.parts.sleeve): an arrow has one shaft; the parts list 2.", Example.ErrorOf("setup.json", Text(two)));
    }

    static readonly Gen<LengthUnit> Unit = Gen.OneOf(LengthUnit.Millimeter, LengthUnit.Centimeter, LengthUnit.Inch);

    static Gen<Length> Lengths(double lowMetres, double highMetres) =>
        Unit.SelectMany(u => Gen.Double[Length.FromMeters(lowMetres).As(u), Length.FromMeters(highMetres).As(u)].Select(v => Length.From(v, u)));

    static readonly Gen<Mass> Masses = Gen.OneOf(Gen.Double[0, 9].Select(v => Mass.FromGrams(v)), Gen.Double[0, 150].Select(v => Mass.FromGrains(v)));

    static readonly Gen<VaneShape> Shapes =
        from count in Gen.Int[3, 8]
        from height in Lengths(0.003, 0.03)
        from tip in Lengths(0, 0.1)
        from sweep in Lengths(0, 0.1)
        from offset in Gen.Nullable(Gen.Double[-8, 8].Select(v => Angle.FromDegrees(v)))
        select new VaneShape { Count = count, Height = height, TipLength = tip, Sweep = sweep, Offset = offset };

    static readonly Gen<ArrowBench> Benches =
        from masses in Masses.Array[6]
        from shaftMass in Gen.Double[5, 25]
        from shaft in Lengths(0.6, 0.8)
        from vanesFrom in Lengths(0.02, 0.05)
        from vanes in Lengths(0.03, 0.1)
        from shape in Gen.Null(Shapes)
        from balance in Gen.Nullable(Lengths(0.2, 0.5))
        from sag in Gen.Nullable(Lengths(0.005, 0.05))
        from wood in Gen.Bool
        select new ArrowBench
        {
            Parts =
            [
                ArrowPart.Over(PartKind.Shaft, Mass.FromGrams(shaftMass), Length.Zero, shaft),
                ArrowPart.At(PartKind.Nock, masses[0], Length.FromMillimeters(3)),
                ArrowPart.Over(PartKind.Vanes, masses[1], vanesFrom, vanes),
                ArrowPart.At(PartKind.Insert, masses[2], Length.FromMeters(0.55)),
                ArrowPart.At(PartKind.Point, masses[3], shaft),
                ArrowPart.At(PartKind.Other, masses[4], Length.FromMeters(0.3)) with { Name = "\"weight\" é" },
                ArrowPart.At(PartKind.Adhesive, masses[5], Length.FromMeters(0.1)) with { Name = "point glue" },
            ],
            BalancePoint = balance,
            SpineSag = wood ? null : sag,
            WoodSpineSag = wood ? sag : null,
            Vanes = shape,
        };

    [Fact]
    public void A_bench_reads_back_as_it_was_written() => Benches.Sample(bench =>
    {
        using var folder = new ScratchFolder();
        var setup = Example.Setup with { ArrowBench = bench, Arrow = Example.Setup.Arrow with { Length = null } };
        SetupFile.Write(folder.Path("setup.json"), setup);
        Assert.Equal(setup, SetupFile.Read(folder.Path("setup.json")));
    });

    [Fact]
    public void A_vane_shape_without_vanes_and_parts_that_overlap_are_not_written()
    {
        using var folder = new ScratchFolder();
        var bench = Benches.Single();
        var shapeless = bench with { Vanes = Shapes.Single(), Parts = [.. bench.Parts.Where(p => p.Kind != PartKind.Vanes)] };
        Assert.Throws<ArgumentException>(() => SetupFile.Write(folder.Path("setup.json"), Example.Setup with { ArrowBench = shapeless }));
        var twice = bench with { Parts = [.. bench.Parts, bench.Parts[0] with { Name = "sleeve" }] };
        Assert.Throws<RecordException>(() => SetupFile.Write(folder.Path("setup.json"), Example.Setup with { ArrowBench = twice }));
        Assert.False(File.Exists(folder.Path("setup.json")));
    }

    [Fact]
    public void Every_key_of_the_bench_is_on_the_page_on_files()
    {
        string page = File.ReadAllText(House.Path("docs/files.md"));
        foreach (string key in (string[])["balance_point", "spine", "wood_spine", "parts", "mass_per_length", "at", "from", "length", "kind", "count", "height", "tip_length", "sweep", "offset"])
        {
            Assert.Matches($"`[^`]*\\b{key}\\b[^`]*`", page);
        }
    }
}
