namespace Ascham.Tests.GroupsTests;

using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Tests.AirTests;
using UnitsNet;
using Xunit;

public class RingScoreTests
{
    public static TheoryData<int> Rows => AuthorityFile.Rows("ring-probabilities.csv");

    // Ten rings of unit width: a face 20 units across.
    static readonly FaceGeometry UnitRings = FaceGeometry.TenZones(20.Centimetres);

    [Theory]
    [MemberData(nameof(Rows))]
    public void Scores_agree_with_the_table(int row)
    {
        var table = new AuthorityFile("ring-probabilities.csv");
        Scatter scatter = Scatter.Round(new(Length.Zero, table.Value(row, "offset").Centimetres), table.Value(row, "sigma").Centimetres);
        ZoneScore score = RingScore.Of(UnitRings, 2 * table.Value(row, "line_cut_allowance").Centimetres, scatter);

        table.Cell(row, "expected_score")!.Matches(score.Mean);
        table.Cell(row, "sd_score")!.Matches(score.StandardDeviation);
        foreach (ZoneShare zone in score.Zones)
        {
            Assert.Equal(table.Value(row, $"p_ring_value_{zone.Value}"), zone.Probability, 5e-9); // difference of two probabilities
        }

        Assert.Equal(1, score.Zones.Sum(z => z.Probability) + score.Miss, 1e-12);
    }

    [Fact] // World Archery: the 122 cm face has a 12.2 cm ten
    public void The_ten_of_the_large_face_is_a_tenth_of_it()
    {
        FaceGeometry face = FaceGeometry.TenZones(122.Centimetres);
        Assert.Equal(12.2, face.Zones[0].Diameter.Centimeters, 1e-12);
        Assert.Equal((10, 1, 10), (face.Zones[0].Value, face.Zones[^1].Value, face.Zones.Count));
        Assert.Equal(122, face.Zones[^1].Diameter.Centimeters, 1e-12);
    }

    [Fact] // NFAA: 65 cm face, rings 65, 52, 39, 26 and 13 cm scored 5-4-3
    public void The_field_face_scored_five_four_three_has_its_printed_rings() =>
        Assert.Equal([(13, 5), (39, 4), (65, 3)], FaceGeometry.FieldThreeScores(65.Centimetres).Zones.Select(z => (Math.Round(z.Diameter.Centimeters, 9), z.Value)));

    [Fact] // World Archery field: 80 cm face, five equal widths of 8 cm, the spot parted at 8 cm
    public void The_six_zone_face_has_equal_widths() =>
        Assert.Equal([(8, 6), (16, 5), (32, 4), (48, 3), (64, 2), (80, 1)], FaceGeometry.FieldSixZones(80.Centimetres).Zones.Select(z => (Math.Round(z.Diameter.Centimeters, 9), z.Value)));

    [Fact] // World Archery 40 cm face for the compound bow indoors: ten 2 cm, nine 8 cm
    public void The_small_ten_leaves_the_rest_of_the_ten_to_the_nine()
    {
        FaceGeometry face = FaceGeometry.TenZonesSmallTen(40.Centimetres);
        Assert.Equal([(2, 10), (8, 9), (12, 8)], face.Zones.Take(3).Select(z => (Math.Round(z.Diameter.Centimeters, 9), z.Value)));
    }

    [Fact]
    public void An_innermost_part_scores_nothing_outside()
    {
        FaceGeometry whole = FaceGeometry.TenZones(80.Centimetres), part = whole.Innermost(5);
        Scatter scatter = Scatter.Round(Simulated.At(0, 0), 12.Centimetres);
        Assert.Equal(RingScore.Of(whole, Length.Zero, scatter).Zones.Skip(5).Sum(z => z.Probability) + RingScore.Of(whole, Length.Zero, scatter).Miss,
            RingScore.Of(part, Length.Zero, scatter).Miss, 1e-12);
        Assert.Equal(6, part.Zones[^1].Value);
    }

    [Fact]
    public void A_fatter_shaft_scores_no_less()
    {
        Scatter scatter = Scatter.Round(Simulated.At(0.02, 0.01), 5.Centimetres);
        FaceGeometry face = FaceGeometry.TenZones(80.Centimetres);
        Assert.True(RingScore.Of(face, 9.3.Millimetres, scatter).Mean > RingScore.Of(face, 5.Millimetres, scatter).Mean);
    }

    [Fact]
    public void All_in_one_hole_scores_its_zone()
    {
        ZoneScore score = RingScore.Of(UnitRings, Length.Zero, Scatter.Round(Simulated.At(0, 0.025), Length.Zero));
        Assert.Equal((8, 0), (score.Mean, score.StandardDeviation));
    }

    [Fact] // every face says where it comes from
    public void Sources_and_their_confidence_are_stated()
    {
        Assert.All(
            new[] { FaceGeometry.TenZones(80.Centimetres), FaceGeometry.TenZonesSmallTen(40.Centimetres), FaceGeometry.FieldSixZones(80.Centimetres), FaceGeometry.FieldThreeScores(65.Centimetres) },
            face => Assert.Contains("memory", face.Source, StringComparison.Ordinal));
    }

    [Fact]
    public void Bad_faces_are_refused_by_name()
    {
        Assert.Contains("zones must grow outwards; zone 2 has 1 cm, the one inside it 2 cm", Assert.Throws<ArgumentException>(
            () => new FaceGeometry("wrong", [new(2.Centimetres, 10), new(1.Centimetres, 9)], "made up")).Message, StringComparison.Ordinal);
        Assert.Contains("at least one zone", Assert.Throws<ArgumentException>(() => new FaceGeometry("none", [], "made up")).Message, StringComparison.Ordinal);
        Assert.Contains("diameter must be positive", Assert.Throws<ArgumentOutOfRangeException>(() => FaceGeometry.TenZones(Length.Zero)).Message, StringComparison.Ordinal);
        Assert.Contains("zones must be from 1 to 10", Assert.Throws<ArgumentOutOfRangeException>(() => UnitRings.Innermost(11)).Message, StringComparison.Ordinal);
        Assert.Contains("shaftDiameter must be zero or more", Assert.Throws<ArgumentOutOfRangeException>(
            () => RingScore.Of(UnitRings, (-1).Millimetres, Scatter.Round(Simulated.At(0, 0), 1.Metres))).Message, StringComparison.Ordinal);
    }
}
