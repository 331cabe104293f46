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
        double[] right = new double[impacts.Count], up = new double[impacts.Count];
        for (int i = 0; i < right.Length; i++)
        {
            Impact impact = impacts[i];
            (right[i], up[i]) = (impact.Right.Meters, impact.Up.Meters);
        }

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
    internal static double Mean(ReadOnlySpan<double> values)
    {
        if (values.Length == 0)
        {
            return double.NaN;
        }

        double first = values[0], mean = first + (SumAbout(first, values) / values.Length);
        return mean + (SumAbout(mean, values) / values.Length);
    }

    static double SumAbout(double centre, ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += value - centre;
        }

        return sum;
    }

    internal double MeanOf(Axis axis) => axis == Axis.Vertical ? MeanUp : MeanRight;

    internal double SumOf(Axis axis) => axis == Axis.Vertical ? SumUp : SumRight;
}
