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

    /// <summary>a b + c, rounded once where the number type can, so that lanes and plain numbers agree to the last bit.</summary>
    static virtual T MultiplyAdd(T a, T b, T c) => a * b + c;

    /// <summary>The lesser of two; not a number when either is not.</summary>
    static virtual T Lesser(T a, T b) => a.Value < b.Value || double.IsNaN(a.Value) ? a : b;

    /// <summary>Takes as many numbers as there are side by side.</summary>
    static virtual T From(ReadOnlySpan<double> numbers) => T.Of(numbers[0]);

    /// <summary>The number itself, for decisions such as the length of a step.</summary>
    double Value { get; }
}
