namespace Ascham.Records;

using System.Globalization;
using Ascham.Sights;
using UnitsNet;
using UnitsNet.Units;

/// <summary>The unit a file gives sight positions in: a length, or the sight's own scale numbers.</summary>
public sealed record PositionUnit
{
    readonly Unit<Length> unit;

    PositionUnit(Unit<Length> unit, Length size)
    {
        this.unit = unit;
        Size = size;
    }

    /// <summary>As in a header: <c>mm</c>, <c>cm</c>, <c>in</c> or <c>scale</c>.</summary>
    public string Name => unit.Text;

    /// <summary>Travel of the scale that one of these stands for.</summary>
    public Length Size { get; }

    /// <summary>Whether positions are the sight's own scale numbers.</summary>
    public bool IsScale => Name == ScaleName;

    internal const string ScaleName = "scale";

    internal Unit<Length> Unit => unit;

    /// <summary>Positions as a length.</summary>
    /// <param name="unit">Millimetre, centimetre or inch.</param>
    /// <returns>The unit.</returns>
    /// <exception cref="ArgumentException"><paramref name="unit"/> is another.</exception>
    public static PositionUnit Of(LengthUnit unit)
    {
        var known = Units.SmallLengths.FirstOrDefault(u => u.Holds(Length.From(1, unit)))
            ?? throw new ArgumentException($"Sight positions are given in millimetres, centimetres or inches; unit was {unit}.", nameof(unit));
        return Of(known);
    }

    /// <summary>Positions in the sight's own scale numbers.</summary>
    /// <param name="sight">A sight with a <see cref="SightGeometry.ScaleUnit"/>.</param>
    /// <returns>The unit.</returns>
    /// <exception cref="ArgumentException">The sight has no scale unit, or it is not positive.</exception>
    public static PositionUnit Scale(SightGeometry sight)
    {
        ArgumentNullException.ThrowIfNull(sight);
        return sight.ScaleUnit is { Value: > 0 } size
            ? Scale(size)
            : throw new ArgumentException("The sight has no scale unit; give the travel that one scale number stands for, such as 0.5 mm.", nameof(sight));
    }

    /// <summary>How many of these a position is.</summary>
    /// <param name="position">A position on the sight's scale.</param>
    /// <returns>The number to read off the scale; any sign.</returns>
    public double Number(Length position) => unit.To(position);

    /// <summary>The position a number stands for.</summary>
    /// <param name="number">The number read off the scale.</param>
    /// <returns>The position, in the unit it was given in.</returns>
    public Length Position(double number) => unit.From(number);

    /// <summary>Equal when name and size are.</summary>
    /// <param name="other">The other one.</param>
    /// <returns>Whether both stand for the same.</returns>
    public bool Equals(PositionUnit? other) => other is not null && (Name, Size).Equals((other.Name, other.Size));

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Size);

    internal static PositionUnit Of(Unit<Length> unit) => new(unit, unit.From(1));

    // Positions come out in the unit of the size, so it has to be one that positions can be written in.
    internal static PositionUnit Scale(Length size)
    {
        var written = Measures.Position.UnitOf(size);
        var own = written.From(written.To(size));
        return new(new(ScaleName, "scale numbers", n => written.From(n * (double)own.Value), p => Numbers(written.To(p), (double)own.Value), _ => false), own);
    }

    // Of the numbers that stand for exactly this position, the one with fewest digits, so that "37.5" is written back as "37.5".
    // The quotient itself (17 digits) is always one when there is any: for leading digits in [1, 2) rounding errs by at most 2^-53/digits, so either
    // the product is coarser than the number and hides the error of the quotient, or it is finer and dividing rounds back to the number.
    static double Numbers(double position, double size)
    {
        double quotient = position / size;
        for (int digits = 1; digits <= 17; digits++)
        {
            string text = quotient.ToString("E" + (digits - 1), CultureInfo.InvariantCulture);
            double rounded = double.Parse(text, CultureInfo.InvariantCulture);
            if (rounded * size == position)
            {
                return rounded;
            }
        }

        return quotient; // Of a position that no number stands for, the nearest.
    }
}
