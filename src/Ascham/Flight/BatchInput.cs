namespace Ascham.Flight;

using Ascham.Numerics;

/// <summary>How one input of a batch differs, in SI units.</summary>
/// <param name="Shape">The distribution.</param>
/// <param name="Size">As <see cref="Deviation{TQuantity}.Size"/>.</param>
readonly record struct BatchInput(DeviationShape Shape, double Size)
{
    /// <summary>What a shift is multiplied by to add to the input: for a log-normal, whose shift is a part of the input already, 1.</summary>
    internal double PerShift => Shape == DeviationShape.LogNormal ? 1 : Size;

    /// <summary>The shift of an input so many sizes off.</summary>
    internal double ShiftAt(double sizes)
    {
        double[] row = [sizes, 0, 0, 0, 0, 0, 0, 0];
        Shift(row);
        return row[0];
    }

    /// <summary>Turns normal draws, in place, into shifts: those of a log-normal are exp(size times draw) - 1, all others the draws themselves.</summary>
    internal void Shift(Span<double> draws)
    {
        for (; Shape == DeviationShape.LogNormal && draws.Length >= Lanes.Count; draws = draws[Lanes.Count..])
        {
            (Elementary.Exp(Size * Lanes.From(draws)) - Lanes.Of(1)).To(draws);
        }
    }
}
