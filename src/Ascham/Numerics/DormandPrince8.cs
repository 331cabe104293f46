namespace Ascham.Numerics;

using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

/// <summary>The right-hand side of dy/dx = f(x, y) for states that are plain blocks of doubles.</summary>
interface IRates<TState>
    where TState : unmanaged
{
    void At(double x, in TState y, out TState rates);
}

/// <summary>One fixed step of an explicit Runge-Kutta method of order 8 with 12 stages, for large states that oscillate.</summary>
/// <remarks>
/// The formula of order 8 in DOP853: E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd ed.
/// (1993), section II.10, after P. J. Prince and J. R. Dormand, J. Comput. Appl. Math. 7 (1981) 67-75. On an oscillation its
/// error at equal work is about a hundredth of <see cref="RungeKutta8"/>'s, which has the cheaper integrals.
/// States are summed as blocks of doubles, several at once, so a state may be of numbers or of lanes of numbers alike.
/// </remarks>
static class DormandPrince8
{
    /// <summary>Stages of one step: the caller lends a span of this many states, so that nothing is allocated.</summary>
    internal const int Stages = 12;

    // Where each stage stands in the step.
    static ReadOnlySpan<double> Nodes =>
        [0, 0.05260015195876773, 0.0789002279381516, 0.1183503419072274, 0.2816496580927726, 1.0 / 3, 0.25, 4.0 / 13, 0.6512820512820513, 0.6, 6.0 / 7, 1];

    // One row per stage, how much of each earlier stage it takes; the last row holds the weights of the step itself.
    static ReadOnlySpan<double> Rows =>
    [
        0.05260015195876773,
        0.0197250569845379, 0.0591751709536137,
        0.02958758547680685, 0, 0.08876275643042054,
        0.2413651341592667, 0, -0.8845494793282861, 0.924834003261792,
        0.037037037037037035, 0, 0, 0.17082860872947386, 0.12546768756682242,
        0.037109375, 0, 0, 0.17025221101954405, 0.06021653898045596, -0.017578125,
        0.03709200011850479, 0, 0, 0.17038392571223998, 0.10726203044637328, -0.015319437748624402, 0.008273789163814023,
        0.6241109587160757, 0, 0, -3.3608926294469414, -0.868219346841726, 27.59209969944671, 20.154067550477894, -43.48988418106996,
        0.47766253643826434, 0, 0, -2.4881146199716677, -0.590290826836843, 21.230051448181193, 15.279233632882423, -33.28821096898486, -0.020331201708508627,
        -0.9371424300859873, 0, 0, 5.186372428844064, 1.0914373489967295, -8.149787010746927, -18.52006565999696, 22.739487099350505, 2.4936055526796523, -3.0467644718982196,
        2.273310147516538, 0, 0, -10.53449546673725, -2.0008720582248625, -17.9589318631188, 27.94888452941996, -2.8589982771350235, -8.87285693353063, 12.360567175794303, 0.6433927460157636,
        0.054293734116568765, 0, 0, 0, 0, 4.450312892752409, 1.8915178993145003, -5.801203960010585, 0.3111643669578199, -0.1521609496625161, 0.20136540080403034, 0.04471061572777259,
    ];

    /// <summary>Steps from (x, y) to x + h.</summary>
    /// <param name="rates">The right-hand side.</param>
    /// <param name="x">Where the step starts.</param>
    /// <param name="y">State there.</param>
    /// <param name="h">Length of the step.</param>
    /// <param name="stages">Room to work in, <see cref="Stages"/> long; left holding the stages.</param>
    /// <param name="end">State at x + h.</param>
    internal static void Step<TRates, TState>(in TRates rates, double x, in TState y, double h, Span<TState> stages, out TState end)
        where TRates : struct, IRates<TState>
        where TState : unmanaged
    {
        TState start = y; // y and end may be the same variable
        rates.At(x, start, out stages[0]);
        int row = 0;
        end = start;
        for (int stage = 1; stage <= Stages; stage++)
        {
            Add(start, h, Rows.Slice(row, stage), stages, ref end);
            row += stage;
            if (stage < Stages)
            {
                rates.At(x + Nodes[stage] * h, end, out stages[stage]);
            }
        }
    }

    // sum = y + h (share 1 of stage 1 + share 2 of stage 2 + ...), sixteen numbers at once and the rest one by one.
    // Sixteen, because four sums that do not wait for each other take a quarter of the time of one after the other.
    static void Add<TState>(in TState y, double h, ReadOnlySpan<double> shares, Span<TState> stages, ref TState sum)
        where TState : unmanaged
    {
        ReadOnlySpan<double> from = MemoryMarshal.Cast<TState, double>(new ReadOnlySpan<TState>(in y)), all = MemoryMarshal.Cast<TState, double>(stages);
        Span<double> to = MemoryMarshal.Cast<TState, double>(new Span<TState>(ref sum));
        int size = from.Length, i = 0;
        for (; i <= size - 16; i += 16)
        {
            Vector256<double> a = default, b = default, c = default, d = default;
            for (int k = 0; k < shares.Length; k++)
            {
                ref readonly double stage = ref all[k * size + i];
                Vector256<double> share = Vector256.Create(shares[k]);
                a += share * Vector256.LoadUnsafe(in stage);
                b += share * Vector256.LoadUnsafe(in stage, 4);
                c += share * Vector256.LoadUnsafe(in stage, 8);
                d += share * Vector256.LoadUnsafe(in stage, 12);
            }

            ref readonly double start = ref from[i];
            ref double end = ref to[i];
            (Vector256.LoadUnsafe(in start) + h * a).StoreUnsafe(ref end);
            (Vector256.LoadUnsafe(in start, 4) + h * b).StoreUnsafe(ref end, 4);
            (Vector256.LoadUnsafe(in start, 8) + h * c).StoreUnsafe(ref end, 8);
            (Vector256.LoadUnsafe(in start, 12) + h * d).StoreUnsafe(ref end, 12);
        }

        for (; i < size; i++)
        {
            double total = 0;
            for (int k = 0; k < shares.Length; k++)
            {
                total += shares[k] * all[k * size + i];
            }

            to[i] = from[i] + h * total;
        }
    }
}
