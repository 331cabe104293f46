namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Quantities;
using CsCheck;

/// <summary>Arrows of physical size, and the worked one.</summary>
static class BuildGen
{
    /// <summary>29.0 in, 8.5 gpi, with a point of this mass: the arrow whose figures were worked elsewhere.</summary>
    public static ArrowBuild Worked(double point) => new()
    {
        Parts =
        [
            ArrowPart.Shaft(8.5, 0.5.Inches, 28.5.Inches),
            ArrowPart.At(PartKind.Nock, 10.Grains, 0.25.Inches),
            ArrowPart.Over(PartKind.Vanes, 18.Grains, 1.5.Inches, 2.Inches),
            ArrowPart.At(PartKind.Insert, 20.Grains, 28.6.Inches),
            ArrowPart.At(PartKind.Point, point.Grains, 29.35.Inches),
        ],
    };

    public static readonly Gen<ArrowBuild> Any =
        from grainsPerInch in Gen.Double[4, 14]
        from length in Gen.Double[24, 33]
        from nock in Gen.Double[4, 15]
        from insert in Gen.Double[0, 120]
        from point in Gen.Double[60, 250]
        from vanes in Gen.Double[6, 40]
        from vaneFrom in Gen.Double[0.7, 3]
        from wrap in Gen.Double[0, 10]
        select new ArrowBuild
        {
            Parts =
            [
                ArrowPart.Shaft(grainsPerInch, 0.4.Inches, length.Inches),
                ArrowPart.At(PartKind.Nock, nock.Grains, 0.2.Inches),
                ArrowPart.Over(PartKind.Vanes, vanes.Grains, vaneFrom.Inches, 2.5.Inches),
                ArrowPart.Over(PartKind.Wrap, wrap.Grains, 0.5.Inches, 4.Inches),
                ArrowPart.Over(PartKind.Insert, insert.Grains, (length - 1).Inches, 1.Inches),
                ArrowPart.Over(PartKind.Point, point.Grains, (length + 0.4).Inches, 1.2.Inches),
            ],
        };
}
