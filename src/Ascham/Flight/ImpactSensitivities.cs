namespace Ascham.Flight;

using UnitsNet;

/// <summary>How an impact moves when one input of the flight changes, all others held: derivatives, exact, from one pass.</summary>
/// <remarks>
/// The numbers are in SI units per unit of the input: metres, seconds and metres per second, per the unit named at each member.
/// For small changes: over 5 % of speed or 20 % of drag the second order is some per cent of the shift; fly again for more.
/// </remarks>
public sealed record ImpactSensitivities
{
    /// <summary>The impact itself.</summary>
    public required FlightState Impact { get; init; }

    /// <summary>Launch speed; per m/s.</summary>
    public required ImpactRate<Speed> LaunchSpeed { get; init; }

    /// <summary>Launch elevation; per radian.</summary>
    public required ImpactRate<Angle> Elevation { get; init; }

    /// <summary>Launch azimuth, to the right; per radian.</summary>
    public required ImpactRate<Angle> Azimuth { get; init; }

    /// <summary>Drag constant k; per 1/m. <see langword="null"/> when drag follows the speed and there is no constant: see <see cref="Drag"/>.</summary>
    public required ImpactRate<ReciprocalLength>? DragConstant { get; init; }

    /// <summary>Drag (constant, coefficient or area) in proportion; per 1, so that 10 % is 0.1.</summary>
    public required ImpactRate<Ratio> Drag { get; init; }

    /// <summary>Mass of the arrow in proportion, at the same launch speed and drag area; per 1. What a mass does to the launch speed belongs to the bow.</summary>
    public required ImpactRate<Ratio> Mass { get; init; }

    /// <summary>Density of the air in proportion, its viscosity unchanged; per 1. A drag constant given without its air is taken to follow the density here.</summary>
    public required ImpactRate<Ratio> Density { get; init; }

    /// <summary>A uniform tail wind added; per m/s.</summary>
    public required ImpactRate<Speed> TailWind { get; init; }

    /// <summary>A uniform wind from left to right added; per m/s.</summary>
    public required ImpactRate<Speed> WindFromLeft { get; init; }

    /// <summary>A uniform updraught added; per m/s.</summary>
    public required ImpactRate<Speed> Updraught { get; init; }

    /// <summary>Distance of the face, along the line of sight; per metre.</summary>
    public required ImpactRate<Length> Range { get; init; }
}

/// <summary>How an impact moves with one input.</summary>
/// <typeparam name="T">The kind of input.</typeparam>
/// <param name="Up">Height on the face, square to the line of sight: metres per unit of the input.</param>
/// <param name="Right">To the archer's right: metres per unit.</param>
/// <param name="Time">Time of flight: seconds per unit.</param>
/// <param name="Speed">Speed over the ground at the impact: metres per second per unit.</param>
public sealed record ImpactRate<T>(double Up, double Right, double Time, double Speed)
    where T : IQuantity
{
    /// <summary>What a change of the input does, to first order.</summary>
    /// <param name="change">The change; in any unit.</param>
    /// <returns>The shift of the impact.</returns>
    public ImpactShift For(T change)
    {
        ArgumentNullException.ThrowIfNull(change);
        double by = ImpactRate.InSi(change);
        return new(
            Length.FromMeters(by * Up), Length.FromMeters(by * Right), Duration.FromSeconds(by * Time), UnitsNet.Speed.FromMetersPerSecond(by * Speed));
    }
}

/// <summary>Shift of an impact.</summary>
/// <param name="Up">On the face, square to the line of sight.</param>
/// <param name="Right">To the archer's right.</param>
/// <param name="Time">Of flight.</param>
/// <param name="Speed">Over the ground at the impact.</param>
public readonly record struct ImpactShift(Length Up, Length Right, Duration Time, Speed Speed);

/// <summary>The units in which rates are kept.</summary>
static class ImpactRate
{
    internal static double InSi(IQuantity change) => change switch
    {
        Length length => length.Meters,
        Speed speed => speed.MetersPerSecond,
        Angle angle => angle.Radians,
        Ratio ratio => ratio.DecimalFractions,
        ReciprocalLength k => k.InverseMeters,
        _ => throw new ArgumentException($"A rate per {change.QuantityInfo.Name} is not kept here.", nameof(change)),
    };
}
