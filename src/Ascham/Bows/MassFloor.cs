namespace Ascham.Bows;

using System.Globalization;
using Ascham.Quantities;
using UnitsNet;

/// <summary>The lightest arrow a bow may be asked to shoot, as mass per peak weight. What-ifs refuse to go below it.</summary>
/// <remarks>Not a safe value: only the line below which this library computes nothing. The maker's limit comes first, also when it is higher.</remarks>
public sealed record MassFloor
{
    const double UsualLeast = 5; // of compounds, the lowest of the usual limits; common practice, no source

    MassFloor(double grainsPerPound, string origin, string? warning = null) => (GrainsPerPound, Origin, Warning) = (grainsPerPound, origin, warning);

    /// <summary>Least arrow mass per peak weight, in grains per pound-force.</summary>
    public double GrainsPerPound { get; }

    /// <summary>Where the limit is from.</summary>
    public string Origin { get; }

    /// <summary>What to mind about this limit, in a sentence: a maker's below the usual one, or one taken for want of any; <see langword="null"/> when there is nothing.</summary>
    public string? Warning { get; }

    /// <summary>The maker's own limit.</summary>
    /// <param name="grainsPerPound">Grains per pound-force of peak weight; 3 to 30.</param>
    /// <returns>The floor, with a <see cref="Warning"/> when it is below the lowest usual one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static MassFloor OfMaker(double grainsPerPound) => OfMaker(grainsPerPound, UsualLeast);

    static MassFloor OfMaker(double grainsPerPound, double usual) => new(
        Require.InRange(grainsPerPound, 3, 30, "gr/lbf"),
        "the maker's limit",
        grainsPerPound < usual ? Text($"The maker's limit given, {grainsPerPound:0.##} gr/lbf, is below the usual {usual:0.##}: read it again in the maker's papers before shooting an arrow that light.") : null);

    /// <summary>The usual limit of a kind of bow, for want of the maker's: 5 gr/lbf for compounds, 7 for recurves, 8 for longbows.</summary>
    /// <param name="kind">The kind of bow.</param>
    /// <returns>The floor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such kind.</exception>
    public static MassFloor For(BowKind kind) => kind switch
    {
        BowKind.Compound => new(UsualLeast, "common practice for compounds, no source"), // common practice, no source
        BowKind.Recurve => new(7, "common practice for recurves, no source"),   // common practice, no source
        BowKind.Longbow => new(8, "common practice for longbows, no source"),   // common practice, no source
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "kind must be one of the named kinds of bow."),
    };

    /// <summary>The maker's limit where the bow states one, else the usual one of its kind.</summary>
    /// <param name="bow">The bow.</param>
    /// <returns>The floor.</returns>
    /// <exception cref="InvalidOperationException">The bow states neither.</exception>
    public static MassFloor Of(Bow bow)
    {
        ArgumentNullException.ThrowIfNull(bow);
        return bow.LeastGrainsPerPound is { } least ? OfMaker(least, bow.Kind is { } its ? For(its).GrainsPerPound : UsualLeast)
            : bow.Kind is { } kind ? For(kind)
            : throw new InvalidOperationException("How light an arrow this bow may shoot is not known: state its Kind, or the maker's LeastGrainsPerPound.");
    }

    /// <summary>As <see cref="Of"/>, but the lowest usual limit, with a <see cref="Warning"/>, where the bow states neither: for a look at a setup, never for leave to shoot.</summary>
    /// <param name="bow">The bow.</param>
    /// <returns>The floor.</returns>
    public static MassFloor OfOrLowest(Bow bow)
    {
        ArgumentNullException.ThrowIfNull(bow);
        return bow.LeastGrainsPerPound is not null || bow.Kind is not null ? Of(bow) : new(
            UsualLeast,
            "common practice for compounds, no source",
            Text($"The setup states neither the kind of bow nor the maker's least arrow mass: {UsualLeast:0.##} gr/lbf, usual for compounds, is taken; recurves and longbows need more. State the kind."));
    }

    /// <summary>The least arrow mass at a peak weight.</summary>
    /// <param name="peakWeight">Positive.</param>
    /// <returns>The mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is not positive.</exception>
    public Mass LeastMass(Force peakWeight) => Mass.FromGrains(GrainsPerPound * Require.Positive(peakWeight.PoundsForce, "lbf", nameof(peakWeight)));

    /// <summary>The most peak weight an arrow allows.</summary>
    /// <param name="arrowMass">Mass of the complete arrow; positive.</param>
    /// <returns>The weight.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive.</exception>
    public Force MostWeight(Mass arrowMass) => Force.FromPoundsForce(Require.Positive(arrowMass.Grains, "gr", nameof(arrowMass)) / GrainsPerPound);

    /// <summary>Whether a loading keeps to the floor.</summary>
    /// <param name="loading">The loading.</param>
    /// <returns><see langword="false"/> when the arrow is too light for the peak weight.</returns>
    public bool Allows(Loading loading)
    {
        ArgumentNullException.ThrowIfNull(loading);
        return loading.GrainsPerPound >= GrainsPerPound * (1 - 1e-9); // 350 gr at 70 lbf is 5 gr/lbf, whatever the last bit says
    }

    internal void Guard(Loading loading)
    {
        if (!Allows(loading))
        {
            throw new BeyondCautionException(
                Text($"An arrow of {loading.ArrowMass.Grains:0.#} gr at {loading.PeakWeight.PoundsForce:0.#} lbf has {loading.GrainsPerPound:0.00} gr/lbf, below {GrainsPerPound:0.##} gr/lbf ({Origin}); nothing is computed there. Use {LeastMass(loading.PeakWeight).Grains:0} gr or more, or {MostWeight(loading.ArrowMass).PoundsForce:0.#} lbf or less."),
                BowCaution.LightArrow);
        }
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A what-if went where a caution forbids: nothing is computed there.</summary>
public sealed class BeyondCautionException : InvalidOperationException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What was asked, the limit, and what to ask instead.</param>
    /// <param name="caution">The caution.</param>
    public BeyondCautionException(string message, BowCaution caution)
        : base(message) => Caution = caution;

    /// <summary>The caution.</summary>
    public BowCaution Caution { get; }
}
