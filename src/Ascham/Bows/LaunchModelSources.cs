namespace Ascham.Bows;

using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

public sealed partial record LaunchModel
{
    /// <summary>Relative standard deviation of a rated speed as what the very bow would give at the rating's own loading: 2 %.</summary>
    public const double RatingSd = 0.02; // common practice, no source: one bow is not the maker's, and "70/30/350" is loosely kept

    /// <summary>From a bow and its arrow as the setup states them.</summary>
    /// <remarks>Virtual mass as <see cref="VirtualMassOf"/> finds it. <see cref="HowObtained"/> says how, with its warnings.</remarks>
    /// <param name="bow">Its launch speed is that of this arrow.</param>
    /// <param name="arrow">The arrow.</param>
    /// <returns>The model, anchored at this setup.</returns>
    /// <exception cref="InvalidOperationException">The spread of the launch speed is not stated; or nothing tells the virtual mass or the floor.</exception>
    /// <exception cref="VirtualMassUnknownException">The chronographed arrows do not tell the virtual mass.</exception>
    public static LaunchModel From(Bow bow, Arrow arrow)
    {
        ArgumentNullException.ThrowIfNull(bow);
        ArgumentNullException.ThrowIfNull(arrow);
        Estimate<Mass> virtualMass = VirtualMassOf(bow, 0.9);
        MassFloor floor = MassFloor.Of(bow);
        return new()
        {
            Known = new() { ArrowMass = arrow.Mass, PeakWeight = bow.PeakWeight, DrawLength = bow.DrawLength },
            KnownSpeed = bow.LaunchSpeed,
            KnownSpeedSd = bow.LaunchSpeedSd ?? throw new InvalidOperationException("How sure another speed is cannot be told: the launch speed carries no standard deviation. State LaunchSpeedSd."),
            VirtualMass = virtualMass.Value,
            VirtualMassSd = virtualMass.StandardError,
            BraceHeight = bow.BraceHeight,
            Kind = bow.Kind,
            Floor = floor,
            HowObtained = "known launch speed; virtual mass " + virtualMass.HowObtained + (floor.Warning is { } warning ? ". " + warning : ""),
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
        Estimate<Mass> usual = Usual(bow, 0.9);
        return new()
        {
            Known = condition,
            KnownSpeed = rated,
            KnownSpeedSd = RatingSd * rated,
            VirtualMass = usual.Value,
            VirtualMassSd = usual.StandardError,
            BraceHeight = bow.BraceHeight,
            Kind = bow.Kind,
            Floor = MassFloor.Of(bow),
            HowObtained = "rated speed, taken as known to 2 %; virtual mass usual for the kind of bow",
        };
    }

    /// <summary>From stored energy and virtual mass alone: ½ (m + K) v² = (1 − h) E. Without a chronograph, and no better than what it is given.</summary>
    /// <param name="stored">Energy under the draw curve, with interval.</param>
    /// <param name="hysteresis">The share of it that is lost in drawing and letting down, with interval.</param>
    /// <param name="virtualMass">K, with interval.</param>
    /// <param name="loading">The arrow, and the peak weight at which the energy is stored.</param>
    /// <param name="floor">The lightest arrow of the bow.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The launch speed.</returns>
    /// <exception cref="BeyondCautionException">The arrow is too light for the peak weight.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The energy is not positive, the hysteresis is not below one, or the level is outside its range.</exception>
    public static Estimate<Speed> SpeedFromEnergy(Estimate<Energy> stored, Estimate<Ratio> hysteresis, Estimate<Mass> virtualMass, Loading loading, MassFloor floor, double level)
    {
        ArgumentNullException.ThrowIfNull(stored);
        ArgumentNullException.ThrowIfNull(hysteresis);
        ArgumentNullException.ThrowIfNull(virtualMass);
        ArgumentNullException.ThrowIfNull(loading);
        ArgumentNullException.ThrowIfNull(floor);
        floor.Guard(loading);
        double energy = Require.Positive(stored.Value.Joules, "J", nameof(stored)), lost = Require.InRange(hysteresis.Value.DecimalFractions, 0, 0.99, "", nameof(hysteresis));
        double moving = loading.ArrowMass.Kilograms + Require.NotNegative(virtualMass.Value.Kilograms, "kg", nameof(virtualMass));
        double relative = 0.5 * Norm([stored.StandardError.Joules / energy, hysteresis.StandardError.DecimalFractions / (1 - lost), virtualMass.StandardError.Kilograms / moving]);
        double v = Math.Sqrt(2 * (1 - lost) * energy / moving);
        return Bounds.Logarithmic(v, relative, Bounds.Multiplier(level), level, stored.Count, "stored energy, hysteresis and virtual mass").Map(x => Speed.FromMetersPerSecond(x));
    }

    /// <summary>The virtual mass of a bow, the first of: the one stated; the fit to chronographed arrows; the usual one of the kind.</summary>
    /// <remarks>A fit that tells little (<see cref="VirtualMassFit.IsIllConditioned"/>) is joined with the usual one, each weighted by how sure it is, where the kind is stated.</remarks>
    /// <param name="bow">The bow.</param>
    /// <param name="level">Level of the interval, between 0 and 1.</param>
    /// <returns>The virtual mass; how it was obtained carries the warnings.</returns>
    /// <exception cref="InvalidOperationException">Nothing tells the virtual mass, or one is stated without standard deviation.</exception>
    /// <exception cref="VirtualMassUnknownException">The chronographed arrows do not tell it.</exception>
    public static Estimate<Mass> VirtualMassOf(Bow bow, double level)
    {
        ArgumentNullException.ThrowIfNull(bow);
        if (bow.VirtualMass is { } stated)
        {
            Mass sd = bow.VirtualMassSd ?? throw new InvalidOperationException("How sure another speed is cannot be told: the virtual mass carries no standard deviation. State VirtualMassSd.");
            return Grams(stated.Grams, sd.Grams, level, 1, "as stated");
        }

        return bow.ArrowSpeeds is { } speeds ? Fitted(speeds, bow, level) : Usual(bow, level);
    }

    static Estimate<Mass> Fitted(ArrowSpeeds speeds, Bow bow, double level)
    {
        const double Level = 0.9; // of the fit's own warnings
        VirtualMassFit fit = speeds.FitVirtualMass(Level, Ratio.Zero);
        double value = fit.VirtualMass.Value.Grams, variance = Math.Pow(fit.VirtualMass.StandardError.Grams, 2);
        string how = "fitted to chronographed arrows", warnings = string.Concat(fit.Warnings.Select(w => ". " + w.TrimEnd('.')));
        if (fit.IsIllConditioned)
        {
            variance = Math.Pow((fit.VirtualMass.High - fit.VirtualMass.Low).Grams / (2 * Bounds.Multiplier(Level)), 2); // Fieller's interval is the wider
        }

        if (fit.IsIllConditioned && bow.Kind is not null)
        {
            Estimate<Mass> usual = Usual(bow, Level);
            double weight = 1 / variance, prior = Math.Pow(usual.StandardError.Grams, -2);
            (value, variance, how) = ((weight * value + prior * usual.Value.Grams) / (weight + prior), 1 / (weight + prior), how + " and joined with the usual one of the kind");
        }

        return Grams(value, Math.Sqrt(variance), level, speeds.Arrows.Sum(a => a.Shots), how + warnings);
    }

    static Estimate<Mass> Grams(double value, double sd, double level, int count, string how)
    {
        Estimate<double> even = Bounds.Normal(value, sd, level, count, how);
        return (even with { Low = Math.Max(0, even.Low) }).Map(g => Mass.FromGrams(g));
    }

    static Estimate<Mass> Usual(Bow bow, double level) => bow.Kind is { } kind
        ? UsualVirtualMass.For(kind, bow.PeakWeight, level)
        : throw new InvalidOperationException("The virtual mass cannot be told: state the bow's Kind, or VirtualMass with VirtualMassSd, or chronograph arrows of several masses (ArrowSpeeds).");
}
