namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Numerics;

/// <summary>Drag whose coefficient follows the Reynolds number, of an arrow of a given diameter and mass.</summary>
abstract record DragCurve
{
    /// <summary>k at a speed through the air, 1/m.</summary>
    internal abstract double At(double airSpeed, Air air);

    /// <summary>Speeds through the air where it holds, m/s.</summary>
    internal abstract (double Low, double High) Speeds(Air air);

    /// <summary>With another factor on the coefficient.</summary>
    internal abstract DragCurve Times(double factor);

    /// <summary>As <see cref="Flown.Fly"/>, in a given air.</summary>
    internal abstract Outcome Fly<T>(in Shot<T> shot, Air air, in Face face, int steps, out Arrival<T> arrival)
        where T : struct, ITranscendental<T>;
}

/// <inheritdoc/>
/// <typeparam name="TCurve">The coefficient.</typeparam>
/// <param name="Curve">The coefficient, on the cross-section of the shaft.</param>
/// <param name="Diameter">Of the shaft, m.</param>
/// <param name="PerDensity">k per density and coefficient, A/(2 m), m²/kg.</param>
sealed record DragCurve<TCurve>(TCurve Curve, double Diameter, double PerDensity) : DragCurve
    where TCurve : struct, IReynoldsCurve
{
    internal override double At(double airSpeed, Air air) => Law(air, new Real(1), new Real(1)).At(new(airSpeed)).Value;

    internal override (double Low, double High) Speeds(Air air)
    {
        double perReynolds = air.ViscositySi / (air.DensitySi * Diameter);
        return (Curve.Low * perReynolds, Curve.High * perReynolds);
    }

    internal override DragCurve Times(double factor) => this with { PerDensity = PerDensity * factor };

    internal override Outcome Fly<T>(in Shot<T> shot, Air air, in Face face, int steps, out Arrival<T> arrival)
        => Flown.Fly(shot, Law(air, shot.DragFactor, shot.DensityFactor), face, steps, out arrival);

    // The density counts twice: in the force, and in the Reynolds number.
    ReynoldsDrag<T, TCurve> Law<T>(Air air, T factor, T densityFactor)
        where T : struct, ITranscendental<T>
        => new(Curve, air.DensitySi * Diameter / air.ViscositySi * densityFactor, PerDensity * air.DensitySi * (factor * densityFactor));
}
