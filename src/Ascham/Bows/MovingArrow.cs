namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Energy and momentum of an arrow that moves.</summary>
/// <remarks>
/// ½ m v² and m v. In the trade's units the energy is m[gr] v[ft/s]²/450 437 in foot-pounds and the momentum m[gr] v[ft/s]/225 218 in slug feet
/// per second; the often printed 450 240 takes gravity as 32.16 ft/s² and reads 0.044 % more. Neither says what an arrow does where it strikes.
/// </remarks>
public static class MovingArrow
{
    /// <summary>Energy of motion.</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <param name="speed">Its speed; zero or more.</param>
    /// <returns>½ m v².</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or the speed is negative.</exception>
    public static Energy KineticEnergy(Mass mass, Speed speed)
    {
        (double m, double v) = Checked(mass, speed);
        return Energy.FromJoules(0.5 * m * v * v);
    }

    /// <summary>Momentum.</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <param name="speed">Its speed; zero or more.</param>
    /// <returns>m v. For slug feet per second take <c>PoundForceSeconds</c>, which is the same; UnitsNet's <c>SlugFeetPerSecond</c> is 0.03 % off.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or the speed is negative.</exception>
    public static Impulse Momentum(Mass mass, Speed speed)
    {
        (double m, double v) = Checked(mass, speed);
        return Impulse.FromNewtonSeconds(m * v);
    }

    /// <summary>Energy of motion of an arrow whose speed is an estimate; the mass is taken as exact.</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <param name="speed">Its speed, with interval; not negative.</param>
    /// <returns>The energy, its interval that of the speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or a speed is negative.</exception>
    public static Estimate<Energy> KineticEnergy(Mass mass, Estimate<Speed> speed)
    {
        ArgumentNullException.ThrowIfNull(speed);
        Energy energy = KineticEnergy(mass, speed.Value), error = 2 * energy * (speed.StandardError / speed.Value);
        return new(energy, error, KineticEnergy(mass, speed.Low), KineticEnergy(mass, speed.High), speed.Level, speed.Count, speed.HowObtained);
    }

    /// <summary>Momentum of an arrow whose speed is an estimate; the mass is taken as exact.</summary>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <param name="speed">Its speed, with interval; not negative.</param>
    /// <returns>The momentum, its interval that of the speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive, or a speed is negative.</exception>
    public static Estimate<Impulse> Momentum(Mass mass, Estimate<Speed> speed)
    {
        ArgumentNullException.ThrowIfNull(speed);
        return speed.Map(v => Momentum(mass, v));
    }

    static (double Mass, double Speed) Checked(Mass mass, Speed speed) =>
        (Require.Positive(mass.Kilograms, "kg", nameof(mass)), Require.NotNegative(speed.MetersPerSecond, "m/s", nameof(speed)));
}
