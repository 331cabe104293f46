namespace Ascham.Flight;

using System.Globalization;
using UnitsNet;

/// <summary>A flight comes to a speed at which its drag is not known: outside a table, or below where a build-up holds.</summary>
public sealed class DragUnknownException : Exception
{
    internal DragUnknownException(Speed slowest, Speed fastest, Length at)
        : base(string.Create(
            CultureInfo.InvariantCulture,
            $"The drag is known for speeds through the air of {slowest.MetersPerSecond:0.##} to {fastest.MetersPerSecond:0.##} m/s only, in this air; the flight leaves them at {at.Meters:0.##} m. Extend the table, or give a drag constant."))
        => (Slowest, Fastest, Distance) = (slowest, fastest, at);

    /// <summary>Slowest speed through the air at which the drag is known.</summary>
    public Speed Slowest { get; }

    /// <summary>Fastest such speed.</summary>
    public Speed Fastest { get; }

    /// <summary>Distance along the line of sight by which the flight had left them.</summary>
    public Length Distance { get; }
}
