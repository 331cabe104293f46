namespace Ascham.Records;

using Ascham.Arrows;
using UnitsNet;

/// <summary>The quantities and words of an arrow's parts; ranges stay inside those of <see cref="ArrowPart"/> and <see cref="Fletching"/>.</summary>
static class ArrowBenchMeasures
{
    const double GrainsPerInch = 0.06479891 / 0.0254; // g/m, exact; UnitsNet knows no grains per inch

    internal static readonly Measure<Mass> PartMass =
        new("a mass", "125 gr", Mass.Zero, Mass.FromGrams(150), Units.Masses);

    internal static readonly Measure<LinearDensity> MassPerLength =
        new("a mass per length", "8.5 gr/in", LinearDensity.Zero, LinearDensity.FromGramsPerMeter(75), [
            new("g/m", "grams per metre", v => LinearDensity.FromGramsPerMeter(v), d => d.GramsPerMeter, _ => false),
            new("gr/in", "grains per inch", v => LinearDensity.FromGramsPerMeter(v * GrainsPerInch), d => d.GramsPerMeter / GrainsPerInch, _ => false)])
        { Above = true };

    internal static readonly Measure<Length> Place =
        new("a place", "27.5 in", Length.FromMeters(-1.5), Length.FromMeters(1.5), Units.Lengths);

    internal static readonly Measure<Length> PartLength =
        new("a length", "1.5 in", Length.Zero, Length.FromMeters(1.5), Units.Lengths) { Above = true };

    internal static readonly Measure<Length> Sag =
        new("a spine reading", "0.340 in", Length.FromInches(0.1), Length.FromInches(2.5), Units.SmallLengths);

    internal static readonly Measure<Length> VaneHeight =
        new("a length", "0.5 in", Length.Zero, Length.FromMillimeters(60), Units.SmallLengths) { Above = true };

    internal static readonly Measure<Length> VaneLength =
        new("a length", "1 in", Length.Zero, Length.FromMillimeters(300), Units.SmallLengths);

    internal static readonly Measure<Angle> VaneOffset =
        new("an angle", "2 deg", Angle.FromDegrees(-9), Angle.FromDegrees(9), Units.Angles);

    internal static readonly Words<PartKind> Kinds = new([.. Enum.GetValues<PartKind>().Select(k => (Word(k), k))]);

    internal static string Word(PartKind kind) => kind.ToString().ToLowerInvariant();
}
