namespace Ascham.Groups;

/// <summary>A symmetric matrix of two rows, right and up: a covariance or a scatter.</summary>
readonly record struct Symmetric(double Right, double Up, double Cross)
{
    internal static Symmetric Identity { get; } = new(1, 1, 0);

    internal double Trace => Right + Up;

    internal double Determinant => (Right * Up) - (Cross * Cross);

    /// <summary>Whether the marks behind it lie on one line, up to rounding.</summary>
    internal bool Flat => !(Smaller > 1e-12 * Larger);

    /// <summary>Larger eigenvalue.</summary>
    internal double Larger => (Trace / 2) + Radius;

    /// <summary>Smaller eigenvalue, from the determinant so that it keeps its digits.</summary>
    internal double Smaller => Larger > 0 ? Math.Max(0, Determinant / Larger) : 0;

    /// <summary>Direction of the larger eigenvalue, from right towards up, radians; above −π/2 up to π/2.</summary>
    internal double Direction => Math.Atan2(2 * Cross, Right - Up) / 2;

    internal Symmetric Inverse => new(Up / Determinant, Right / Determinant, -Cross / Determinant);

    double Radius => double.Hypot((Right - Up) / 2, Cross);

    public static Symmetric operator +(Symmetric a, Symmetric b) => new(a.Right + b.Right, a.Up + b.Up, a.Cross + b.Cross);

    public static Symmetric operator *(Symmetric a, double factor) => new(a.Right * factor, a.Up * factor, a.Cross * factor);

    internal static Symmetric ScatterOf(Moments moments) => new(moments.SumRight, moments.SumUp, moments.SumCross);

    /// <summary>The quadratic form of a vector.</summary>
    internal double Of(double right, double up) => (Right * right * right) + (2 * Cross * right * up) + (Up * up * up);

    /// <summary>Trace of the product with another, and trace of the square of that product.</summary>
    internal (double Product, double Square) TracesWith(Symmetric other)
    {
        // The product's diagonal and off-diagonal elements; it need not be symmetric.
        double a = (Right * other.Right) + (Cross * other.Cross), b = (Right * other.Cross) + (Cross * other.Up);
        double c = (Cross * other.Right) + (Up * other.Cross), d = (Cross * other.Cross) + (Up * other.Up);
        return (a + d, (a * a) + (2 * b * c) + (d * d));
    }
}
