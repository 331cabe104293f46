namespace Ascham.Numerics;

using System.Runtime.Intrinsics;

/// <summary>A number with its derivatives with respect to up to eight inputs; formulas evaluated on it return exact derivatives.</summary>
/// <remarks>As <see cref="Dual"/>, eight inputs in one pass.</remarks>
readonly struct Gradient : ITranscendental<Gradient>
{
    /// <summary>How many inputs it can follow.</summary>
    internal const int Inputs = 8;

    readonly Vector256<double> first, second; // two halves: machines with 512-bit registers are few

    Gradient(double value, Vector256<double> first, Vector256<double> second) => (Value, this.first, this.second) = (value, first, second);

    public double Value { get; }

    /// <summary>The derivative with respect to an input, 0 to 7.</summary>
    internal double this[int input] => input < 4 ? first.GetElement(input) : second.GetElement(input - 4);

    /// <summary>An input: its derivative with respect to itself is one.</summary>
    internal static Gradient Input(double value, int input)
    {
        var unit = Vector256<double>.Zero.WithElement(input & 3, 1);
        return input < 4 ? new(value, unit, Vector256<double>.Zero) : new(value, Vector256<double>.Zero, unit);
    }

    public static Gradient operator +(Gradient a, Gradient b) => new(a.Value + b.Value, a.first + b.first, a.second + b.second);

    public static Gradient operator -(Gradient a, Gradient b) => new(a.Value - b.Value, a.first - b.first, a.second - b.second);

    public static Gradient operator *(Gradient a, Gradient b)
        => new(a.Value * b.Value, a.first * b.Value + b.first * a.Value, a.second * b.Value + b.second * a.Value);

    public static Gradient operator *(double a, Gradient b) => new(a * b.Value, b.first * a, b.second * a);

    public static Gradient operator /(Gradient a, Gradient b)
    {
        double ratio = a.Value / b.Value;
        return new(ratio, (a.first - b.first * ratio) / b.Value, (a.second - b.second * ratio) / b.Value);
    }

    public static Gradient Of(double value) => new(value, Vector256<double>.Zero, Vector256<double>.Zero);

    public static Gradient SquareRoot(Gradient a)
    {
        double root = Math.Sqrt(a.Value);
        return a.Chain(root, 0.5 / root);
    }

    public static Gradient Exp(Gradient a)
    {
        double value = Math.Exp(a.Value);
        return a.Chain(value, value);
    }

    public static Gradient Log(Gradient a) => a.Chain(Math.Log(a.Value), 1 / a.Value);

    Gradient Chain(double value, double slope) => new(value, first * slope, second * slope);
}
