namespace Ascham.Bows;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the limb bolts of a bow stand, and how far its maker lets them out.</summary>
public sealed record LimbBolts
{
    /// <summary>Turns out from all the way in, now; 0 to 30, not beyond <see cref="MostTurnsOut"/>. Both bolts by the same.</summary>
    public required double TurnsOut { get; init => field = Require.InRange(value, 0, 30, "turns", nameof(TurnsOut)); }

    /// <summary>The most turns out the maker states; 0 to 30.</summary>
    public required double MostTurnsOut { get; init => field = Require.InRange(value, 0, 30, "turns", nameof(MostTurnsOut)); }

    /// <summary>Peak weight lost per turn out of both bolts, measured on this bow; positive, up to 100 N.</summary>
    public required Force WeightPerTurn
    {
        get;
        init
        {
            Require.InRange(value.Newtons, double.Epsilon, 100, "N", nameof(WeightPerTurn));
            field = value;
        }
    }

    /// <summary>Peak weight with the bolts elsewhere, in proportion to the turns.</summary>
    /// <param name="peakWeightNow">Peak weight as they stand now; positive.</param>
    /// <param name="turnsOut">Turns out from all the way in; 0 to <see cref="MostTurnsOut"/>.</param>
    /// <returns>The peak weight.</returns>
    /// <exception cref="BeyondCautionException">More turns than the maker states.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer turns than none, or no weight would be left.</exception>
    public Force WeightAt(Force peakWeightNow, double turnsOut)
    {
        Require.Positive(peakWeightNow.Newtons, "N", nameof(peakWeightNow));
        Require.InRange(turnsOut, 0, 1000, "turns", nameof(turnsOut));
        if (turnsOut > MostTurnsOut)
        {
            throw new BeyondCautionException(
                string.Create(CultureInfo.InvariantCulture, $"{turnsOut:0.##} turns out is beyond the {MostTurnsOut:0.##} the maker states; nothing is computed there."),
                BowCaution.LimbBoltTurns);
        }

        Force weight = peakWeightNow - (turnsOut - TurnsOut) * WeightPerTurn;
        Require.Positive(weight.Newtons, "N", "peak weight after turning");
        return weight;
    }
}
