namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What one arrow scores on a face.</summary>
/// <param name="Mean">Expected score of one arrow.</param>
/// <param name="StandardDeviation">Standard deviation of the score of one arrow; that of n arrows together is √n times it.</param>
/// <param name="Zones">Probability of each zone, from the centre outwards.</param>
/// <param name="Miss">Probability of scoring nothing.</param>
public sealed record ZoneScore(double Mean, double StandardDeviation, IReadOnlyList<ZoneShare> Zones, double Miss);

/// <summary>How often one zone is hit.</summary>
/// <param name="Value">What it scores.</param>
/// <param name="Probability">Probability that an arrow scores in it.</param>
public sealed record ZoneShare(int Value, double Probability);

/// <summary>What one arrow scores on a face, as far as the shots tell.</summary>
/// <param name="PerArrow">Long-run mean score of an arrow, with an interval for it.</param>
/// <param name="NextArrow">The score of the next arrow, all that is unsure averaged over.</param>
public sealed record ScoreEstimate(Estimate<double> PerArrow, ZoneScore NextArrow);

/// <summary>Expected scores on target faces.</summary>
/// <remarks>
/// <para><b>Model.</b> Each zone is a ring between two circles; a shaft that touches the line scores the higher value, so half its diameter is added to each radius.</para>
/// <para><b>Limits.</b> Shafts stand square to the face; torn faces, bounced and glancing arrows are not modelled.</para>
/// </remarks>
public static class RingScore
{
    /// <summary>Expected score, the scatter known.</summary>
    /// <param name="face">The face.</param>
    /// <param name="shaftDiameter">Outer diameter of the shaft; zero when the hole's centre decides.</param>
    /// <param name="scatter">How arrows land about the face's centre.</param>
    /// <returns>The score of one arrow.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shaftDiameter"/> is negative.</exception>
    public static ZoneScore Of(FaceGeometry face, Length shaftDiameter, Scatter scatter)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        double[] radii = Radii(face, shaftDiameter);
        return Score(face, Shares(radii, scatter));
    }

    /// <summary>Expected score, the scatter known from shots only.</summary>
    /// <param name="face">The face.</param>
    /// <param name="shaftDiameter">Outer diameter of the shaft; zero when the hole's centre decides.</param>
    /// <param name="scatter">What the shots tell.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The mean score with its interval, and the score of the next arrow.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shaftDiameter"/> is negative, or <paramref name="level"/> not between 0 and 1.</exception>
    public static ScoreEstimate Of(FaceGeometry face, Length shaftDiameter, ScatterEstimate scatter, double level)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        double[] radii = Radii(face, shaftDiameter);
        var (mean, _) = scatter.Spread(law => Shares(radii, law).Zip(face.Zones, (share, zone) => share * zone.Value).Sum(), level);
        return new(mean, Score(face, scatter.Mean(law => Shares(radii, law))));
    }

    static double[] Radii(FaceGeometry face, Length shaftDiameter)
    {
        ArgumentNullException.ThrowIfNull(face);
        double allowance = Require.NotNegative(shaftDiameter.Meters, "m", nameof(shaftDiameter)) / 2;
        return [.. face.Zones.Select(z => (z.Diameter.Meters / 2) + allowance)];
    }

    static double[] Shares(double[] radii, Scatter scatter)
    {
        double[] within = [.. radii.Select(r => CircleQuadrature.Inside(scatter, r))];
        return [.. within.Select((w, i) => i == 0 ? w : Math.Max(0, w - within[i - 1]))];
    }

    static ZoneScore Score(FaceGeometry face, double[] shares)
    {
        double mean = shares.Zip(face.Zones, (share, zone) => share * zone.Value).Sum(), miss = Math.Max(0, 1 - shares.Sum());
        double variance = (miss * mean * mean) + shares.Zip(face.Zones, (share, zone) => share * (zone.Value - mean) * (zone.Value - mean)).Sum();
        return new(mean, Math.Sqrt(variance), [.. face.Zones.Zip(shares, (zone, share) => new ZoneShare(zone.Value, share))], miss);
    }
}
