namespace Ascham.Numerics;

using System.Runtime.CompilerServices;

/// <summary>Stages of a step at the five Lobatto points: its start, two inner points about the middle, and its end.</summary>
readonly struct LobattoNodes<TState>(TState start, TState early, TState middle, TState late, TState end)
{
    internal readonly TState Start = start, Early = early, Middle = middle, Late = late, End = end;
}

/// <summary>The five-point Lobatto rule, exact for polynomials of degree 7.</summary>
static class Lobatto
{
    // Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.6, n = 5: weights 1/10, 49/90, 32/45 on (-1, 1), halved here.
    const double Ends = 1.0 / 20, Inner = 49.0 / 180, Centre = 16.0 / 45;

    /// <summary>Mean over the step of a number known at the five points.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T MeanOf<T>(T start, T early, T middle, T late, T end)
        where T : struct, IReal<T>
        => Ends * (start + end) + Inner * (early + late) + Centre * middle;

    /// <summary>Mean over the step of a state known at the five points.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TState Mean<TState, T>(TState start, TState early, TState middle, TState late, TState end)
        where TState : struct, IState<TState, T>
        => Ends * (start + end) + Inner * (early + late) + Centre * middle;
}
