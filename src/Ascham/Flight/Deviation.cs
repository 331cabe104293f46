namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How the values of an input lie about the one set.</summary>
public enum DeviationShape
{
    /// <summary>All the same.</summary>
    None,

    /// <summary>A normal distribution.</summary>
    Normal,

    /// <summary>Evenly between two bounds.</summary>
    Uniform,

    /// <summary>A normal distribution of the logarithm: the value set times and over a factor.</summary>
    LogNormal,
}

/// <summary>How one input of a batch differs from arrow to arrow.</summary>
/// <typeparam name="TQuantity">The quantity that differs.</typeparam>
/// <remarks>
/// Made by <see cref="Deviation.Normal{TQuantity}(TQuantity)"/>, <see cref="Deviation.Uniform{TQuantity}(TQuantity)"/> or
/// <see cref="Deviation.LogNormal(double)"/>; the default is no difference.
/// </remarks>
public readonly record struct Deviation<TQuantity>
    where TQuantity : struct, IQuantity
{
    internal Deviation(DeviationShape shape, TQuantity size) => (Shape, Size) = (shape, size);

    /// <summary>The distribution.</summary>
    public DeviationShape Shape { get; }

    /// <summary>Standard deviation of a normal, half the width of an even distribution; of a log-normal the standard deviation of the natural logarithm.</summary>
    public TQuantity Size { get; }
}

/// <summary>Says how an input of a batch differs from arrow to arrow.</summary>
public static class Deviation
{
    /// <summary>A normal distribution about the value set; nothing is drawn beyond 8.6 standard deviations.</summary>
    /// <typeparam name="TQuantity">The quantity that differs.</typeparam>
    /// <param name="standardDeviation">Zero or more.</param>
    /// <returns>The deviation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative or not finite.</exception>
    public static Deviation<TQuantity> Normal<TQuantity>(TQuantity standardDeviation)
        where TQuantity : struct, IQuantity
        => new(DeviationShape.Normal, Checked(standardDeviation, nameof(standardDeviation)));

    /// <summary>An even distribution between the value set less and plus a half width.</summary>
    /// <typeparam name="TQuantity">The quantity that differs.</typeparam>
    /// <param name="halfWidth">Zero or more.</param>
    /// <returns>The deviation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The half width is negative or not finite.</exception>
    public static Deviation<TQuantity> Uniform<TQuantity>(TQuantity halfWidth)
        where TQuantity : struct, IQuantity
        => new(DeviationShape.Uniform, Checked(halfWidth, nameof(halfWidth)));

    /// <summary>A log-normal distribution with the value set as its median: the one for what is known to a factor, such as drag that was not measured. It never turns negative.</summary>
    /// <remarks>
    /// 68 % of the arrows lie between the median over the factor and the median times the factor, 95 % within its square. The mean lies above the
    /// median, by 1.7 % for a factor of 1.2, and the relative standard deviation is then 18 %.
    /// </remarks>
    /// <param name="factor">One standard deviation up, as a factor; 1 to 2. 1.2 for "20 % or so".</param>
    /// <returns>The deviation of an input that is a part of itself.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is outside its range.</exception>
    public static Deviation<Ratio> LogNormal(double factor)
        => new(DeviationShape.LogNormal, Ratio.FromDecimalFractions(Math.Log(Require.InRange(factor, 1, 2, "", nameof(factor)))));

    static TQuantity Checked<TQuantity>(TQuantity size, string name)
        where TQuantity : struct, IQuantity
    {
        Require.NotNegative((double)size.Value, size.Unit.ToString(), name);
        return size;
    }
}
