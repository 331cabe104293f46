namespace Ascham.Arrows;

using MathNet.Numerics.LinearAlgebra;

/// <summary>A mass fixed to the beam; beyond an end it is carried by the end as by a rigid arm.</summary>
/// <param name="At">Place over the length of the beam; 0 to 1 on it.</param>
/// <param name="Mass">In units of the beam's own mass.</param>
/// <param name="Inertia">About its own centre, in units of mass times length squared.</param>
readonly record struct BeamMass(double At, double Mass, double Inertia);

/// <summary>Mass spread over a stretch of the beam, without stiffness of its own.</summary>
/// <param name="From">Begin, 0 to 1.</param>
/// <param name="To">End, above it, to 1.</param>
/// <param name="Mass">In units of the beam's own mass.</param>
readonly record struct BeamLoad(double From, double To, double Mass);

/// <summary>A uniform beam with free ends and masses on it, in pure numbers: length, mass and stiffness of the beam are 1.</summary>
/// <remarks>
/// Euler-Bernoulli elements with cubic shapes and consistent mass; nodes at every mass and every end of a load. The frequencies
/// converge from above with the fourth power of the element's length. R. W. Clough and J. Penzien, Dynamics of Structures (from memory).
/// </remarks>
sealed class FlexureBeam
{
    readonly double[] nodes;
    readonly Matrix<double> stiffness, mass;

    /// <summary>A beam with its masses.</summary>
    /// <param name="masses">Point masses, in any order.</param>
    /// <param name="loads">Spread masses.</param>
    /// <param name="elements">Elements over the whole length, more where masses ask for it; at least 1.</param>
    internal FlexureBeam(IReadOnlyList<BeamMass> masses, IReadOnlyList<BeamLoad> loads, int elements)
    {
        nodes = Nodes([.. masses.Select(m => m.At), .. loads.SelectMany(l => (double[])[l.From, l.To])], elements);
        int size = 2 * nodes.Length;
        (stiffness, mass) = (Matrix<double>.Build.Dense(size, size), Matrix<double>.Build.Dense(size, size));
        for (int e = 0; e + 1 < nodes.Length; e++)
        {
            double h = nodes[e + 1] - nodes[e], middle = nodes[e] + 0.5 * h;
            double perLength = 1 + loads.Where(l => l.From < middle && middle < l.To).Sum(l => l.Mass / (l.To - l.From));
            Add(stiffness, 2 * e, Stiffness(h), 1);
            Add(mass, 2 * e, ConsistentMass(h), perLength);
        }

        foreach (BeamMass point in masses)
        {
            AddMass(point);
        }
    }

    /// <summary>The lowest bending modes: square of the frequency in units of EI/(m l³), and the shape.</summary>
    /// <param name="count">How many.</param>
    internal IReadOnlyList<(double Square, BeamShape Shape)> Modes(int count)
    {
        Matrix<double> inverse = mass.Cholesky().Factor.Inverse();
        Matrix<double> reduced = inverse * stiffness * inverse.Transpose();
        var eigen = ((reduced + reduced.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        Matrix<double> shapes = inverse.TransposeThisAndMultiply(eigen.EigenVectors);

        // The first two are the beam moving and turning as a whole, with frequency zero up to rounding.
        return [.. Enumerable.Range(2, count).Select(i => (eigen.EigenValues[i].Real, new BeamShape(nodes, shapes.Column(i).ToArray())))];
    }

    /// <summary>The two motions without bending, relative to the first bending mode: zero up to rounding.</summary>
    internal double RigidResidue()
    {
        Matrix<double> inverse = mass.Cholesky().Factor.Inverse();
        var values = (inverse * stiffness * inverse.Transpose()).Evd(Symmetricity.Symmetric).EigenValues;
        return Math.Max(Math.Abs(values[0].Real), Math.Abs(values[1].Real)) / values[2].Real;
    }

    internal static double[,] Stiffness(double h)
    {
        double a = 12 / (h * h * h), b = 6 / (h * h), c = 4 / h, d = 2 / h;
        return new[,] { { a, b, -a, b }, { b, c, -b, d }, { -a, -b, a, -b }, { b, d, -b, c } };
    }

    static double[,] ConsistentMass(double h)
    {
        double u = h / 420, v = h * u, w = h * v;
        return new[,]
        {
            { 156 * u, 22 * v, 54 * u, -13 * v }, { 22 * v, 4 * w, 13 * v, -3 * w },
            { 54 * u, 13 * v, 156 * u, -22 * v }, { -13 * v, -3 * w, -22 * v, 4 * w },
        };
    }

    void AddMass(BeamMass point)
    {
        double at = Math.Clamp(point.At, 0, 1), arm = point.At - at;
        int w = 2 * Array.FindIndex(nodes, n => Math.Abs(n - at) < Same), turn = w + 1;
        mass[w, w] += point.Mass;
        mass[w, turn] += point.Mass * arm;
        mass[turn, w] += point.Mass * arm;
        mass[turn, turn] += point.Mass * arm * arm + point.Inertia;
    }

    static void Add(Matrix<double> whole, int at, double[,] part, double factor)
    {
        for (int i = 0; i < 4; i++)
        {
            for (int j = 0; j < 4; j++)
            {
                whole[at + i, at + j] += factor * part[i, j];
            }
        }
    }

    const double Same = 1e-6; // of the length: closer places share a node

    static double[] Nodes(IEnumerable<double> breaks, int elements)
    {
        List<double> corners = [0];
        foreach (double at in breaks.Append(1).Where(b => b is >= 0 and <= 1).Order())
        {
            if (at - corners[^1] > Same)
            {
                corners.Add(at);
            }
        }

        List<double> all = [0];
        for (int i = 1; i < corners.Count; i++)
        {
            double from = corners[i - 1], stretch = corners[i] - from;
            int pieces = (int)Math.Ceiling(stretch * elements - 1e-9);
            all.AddRange(Enumerable.Range(1, pieces).Select(k => k == pieces ? corners[i] : from + stretch * k / pieces));
        }

        return [.. all];
    }
}

/// <summary>Sideways displacement along a bending beam, on an arbitrary scale.</summary>
/// <param name="nodes">Places, 0 to 1.</param>
/// <param name="values">Displacement and slope at each.</param>
sealed class BeamShape(double[] nodes, double[] values)
{
    /// <summary>Displacement at a place; beyond the ends straight on.</summary>
    internal double At(double x)
    {
        if (x <= 0 || x >= 1)
        {
            int end = x <= 0 ? 0 : nodes.Length - 1;
            return values[2 * end] + (x - nodes[end]) * values[2 * end + 1];
        }

        int found = Array.BinarySearch(nodes, x), e = Math.Min(found < 0 ? ~found - 1 : found, nodes.Length - 2);
        double h = nodes[e + 1] - nodes[e], s = (x - nodes[e]) / h, r = 1 - s;
        return values[2 * e] * r * r * (1 + 2 * s) + values[2 * e + 1] * h * s * r * r
            + values[2 * e + 2] * s * s * (1 + 2 * r) - values[2 * e + 3] * h * s * s * r;
    }

    /// <summary>Where it crosses zero, on the beam.</summary>
    internal IEnumerable<double> Zeros()
    {
        const int Looks = 400;
        for (int i = 0; i < Looks; i++)
        {
            double low = (double)i / Looks, high = (i + 1.0) / Looks;
            if (At(low) * At(high) < 0)
            {
                yield return MathNet.Numerics.RootFinding.Brent.FindRoot(At, low, high, 1e-12);
            }
        }
    }
}
