namespace Ascham.Numerics;

/// <summary>A plain double as a number for generic formulas.</summary>
readonly struct Real(double value) : ITranscendental<Real>
{
    public double Value { get; } = value;

    public static Real operator +(Real a, Real b) => new(a.Value + b.Value);

    public static Real operator -(Real a, Real b) => new(a.Value - b.Value);

    public static Real operator *(Real a, Real b) => new(a.Value * b.Value);

    public static Real operator *(double a, Real b) => new(a * b.Value);

    public static Real operator /(Real a, Real b) => new(a.Value / b.Value);

    public static Real Of(double value) => new(value);

    public static Real Exp(Real a) => new(Math.Exp(a.Value));

    public static Real Log(Real a) => new(Math.Log(a.Value));

    public static Real SquareRoot(Real a) => new(Math.Sqrt(a.Value));

    public static Real MultiplyAdd(Real a, Real b, Real c) => new(Math.FusedMultiplyAdd(a.Value, b.Value, c.Value));
}
