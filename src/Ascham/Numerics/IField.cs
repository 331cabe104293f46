namespace Ascham.Numerics;

/// <summary>A state that can be stepped: it adds, and it scales by constants and by a step.</summary>
interface IState<TState, T>
    where TState : struct, IState<TState, T>
{
    static abstract TState operator +(TState a, TState b);

    static abstract TState operator *(double a, TState b);

    static abstract TState operator *(T a, TState b);
}

/// <summary>The right-hand side of dy/dx = f(x, y).</summary>
interface IField<TState, T>
{
    TState At(T x, TState y);
}
