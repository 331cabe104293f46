namespace Ascham.Notebooks;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Flight;
using Ascham.Records;
using UnitsNet;

/// <summary>One arrow from one bow, to be tried at another peak weight: how fast it leaves, how hard the launch presses on it, where it lands, where the marks go.</summary>
/// <remarks>
/// <para><b>What follows the weight.</b> Launch energy by (F/F₀)^p, p about 1, as <see cref="LaunchModel"/> has it. Arrow, draw length, virtual mass and drag stay.</para>
/// <para><b>Left out.</b> Where the arrow points as it leaves: the launch direction is taken to stay. Tiller, brace height, timing and draw length move a little with the limb bolts.</para>
/// <para><b>Refused.</b> Weights at which the arrow is lighter per pound than the floor, and turns beyond the maker's: <see cref="BeyondCautionException"/>.</para>
/// </remarks>
public sealed partial record WeightTrial
{
    /// <summary>The setup it came from.</summary>
    public required Setup Setup { get; init; }

    /// <summary>How the bow's speed follows its load, anchored at the setup.</summary>
    public required LaunchModel Model { get; init; }

    /// <summary>Largest force on the draw curve, as the bow scale reads it.</summary>
    public required Force PeakWeight { get; init; }

    /// <summary>Power with which launch energy follows peak weight; about 1.</summary>
    public double WeightPower { get; init; } = 1;

    /// <summary>By how much the true weight is more than the bow scale reads, as a share of it; nothing when not given.</summary>
    public Ratio ScaleOff { get; init; }

    /// <summary>Where the limb bolts stand in the setup; <see langword="null"/> when it does not say.</summary>
    public LimbBolts? Bolts { get; init; }

    /// <summary>Drag of this arrow.</summary>
    public required Drag Drag { get; init; }

    /// <summary>The air flown through.</summary>
    public required Air Air { get; init; }

    /// <summary>Stiffness of the shaft; <see langword="null"/> when the setup does not say.</summary>
    public StaticSpine? Spine { get; init; }

    /// <summary>The bow that a setup describes, as it stands.</summary>
    /// <param name="setup">With the spread of the launch speed, and the kind of bow or what else tells virtual mass and least arrow mass.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentException">The setup lacks one of them; the message names the key.</exception>
    /// <exception cref="VirtualMassUnknownException">The chronographed arrows do not tell the virtual mass.</exception>
    public static WeightTrial Of(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        bool kept = setup.Bow.VirtualMass is not null || setup.Bow.ArrowSpeeds is not null, least = setup.Bow.LeastGrainsPerPound is not null;
        string[] missing =
        [
            .. setup.Bow.LaunchSpeedSd is null ? ["bow.launch_speed_sd"] : Array.Empty<string>(),
            .. setup.Bow.Kind is null && !(kept && least) ? ["bow.kind (or both bow.least_grains_per_pound and bow.chronographed)"] : Array.Empty<string>(),
        ];
        if (missing.Length > 0)
        {
            throw new ArgumentException($"The setup \"{setup.Name}\" lacks {string.Join("; ", missing)}; docs/files.md says how to write it.", nameof(setup));
        }

        var sight = SetupModel.Of(setup).Sight;
        return new()
        {
            Setup = setup,
            Model = LaunchModel.From(setup.Bow, setup.Arrow),
            PeakWeight = setup.Bow.PeakWeight,
            Bolts = setup.Bow.LimbBolts,
            Drag = sight.Drag,
            Air = sight.Air,
            Spine = setup.ArrowBuild is null ? null : setup.ArrowBench?.Spine,
        };
    }

    /// <summary>The same bow at another peak weight, as its scale reads it.</summary>
    /// <param name="peakWeight">Positive; from half to twice that of the setup.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="BeyondCautionException">The arrow would be too light for it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The weight is outside the range of the model.</exception>
    public WeightTrial WithWeight(Force peakWeight)
    {
        var other = this with { PeakWeight = peakWeight };
        return other.LaunchSpeed > Speed.Zero ? other : throw new InvalidOperationException("A launch speed is positive."); // asks the model, which refuses what a caution forbids
    }

    /// <summary>The same bow with so much weight less.</summary>
    /// <param name="lost">Negative for more weight.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="BeyondCautionException">The arrow would be too light for it.</exception>
    public WeightTrial Less(Force lost) => WithWeight(PeakWeight - lost);

    /// <summary>The same bow with its limb bolts elsewhere.</summary>
    /// <param name="turnsOut">Turns out from all the way in, of both.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentException">The setup does not say where the bolts stand.</exception>
    /// <exception cref="BeyondCautionException">More turns than the maker states, or too light an arrow there.</exception>
    public WeightTrial WithBoltsAt(double turnsOut) => Bolts is { } bolts
        ? WithWeight(bolts.WeightAt(Setup.Bow.PeakWeight, turnsOut))
        : throw new ArgumentException($"The setup \"{Setup.Name}\" does not say where the limb bolts stand (bow.limb_bolts_turns_out, bow.limb_bolts_most_out, bow.weight_per_turn); give the change by the scale, such as \"3 lbf less\".", nameof(turnsOut));

    /// <summary>The same bow after a change asked for.</summary>
    /// <param name="change">Turns of both bolts, or a weight.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentException">Turns are asked for and the setup does not say where the bolts stand.</exception>
    /// <exception cref="BeyondCautionException">More turns than the maker states, or too light an arrow there.</exception>
    public WeightTrial With(WeightChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return change.TurnsOut is { } turns ? WithBoltsAt((Bolts?.TurnsOut ?? 0) + turns) : Less(change.Lost!.Value);
    }
}

/// <summary>A change of peak weight: by turns of both limb bolts, or as the scale reads it; one of them is given.</summary>
/// <param name="TurnsOut">Turns out, negative in.</param>
/// <param name="Lost">Weight lost, negative when gained.</param>
/// <param name="Text">As it was written.</param>
public sealed record WeightChange(double? TurnsOut, Force? Lost, string Text);
