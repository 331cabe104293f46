namespace Ascham.Numerics;

/// <summary>A plain double as a number for generic formulas.</summary>
readonly struct Real(double value) : ITranscendental<Real>
{
    // The field itself in the operators: a property is one more call to inline, and the compiler's budget for those is finite.
    readonly double number = value;

    public double Value => number;

    public static Real operator +(Real a, Real b) => new(a.number + b.number);

    public static Real operator -(Real a, Real b) => new(a.number - b.number);

    public static Real operator *(Real a, Real b) => new(a.number * b.number);

    public static Real operator *(double a, Real b) => new(a * b.number);

    public static Real operator /(Real a, Real b) => new(a.number / b.number);

    public static Real Of(double value) => new(value);

    public static Real Exp(Real a) => new(Math.Exp(a.number));

    public static Real Log(Real a) => new(Math.Log(a.number));

    public static Real SquareRoot(Real a) => new(Math.Sqrt(a.number));

    public static Real MultiplyAdd(Real a, Real b, Real c) => new(Math.FusedMultiplyAdd(a.number, b.number, c.number));
}
