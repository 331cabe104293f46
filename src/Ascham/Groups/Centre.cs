namespace Ascham.Groups;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the centre of a group lies, and how surely.</summary>
/// <param name="Right">Mean offset to the right; Student t interval from the spread of this axis alone, so it does not assume a round group.</param>
/// <param name="Up">Mean offset upwards; likewise.</param>
/// <param name="Disc">Region for both at once of a round group: the default for few arrows.</param>
/// <param name="Ellipse">Region for both at once of a group of any shape; null below three impacts, or when they lie on one line.</param>
/// <remarks>A region holds both coordinates together, so it is wider than the two intervals, each of which speaks for itself.</remarks>
public sealed record Centre(Estimate<Length> Right, Estimate<Length> Up, ConfidenceDisc Disc, ConfidenceEllipse? Ellipse);

/// <summary>A disc that holds the true centre of a round group with a stated frequency.</summary>
/// <param name="Centre">The mean impact.</param>
/// <param name="Radius">s·sqrt((nu/n)(alpha^(−2/nu) − 1)) with nu = 2(n − 1) and s pooled over both axes.</param>
/// <param name="Level">Long-run frequency of holding the centre.</param>
/// <remarks>
/// <para><b>Limits.</b> Exact for round normal groups. For groups stretched 2 to 1 it holds somewhat less often than stated: see docs/models/groups.md.</para>
/// <para><b>Source.</b> Hotelling (1931) with equal variances; F with 2 and nu degrees of freedom in closed form.</para>
/// </remarks>
public sealed record ConfidenceDisc(Impact Centre, Length Radius, double Level)
{
    /// <summary>Whether a point of the face lies in the disc.</summary>
    /// <param name="point">The point.</param>
    /// <returns>True inside and on the edge.</returns>
    public bool Contains(Impact point) =>
        double.Hypot((point.Right - Centre.Right).Meters, (point.Up - Centre.Up).Meters) <= Radius.Meters;
}

/// <summary>An ellipse that holds the true centre of a normal group of any shape with a stated frequency.</summary>
/// <param name="Centre">The mean impact.</param>
/// <param name="SemiMajor">Longer half axis.</param>
/// <param name="SemiMinor">Shorter half axis.</param>
/// <param name="Orientation">Direction of the longer axis, from right towards up as the archer sees it; above −90° up to 90°.</param>
/// <param name="Level">Long-run frequency of holding the centre.</param>
/// <remarks>
/// <para><b>Model.</b> n(m − μ)ᵀS⁻¹(m − μ) ≤ 2(n − 1)/(n − 2)·F, F with 2 and n − 2 degrees of freedom.</para>
/// <para><b>Limits.</b> Exact for normal groups, but useless below five impacts: at three its half axes are 16 times the spread (95 %).</para>
/// <para><b>Source.</b> Hotelling (1931); Johnson and Wichern, <i>Applied Multivariate Statistical Analysis</i>, chapter 5.</para>
/// </remarks>
public sealed record ConfidenceEllipse(Impact Centre, Length SemiMajor, Length SemiMinor, Angle Orientation, double Level)
{
    /// <summary>Whether a point of the face lies in the ellipse.</summary>
    /// <param name="point">The point.</param>
    /// <returns>True inside and on the edge.</returns>
    public bool Contains(Impact point)
    {
        double right = (point.Right - Centre.Right).Meters, up = (point.Up - Centre.Up).Meters;
        var (sine, cosine) = Math.SinCos(Orientation.Radians);
        return double.Hypot(((cosine * right) + (sine * up)) / SemiMajor.Meters, ((cosine * up) - (sine * right)) / SemiMinor.Meters) <= 1;
    }

    internal static ConfidenceEllipse? From(Moments moments, Impact centre, double level, Func<double, Length> unit)
    {
        int n = moments.Count;
        double half = (moments.SumRight - moments.SumUp) / 2, middle = (moments.SumRight + moments.SumUp) / 2;
        double radius = double.Hypot(half, moments.SumCross), small = middle - radius;
        // A line leaves a smaller eigenvalue of rounding size, of either sign.
        if (n < 3 || small <= 1e-12 * middle)
        {
            return null;
        }

        double multiplier = Math.Sqrt(2.0 / (n - 2) / n * Quantiles.FisherTwo(n - 2, level));
        Angle orientation = Angle.FromRadians(Math.Atan2(moments.SumCross, half) / 2).ToUnit(UnitsNet.Units.AngleUnit.Degree);
        return new(centre, unit(multiplier * Math.Sqrt(middle + radius)), unit(multiplier * Math.Sqrt(small)), orientation, level);
    }
}
