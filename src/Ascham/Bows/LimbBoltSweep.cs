namespace Ascham.Bows;

using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

/// <summary>What turning the limb bolts does, everything else left alone. Marks on the tape belong to the room Sights; join them by the speed.</summary>
public static class LimbBoltSweep
{
    /// <summary>One row per peak weight.</summary>
    /// <param name="model">The bow, anchored at a known speed.</param>
    /// <param name="loading">The loading swept; its peak weight is replaced.</param>
    /// <param name="peakWeights">The weights, in any order; rows follow it.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <param name="shaft">Arrow and spine for the column load; <see langword="null"/> when not known.</param>
    /// <param name="bolts">Where the limb bolts stand at the weight of <paramref name="loading"/>, and how far they may go. Without them nothing here knows the maker's limit: it is yours to keep.</param>
    /// <returns>The rows.</returns>
    /// <exception cref="BeyondCautionException">At one of the weights the arrow would be too light, or the limb bolts would be beyond their limit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight is outside the range of the model.</exception>
    /// <exception cref="ArgumentException">The built arrow's mass is more than 1 % off the mass swept.</exception>
    public static IReadOnlyList<LimbBoltRow> ByWeight(LaunchModel model, Loading loading, IEnumerable<Force> peakWeights, double level, (ArrowBuild Build, StaticSpine Spine)? shaft = null, LimbBolts? bolts = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(loading);
        ArgumentNullException.ThrowIfNull(peakWeights);
        Force[] weights = [.. peakWeights];
        foreach (Force weight in weights)
        {
            bolts?.Guard(loading.PeakWeight, weight);
        }

        if (shaft is { } s && Math.Abs(s.Build.Mass / loading.ArrowMass - 1) > 0.01)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"The built arrow has {s.Build.Mass.Grains:0.#} gr, the one swept {loading.ArrowMass.Grains:0.#} gr; they must be the same arrow. Weigh it."),
                nameof(shaft));
        }

        return [.. weights.Select(w => Row(model, loading with { PeakWeight = w }, level, shaft))];
    }

    /// <summary>One row per position of the limb bolts.</summary>
    /// <param name="model">The bow, anchored at a known speed.</param>
    /// <param name="loading">The loading as the bolts stand now.</param>
    /// <param name="bolts">The bolts.</param>
    /// <param name="turnsOut">Turns out from all the way in, in any order; rows follow it.</param>
    /// <param name="level">Level of the intervals, between 0 and 1.</param>
    /// <param name="shaft">Arrow and spine for the column load; <see langword="null"/> when not known.</param>
    /// <returns>The rows.</returns>
    /// <exception cref="BeyondCautionException">More turns than the maker states, or too light an arrow at one of them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position or its weight is outside its range.</exception>
    /// <exception cref="ArgumentException">The built arrow's mass is more than 1 % off the mass swept.</exception>
    public static IReadOnlyList<LimbBoltRow> ByTurns(LaunchModel model, Loading loading, LimbBolts bolts, IEnumerable<double> turnsOut, double level, (ArrowBuild Build, StaticSpine Spine)? shaft = null)
    {
        ArgumentNullException.ThrowIfNull(loading);
        ArgumentNullException.ThrowIfNull(bolts);
        ArgumentNullException.ThrowIfNull(turnsOut);
        double[] turns = [.. turnsOut];
        var rows = ByWeight(model, loading, turns.Select(t => bolts.WeightAt(loading.PeakWeight, t)), level, shaft);
        return [.. rows.Zip(turns, (row, t) => row with { TurnsOut = t })];
    }

    static LimbBoltRow Row(LaunchModel model, Loading loading, double level, (ArrowBuild Build, StaticSpine Spine)? shaft)
    {
        Estimate<Speed> speed = model.SpeedAt(loading, level);
        return new()
        {
            PeakWeight = loading.PeakWeight,
            GrainsPerPound = loading.GrainsPerPound,
            Speed = speed,
            Energy = MovingArrow.KineticEnergy(loading.ArrowMass, speed),
            Momentum = MovingArrow.Momentum(loading.ArrowMass, speed),
            ColumnLoadRatio = shaft is { } s ? model.PeakAcceleration(loading, level).Map(a => ColumnLoad.Of(s.Build, s.Spine, a).Ratio) : null,
        };
    }
}

/// <summary>A row of the sweep: everything the peak weight moves at the bow.</summary>
public sealed record LimbBoltRow
{
    /// <summary>Turns out from all the way in; <see langword="null"/> when swept by weight.</summary>
    public double? TurnsOut { get; init; }

    /// <summary>Peak weight.</summary>
    public required Force PeakWeight { get; init; }

    /// <summary>Arrow mass per peak weight, grains per pound-force.</summary>
    public required double GrainsPerPound { get; init; }

    /// <summary>Launch speed.</summary>
    public required Estimate<Speed> Speed { get; init; }

    /// <summary>Energy of the arrow as it leaves.</summary>
    public required Estimate<Energy> Energy { get; init; }

    /// <summary>Its momentum.</summary>
    public required Estimate<Impulse> Momentum { get; init; }

    /// <summary>Column-load ratio of the shaft, a relative index; the interval is that of the virtual mass. <see langword="null"/> without a shaft.</summary>
    public Estimate<double>? ColumnLoadRatio { get; init; }
}
