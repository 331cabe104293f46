namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Whether an arrow stands out from its group more than chance allows.</summary>
/// <remarks>
/// <para><b>Use.</b> This finds an outlier from the holes. A called flyer is another thing: the archer names it before looking. An arrow that stands out stays in the record; report the group with it and
/// without it, name the test and its significance, and never drop it silently (<see cref="DroppedWorst"/> says what that does).</para>
/// <para><b>Limits.</b> Normal impacts. From three to six arrows hardly anything can stand out (<see cref="ChanceToFlag"/>): do not prune small groups. Two flyers on one side hide each other.</para>
/// </remarks>
public sealed record OutlierCheck
{
    /// <summary>The impact farthest out by the measure of the test.</summary>
    public required Impact Farthest { get; init; }

    /// <summary>Its position in the list of counted impacts, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Its measure: distance over s, squared Mahalanobis distance, or offset over s.</summary>
    public required double Statistic { get; init; }

    /// <summary>The measure that the farthest of so many arrows exceeds with the significance asked.</summary>
    public required double Limit { get; init; }

    /// <summary>How often the farthest arrow of a sound group lies at least this far out; an upper bound, tight when small.</summary>
    public required double Probability { get; init; }

    /// <summary>Every impact beyond the limit, by position in the list of counted impacts.</summary>
    public required IReadOnlyList<int> Beyond { get; init; }

    /// <summary>Whether an arrow stands out: yes when <see cref="Statistic"/> exceeds <see cref="Limit"/>, else cannot tell. That none stands out does not show that none was a flyer.</summary>
    public Verdict StandsOut => Beyond.Count > 0 ? Verdict.Yes : Verdict.CannotTell;

    /// <summary>Looks for an arrow too far from the centre of a round group.</summary>
    /// <param name="group">The group; at least three counted impacts.</param>
    /// <param name="significance">Chance that a sound group has an arrow beyond the limit, between 0 and 1; 0.05 is usual.</param>
    /// <returns>The check; statistic r/s with s pooled over both axes.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="significance"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">Fewer than three counted impacts, no spread recorded, or an arrow missed.</exception>
    /// <remarks><b>Source.</b> n r²/((n − 1)Σr²) follows Beta(1, n − 2); Bonferroni over the arrows, which simulation shows to be exact to three digits. Wilks (1963) with a round covariance.</remarks>
    public static OutlierCheck Round(Group group, double significance)
    {
        Moments m = Checked(group, null, 3, significance);
        double s = Math.Sqrt((m.SumRight + m.SumUp) / (2 * (m.Count - 1)));
        return Of(group, i => double.Hypot(i.Right.Meters - m.MeanRight, i.Up.Meters - m.MeanUp) / s, RoundLimit(m.Count, significance), r => RoundTail(m.Count, r));
    }

    /// <summary>Looks for an arrow too far from the centre of a group of any shape.</summary>
    /// <param name="group">The group; at least four counted impacts.</param>
    /// <param name="significance">Chance that a sound group has an arrow beyond the limit, between 0 and 1.</param>
    /// <returns>The check; statistic the squared Mahalanobis distance from the mean.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="significance"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">Fewer than four counted impacts, all on one line, or an arrow missed.</exception>
    /// <remarks><b>Source.</b> S. S. Wilks (1963), Sankhya A 25, 407-426; K. I. Penny (1996), Appl. Statist. 45, 73-81. With two coordinates n D²/(n − 1)² follows Beta(1, (n − 3)/2).</remarks>
    public static OutlierCheck AnyShape(Group group, double significance)
    {
        Moments m = Checked(group, null, 4, significance);
        Symmetric covariance = Symmetric.ScatterOf(m) * (1.0 / (m.Count - 1));
        if (covariance.Flat)
        {
            throw new CannotTellException("All impacts lie on one line, so the shape of the group cannot be told. Check one axis alone, or record them finer.");
        }

        Symmetric inverse = covariance.Inverse;
        return Of(group, i => inverse.Of(i.Right.Meters - m.MeanRight, i.Up.Meters - m.MeanUp), AnyShapeLimit(m.Count, significance), d => AnyShapeTail(m.Count, d));
    }

    /// <summary>Looks for an arrow too far off along one axis, either way (Grubbs).</summary>
    /// <param name="group">The group; at least three counted impacts.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="significance">Chance that a sound group has an arrow beyond the limit, between 0 and 1.</param>
    /// <returns>The check; statistic the offset from the mean over s of this axis.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="significance"/> is not between 0 and 1.</exception>
    /// <exception cref="CannotTellException">Fewer than three counted impacts, all recorded at one place of this axis, or an arrow missed.</exception>
    /// <remarks><b>Source.</b> F. E. Grubbs (1950), Ann. Math. Statist. 21, 27-58; NIST/SEMATECH e-Handbook 1.3.5.17.1.</remarks>
    public static OutlierCheck Along(Group group, Axis axis, double significance)
    {
        Moments m = Checked(group, axis, 3, significance);
        double s = Math.Sqrt(m.SumOf(axis) / (m.Count - 1)), mean = m.MeanOf(axis);
        double Off(Impact i) => Math.Abs((axis == Axis.Vertical ? i.Up : i.Right).Meters - mean) / s;
        return Of(group, Off, GrubbsLimit(m.Count, significance / 2), g => 2 * GrubbsTail(m.Count, g));
    }

    /// <summary>Chance that one arrow displaced from the others stands out in a round group.</summary>
    /// <param name="arrows">Arrows in the group, the displaced one among them; 3 or more.</param>
    /// <param name="off">How far its own centre lies from that of the others, over sigma; not negative.</param>
    /// <param name="significance">Significance of the test, between 0 and 1.</param>
    /// <returns>Probability that this arrow lies beyond the limit of <see cref="Round"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ChanceToFlag(int arrows, double off, double significance)
    {
        Require.InRange(arrows, 3, LeastArrows.Most, "");
        Require.NotNegative(off, "sigma");
        // What the arrow takes from the sum of squares has 2 degrees of freedom, the rest 2(n - 2), and they are independent.
        double kept = Math.Pow(Require.Level(significance) / arrows, 1.0 / (arrows - 2)), critical = (arrows - 2) * (1 - kept) / kept;
        return NoncentralFisher.Survival(critical, 2, 2.0 * (arrows - 2), off * off * (arrows - 1) / arrows);
    }

    internal static double RoundLimit(int n, double significance) => (n - 1) * Math.Sqrt(2.0 / n * (1 - Math.Pow(significance / n, 1.0 / (n - 2))));

    internal static double AnyShapeLimit(int n, double significance) => (n - 1.0) * (n - 1) / n * (1 - Math.Pow(significance / n, 2.0 / (n - 3)));

    /// <summary>Grubbs's limit in one direction.</summary>
    internal static double GrubbsLimit(int n, double significance)
    {
        double t = Quantiles.StudentT(n - 2, 1 - (2 * significance / n)), square = t * t;
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(square / (n - 2 + square));
    }

    static double RoundTail(int n, double ratio) => n * Math.Pow(Math.Max(0, 1 - (ratio * ratio * n / 2 / (n - 1) / (n - 1))), n - 2);

    static double AnyShapeTail(int n, double square) => n * Math.Pow(Math.Max(0, 1 - (square * n / (n - 1) / (n - 1))), (n - 3) / 2.0);

    static double GrubbsTail(int n, double g)
    {
        double share = Math.Min(1, g * g * n / (n - 1) / (n - 1));
        return share < 1 ? n * Fisher.Survival((n - 2) * share / (1 - share), 1, n - 2) / 2 : 0;
    }

    static OutlierCheck Of(Group group, Func<Impact, double> measure, double limit, Func<double, double> tail)
    {
        double[] measures = [.. group.Impacts.Select(measure)];
        int index = Array.IndexOf(measures, measures.Max());
        return new()
        {
            Farthest = group.Impacts[index],
            Index = index,
            Statistic = measures[index],
            Limit = limit,
            Probability = Math.Min(1, tail(measures[index])),
            Beyond = [.. Enumerable.Range(0, measures.Length).Where(i => measures[i] > limit)],
        };
    }

    static Moments Checked(Group group, Axis? axis, int least, double significance)
    {
        ArgumentNullException.ThrowIfNull(group);
        Require.Level(significance);
        if (Spread.OfLengths([group]).Obstacle(axis) is { } obstacle)
        {
            throw obstacle;
        }

        int n = group.Moments.Count;
        return n >= least ? group.Moments : throw new CannotTellException($"No arrow of {n} can stand out from the rest: at least {least} are needed, and ten before it means much.");
    }
}
