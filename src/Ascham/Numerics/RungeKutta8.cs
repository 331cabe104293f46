namespace Ascham.Numerics;

using System.Runtime.CompilerServices;

/// <summary>One fixed step of an explicit Runge-Kutta method of order 8 with 11 stages.</summary>
/// <remarks>
/// G. J. Cooper and J. H. Verner, "Some explicit Runge-Kutta methods of high order", SIAM J. Numer. Anal. 9 (1972) 389-405.
/// Its weights are those of the five-point Lobatto rule, so an integral along the path is that rule over five of the
/// stages (<see cref="LobattoNodes{TState}"/>): it has the full order and need not be carried through the other six.
/// </remarks>
static class RungeKutta8
{
    const double S = 4.58257569495584; // square root of 21

    // Nodes: the interior points of the Lobatto rule and the middle.
    const double Early = (7 - S) / 14, Middle = 0.5, Late = (7 + S) / 14;

    const double A41 = 1.0 / 7, A42 = -(7 + 3 * S) / 98, A43 = (21 + 5 * S) / 49;
    const double A51 = (11 + S) / 84, A53 = (18 + 4 * S) / 63, A54 = (21 - S) / 252;
    const double A61 = (5 + S) / 48, A63 = (9 + S) / 36, A64 = (-231 + 14 * S) / 360, A65 = (63 - 7 * S) / 80;
    const double A71 = (10 - S) / 42, A73 = (-432 + 92 * S) / 315, A74 = (633 - 145 * S) / 90, A75 = (-504 + 115 * S) / 70, A76 = (63 - 13 * S) / 35;
    const double A81 = 1.0 / 14, A85 = (14 - 3 * S) / 126, A86 = (13 - 3 * S) / 63, A87 = 1.0 / 9;
    const double A91 = 1.0 / 32, A95 = (91 - 21 * S) / 576, A96 = 11.0 / 72, A97 = -(385 + 75 * S) / 1152, A98 = (63 + 13 * S) / 128;
    const double AA1 = 1.0 / 14, AA5 = 1.0 / 9, AA6 = -(733 + 147 * S) / 2205, AA7 = (515 + 111 * S) / 504, AA8 = -(51 + 11 * S) / 56, AA9 = (132 + 28 * S) / 245;
    const double AB5 = (-42 + 7 * S) / 18, AB6 = (-18 + 28 * S) / 45, AB7 = -(273 + 53 * S) / 72, AB8 = (301 + 53 * S) / 72, AB9 = (28 - 28 * S) / 45, ABA = (49 - 7 * S) / 18;

    /// <summary>Order of the method: the error of a path falls as the step to this power.</summary>
    internal const int Order = 8;

    /// <summary>Steps from (x, y) to x + h.</summary>
    /// <param name="field">The right-hand side.</param>
    /// <param name="x">Where the step starts.</param>
    /// <param name="y">State there.</param>
    /// <param name="h">Length of the step.</param>
    /// <param name="nodes">The stages from which integrals along the step follow.</param>
    /// <returns>State at x + h.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TState Step<TField, TState, T>(in TField field, T x, TState y, T h, out LobattoNodes<TState> nodes)
        where TField : struct, IField<TState, T>
        where TState : struct, IState<TState, T>
        where T : struct, IReal<T>
    {
        T early = x + Early * h, middle = x + Middle * h, late = x + Late * h, end = x + h;
        TState k1 = field.At(x, y);
        TState k2 = field.At(middle, y + h * (0.5 * k1));
        TState k3 = field.At(middle, y + h * (0.25 * k1 + 0.25 * k2));
        TState k4 = field.At(late, y + h * (A41 * k1 + A42 * k2 + A43 * k3));
        TState k5 = field.At(late, y + h * (A51 * k1 + A53 * k3 + A54 * k4));
        TState k6 = field.At(middle, y + h * (A61 * k1 + A63 * k3 + A64 * k4 + A65 * k5));
        TState k7 = field.At(early, y + h * (A71 * k1 + A73 * k3 + A74 * k4 + A75 * k5 + A76 * k6));
        TState y8 = y + h * (A81 * k1 + A85 * k5 + A86 * k6 + A87 * k7), k8 = field.At(early, y8);
        TState y9 = y + h * (A91 * k1 + A95 * k5 + A96 * k6 + A97 * k7 + A98 * k8), k9 = field.At(middle, y9);
        TState yA = y + h * (AA1 * k1 + AA5 * k5 + AA6 * k6 + AA7 * k7 + AA8 * k8 + AA9 * k9), kA = field.At(late, yA);
        TState yB = y + h * (AB5 * k5 + AB6 * k6 + AB7 * k7 + AB8 * k8 + AB9 * k9 + ABA * kA), kB = field.At(end, yB);
        nodes = new(y, y8, y9, yA, yB);
        return y + h * Lobatto.Mean<TState, T>(k1, k8, k9, kA, kB);
    }
}
