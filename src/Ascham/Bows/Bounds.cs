namespace Ascham.Bows;

using Ascham.Quantities;

/// <summary>Intervals from a value and its standard error.</summary>
static class Bounds
{
    /// <summary>Two-sided multiplier of a normal error.</summary>
    internal static double Multiplier(double level) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (1 + Require.Level(level)) / 2);

    /// <summary>Even about the value.</summary>
    internal static Estimate<double> Normal(double value, double error, double level, int count, string how)
        => About(value, error, Multiplier(level), level, count, how);

    internal static Estimate<double> About(double value, double error, double multiplier, double level, int count, string how)
        => new(value, error, value - multiplier * error, value + multiplier * error, level, count, how);

    /// <summary>Even about the logarithm, for what cannot be negative.</summary>
    internal static Estimate<double> Logarithmic(double value, double relativeError, double multiplier, double level, int count, string how)
        => new(value, value * relativeError, value * Math.Exp(-multiplier * relativeError), value * Math.Exp(multiplier * relativeError), level, count, how);
}
