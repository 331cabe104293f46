namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What the speeds of arrows of several masses tell about a bow.</summary>
public sealed record VirtualMassFit
{
    /// <summary>K: what limbs, cams and string keep of the energy, as a mass moving with the arrow. Its interval need not be even about it.</summary>
    public required Estimate<Mass> VirtualMass { get; init; }

    /// <summary>E: energy shared by arrow and virtual mass, ½ (m + K) v².</summary>
    public required Estimate<Energy> LaunchEnergy { get; init; }

    /// <summary>Probability of a misfit at least as large if the line were true; <see langword="null"/> with two masses, which always lie on a line.</summary>
    public required double? FitProbability { get; init; }

    /// <summary>Plain warnings; empty when there is nothing to warn of.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Whether the interval of the virtual mass is wider than a quarter of it either way.</summary>
    public bool IsIllConditioned => Warnings.Any(w => w.StartsWith("Ill-conditioned", StringComparison.Ordinal));

    internal SpeedLine Line { get; init; } = null!;

    /// <summary>Launch speed of an arrow of another mass at the same bow setting.</summary>
    /// <param name="mass">From the lightest arrow measured to one and a half times the heaviest.</param>
    /// <returns>The speed, at the level of the fit; the interval is wider away from the masses measured.</returns>
    /// <exception cref="BeyondCautionException">The arrow is lighter than the lightest measured: a light arrow is near a dry fire, and the fit knows no other limit of this bow.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The arrow is heavier than that range.</exception>
    public Estimate<Speed> SpeedOf(Mass mass)
    {
        const double Grain = 64.79891e-6; // kg, exact
        if (mass.Kilograms < Line.Lightest * (1 - 1e-9))
        {
            throw new BeyondCautionException(
                FormattableString.Invariant($"An arrow of {mass.Grains:0.#} gr is lighter than the lightest one shot, {Line.Lightest / Grain:0.#} gr; nothing is computed there. Use {Line.Lightest / Grain:0.#} gr or more, or a LaunchModel, which knows the least arrow mass of the bow."),
                BowCaution.LightArrow);
        }

        Require.InRange(mass.Grains, 0, 1.5 * Line.Heaviest / Grain, "gr", nameof(mass));
        return Line.At(mass.Kilograms).Map(v => Speed.FromMetersPerSecond(v));
    }

    /// <summary>Share of the launch energy that an arrow takes: m/(m + K).</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>The share, from the interval of the virtual mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive.</exception>
    public Estimate<Ratio> Efficiency(Mass mass) => Efficient(mass, VirtualMass);

    internal static Estimate<Ratio> Efficient(Mass mass, Estimate<Mass> virtualMass)
    {
        double m = Require.Positive(mass.Kilograms, "kg", nameof(mass)), k = virtualMass.Value.Kilograms;
        Ratio Share(Mass other) => Ratio.FromDecimalFractions(m / (m + other.Kilograms));
        var error = Ratio.FromDecimalFractions(m * virtualMass.StandardError.Kilograms / ((m + k) * (m + k)));
        return new(Share(virtualMass.Value), error, Share(virtualMass.High), Share(virtualMass.Low), virtualMass.Level, virtualMass.Count, "m/(m + K)");
    }
}

/// <summary>The line 1/v² = a + b m with its covariance, SI.</summary>
sealed record SpeedLine(double Intercept, double Slope, double VarIntercept, double Covariance, double VarSlope, double Multiplier, double Level, double Scale, double Lightest, double Heaviest, int Shots)
{
    internal Estimate<double> At(double mass)
    {
        double y = Intercept + Slope * mass, variance = VarIntercept + 2 * mass * Covariance + mass * mass * VarSlope;
        double relative = Math.Sqrt(variance / (4 * y * y) + Scale * Scale);
        return Bounds.Logarithmic(1 / Math.Sqrt(y), relative, Multiplier, Level, Shots, "line of 1/v² against arrow mass");
    }
}
