namespace Ascham.Tests.ArrowsTests;

using Ascham.Arrows;
using Ascham.Tests.Checks;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using Xunit;

public class ColumnLoadTests
{
    [Theory] // Independent: a (M + 0.5315 m) L^2/(pi^2 EI), worked elsewhere; a = F/(arrow + 76.83 gr)
    [InlineData(50, 145, "0.908")]
    [InlineData(60, 145, "1.090")]
    [InlineData(70, 145, "1.271")]
    [InlineData(80, 145, "1.453")]
    [InlineData(50, 195, "0.974")]
    [InlineData(60, 195, "1.169")]
    [InlineData(70, 195, "1.364")]
    [InlineData(80, 195, "1.559")]
    public void The_worked_arrow_is_pressed_as_tabled(double pounds, double front, string ratio)
    {
        ArrowBuild build = FlexureTests.Worked(0, front, nock: 28);
        double mass = (build.Mass.Grains + 76.83) * 64.79891e-6;
        ColumnLoad load = ColumnLoad.Of(build, FlexureTests.Spine(340), Acceleration.FromMetersPerSecondSquared(pounds * 4.4482216 / mass));
        new Printed(ratio, "table of column loads").Matches(load.Ratio, slack: 1.2); // the table's acceleration is rounded
        new Printed("136.2", "pi^2 EI/L^2").Matches(load.EulerLoad.Newtons);
    }

    [Fact] // Independent
    public void The_nock_carries_everything_but_itself()
    {
        ArrowBuild build = FlexureTests.Worked(0, 145, nock: 28);
        new Printed("246", "a (m - nock), 987 g").Matches(ColumnLoad.Of(build, FlexureTests.Spine(340), Acceleration.FromStandardGravity(987)).NockForce.Newtons, 2); // a is rounded
    }

    [Theory] // Published: Euler; Greenhill 1881 (7.8373); the others worked out, Timoshenko and Gere ~18.6
    [InlineData("pinned", "pinned", true, "9.8696")]
    [InlineData("clamped", "free", true, "2.4674")]
    [InlineData("clamped", "free", false, "7.8373")]
    [InlineData("pinned", "pinned", false, "18.569")]
    [InlineData("clamped", "pinned", false, "52.50")]
    [InlineData("pinned", "clamped", false, "30.01")]
    [InlineData("clamped", "clamped", false, "74.63")]
    public void Elements_give_the_buckling_constants(string foot, string top, bool endLoad, string constant) =>
        new Printed(constant, "buckling constant").Matches(Critical(foot, top, x => endLoad ? 1 : 1 - x));

    [Fact] // Independent: own weight and end load critical together at 6.5309 EI/L^2; the straight sum of ratios is then 1.0134
    public void Own_weight_and_end_load_add_up_within_a_hair()
    {
        double both = Critical("pinned", "pinned", x => 1 + (1 - x));
        new Printed("6.5309", "pinned, own weight = end load").Matches(both);
        new Printed("1.0134", "sum of ratios").Matches(both / (Math.PI * Math.PI) + both / 18.5687);
    }

    [Theory] // Independent: the index against elements, masses anywhere
    [InlineData(145, 0)]
    [InlineData(145, 40)]
    [InlineData(60, 120)]
    public void The_index_is_within_one_and_a_half_per_cent_of_the_buckling_load(double front, double middle)
    {
        ArrowBuild build = FlexureTests.Worked(0, front);
        build = build with { Parts = [.. build.Parts, ArrowPart.At(PartKind.Other, Mass.FromGrains(middle), Length.FromInches(14.5))] };
        double a = 9000, index = ColumnLoad.Of(build, FlexureTests.Spine(340), Acceleration.FromMetersPerSecondSquared(a)).Ratio;
        const double Grain = 64.79891e-6, L = 29 * 0.0254;
        double unit = FlexureTests.Spine(340).BendingStiffness / (L * L);
        double critical = Critical("pinned", "pinned", x => a * Grain * (front + 246.5 * (1 - x) + (x < 0.5 ? middle : 0)) / unit);
        Assert.InRange(index * critical, 0.985, 1.015);
    }

    // The factor on a pressing force N(x) at which the column gives way: bending elements against the geometric stiffness, three Gauss points each.
    static double Critical(string foot, string top, Func<double, double> force)
    {
        const int N = 40;
        double h = 1.0 / N;
        var bending = Matrix<double>.Build.Dense(2 * N + 2, 2 * N + 2);
        var pressing = Matrix<double>.Build.Dense(2 * N + 2, 2 * N + 2);
        double[,] element = FlexureBeam.Stiffness(h);
        for (int e = 0; e < N; e++)
        {
            foreach (var (g, w) in new[] { (0.5 - Math.Sqrt(0.15), 5 / 18.0), (0.5, 8 / 18.0), (0.5 + Math.Sqrt(0.15), 5 / 18.0) })
            {
                double n = force((e + g) * h) * w * h;
                double[] slope = [6 * g * (g - 1) / h, (1 - g) * (1 - 3 * g), -6 * g * (g - 1) / h, g * (3 * g - 2)];
                for (int i = 0; i < 16; i++)
                {
                    pressing[2 * e + i / 4, 2 * e + i % 4] += n * slope[i / 4] * slope[i % 4];
                }
            }

            for (int i = 0; i < 16; i++)
            {
                bending[2 * e + i / 4, 2 * e + i % 4] += element[i / 4, i % 4];
            }
        }

        HashSet<int> held = [];
        Hold(foot, 0);
        Hold(top, 2 * N);
        int[] free = [.. Enumerable.Range(0, 2 * N + 2).Where(i => !held.Contains(i))];
        var inverse = Free(bending).Cholesky().Factor.Inverse();
        return 1 / (inverse * Free(pressing) * inverse.Transpose()).Evd(Symmetricity.Symmetric).EigenValues.Last().Real;

        void Hold(string how, int at)
        {
            if (how is "pinned" or "clamped")
            {
                held.Add(at);
            }

            if (how == "clamped")
            {
                held.Add(at + 1);
            }
        }

        Matrix<double> Free(Matrix<double> whole) => Matrix<double>.Build.Dense(free.Length, free.Length, (i, j) => whole[free[i], free[j]]);
    }
}
