namespace Ascham.Bows;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Where the limb bolts of a bow stand, and how far its maker lets them out.</summary>
public sealed record LimbBolts
{
    readonly double? turnsOut, mostTurnsOut; // null until set: either may come first

    /// <summary>Turns out from all the way in, now; 0 to 30, not beyond <see cref="MostTurnsOut"/>. Both bolts by the same.</summary>
    /// <exception cref="BeyondCautionException">The bolts stand farther out than the maker states.</exception>
    public required double TurnsOut
    {
        get => turnsOut.GetValueOrDefault();
        init
        {
            turnsOut = Require.InRange(value, 0, 30, "turns", nameof(TurnsOut));
            Guard(turnsOut, mostTurnsOut, "turn the bolts in before drawing the bow.");
        }
    }

    /// <summary>The most turns out the maker states; 0 to 30.</summary>
    /// <exception cref="BeyondCautionException">The bolts stand farther out than that.</exception>
    public required double MostTurnsOut
    {
        get => mostTurnsOut.GetValueOrDefault();
        init
        {
            mostTurnsOut = Require.InRange(value, 0, 30, "turns", nameof(MostTurnsOut));
            Guard(turnsOut, mostTurnsOut, "turn the bolts in before drawing the bow.");
        }
    }

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
        Guard(turnsOut, MostTurnsOut, "nothing is computed there.");
        Force weight = peakWeightNow - (turnsOut - TurnsOut) * WeightPerTurn;
        Require.Positive(weight.Newtons, "N", "peak weight after turning");
        return weight;
    }

    internal void Guard(Force peakWeightNow, Force wanted)
    {
        (Force least, Force most) = (WeightAt(peakWeightNow, MostTurnsOut), WeightAt(peakWeightNow, 0));
        if (!(wanted.Newtons >= least.Newtons * (1 - 1e-9) && wanted.Newtons <= most.Newtons * (1 + 1e-9)))
        {
            throw new BeyondCautionException(
                string.Create(CultureInfo.InvariantCulture, $"{wanted.PoundsForce:0.#} lbf is outside {least.PoundsForce:0.#} to {most.PoundsForce:0.#} lbf, which the limb bolts give between {MostTurnsOut:0.##} turns out, the most the maker states, and none; nothing is computed there."),
                BowCaution.LimbBoltTurns);
        }
    }

    static void Guard(double? turns, double? most, string then)
    {
        if (turns > most)
        {
            throw new BeyondCautionException(
                string.Create(CultureInfo.InvariantCulture, $"{turns:0.##} turns out is beyond the {most:0.##} the maker states; {then}"),
                BowCaution.LimbBoltTurns);
        }
    }
}
