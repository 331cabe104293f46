namespace Ascham.Groups;

using UnitsNet;
using UnitsNet.Units;

/// <summary>Means and sums of squares about them, of marks on a face, in SI units.</summary>
/// <remarks>
/// Two passes, the first about the first value, the second corrected for what the first left (Chan, Golub and LeVeque 1983, <i>Am. Statist.</i> 37, 242): a naive sum of
/// squares loses every digit when the mean is far larger than the spread (NIST StRD NumAcc4), and equal values give a sum of squares of exactly zero.
/// </remarks>
readonly record struct Moments(int Count, double MeanRight, double MeanUp, double SumRight, double SumUp, double SumCross)
{
    internal static Moments Of(IReadOnlyList<Impact> impacts)
    {
        int n = impacts.Count;
        if (n == 0)
        {
            return new(0, double.NaN, double.NaN, 0, 0, 0);
        }

        double right = Metres(impacts[0].Right), up = Metres(impacts[0].Up);
        Deviations first = SumAbout(right, up, impacts);
        (right, up) = (right + (first.Right / n), up + (first.Up / n));
        Deviations rest = SumAbout(right, up, impacts);
        return new(
            n, right + (rest.Right / n), up + (rest.Up / n), Math.Max(0, rest.SquareRight - (rest.Right * rest.Right / n)),
            Math.Max(0, rest.SquareUp - (rest.Up * rest.Up / n)), rest.Cross - (rest.Right * rest.Up / n));
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

    internal double MeanOf(Axis axis) => axis == Axis.Vertical ? MeanUp : MeanRight;

    internal double SumOf(Axis axis) => axis == Axis.Vertical ? SumUp : SumRight;

    static double SumAbout(double centre, ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (double value in values)
        {
            sum += value - centre;
        }

        return sum;
    }

    // Block by block: little memory however many impacts, and sums of sums round far less than one long sum.
    static Deviations SumAbout(double right, double up, IReadOnlyList<Impact> impacts)
    {
        const int block = 128;
        Span<double> rights = stackalloc double[block], ups = stackalloc double[block];
        Deviations sum = default;
        for (int from = 0; from < impacts.Count; from += block)
        {
            int count = Math.Min(block, impacts.Count - from);
            if (impacts is ImpactColumns columns)
            {
                sum = sum.Plus(Deviations.About(right, up, columns.Right.AsSpan(from, count), columns.Up.AsSpan(from, count)));
                continue;
            }

            Read(impacts, from, rights[..count], ups[..count]);
            sum = sum.Plus(Deviations.About(right, up, rights[..count], ups[..count]));
        }

        return sum;
    }

    static void Read(IReadOnlyList<Impact> impacts, int from, Span<double> rights, Span<double> ups)
    {
        if (impacts is Impact[] array)
        {
            ReadOnlySpan<Impact> part = array.AsSpan(from, rights.Length);
            for (int i = 0; i < part.Length; i++)
            {
                (rights[i], ups[i]) = (Metres(part[i].Right), Metres(part[i].Up));
            }

            return;
        }

        for (int i = 0; i < rights.Length; i++)
        {
            Impact impact = impacts[from + i];
            (rights[i], ups[i]) = (Metres(impact.Right), Metres(impact.Up));
        }
    }

    // The conversion would look its unit up for every impact.
    static double Metres(Length length) => length.Unit == LengthUnit.Meter ? length.Value : length.Meters;
}
