namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How strongly the air holds an arrow back: a force with the square of the speed through the air.</summary>
/// <remarks>
/// The deceleration is k V², so over a distance x of level flight in still air the speed falls by the factor exp(-k x):
/// k is the relative loss of speed per metre. Arrows lie about 0.0007 to 0.0025 1/m.
/// k = rho (drag coefficient x reference area) / (2 m), so it follows the density of the air.
/// </remarks>
public sealed record Drag
{
    readonly double perMetre;            // k where the density is that of the air flown through
    readonly double perMetrePerDensity;  // k / rho, m^2/kg

    Drag(double perMetre, double perMetrePerDensity) => (this.perMetre, this.perMetrePerDensity) = (perMetre, perMetrePerDensity);

    /// <summary>No drag at all: the parabola.</summary>
    public static Drag None { get; } = new(0, 0);

    /// <summary>A constant known for the very air flown through.</summary>
    /// <param name="k">Relative loss of speed per metre; 0 to 0.1 1/m.</param>
    /// <returns>Drag that does not change with the air; see the other form to carry it to other air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">k is not a number or outside its range.</exception>
    public static Drag FromConstant(ReciprocalLength k) => new(Checked(k), 0);

    /// <summary>A constant measured in one air, to be carried to others in proportion to density.</summary>
    /// <param name="k">Relative loss of speed per metre; 0 to 0.1 1/m.</param>
    /// <param name="measuredIn">The air of the measurement.</param>
    /// <returns>Drag that follows the density of the air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">k is not a number or outside its range.</exception>
    public static Drag FromConstant(ReciprocalLength k, Air measuredIn)
    {
        ArgumentNullException.ThrowIfNull(measuredIn);
        return new(0, Checked(k) / measuredIn.DensitySi);
    }

    /// <summary>A drag area and a mass: k = rho CdA / (2 m).</summary>
    /// <param name="dragArea">Drag coefficient times its reference area, CdA; zero or more.</param>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Drag that follows the density of the air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static Drag FromArea(Area dragArea, Mass mass)
    {
        double area = Require.NotNegative(dragArea.SquareMeters, "m²", nameof(dragArea));
        return new(0, area / (2 * Require.Positive(mass.Kilograms, "kg", nameof(mass))));
    }

    /// <summary>The constant k in a given air.</summary>
    /// <param name="air">The air flown through.</param>
    /// <returns>Relative loss of speed per metre.</returns>
    public ReciprocalLength ConstantIn(Air air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return ReciprocalLength.FromInverseMeters(PerMetreIn(air));
    }

    /// <summary>Any k: a fit may pass through, or end at, a negative one, and must say so rather than stop.</summary>
    internal static Drag FromFit(double perMetre) => new(perMetre, 0);

    internal double PerMetreIn(Air air) => perMetre + perMetrePerDensity * air.DensitySi;

    static double Checked(ReciprocalLength k) => Require.InRange(k.InverseMeters, 0, 0.1, "1/m", nameof(k));
}
