namespace Ascham.Records;

using System.Collections;
using Ascham.Sights;
using UnitsNet.Units;

/// <summary>The marks of a tape, nearest first, with the units their owner reads them in.</summary>
public sealed class Marks : IReadOnlyList<Mark>
{
    readonly Mark[] list;

    /// <summary>Joins marks and units.</summary>
    /// <param name="marks">The marks, by increasing distance.</param>
    /// <param name="distanceUnit">Unit in which distances are told.</param>
    /// <param name="positionUnit">Unit in which positions are told.</param>
    public Marks(IEnumerable<Mark> marks, LengthUnit distanceUnit, PositionUnit positionUnit)
    {
        ArgumentNullException.ThrowIfNull(positionUnit);
        list = [.. marks];
        DistanceUnit = distanceUnit;
        PositionUnit = positionUnit;
    }

    /// <summary>Unit in which distances are told.</summary>
    public LengthUnit DistanceUnit { get; }

    /// <summary>Unit in which positions are told.</summary>
    public PositionUnit PositionUnit { get; }

    /// <summary>How many marks.</summary>
    public int Count => list.Length;

    /// <summary>One mark.</summary>
    /// <param name="index">From 0.</param>
    /// <returns>The mark.</returns>
    public Mark this[int index] => list[index];

    /// <summary>Goes through the marks, nearest first.</summary>
    /// <returns>The marks one by one.</returns>
    public IEnumerator<Mark> GetEnumerator() => list.AsEnumerable().GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
