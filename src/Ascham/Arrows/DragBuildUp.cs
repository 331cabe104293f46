namespace Ascham.Arrows;

using Ascham.Numerics;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Drag of an arrow added up from its parts, each by a published formula. Nothing in it is fitted to arrows.</summary>
/// <remarks>
/// <para><b>Laminar</b>: flat-plate friction with the curvature of a thin cylinder, base 0.12 (E. L. Fleeman, as printed in transcription), turbulent
/// air at the vanes. <b>Turbulent</b>: flat-plate friction by Prandtl and Schlichting, base by Hoerner, turbulent air at the vanes.</para>
/// <para><b>How sure.</b> ±20 % at best, and a factor of 1.6 to 2 between the two states of the air along the shaft, which nobody at a range can see.
/// The tunnel and flight measurements of arrows that could be read do not print the sizes of their vanes. Measured drag beats all of this:
/// <c>DragFit</c> in the room Flight.</para>
/// <para><b>Least and most</b> (<see cref="LeastAt"/>, <see cref="MostAt"/>): where the two states leave a choice, the one that lowers or raises drag. They make the bounds of
/// <c>DragBound</c>.</para>
/// <para><b>Left out</b>: the curvature of the turbulent layer but in the most (a thin cylinder has 10 to 30 % more), the slower air in which vanes stand (less),
/// offset of the vanes, angle of attack, bending, roughness. Equations and checks: docs/models/arrows.md.</para>
/// </remarks>
public sealed record DragBuildUp
{
    /// <summary>Outer diameter of the shaft; positive.</summary>
    public required Length ShaftDiameter { get; init => field = Positive(value, nameof(ShaftDiameter)); }

    /// <summary>Length of the surface along which the air flows, tip to tail; positive, at least five diameters.</summary>
    public required Length ShaftLength { get; init => field = Positive(value, nameof(ShaftLength)); }

    /// <summary>Shape of the point.</summary>
    public required PointShape Point
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Point));
            field = value;
        }
    }

    /// <summary>The vanes; <see langword="null"/> for a bare shaft.</summary>
    public required Vanes? Vanes { get; init; }

    /// <summary>
    /// Drag area added for what the parts above leave out: the blades of a broadhead, a lighted nock, a wrap. No published figures were found for arrows;
    /// a fixed blade has about 0.5 to 1 times its frontal area (estimate, no source). None when not given.
    /// </summary>
    public Area ExtraDragArea
    {
        get;
        init
        {
            Require.NotNegative(value.SquareMeters, "m²", nameof(ExtraDragArea));
            field = value;
        }
    }

    /// <summary>The parts of the drag with the air along the shaft in one state.</summary>
    /// <param name="reynolds">Of the shaft diameter, V d/nu; where the formulas hold (<see cref="LowestReynolds"/> and up).</param>
    /// <param name="layer">State of the air along the shaft.</param>
    /// <returns>The components.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The formulas do not hold there.</exception>
    public DragComponents At(double reynolds, BoundaryLayer layer) => At(reynolds, Curve(layer));

    /// <summary>The parts of the drag with the state of the air along the shaft blended by Reynolds number.</summary>
    /// <param name="reynolds">Of the shaft diameter, V d/nu.</param>
    /// <param name="transition">Where the state changes.</param>
    /// <returns>The components.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The formulas do not hold there.</exception>
    public DragComponents At(double reynolds, Transition transition) => At(reynolds, Curve(transition));

    /// <summary>The least that the parts may add up to: laminar air along the shaft and along the vanes, whose front edges are swept as far as their outline lets them be.</summary>
    /// <param name="reynolds">Of the shaft diameter, V d/nu; where the formulas hold.</param>
    /// <returns>The components, without the 20 % that stand for what is left out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The formulas do not hold there.</exception>
    public DragComponents LeastAt(double reynolds) => At(reynolds, LeastCurve);

    /// <summary>The most that the parts may add up to: turbulent air along all of the arrow, with the curvature of the layer along a thin shaft.</summary>
    /// <param name="reynolds">Of the shaft diameter, V d/nu; where the formulas hold.</param>
    /// <returns>The components, without the 20 % that stand for what is left out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The formulas do not hold there.</exception>
    public DragComponents MostAt(double reynolds) => At(reynolds, MostCurve);

    /// <summary>Below this the layer is too thick for a shaft so thin (curvature above 1), and the build-up is refused.</summary>
    public double LowestReynolds => 16 * Slenderness;

    internal BuildUpCurve Curve(BoundaryLayer layer) => layer is BoundaryLayer.Laminar or BoundaryLayer.Turbulent
        ? new(this, layer == BoundaryLayer.Turbulent ? 1 : 0, null)
        : throw new ArgumentOutOfRangeException(nameof(layer), layer, "layer must be laminar or turbulent.");

    internal BuildUpCurve Curve(Transition transition)
    {
        ArgumentNullException.ThrowIfNull(transition);
        Require.InRange(transition.Width, 0.01 * transition.Centre, double.MaxValue, "", nameof(transition)); // sharper is a jump, and overflows
        return new(this, double.NaN, transition);
    }

    internal BuildUpCurve LeastCurve => new(this, 0, null, DragLean.Least);

    internal BuildUpCurve MostCurve => new(this, 1, null, DragLean.Most);

    internal double Slenderness => Require.InRange(ShaftLength / ShaftDiameter, 5, 1000, "diameters", nameof(ShaftLength));

    internal double Reference => 0.25 * Math.PI * ShaftDiameter.Meters * ShaftDiameter.Meters;

    DragComponents At(double reynolds, in BuildUpCurve curve)
    {
        Require.InRange(reynolds, curve.Low, curve.High, "", nameof(reynolds));
        (Real shaft, Real tail, Real vanes) = curve.Parts(new Real(reynolds));
        return new()
        {
            Reynolds = reynolds,
            ReferenceArea = Area.FromSquareMeters(Reference),
            Shaft = shaft.Value,
            Point = Point.Coefficient,
            Base = tail.Value,
            VaneFriction = vanes.Value,
            VaneEdges = curve.Edges,
            Extra = ExtraDragArea.SquareMeters / Reference,
        };
    }

    static Length Positive(Length value, string name)
    {
        Require.Positive(value.Meters, "m", name);
        return value;
    }
}
