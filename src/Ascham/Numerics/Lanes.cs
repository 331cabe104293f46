namespace Ascham.Numerics;

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

/// <summary>Eight numbers side by side: a formula evaluated on them is evaluated eight times at once.</summary>
/// <remarks>
/// Runs on any machine; the runtime maps it to the vector instructions there are. Every operation rounds as the plain
/// one does, so each lane holds the same bits as a <see cref="Real"/> would. Two vectors of four, because a loop over
/// the terms of a series waits for each sum before the next: the second vector works while the first waits, and plain
/// loops reach the speed of code unrolled by hand.
/// </remarks>
readonly struct Lanes(Vector256<double> low, Vector256<double> high) : IReal<Lanes>
{
    /// <summary>How many numbers.</summary>
    internal const int Count = 8;

    internal readonly Vector256<double> Low = low, High = high;

    /// <summary>The first number: decisions on it are right for all only where all are equal.</summary>
    public double Value => Low.ToScalar();

    internal double this[int lane] => lane < 4 ? Low.GetElement(lane) : High.GetElement(lane - 4);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator +(Lanes a, Lanes b) => new(a.Low + b.Low, a.High + b.High);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator -(Lanes a, Lanes b) => new(a.Low - b.Low, a.High - b.High);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator *(Lanes a, Lanes b) => new(a.Low * b.Low, a.High * b.High);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator *(double a, Lanes b)
    {
        var all = Vector256.Create(a);
        return new(all * b.Low, all * b.High);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator /(Lanes a, Lanes b) => new(a.Low / b.Low, a.High / b.High);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Of(double value)
    {
        var all = Vector256.Create(value);
        return new(all, all);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes SquareRoot(Lanes a) => new(Vector256.Sqrt(a.Low), Vector256.Sqrt(a.High));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes MultiplyAdd(Lanes a, Lanes b, Lanes c)
        => new(Vector256.FusedMultiplyAdd(a.Low, b.Low, c.Low), Vector256.FusedMultiplyAdd(a.High, b.High, c.High));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Lesser(Lanes a, Lanes b) => new(Vector256.Min(a.Low, b.Low), Vector256.Min(a.High, b.High));

    /// <summary>Whether every number is above zero; one that is not a number is not.</summary>
    internal bool AllPositive => Vector256.GreaterThanAll(Low, Vector256<double>.Zero) && Vector256.GreaterThanAll(High, Vector256<double>.Zero);

    /// <summary>The sum of all, pairs first.</summary>
    internal double Sum => Vector256.Sum(Low + High);

    /// <summary>This number where a test is a number, and zero where it is not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Lanes Where(Lanes test) => new(Low & Vector256.Equals(test.Low, test.Low), High & Vector256.Equals(test.High, test.High));

    /// <summary>This number where a test is at most a limit, and zero elsewhere.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Lanes WhereAtMost(Lanes test, Lanes limit)
        => new(Low & Vector256.LessThanOrEqual(test.Low, limit.Low), High & Vector256.LessThanOrEqual(test.High, limit.High));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes From(ReadOnlySpan<double> numbers) => new(Vector256.Create(numbers), Vector256.Create(numbers[4..]));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void To(Span<double> numbers)
    {
        Low.CopyTo(numbers);
        High.CopyTo(numbers[4..]);
    }
}
