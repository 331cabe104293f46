namespace Ascham.Numerics;

/// <summary>A number with its derivative with respect to one input; formulas evaluated on it return exact derivatives.</summary>
readonly struct Dual(double value, double slope) : ITranscendental<Dual>
{
    public double Value { get; } = value;

    /// <summary>The derivative.</summary>
    public double Slope { get; } = slope;

    public static Dual operator +(Dual a, Dual b) => new(a.Value + b.Value, a.Slope + b.Slope);

    public static Dual operator -(Dual a, Dual b) => new(a.Value - b.Value, a.Slope - b.Slope);

    public static Dual operator *(Dual a, Dual b) => new(a.Value * b.Value, a.Slope * b.Value + a.Value * b.Slope);

    public static Dual operator *(double a, Dual b) => new(a * b.Value, a * b.Slope);

    public static Dual operator /(Dual a, Dual b)
    {
        double ratio = a.Value / b.Value;
        return new(ratio, (a.Slope - ratio * b.Slope) / b.Value);
    }

    public static Dual Of(double value) => new(value, 0);

    public static Dual SquareRoot(Dual a)
    {
        double root = Math.Sqrt(a.Value);
        return new(root, 0.5 * a.Slope / root);
    }

    public static Dual Exp(Dual a)
    {
        double value = Math.Exp(a.Value);
        return new(value, value * a.Slope);
    }

    public static Dual Log(Dual a) => new(Math.Log(a.Value), a.Slope / a.Value);
}
