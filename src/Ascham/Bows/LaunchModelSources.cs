namespace Ascham.Bows;

using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

public sealed partial record LaunchModel
{
    /// <summary>Relative standard deviation of a rated speed as what the very bow would give at the rating's own loading: 2 %.</summary>
    public const double RatingSd = 0.02; // common practice, no source: one bow is not the maker's, and "70/30/350" is loosely kept

    /// <summary>From a bow and its arrow as the setup states them.</summary>
    /// <remarks>Virtual mass, the first of: the one stated; the fit to chronographed arrows; the usual one of the kind of bow. <see cref="HowObtained"/> says which.</remarks>
    /// <param name="bow">Its launch speed is that of this arrow.</param>
    /// <param name="arrow">The arrow.</param>
    /// <returns>The model, anchored at this setup.</returns>
    /// <exception cref="InvalidOperationException">The spread of the launch speed is not stated; or nothing tells the virtual mass or the floor.</exception>
    /// <exception cref="VirtualMassUnknownException">The chronographed arrows do not tell the virtual mass.</exception>
    public static LaunchModel From(Bow bow, Arrow arrow)
    {
        ArgumentNullException.ThrowIfNull(bow);
        ArgumentNullException.ThrowIfNull(arrow);
        (Mass virtualMass, Mass sd, string how) = VirtualMassOf(bow, arrow);
        return new()
        {
            Known = new() { ArrowMass = arrow.Mass, PeakWeight = bow.PeakWeight, DrawLength = bow.DrawLength },
            KnownSpeed = bow.LaunchSpeed,
            KnownSpeedSd = bow.LaunchSpeedSd ?? throw new InvalidOperationException("How sure another speed is cannot be told: the launch speed carries no standard deviation. State LaunchSpeedSd."),
            VirtualMass = virtualMass,
            VirtualMassSd = sd,
            BraceHeight = bow.BraceHeight,
            Floor = MassFloor.Of(bow),
            HowObtained = "known launch speed; virtual mass " + how,
        };
    }

    /// <summary>From a rated speed, to be converted to a user's own setup: an honest range, not a substitute for a chronograph.</summary>
    /// <remarks>Known to 2 % (one standard deviation), virtual mass the usual one of the kind. A loop, silencers and a peep slow the arrow further: give them as <see cref="Loading.StringMass"/>.</remarks>
    /// <param name="rated">The rated speed.</param>
    /// <param name="condition">What it was rated at, such as <see cref="Loading.Rating"/>.</param>
    /// <param name="bow">The bow; its launch speed is not used.</param>
    /// <returns>The model, anchored at the rating.</returns>
    /// <exception cref="InvalidOperationException">The bow does not state its kind.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    public static LaunchModel FromRating(Speed rated, Loading condition, Bow bow)
    {
        ArgumentNullException.ThrowIfNull(condition);
        ArgumentNullException.ThrowIfNull(bow);
        Estimate<Mass> usual = Usual(bow, condition.ArrowMass);
        return new()
        {
            Known = condition,
            KnownSpeed = rated,
            KnownSpeedSd = RatingSd * rated,
            VirtualMass = usual.Value,
            VirtualMassSd = usual.StandardError,
            BraceHeight = bow.BraceHeight,
            Floor = MassFloor.Of(bow),
            HowObtained = "rated speed, taken as known to 2 %; virtual mass usual for the kind of bow",
        };
    }

    /// <summary>From stored energy and virtual mass alone: ½ (m + K) v² = (1 − h) E. Without a chronograph, and no better than what it is given.</summary>
    /// <param name="stored">Energy under the draw curve, with interval.</param>
    /// <param name="hysteresis">The share of it that is lost in drawing and letting down, with interval.</param>
    /// <param name="virtualMass">K, with interval.</param>
    /// <param name="arrowMass">Mass of the complete arrow; positive.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The launch speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass or the energy is not positive, the hysteresis is not below one, or the level is outside its range.</exception>
    public static Estimate<Speed> SpeedFromEnergy(Estimate<Energy> stored, Estimate<Ratio> hysteresis, Estimate<Mass> virtualMass, Mass arrowMass, double level)
    {
        ArgumentNullException.ThrowIfNull(stored);
        ArgumentNullException.ThrowIfNull(hysteresis);
        ArgumentNullException.ThrowIfNull(virtualMass);
        double energy = Require.Positive(stored.Value.Joules, "J", nameof(stored)), lost = Require.InRange(hysteresis.Value.DecimalFractions, 0, 0.99, "", nameof(hysteresis));
        double moving = Require.Positive(arrowMass.Kilograms, "kg", nameof(arrowMass)) + Require.NotNegative(virtualMass.Value.Kilograms, "kg", nameof(virtualMass));
        double relative = 0.5 * Norm([stored.StandardError.Joules / energy, hysteresis.StandardError.DecimalFractions / (1 - lost), virtualMass.StandardError.Kilograms / moving]);
        double v = Math.Sqrt(2 * (1 - lost) * energy / moving);
        return Bounds.Logarithmic(v, relative, Bounds.Multiplier(level), level, stored.Count, "stored energy, hysteresis and virtual mass").Map(x => Speed.FromMetersPerSecond(x));
    }

    static (Mass Value, Mass Sd, string How) VirtualMassOf(Bow bow, Arrow arrow)
    {
        const double Level = 0.68; // only value and standard error are taken
        if (bow.VirtualMass is { } stated)
        {
            return (stated, bow.VirtualMassSd ?? throw new InvalidOperationException("How sure another speed is cannot be told: the virtual mass carries no standard deviation. State VirtualMassSd."), "as stated");
        }

        if (bow.ArrowSpeeds is { } speeds)
        {
            Estimate<Mass> fitted = speeds.FitVirtualMass(Level, Ratio.Zero).VirtualMass;
            return (fitted.Value, fitted.StandardError, "fitted to chronographed arrows");
        }

        Estimate<Mass> usual = Usual(bow, arrow.Mass);
        return (usual.Value, usual.StandardError, usual.HowObtained);
    }

    static Estimate<Mass> Usual(Bow bow, Mass arrowMass) => bow.Kind is { } kind
        ? UsualVirtualMass.For(kind, arrowMass, 0.9)
        : throw new InvalidOperationException("The virtual mass cannot be told: state the bow's Kind, or VirtualMass with VirtualMassSd, or chronograph arrows of several masses (ArrowSpeeds).");
}
