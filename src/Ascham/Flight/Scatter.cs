namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How the values of an input lie about the one set.</summary>
public enum ScatterShape
{
    /// <summary>All the same.</summary>
    None,

    /// <summary>A normal distribution.</summary>
    Normal,

    /// <summary>Evenly between two bounds.</summary>
    Uniform,
}

/// <summary>How one input of a batch differs from arrow to arrow.</summary>
/// <typeparam name="TQuantity">The quantity that differs.</typeparam>
/// <remarks>Made by <see cref="Scatter.Normal{TQuantity}(TQuantity)"/> or <see cref="Scatter.Uniform{TQuantity}(TQuantity)"/>; the default is no difference.</remarks>
public readonly record struct Scatter<TQuantity>
    where TQuantity : struct, IQuantity
{
    internal Scatter(ScatterShape shape, TQuantity size) => (Shape, Size) = (shape, size);

    /// <summary>The distribution.</summary>
    public ScatterShape Shape { get; }

    /// <summary>Standard deviation of a normal, half the width of an even distribution.</summary>
    public TQuantity Size { get; }
}

/// <summary>Says how an input of a batch differs from arrow to arrow.</summary>
public static class Scatter
{
    /// <summary>A normal distribution about the value set; nothing is drawn beyond 8.6 standard deviations.</summary>
    /// <typeparam name="TQuantity">The quantity that differs.</typeparam>
    /// <param name="standardDeviation">Zero or more.</param>
    /// <returns>The scatter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative or not finite.</exception>
    public static Scatter<TQuantity> Normal<TQuantity>(TQuantity standardDeviation)
        where TQuantity : struct, IQuantity
        => new(ScatterShape.Normal, Checked(standardDeviation, nameof(standardDeviation)));

    /// <summary>An even distribution between the value set less and plus a half width.</summary>
    /// <typeparam name="TQuantity">The quantity that differs.</typeparam>
    /// <param name="halfWidth">Zero or more.</param>
    /// <returns>The scatter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The half width is negative or not finite.</exception>
    public static Scatter<TQuantity> Uniform<TQuantity>(TQuantity halfWidth)
        where TQuantity : struct, IQuantity
        => new(ScatterShape.Uniform, Checked(halfWidth, nameof(halfWidth)));

    static TQuantity Checked<TQuantity>(TQuantity size, string name)
        where TQuantity : struct, IQuantity
    {
        Require.NotNegative((double)size.Value, size.Unit.ToString(), name);
        return size;
    }
}
