namespace Ascham.Flight;

/// <summary>A vector of plain doubles, where no formula has to serve other numbers.</summary>
readonly struct Vec(double x, double y, double z)
{
    internal readonly double X = x, Y = y, Z = z;

    internal double Length => Math.Sqrt(Dot(this));

    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vec operator *(double a, Vec b) => new(a * b.X, a * b.Y, a * b.Z);

    internal double Dot(Vec b) => X * b.X + Y * b.Y + Z * b.Z;

    internal Vec Cross(Vec b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);

    /// <summary>From world axes to axes of which the first is a line at this inclination: (sine, cosine).</summary>
    internal Vec ToLine((double Sine, double Cosine) line) => new(line.Cosine * X + line.Sine * Y, line.Cosine * Y - line.Sine * X, Z);

    /// <summary>Back from those axes to world axes.</summary>
    internal Vec FromLine((double Sine, double Cosine) line) => ToLine((-line.Sine, line.Cosine));
}
