namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How arrows land about a target's centre, taken as known: a normal law on the face.</summary>
/// <remarks>
/// <para><b>Model.</b> Normal, with its centre off the target's centre if need be, and any stretch and tilt. Zero scatter is allowed: all arrows in one hole.</para>
/// <para><b>Limits.</b> A known law is a supposition. What shots tell of it is a <see cref="ScatterEstimate"/>.</para>
/// </remarks>
public sealed record Scatter
{
    Scatter(double right, double up, double varianceRight, double varianceUp, double covariance) =>
        (MeanRight, MeanUp, VarianceRight, VarianceUp, Covariance) = (right, up, varianceRight, varianceUp, covariance);

    internal double MeanRight { get; }

    internal double MeanUp { get; }

    internal double VarianceRight { get; }

    internal double VarianceUp { get; }

    internal double Covariance { get; }

    /// <summary>Makes a round law.</summary>
    /// <param name="centre">Centre of the impacts from the target's centre.</param>
    /// <param name="sigma">Standard deviation along each axis; zero or more.</param>
    /// <returns>The law.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sigma"/> is negative, or a number is not finite.</exception>
    public static Scatter Round(Impact centre, Length sigma)
    {
        Require.NotNegative(sigma.Meters, "m", nameof(sigma));
        return Stretched(centre, sigma, sigma, 0);
    }

    /// <summary>Makes a law of any shape.</summary>
    /// <param name="centre">Centre of the impacts from the target's centre.</param>
    /// <param name="across">Standard deviation across the face; zero or more.</param>
    /// <param name="up">Standard deviation up the face; zero or more.</param>
    /// <param name="correlation">Correlation of right and up, −1 to 1; zero when the long axis is level or upright.</param>
    /// <returns>The law.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative, the correlation out of range, or a number not finite.</exception>
    public static Scatter Stretched(Impact centre, Length across, Length up, double correlation)
    {
        double right = Require.NotNegative(across.Meters, "m", nameof(across)), high = Require.NotNegative(up.Meters, "m", nameof(up));
        Require.InRange(correlation, -1, 1, "");
        return Si(
            Require.Finite(centre.Right.Meters, "m", "centre.Right"), Require.Finite(centre.Up.Meters, "m", "centre.Up"),
            right * right, high * high, correlation * right * high);
    }

    /// <summary>Adds a further, independent reason to miss: an offset, a standard deviation along each axis, or both.</summary>
    /// <param name="added">What is added.</param>
    /// <returns>The wider, shifted law.</returns>
    public Scatter Plus(AddedScatter added)
    {
        ArgumentNullException.ThrowIfNull(added);
        return Si(
            MeanRight + added.Offset.Right.Meters, MeanUp + added.Offset.Up.Meters,
            VarianceRight + (added.Across.Meters * added.Across.Meters), VarianceUp + (added.Up.Meters * added.Up.Meters), Covariance);
    }

    internal static Scatter Si(double right, double up, double varianceRight, double varianceUp, double covariance) =>
        new(right, up, varianceRight, varianceUp, covariance);

    /// <summary>Standard deviations along the principal axes, and the centre along them; the smaller comes first.</summary>
    internal (double SmallSd, double LargeSd, double SmallMean, double LargeMean) Principal()
    {
        double half = (VarianceRight - VarianceUp) / 2, middle = (VarianceRight + VarianceUp) / 2, radius = double.Hypot(half, Covariance);
        if (radius <= 1e-14 * middle)
        {
            // Round: any axes will do. The offset goes on the second.
            double sigma = Math.Sqrt(middle);
            return (sigma, sigma, 0, double.Hypot(MeanRight, MeanUp));
        }

        var (sine, cosine) = Math.SinCos(Math.Atan2(Covariance, half) / 2);
        double small = Math.Sqrt(Math.Max(0, middle - radius));
        return (small, Math.Sqrt(middle + radius), (cosine * MeanUp) - (sine * MeanRight), (cosine * MeanRight) + (sine * MeanUp));
    }
}

/// <summary>A reason to miss that the groups do not hold, entered by the caller: misjudged range, wind, a sight not yet set right.</summary>
/// <param name="Offset">Where it moves the centre.</param>
/// <param name="Across">Standard deviation it adds across the face, independent of the rest; zero or more.</param>
/// <param name="Up">Standard deviation it adds up the face; zero or more.</param>
/// <remarks>
/// A range judged to ±3 yd adds up the face 3 yd times the slope of the drop at that range; a gusty side wind adds across. The flight model gives both slopes.
/// </remarks>
public sealed record AddedScatter(Impact Offset, Length Across, Length Up)
{
    readonly Impact offset = Checked(Offset);
    readonly Length across = Checked(Across, nameof(Across)), up = Checked(Up, nameof(Up));

    /// <summary>Where it moves the centre.</summary>
    public Impact Offset
    {
        get => offset;
        init => offset = Checked(value);
    }

    /// <summary>Standard deviation it adds across the face.</summary>
    public Length Across
    {
        get => across;
        init => across = Checked(value, nameof(Across));
    }

    /// <summary>Standard deviation it adds up the face.</summary>
    public Length Up
    {
        get => up;
        init => up = Checked(value, nameof(Up));
    }

    static Impact Checked(Impact offset)
    {
        Require.Finite(offset.Right.Meters, "m", "Offset.Right");
        Require.Finite(offset.Up.Meters, "m", "Offset.Up");
        return offset;
    }

    static Length Checked(Length sd, string name)
    {
        Require.NotNegative(sd.Meters, "m", name);
        return sd;
    }
}
