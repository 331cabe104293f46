namespace Ascham.Notebooks;

using Ascham.Groups;
using Ascham.Quantities;
using Deedle;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Shows values as small tables at the end of a cell: <c>slide.Show("slide of the tape", LengthUnit.Millimeter, 2)</c>.</summary>
public static class Shows
{
    /// <summary>Shows an estimate with its interval.</summary>
    /// <typeparam name="T">A UnitsNet quantity.</typeparam>
    /// <param name="estimate">The estimate.</param>
    /// <param name="name">What it is.</param>
    /// <param name="unit">Unit to write it in.</param>
    /// <param name="decimals">Decimals.</param>
    /// <returns>A table of one row.</returns>
    public static Table Show<T>(this Estimate<T> estimate, string name, Enum unit, int decimals)
        where T : IQuantity => Table.From([(name, estimate)], unit, decimals);

    /// <summary>Shows an estimate of a plain number with its interval.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="name">What it is.</param>
    /// <param name="unit">Its unit as text; empty for a pure number.</param>
    /// <param name="decimals">Decimals.</param>
    /// <returns>A table of one row.</returns>
    public static Table Show(this Estimate<double> estimate, string name, string unit, int decimals) =>
        Table.From([(name, estimate)], unit, decimals);

    /// <summary>Shows a quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="name">What it is.</param>
    /// <param name="unit">Unit to write it in.</param>
    /// <param name="decimals">Decimals.</param>
    /// <returns>A table of one row.</returns>
    public static Table Show(this IQuantity quantity, string name, Enum unit, int decimals)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        return Table.From(["", $"value ({NumberText.Unit(unit)})"], [[name, NumberText.Fixed(quantity.As(unit), decimals)]]);
    }

    /// <summary>Shows the first shots.</summary>
    /// <param name="shots">The shots.</param>
    /// <param name="distanceIn">Unit of distances.</param>
    /// <param name="offsetsIn">Unit of offsets on the face.</param>
    /// <param name="rows">Most rows to show; positive.</param>
    /// <returns>A table; columns in which no shot has anything are left out.</returns>
    public static Table Show(this IEnumerable<Shot> shots, LengthUnit distanceIn, LengthUnit offsetsIn, int rows = 10)
    {
        var frame = ShotFrame.From(shots, distanceIn, offsetsIn);
        return frame.Columns[frame.ColumnKeys.Where(key => frame.GetColumn<object>(key).ValueCount > 0)].Show(rows);
    }

    /// <summary>Shows the first rows of a Deedle frame.</summary>
    /// <typeparam name="TRow">Type of row keys.</typeparam>
    /// <typeparam name="TColumn">Type of column keys.</typeparam>
    /// <param name="frame">The frame.</param>
    /// <param name="rows">Most rows to show; positive.</param>
    /// <returns>A table.</returns>
    public static Table Show<TRow, TColumn>(this Frame<TRow, TColumn> frame, int rows = 10) => Table.From(frame, rows);
}
