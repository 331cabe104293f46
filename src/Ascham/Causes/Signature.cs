namespace Ascham.Causes;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What a cause does to impacts along the distances: its signature.</summary>
public static class Signature
{
    /// <summary>Flies a cause at given sizes, the sight on its mark at every distance.</summary>
    /// <param name="bow">The bow as it was when all was well.</param>
    /// <param name="cause">The cause.</param>
    /// <param name="sizes">One number per size of the cause, in the order of <see cref="CauseText.SizesOf"/> and the units of <see cref="CauseText.Unit"/>.</param>
    /// <param name="distances">Distances; positive.</param>
    /// <param name="shotBefore">Arrows of the string shot before, on average; only fatigue asks.</param>
    /// <returns>How far impacts move, point by point; distances that the arrow does not reach any more are left out.</returns>
    /// <exception cref="ArgumentException">Not as many sizes as the cause has.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or not positive.</exception>
    public static IReadOnlyList<SignaturePoint> Of(KnownBow bow, Cause cause, IReadOnlyList<double> sizes, IEnumerable<Length> distances, double shotBefore = 2.5)
    {
        ArgumentNullException.ThrowIfNull(bow);
        ArgumentNullException.ThrowIfNull(sizes);
        bow.Check();
        Require.NotNegative(shotBefore, "", nameof(shotBefore));
        IReadOnlyList<CauseSize> kinds = cause.SizesOf();
        if (kinds.Count != sizes.Count)
        {
            throw new ArgumentException($"{cause.Key()} has {kinds.Count} sizes ({string.Join(", ", kinds)}); {sizes.Count} were given.", nameof(sizes));
        }

        double[] all = new double[CauseText.Sizes], nothing = new double[CauseText.Sizes];
        for (int i = 0; i < kinds.Count; i++)
        {
            all[(int)kinds[i]] = Require.Finite(sizes[i], kinds[i].Unit(), nameof(sizes));
        }

        var forward = new Forward(bow);
        List<SignaturePoint> points = [];
        foreach (Length distance in distances)
        {
            var station = new AimedStation(Require.Positive(distance.Meters, "m", nameof(distances)), bow.Sight.SightAngle(distance).Radians, shotBefore, false);
            StationFlight flight = forward.Fly(station, all), known = forward.Fly(station, nothing);
            if (flight.Met)
            {
                points.Add(new(distance, Length.FromMeters(flight.Flight.Above.Value - known.Flight.Above.Value), Length.FromMeters(flight.Flight.Right.Value - known.Flight.Right.Value)));
            }
        }

        return points;
    }
}

/// <summary>What a ranked cause would do by itself.</summary>
public static class SignatureOfRanked
{
    /// <summary>Flies a cause at the size that the evidence gives it when it alone is at work, the sight on its mark at every distance.</summary>
    /// <param name="ranking">The ranking.</param>
    /// <param name="cause">A cause considered in it.</param>
    /// <param name="distances">Distances; positive.</param>
    /// <param name="shotBefore">Arrows of the string shot before, on average; only fatigue asks.</param>
    /// <returns>How far impacts move, point by point.</returns>
    /// <exception cref="ArgumentException">The cause was ruled out by the priors.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A distance is not positive.</exception>
    public static IReadOnlyList<SignaturePoint> Signature(this Ranking ranking, Cause cause, IEnumerable<Length> distances, double shotBefore = 2.5)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        Weighed alone = ranking.Weighed.FirstOrDefault(w => w.Hypothesis.Causes is [var only] && only == cause)
            ?? throw new ArgumentException($"{cause.Key()} was ruled out by the priors.", nameof(cause));
        double[] delta = alone.Middle.Mean;
        return Causes.Signature.Of(ranking.Evidence.Bow, cause, [.. alone.Hypothesis.Means.Select((mean, i) => mean + delta[i])], distances, shotBefore);
    }
}

/// <summary>How far impacts move at one distance.</summary>
/// <param name="Distance">Distance along the line of sight.</param>
/// <param name="Up">Up; negative when lower.</param>
/// <param name="Right">To the right; negative to the left.</param>
public sealed record SignaturePoint(Length Distance, Length Up, Length Right);
