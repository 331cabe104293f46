namespace Ascham.Numerics;

/// <summary>What a formula needs of a number, so that one source serves plain numbers, numbers with a derivative, and several lanes at once.</summary>
interface IReal<T>
    where T : struct, IReal<T>
{
    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator *(double a, T b);

    static abstract T operator /(T a, T b);

    /// <summary>A constant.</summary>
    static abstract T Of(double value);

    static abstract T SquareRoot(T a);

    /// <summary>The number itself, for decisions such as the length of a step.</summary>
    double Value { get; }
}
