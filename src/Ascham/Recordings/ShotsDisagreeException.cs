namespace Ascham.Recordings;

using UnitsNet;

/// <summary>Several shots cannot be of one bow and arrow with the errors stated: less than one chance in a thousand.</summary>
public sealed class ShotsDisagreeException : Exception
{
    internal ShotsDisagreeException(string message, IReadOnlyList<Duration> residuals, double chiSquare, int degreesOfFreedom)
        : base(message) => (Residuals, ChiSquare, DegreesOfFreedom) = (residuals, chiSquare, degreesOfFreedom);

    /// <summary>Heard less fitted time, in the order of the shots.</summary>
    public IReadOnlyList<Duration> Residuals { get; }

    /// <summary>Sum of squared residuals over their variances.</summary>
    public double ChiSquare { get; }

    /// <summary>Shots less fitted numbers.</summary>
    public int DegreesOfFreedom { get; }
}
