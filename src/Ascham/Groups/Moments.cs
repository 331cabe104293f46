namespace Ascham.Groups;

/// <summary>Means and sums of squares about them, of marks on a face, in SI units.</summary>
/// <remarks>
/// Two passes about the first value: a naive sum of squares loses every digit when the mean is far larger than the spread
/// (NIST StRD NumAcc4), and equal values give a sum of squares of exactly zero.
/// </remarks>
readonly record struct Moments(int Count, double MeanRight, double MeanUp, double SumRight, double SumUp, double SumCross)
{
    internal static Moments Of(IReadOnlyList<Impact> impacts)
    {
        double[] right = [.. impacts.Select(i => i.Right.Meters)], up = [.. impacts.Select(i => i.Up.Meters)];
        double meanRight = Mean(right), meanUp = Mean(up), sumRight = 0, sumUp = 0, sumCross = 0;
        for (int i = 0; i < right.Length; i++)
        {
            double r = right[i] - meanRight, u = up[i] - meanUp;
            sumRight += r * r;
            sumUp += u * u;
            sumCross += r * u;
        }

        return new(right.Length, meanRight, meanUp, sumRight, sumUp, sumCross);
    }

    /// <summary>Mean of values; not a number when there are none.</summary>
    internal static double Mean(IReadOnlyList<double> values)
    {
        if (values.Count == 0)
        {
            return double.NaN;
        }

        double first = values[0], mean = first + (values.Sum(v => v - first) / values.Count);
        return mean + (values.Sum(v => v - mean) / values.Count);
    }

    internal double MeanOf(Axis axis) => axis == Axis.Vertical ? MeanUp : MeanRight;

    internal double SumOf(Axis axis) => axis == Axis.Vertical ? SumUp : SumRight;
}
