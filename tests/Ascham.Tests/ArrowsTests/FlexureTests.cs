namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using CsCheck;
using Xunit;

public class FlexureTests
{
    const string FreeFree = "cos b cosh b = 1; also W. T. Thomson, Theory of Vibration with Applications, appendix D";
    const string EndMass = "(1-cos b cosh b) + b(m1+m2)(sin b cosh b - cos b sinh b) + 2 m1 m2 b^2 sin b sinh b = 0";

    [Fact] // Published roots
    public void A_bare_shaft_has_the_roots_and_nodes_of_a_free_beam()
    {
        var modes = new FlexureBeam([], [], 200).Modes(4);
        string[] roots = ["4.730041", "7.853205", "10.995608", "14.137165"];
        string[][] nodes = [["0.224158", "0.775842"], ["0.132108", "0.5", "0.867892"], ["0.094443", "0.355803", "0.644197", "0.905557"], ["0.073453", "0.276780", "0.5"]];
        for (int i = 0; i < 4; i++)
        {
            new Printed(roots[i], FreeFree).Matches(Root(modes[i].Square), slack: i == 3 ? 3 : 1); // fourth mode: 200 elements leave 1e-6
            double[] zeros = [.. modes[i].Shape.Zeros()];
            for (int n = 0; n < nodes[i].Length; n++)
            {
                new Printed(nodes[i][n], FreeFree).Matches(zeros[n]);
            }
        }

        new Printed("-1.6452", FreeFree).Matches(modes[0].Shape.At(0) / modes[0].Shape.At(0.5)); // 2.000/-1.215645
    }

    [Theory] // Independent: the frequency equation with end masses, solved elsewhere
    [InlineData(0, 0.05, "4.54624", "7.58494", "10.66097", "0.2330", "0.8089")]
    [InlineData(0, 0.10, "4.43027", "7.44986", "10.52183", "0.2388", "0.8333")]
    [InlineData(0, 0.20, "4.29292", "7.31747", "10.40159", "0.2457", "0.8669")]
    [InlineData(0, 0.50, "4.12814", "7.18983", "10.29846", "0.2540", "0.9166")]
    [InlineData(0, 1.00, "4.04183", "7.13384", "10.25663", "0.2584", "0.9484")]
    [InlineData(0.1, 0.1, "4.15566", "7.06825", "10.06568", "0.1807", "0.8193")]
    [InlineData(0.5, 0.5, "3.57683", "6.54657", "9.61268", "0.1039", "0.8961")]
    [InlineData(0.05, 0.5, "3.96994", "6.94144", "9.97967", "0.2213", "0.9111")]
    [InlineData(0.2, 0.5, "3.73798", "6.67845", "9.71960", "0.1602", "0.9024")]
    public void End_masses_move_roots_and_nodes(double rear, double front, string b1, string b2, string b3, string node1, string node2)
    {
        var modes = new FlexureBeam([new(0, rear, 0), new(1, front, 0)], [], 100).Modes(3);
        string[] roots = [b1, b2, b3];
        for (int i = 0; i < 3; i++)
        {
            new Printed(roots[i], EndMass).Matches(Root(modes[i].Square), slack: 1.1); // 100 elements leave 1e-6 of the third
        }

        double[] zeros = [.. modes[0].Shape.Zeros()];
        new Printed(node1, EndMass).Matches(zeros[0]);
        new Printed(node2, EndMass).Matches(zeros[1]);
    }

    [Fact] // Independent: pinned at the front, free at the rear, as an infinite mass there would be
    public void A_huge_mass_pins_its_end() => new Printed("3.9266", "tan b = tanh b").Matches(Root(new FlexureBeam([new(1, 1e6, 0)], [], 100).Modes(1)[0].Square));

    [Theory] // Independent: cubic elements with consistent mass, worked elsewhere
    [InlineData(4, "86.0109", "265.190", "554.205")]
    [InlineData(8, "85.9754", "264.149", "546.662")]
    [InlineData(16, "85.9729", "264.0693", "545.948")]
    [InlineData(32, "85.97275", "264.0641", "545.9007")]
    public void The_arrow_of_the_element_table_has_its_frequencies(int elements, string f1, string f2, string f3)
    {
        string[] printed = [f1, f2, f3];
        double[] found = Frequencies(elements);
        for (int i = 0; i < 3; i++)
        {
            new Printed(printed[i], "29 in, 8.5 gpi, 0.340 in, 10 gr and 145 gr at the ends").Matches(found[i]);
        }
    }

    [Theory] // Order
    [InlineData(0, 85.9727)]
    [InlineData(1, 264.0638)]
    [InlineData(2, 545.8974)]
    public void Frequencies_converge_with_the_fourth_power_of_the_element(int mode, double near)
    {
        double exact = Exact(mode);
        Assert.Equal(near, exact, 4);
        Assert.All(Order.Observed(n => Frequencies(n)[mode] - exact, 8, 2), p => Assert.InRange(p, 3.9, 4.15));
    }

    [Fact]
    public void The_two_motions_without_bending_have_no_frequency()
    {
        Assert.True(new FlexureBeam([new(0, 0.04, 0), new(1, 0.6, 0)], [], 48).RigidResidue() < 1e-7);
        Assert.True(new FlexureBeam([new(-0.01, 0.04, 0), new(1.03, 0.6, 1e-4)], [new(0.05, 0.1, 0.1)], 48).RigidResidue() < 1e-7);
    }

    [Fact] // Independent: the same table, 48 elements
    public void A_build_has_the_frequencies_nodes_and_shape_of_the_worked_arrow()
    {
        ArrowFlexure bare = ArrowFlexure.Of(Worked(0, 145), Spine(340)), fletched = ArrowFlexure.Of(Worked(18, 145), Spine(340));
        new Printed("86.0", "element table").Matches(bare.Modes[0].Frequency.Hertz);
        new Printed("264.1", "element table").Matches(bare.Modes[1].Frequency.Hertz);
        new Printed("545.9", "element table").Matches(bare.Modes[2].Frequency.Hertz);
        new Printed("82.73", "element table").Matches(fletched.Modes[0].Frequency.Hertz);
        new Printed("261.52", "element table").Matches(fletched.Modes[1].Frequency.Hertz);
        new Printed("545.80", "element table").Matches(fletched.Modes[2].Frequency.Hertz, slack: 2); // 48 elements leave 0.001 Hz

        FlexuralMode first = fletched.Modes[0];
        new Printed("5.97", "element table").Matches(first.Nodes[0].Inches);
        new Printed("26.63", "element table").Matches(first.Nodes[1].Inches);
        Assert.InRange(first.Nodes[0].Millimeters, 140, 165); // "about 150 mm from the tail": J. Park, Flex in free flight
        double antinode = Enumerable.Range(80, 140).Min(i => first.DisplacementAt((i / 10.0).Inches));
        new Printed("-1.132", "element table").Matches(first.DisplacementAt(0.Inches) / antinode);
        new Printed("-0.393", "element table").Matches(first.DisplacementAt(29.Inches) / antinode);
    }

    [Theory] // Independent: the same, other arrows, with 18 gr of vanes
    [InlineData(29, 8.5, 340, 120, 18, "83.91")]
    [InlineData(29, 8.5, 340, 170, 18, "81.84")]
    [InlineData(29, 8.5, 340, 195, 18, "81.13")]
    [InlineData(28, 8.5, 340, 145, 18, "88.41")]
    [InlineData(30, 8.5, 340, 145, 18, "77.60")]
    [InlineData(29, 9.5, 300, 145, 18, "84.65")]
    [InlineData(29, 7.5, 400, 120, 18, "80.83")]
    [InlineData(29, 6.5, 500, 100, 15, "77.48")]
    public void Other_arrows_swing_as_in_the_table(double length, double grainsPerInch, double spine, double front, double vanes, string hertz) =>
        new Printed(hertz, "element table").Matches(ArrowFlexure.Of(Worked(vanes, front, length, grainsPerInch), Spine(spine)).Modes[0].Frequency.Hertz);

    [Fact] // Relation
    public void Stiffer_is_never_lower_in_frequency() =>
        Gen.Select(BuildGen.Any, Gen.Double[200, 900], Gen.Double[0.5, 1]).Sample((build, number, factor) =>
        {
            var limp = ArrowFlexure.Of(build, Spine(number)).Modes;
            return ArrowFlexure.Of(build, Spine(number * factor)).Modes.Zip(limp, (s, l) => s.Frequency >= l.Frequency).All(x => x);
        }, iter: 20);

    [Fact] // Relation: Rayleigh
    public void Mass_added_anywhere_never_raises_a_frequency() =>
        Gen.Select(BuildGen.Any, Gen.Double[0, 60], Gen.Double[1, 23]).Sample((build, grains, at) =>
        {
            var heavier = build with { Parts = [.. build.Parts, ArrowPart.At(PartKind.Other, grains.Grains, at.Inches)] };
            var light = ArrowFlexure.Of(build, Spine(400)).Modes;
            return ArrowFlexure.Of(heavier, Spine(400)).Modes.Zip(light, (h, l) => h.Frequency.Hertz <= l.Frequency.Hertz * (1 + 1e-5)).All(x => x); // meshes differ
        }, iter: 20);

    /// <summary>The arrow of the table: a shaft from the slot on, all else at points.</summary>
    internal static ArrowBuild Worked(double vanes, double front, double length = 29, double grainsPerInch = 8.5, double nock = 10) => new()
    {
        Parts =
        [
            ArrowPart.Shaft(grainsPerInch, 0.Inches, length.Inches), ArrowPart.At(PartKind.Nock, nock.Grains, 0.Inches),
            ArrowPart.At(PartKind.Vanes, vanes.Grains, 2.Inches), ArrowPart.At(PartKind.Point, front.Grains, length.Inches),
        ],
    };

    internal static StaticSpine Spine(double number) => StaticSpine.FromNumber(number);

    static double Root(double square) => Math.Pow(square, 0.25);

    static double Unit => Math.Sqrt(Spine(340).BendingStiffness / (29 * 8.5 * 64.79891e-6 * Math.Pow(29 * 0.0254, 3))) / (2 * Math.PI);

    static double[] Frequencies(int elements) =>
        [.. new FlexureBeam([new(0, 10 / 246.5, 0), new(1, 145 / 246.5, 0)], [], elements).Modes(3).Select(m => Unit * Math.Sqrt(m.Square))];

    // The root of the frequency equation near the one that 32 elements find.
    static double Exact(int mode)
    {
        const double M1 = 10 / 246.5, M2 = 145 / 246.5;
        static double Equation(double b) => 1 - Math.Cos(b) * Math.Cosh(b) + b * (M1 + M2) * (Math.Sin(b) * Math.Cosh(b) - Math.Cos(b) * Math.Sinh(b))
            + 2 * M1 * M2 * b * b * Math.Sin(b) * Math.Sinh(b);
        double near = Math.Sqrt(Frequencies(32)[mode] / Unit), b = MathNet.Numerics.RootFinding.Brent.FindRoot(Equation, near - 0.05, near + 0.05, 1e-14);
        return Unit * b * b;
    }
}
