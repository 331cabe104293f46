namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

/// <summary>How strongly the air holds an arrow back: a force with the square of the speed through the air.</summary>
/// <remarks>
/// The deceleration is k V², so over a distance x of level flight in still air the speed falls by the factor exp(-k x):
/// k is the relative loss of speed per metre. Arrows lie about 0.0007 to 0.0025 1/m.
/// k = rho (drag coefficient x reference area) / (2 m), so it follows the density of the air. A coefficient that follows the
/// Reynolds number makes k follow the speed.
/// </remarks>
public sealed record Drag
{
    readonly double perMetre;            // k where the density is that of the air flown through
    readonly double perMetrePerDensity;  // k / rho, m^2/kg

    Drag(double perMetre, double perMetrePerDensity, DragCurve? curve = null)
        => (this.perMetre, this.perMetrePerDensity, Curve) = (perMetre, perMetrePerDensity, curve);

    /// <summary>No drag at all: the parabola.</summary>
    public static Drag None { get; } = new(0, 0);

    /// <summary>Whether k changes with speed, so that there is no one constant.</summary>
    public bool FollowsSpeed => Curve is not null;

    internal DragCurve? Curve { get; }

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
        return new(0, area / (2 * Kilograms(mass)));
    }

    /// <summary>A table of drag coefficients by Reynolds number. A flight whose speed leaves the table is refused.</summary>
    /// <param name="table">The coefficients, on the cross-section of the shaft.</param>
    /// <param name="shaftDiameter">Outer diameter of the shaft; positive.</param>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Drag that follows speed and air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static Drag FromTable(DragTable table, Length shaftDiameter, Mass mass)
    {
        ArgumentNullException.ThrowIfNull(table);
        return Of(table.Curve, Require.Positive(shaftDiameter.Meters, "m", nameof(shaftDiameter)), mass);
    }

    /// <summary>The build-up from the parts of the arrow, the air along the shaft in one state.</summary>
    /// <param name="buildUp">The parts.</param>
    /// <param name="layer">State of the air along the shaft.</param>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Drag that follows speed and air; good to 20 % at best. <see cref="DragBound"/> carries both states.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static Drag FromBuildUp(DragBuildUp buildUp, BoundaryLayer layer, Mass mass)
    {
        ArgumentNullException.ThrowIfNull(buildUp);
        return Of(buildUp.Curve(layer), buildUp.ShaftDiameter.Meters, mass);
    }

    /// <summary>The build-up from the parts of the arrow, the state of the air along the shaft following the Reynolds number.</summary>
    /// <param name="buildUp">The parts.</param>
    /// <param name="transition">Where the state changes.</param>
    /// <param name="mass">Mass of the complete arrow; positive.</param>
    /// <returns>Drag that follows speed and air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static Drag FromBuildUp(DragBuildUp buildUp, Transition transition, Mass mass)
    {
        ArgumentNullException.ThrowIfNull(buildUp);
        return Of(buildUp.Curve(transition), buildUp.ShaftDiameter.Meters, mass);
    }

    /// <summary>The constant k in a given air.</summary>
    /// <param name="air">The air flown through.</param>
    /// <returns>Relative loss of speed per metre.</returns>
    /// <exception cref="InvalidOperationException">k follows the speed; see <see cref="At"/>.</exception>
    public ReciprocalLength ConstantIn(Air air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return ReciprocalLength.FromInverseMeters(PerMetreIn(air));
    }

    /// <summary>k at a speed in a given air; for any kind of drag.</summary>
    /// <param name="airSpeed">Speed through the air; zero or more, and where the drag is known.</param>
    /// <param name="air">The air flown through.</param>
    /// <returns>Relative loss of speed per metre.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The drag is not known at that speed.</exception>
    public ReciprocalLength At(Speed airSpeed, Air air)
    {
        ArgumentNullException.ThrowIfNull(air);
        double speed = Require.NotNegative(airSpeed.MetersPerSecond, "m/s", nameof(airSpeed));
        if (Curve is null)
        {
            return ReciprocalLength.FromInverseMeters(PerMetreIn(air));
        }

        (double low, double high) = Curve.Speeds(air);
        return ReciprocalLength.FromInverseMeters(Curve.At(Require.InRange(speed, low, high, "m/s", nameof(airSpeed)), air));
    }

    /// <summary>The same drag multiplied.</summary>
    /// <param name="factor">Zero or more.</param>
    /// <returns>Drag whose k is this one's times the factor at every speed and in any air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The factor is negative or not a number.</exception>
    public Drag Times(double factor)
    {
        Require.NotNegative(factor, "");
        return new(factor * perMetre, factor * perMetrePerDensity, Curve?.Times(factor));
    }

    /// <summary>Any k: a fit may pass through, or end at, a negative one, and must say so rather than stop.</summary>
    internal static Drag FromFit(double perMetre) => new(perMetre, 0);

    /// <summary>Any curve of the coefficient.</summary>
    internal static Drag Of<TCurve>(TCurve curve, double diameter, Mass mass)
        where TCurve : struct, IReynoldsCurve
        => new(0, 0, new DragCurve<TCurve>(curve, diameter, 0.25 * Math.PI * diameter * diameter / (2 * Kilograms(mass))));

    internal double PerMetreIn(Air air) => Curve is null
        ? perMetre + perMetrePerDensity * air.DensitySi
        : throw new InvalidOperationException("This drag follows the speed: it has no one constant k. Ask for k at a speed.");

    static double Checked(ReciprocalLength k) => Require.InRange(k.InverseMeters, 0, 0.1, "1/m", nameof(k));

    static double Kilograms(Mass mass) => Require.Positive(mass.Kilograms, "kg", nameof(mass));
}
