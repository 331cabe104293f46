namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How an arrow swings about its path at small angles, in closed form: wavelength, decay, trim, and what the swinging does to the path.</summary>
/// <remarks>
/// Per metre of path, with angle of attack a, direction of the axis th and direction of the path ga:
/// ga' = c0 a + c1 th',  th'' = -b a - d th',  a = th - ga, where c0, c1 are (rho/2m)(S0, S1) and b, d are (rho/2I)(S1, S2).
/// No speed appears, so neither wavelength nor decay depends on it. Drag k takes k from c0 and from d.
/// Left out against the full flight: crossflow (some per cent of the moment at 2°), spin, and the bend of the path while it swings.
/// </remarks>
public sealed record AngleOfAttackMotion
{
    readonly double c0, c1, b, d, k;

    internal AngleOfAttackMotion(RigidBodySi body)
    {
        double perMass = 0.5 * body.Density / body.Mass, perTurn = 0.5 * body.Density / body.Transverse;
        (c0, c1) = (perMass * body.Stability.Sum0, perMass * body.Stability.Sum1);
        (b, d, k) = (perTurn * body.Stability.Sum1, perTurn * body.Stability.Sum2, body.Point.K);

        double half = 0.5 * (c0 + d - 2 * k), product = (c0 - k) * (d - k) + b * (1 - c1);
        double square = product - half * half;
        double slowest = square > 0 ? half : half - Math.Sqrt(-square);
        Settles = slowest > 0;
        Wavelength = square > 0 ? Length.FromMeters(2 * Math.PI / Math.Sqrt(square)) : null;
        DecayDistance = Settles ? Length.FromMeters(1 / slowest) : null;
    }

    /// <summary>Whether small swings die out.</summary>
    public bool Settles { get; }

    /// <summary>Distance flown during one swing, the same at every speed; <see langword="null"/> when the arrow does not swing but drifts back or away.</summary>
    public Length? Wavelength { get; }

    /// <summary>Distance in which a swing falls to 1/e = 37 %; <see langword="null"/> when it does not.</summary>
    public Length? DecayDistance { get; }

    /// <summary>Distance in which the swing falls from one angle to another, as its envelope does.</summary>
    /// <param name="from">Positive.</param>
    /// <param name="to">Positive, not above <paramref name="from"/>.</param>
    /// <returns><see langword="null"/> when swings do not die out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An angle is not positive, or they are in the wrong order.</exception>
    public Length? SettleDistance(Angle from, Angle to)
    {
        double start = Require.Positive(from.Radians, "rad", nameof(from)), end = Require.Positive(to.Radians, "rad", nameof(to));
        Require.InRange(end, 0, start, "rad", nameof(to));
        return DecayDistance is { } decay ? decay * Math.Log(start / end) : null;
    }

    /// <summary>The small angle at which an arrow sits while its path bends down: the nose lags behind, above the path.</summary>
    /// <param name="speed">Through the air; positive.</param>
    /// <param name="elevation">Of the path.</param>
    /// <param name="gravity">At the place.</param>
    /// <returns>Nose above the path; <see langword="null"/> when nothing holds it there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    public Angle? Trim(Speed speed, Angle elevation, Gravity gravity)
    {
        double v = Require.Positive(speed.MetersPerSecond, "m/s", nameof(speed));
        return Settles ? Angle.FromRadians(d / b * gravity.Si * Math.Cos(elevation.Radians) / (v * v)) : null;
    }

    /// <summary>Lift in that state, as a share of the arrow's weight (of its part square to the path).</summary>
    /// <returns>Positive upwards; <see langword="null"/> when nothing holds the arrow there.</returns>
    public Ratio? TrimLift => Settles ? Ratio.FromDecimalFractions(c0 * d / b - c1) : null;

    /// <summary>By how much a disturbed release turns the path for good once the swing has died out; gravity apart.</summary>
    /// <param name="attack">Nose off the path at the release, positive to one side.</param>
    /// <param name="rate">Rate of the nose toward that side.</param>
    /// <param name="speed">Through the air; positive.</param>
    /// <returns>Turn of the path toward that side; <see langword="null"/> when swings do not die out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    public Angle? PathTurn(Angle attack, RotationalSpeed rate, Speed speed)
    {
        double perMetre = rate.RadiansPerSecond / Require.Positive(speed.MetersPerSecond, "m/s", nameof(speed));
        return Settles ? Angle.FromRadians(Turn(attack.Radians, perMetre)) : null;
    }

    /// <summary>By how much a disturbed release moves the path aside besides turning it: once the swing has died out the arrow flies on a line that
    /// starts this far beside the release and goes off at <see cref="PathTurn"/>; gravity apart.</summary>
    /// <remarks>At a distance x the shift is about this offset plus the turn times x: near the archer the one counts, far away the other.</remarks>
    /// <param name="attack">Nose off the path at the release, positive to one side.</param>
    /// <param name="rate">Rate of the nose toward that side.</param>
    /// <param name="speed">Through the air; positive.</param>
    /// <returns>Toward that side; <see langword="null"/> when swings do not die out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not positive.</exception>
    public Length? PathOffset(Angle attack, RotationalSpeed rate, Speed speed)
    {
        // Integrals over the way to come: of a it is A = (th' + (d - k) t)/b with t = a - turn, from the second equation;
        // of (ga - turn) it is what the first one makes of A and t.
        double perMetre = rate.RadiansPerSecond / Require.Positive(speed.MetersPerSecond, "m/s", nameof(speed));
        double t = attack.Radians - Turn(attack.Radians, perMetre), swung = (perMetre + (d - k) * t) / b;
        return Settles ? Length.FromMeters((Lift * t - Trimming * swung) / (1 + Trimming)) : null;
    }

    double Lift => (c0 - k) / b;

    double Trimming => Lift * (d - k) - c1;

    double Turn(double attack, double ratePerMetre) => (Lift * ratePerMetre + Trimming * attack) / (1 + Trimming);
}
