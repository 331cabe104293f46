namespace Ascham.Groups;

using System.Collections;
using UnitsNet;

/// <summary>Impacts kept as two columns of metres; each becomes a pair of lengths only when it is looked at.</summary>
sealed class ImpactColumns(double[] right, double[] up) : IReadOnlyList<Impact>
{
    public int Count => Right.Length;

    internal double[] Right { get; } = right;

    internal double[] Up { get; } = up;

    public Impact this[int index] => new(Length.FromMeters(Right[index]), Length.FromMeters(Up[index]));

    public IEnumerator<Impact> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
