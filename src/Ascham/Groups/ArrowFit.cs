namespace Ascham.Groups;

using Ascham.Numerics;
using MathNet.Numerics.LinearAlgebra;

/// <summary>One mark of a numbered arrow: which arrow, which end, and its offsets along one axis or two.</summary>
readonly record struct ArrowMark(int Arrow, int End, double[] Offset);

/// <summary>Numbered arrows seen through their ends: what is left to tell arrows apart when each end keeps its own centre.</summary>
/// <remarks>
/// With ends taken out, the sums q over each arrow have mean C b and covariance sigma² C, where b are the arrows' offsets. In the eigenvectors v of C (d its eigenvalues,
/// one of them zero) the numbers w = v'q/√d are independent normal with variance d tau² + sigma². One end and n shots of each arrow: all d equal n.
/// Searle, Casella and McCulloch, <i>Variance Components</i>, chapter 3 and section 6.6.
/// </remarks>
sealed class ArrowFit
{
    ArrowFit(string[] names, int axes) => (Names, Axes) = (names, axes);

    internal string[] Names { get; }

    /// <summary>Axes pooled: one or two.</summary>
    internal int Axes { get; }

    /// <summary>Shots of each arrow.</summary>
    internal required int[] Shots { get; init; }

    /// <summary>C.</summary>
    internal required Matrix<double> Information { get; init; }

    /// <summary>q, one column an axis.</summary>
    internal required Matrix<double> Sums { get; init; }

    /// <summary>d, without the zero.</summary>
    internal required double[] Eigenvalues { get; init; }

    /// <summary>v, one column an eigenvalue.</summary>
    internal required Matrix<double> Vectors { get; init; }

    /// <summary>w² added over axes, one for each eigenvalue.</summary>
    internal required double[] Squares { get; init; }

    /// <summary>Sum of squares within arrows and ends, both axes together.</summary>
    internal required double Within { get; init; }

    /// <summary>Degrees of freedom within, all axes together.</summary>
    internal required int FreedomWithin { get; init; }

    internal int FreedomBetween => Axes * (Names.Length - 1);

    internal double MeanSquareWithin => Within / FreedomWithin;

    internal double F => Squares.Sum() / FreedomBetween / MeanSquareWithin;

    /// <summary>Fits; refuses what cannot tell arrows apart.</summary>
    internal static ArrowFit Of(string[] names, IReadOnlyList<ArrowMark> marks)
    {
        int k = names.Length, ends = marks.Count == 0 ? 0 : marks.Max(m => m.End) + 1, axes = marks.Count == 0 ? 1 : marks[0].Offset.Length;
        if (k < 3)
        {
            throw new CannotTellException($"It takes three numbered arrows to say which one differs; there {(k == 1 ? "was 1" : $"were {k}")}. Compare two arrows as two groups.");
        }

        double[,] shots = new double[k, ends];
        foreach (ArrowMark mark in marks)
        {
            shots[mark.Arrow, mark.End]++;
        }

        Matrix<double> counts = Matrix<double>.Build.DenseOfArray(shots);
        Vector<double> perEnd = counts.ColumnSums(), perArrow = counts.RowSums();
        Matrix<double> part = counts.MapIndexed((_, e, n) => perEnd[e] > 0 ? n / perEnd[e] : 0), information = -part.TransposeAndMultiply(counts);
        information.SetDiagonal(information.Diagonal() + perArrow);
        var centred = Centred(marks, ends, axes, perEnd);
        LongSum[,] added = new LongSum[k, axes];
        for (int i = 0; i < marks.Count; i++)
        {
            for (int a = 0; a < axes; a++)
            {
                added[marks[i].Arrow, a].Add(centred[i][a]);
            }
        }

        Matrix<double> sums = Matrix<double>.Build.Dense(k, axes, (i, a) => added[i, a].Value);

        var spectrum = information.Evd(Symmetricity.Symmetric);
        int[] kept = [.. Enumerable.Range(0, k).Where(i => spectrum.EigenValues[i].Real > 1e-9 * perArrow.Maximum())];
        if (kept.Length < k - 1)
        {
            throw new CannotTellException("The numbered arrows cannot all be compared: some were never shot in the same end as the others, nor by way of a third. Mix them.");
        }

        double[] eigenvalues = [.. kept.Select(i => spectrum.EigenValues[i].Real)];
        Matrix<double> vectors = Matrix<double>.Build.DenseOfColumnVectors(kept.Select(i => spectrum.EigenVectors.Column(i))), along = vectors.TransposeThisAndMultiply(sums);
        Matrix<double> effects = vectors * along.MapIndexed((i, _, v) => v / eigenvalues[i]);
        int freedom = axes * (marks.Count - perEnd.Count(n => n > 0) - (k - 1));
        double within = ResidualSquares(marks, centred, effects, part);
        return freedom < 1 || within <= 1e-24 * centred.Sum(c => c.DotProduct(c)) || within == 0
            ? throw new CannotTellException(freedom < 1
                ? "The archer's own scatter cannot be told from the arrows': shoot each numbered arrow more than once."
                : "The archer's own scatter cannot be told: every arrow is recorded in its own same hole each time. Record impacts finer.")
            : new(names, axes)
            {
                Shots = [.. perArrow.Select(n => (int)n)],
                Information = information,
                Sums = sums,
                Eigenvalues = eigenvalues,
                Vectors = vectors,
                Squares = [.. along.EnumerateRows().Select((row, i) => row.DotProduct(row) / eigenvalues[i])],
                Within = within,
                FreedomWithin = freedom,
            };
    }

    // Marks less the mean of their end.
    static Vector<double>[] Centred(IReadOnlyList<ArrowMark> marks, int ends, int axes, Vector<double> perEnd)
    {
        Matrix<double> means = Matrix<double>.Build.Dense(ends, axes);
        Vector<double>[] offsets = [.. marks.Select(m => Vector<double>.Build.Dense(m.Offset))];
        // Twice over: the second pass takes out what the first left by rounding.
        for (int pass = 0; pass < 2; pass++)
        {
            means.Clear();
            for (int i = 0; i < marks.Count; i++)
            {
                means.SetRow(marks[i].End, means.Row(marks[i].End) + (offsets[i] / perEnd[marks[i].End]));
            }

            for (int i = 0; i < marks.Count; i++)
            {
                offsets[i] -= means.Row(marks[i].End);
            }
        }

        return offsets;
    }

    static double ResidualSquares(IReadOnlyList<ArrowMark> marks, Vector<double>[] centred, Matrix<double> effects, Matrix<double> part)
    {
        Matrix<double> endMeans = part.TransposeThisAndMultiply(effects);
        LongSum sum = default;
        for (int i = 0; i < marks.Count; i++)
        {
            Vector<double> residual = centred[i] - effects.Row(marks[i].Arrow) + endMeans.Row(marks[i].End);
            sum.Add(residual.DotProduct(residual));
        }

        return sum.Value;
    }
}
