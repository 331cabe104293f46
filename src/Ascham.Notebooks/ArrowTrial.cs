namespace Ascham.Notebooks;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Flight;
using Ascham.Records;
using UnitsNet;

/// <summary>One arrow from one bow, to be tried with another point: how it balances, swings, drops, drifts, and what it carries.</summary>
/// <remarks>
/// <para><b>What follows the mass.</b> Speed by v² (m + K) = constant (<see cref="LaunchModel"/>), K being the bow's virtual mass, the same for both arrows
/// (P. E. Klopsteg, <i>Physics of Bows and Arrows</i>, in <i>Archery: The Technical Side</i>, 1947); drag constant by 1/m, the shape being the same.</para>
/// <para><b>Left out.</b> Where the arrow points as it leaves: the launch direction is taken to stay. K rises a little with the mass; a point of another
/// length moves the tip. Stability is that of docs/models/attack.md, with its range.</para>
/// </remarks>
public sealed partial record ArrowTrial
{
    /// <summary>The setup it came from.</summary>
    public required Setup Setup { get; init; }

    /// <summary>The arrow as built.</summary>
    public required ArrowBuild Build { get; init; }

    /// <summary>Speed as it leaves.</summary>
    public required Speed LaunchSpeed { get; init; }

    /// <summary>The energy that stays in limbs, cams and string, as a mass that flies along with the arrow; zero or more.</summary>
    public required Mass VirtualMass { get; init; }

    /// <summary>Drag of this arrow, one constant.</summary>
    public required Drag Drag { get; init; }

    /// <summary>The air flown through.</summary>
    public required Air Air { get; init; }

    /// <summary>Share of their free-stream lift that the vanes deliver; 0.6 to 1 is a fair range.</summary>
    public required Ratio VaneShare { get; init; }

    /// <summary>How the shaft adds to the lift of the vanes.</summary>
    public required CarryOver CarryOver { get; init; }

    /// <summary>Stiffness of the shaft.</summary>
    public required StaticSpine Spine { get; init; }

    /// <summary>What the scale is off by when a change is weighed; zero when not given.</summary>
    public Mass WeighingError { get; init; }

    /// <summary>The arrow that a setup describes: vanes at 0.8 of their lift, carry-over onto the vanes.</summary>
    /// <param name="setup">With parts, shape of the vanes, spine and shaft diameter.</param>
    /// <param name="virtualMass">Of the bow; zero or more.</param>
    /// <returns>The arrow.</returns>
    /// <exception cref="ArgumentException">The setup lacks one of them; the message names the key.</exception>
    public static ArrowTrial Of(Setup setup, Mass virtualMass)
    {
        ArgumentNullException.ThrowIfNull(setup);
        string[] missing =
        [
            .. setup.ArrowBuild is null ? ["arrow.parts"] : Array.Empty<string>(),
            .. setup.ArrowBench?.Spine is null ? ["arrow.spine"] : Array.Empty<string>(),
            .. setup.Arrow.ShaftDiameter is null ? ["arrow.shaft_diameter"] : Array.Empty<string>(),
            .. setup.ArrowBuild is not null && setup.FletchingWith(Ratio.FromPercent(80)) is null ? ["count, height, tip_length and sweep in arrow.parts.vanes"] : Array.Empty<string>(),
        ];
        if (missing.Length > 0)
        {
            throw new ArgumentException($"The setup \"{setup.Name}\" lacks {string.Join("; ", missing)}. Weigh and measure the parts of the arrow; docs/files.md says how to write them.", nameof(setup));
        }

        var model = SetupModel.Of(setup).Sight;
        return new()
        {
            Setup = setup,
            Build = setup.ArrowBuild!,
            LaunchSpeed = setup.Bow.LaunchSpeed,
            VirtualMass = virtualMass,
            Drag = model.Drag,
            Air = model.Air,
            VaneShare = Ratio.FromPercent(80),
            CarryOver = CarryOver.OntoVanes,
            Spine = setup.ArrowBench!.Spine!,
        };
    }

    /// <summary>Mass per pound of peak weight, in grains.</summary>
    public double GrainsPerPound => LoadingOf(Build).GrainsPerPound;

    /// <summary>The least mass per pound that is tried: the maker's limit, else the usual one of the kind of bow, else the lowest usual one.</summary>
    public MassFloor Floor => MassFloor.OfOrLowest(Setup.Bow);

    /// <summary>Whether the arrow with this much more on its point is not too light for the bow.</summary>
    /// <param name="added">May be negative.</param>
    /// <returns><see langword="false"/> where <see cref="WithPoint"/> refuses.</returns>
    public bool Allows(Mass added) => Build.Point.Mass + added > Mass.Zero && Floor.Allows(new() { ArrowMass = Build.Mass + added, PeakWeight = Setup.Bow.PeakWeight });

    /// <summary>The same arrow with mass added to its point, or taken off.</summary>
    /// <param name="added">May be negative.</param>
    /// <returns>The arrow from the same bow, its speed and drag as its mass asks for.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The point would weigh less than nothing.</exception>
    /// <exception cref="BeyondCautionException">The arrow would be too light for the bow.</exception>
    public ArrowTrial WithPoint(Mass added)
    {
        Mass point = Build.Point.Mass + added + WeighingError;
        return point >= Mass.Zero
            ? Shot(Build.WithPoint(point))
            : throw new ArgumentOutOfRangeException(nameof(added), added, FormattableString.Invariant($"The point weighs {Build.Point.Mass.Grains:0.#} gr; no more than that can be taken off."));
    }

    /// <summary>The same arrow with mass added where it balances: heavier, balance unmoved.</summary>
    /// <param name="added">Positive.</param>
    /// <returns>The arrow from the same bow.</returns>
    public ArrowTrial WithMassAtBalance(Mass added) => Shot(Build.Plus(ArrowPart.At(PartKind.Other, added, Build.BalancePoint) with { Name = "added mass" }));

    /// <summary>The same mass farther forward: a heavier point on a shaft lighter by as much.</summary>
    /// <param name="moved">From the shaft to the point.</param>
    /// <returns>The arrow from the same bow.</returns>
    public ArrowTrial WithMassMovedForward(Mass moved) => Shot(Build.WithPoint(Build.Point.Mass + moved).With(Build.Shaft, Build.Shaft.Mass - moved));

    ArrowTrial Shot(ArrowBuild build)
    {
        var bow = new LaunchModel
        {
            Known = LoadingOf(Build),
            KnownSpeed = LaunchSpeed,
            KnownSpeedSd = Speed.Zero,   // what is not known exactly is moved from outside: see Unknowns
            VirtualMass = VirtualMass,
            VirtualMassSd = Mass.Zero,
            Floor = Floor,
            HowObtained = "speed of the arrow as it is",
        };
        return this with
        {
            Build = build,
            LaunchSpeed = bow.SpeedAt(LoadingOf(build), 0.9).Value,
            Drag = Drag.Times(Build.Mass / build.Mass),
        };
    }

    Loading LoadingOf(ArrowBuild build) => new() { ArrowMass = build.Mass, PeakWeight = Setup.Bow.PeakWeight };
}
