namespace Ascham.Flight;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Quantities;
using UnitsNet;

/// <summary>Flight of an arrow as a rigid body that pitches, yaws and spins: for fletching, balance, recovery after the release.</summary>
/// <remarks>
/// <para>Every lifting part sees its own angle of attack, in the force and in the moment; drag rises with the angle; the spin
/// follows the offset of the vanes. Left out: bending of the shaft, roll of an arrow that is not alike all round (a bent shaft,
/// a crooked head), the change of vane lift with spin, Magnus forces; buoyancy and the earth's rotation as for the point mass.</para>
/// <para>Small angles: beyond 8° the answer is an extrapolation, and at 30° the flight ends as tumbled. The unknown lift of real vanes
/// (<see cref="Fletching.Effectiveness"/>, 0.6 to 1.0) outweighs all else: ask through <see cref="Over"/> to see what it does.</para>
/// <para>Integration: better than 1e-6 m to 5° and 5e-6 m to 8°; 1e-4 m with <see cref="DragAbove"/>. Equations and checks: docs/models/attack.md.</para>
/// </remarks>
public sealed partial record RigidBody
{
    /// <summary>Lift, moments and damping of the arrow, and its balance point.</summary>
    public required Stability Stability { get; init => field = NotNull(value, nameof(Stability)); }

    /// <summary>Mass of the complete arrow; positive.</summary>
    public required Mass Mass
    {
        get;
        init
        {
            Require.Positive(value.Kilograms, "kg", nameof(Mass));
            field = value;
        }
    }

    /// <summary>Moment of inertia about the balance point, across the shaft; positive. An arrow swung as a pendulum gives it to 2 % (common practice, no source).</summary>
    public required MassMomentOfInertia TransverseInertia { get; init => field = Positive(value, nameof(TransverseInertia)); }

    /// <summary>Moment of inertia about the axis of the shaft; positive. About mass times the square of the radius; only the spin-up and a shift of 0.1 % in the wavelength hang on it.</summary>
    public required MassMomentOfInertia AxialInertia { get; init => field = Positive(value, nameof(AxialInertia)); }

    /// <summary>Drag of the arrow without angle of attack, the same at every speed; what the angle adds comes from the lift.</summary>
    /// <exception cref="ArgumentException">It follows the speed: give <c>Drag.FromConstant(drag.At(speed, air), air)</c> at the speed of the flight.</exception>
    public required Drag Drag { get; init => field = Steady(value, nameof(Drag)); }

    /// <summary>Another drag above an angle of attack; none when not given.</summary>
    public DragAboveAngle? DragAbove { get; init; }

    /// <summary>The air flown through.</summary>
    public required Air Air { get; init => field = NotNull(value, nameof(Air)); }

    /// <summary>Gravity at the place.</summary>
    public required Gravity Gravity
    {
        get;
        init
        {
            Require.Positive(value.Si, "m/s²", nameof(Gravity)); // a Gravity never built is zero
            field = value;
        }
    }

    /// <summary>Velocity of the air.</summary>
    public required Wind Wind { get; init => field = NotNull(value, nameof(Wind)); }

    /// <summary>The same arrow as a point mass, always pointing along its path through the air.</summary>
    public PointMass AsPointMass => new() { Drag = Drag, Air = Air, Gravity = Gravity, Wind = Wind };

    /// <summary>The same flight in SI units.</summary>
    internal RigidBodySi Si => new(
        Possible().Si, Mass.Kilograms, TransverseInertia.KilogramSquareMeters, AxialInertia.KilogramSquareMeters, Air.DensitySi, AsPointMass.Si,
        DragAbove?.Drag.PerMetreIn(Air) ?? 0, DragAbove?.Angle.Radians ?? 0);

    // A balance measured from the nock instead of the tip, or grams taken for kilograms, would fly without a word.
    Stability Possible()
    {
        double length = Stability.TotalLength.Meters, balance = Stability.BalancePoint.Meters;
        Require.InRange(balance, 0, length, "m from the tip of the point, not from the nock", nameof(Stability.BalancePoint));
        if (Stability.Fletching is { } vanes)
        {
            Require.InRange((vanes.FromTip + vanes.RootChord).Meters, 0, length * (1 + 1e-9), "m from the tip of the point to the rear of the vanes", nameof(Stability.Fletching));
        }

        Require.InRange(TransverseInertia.KilogramSquareMeters, 0, Mass.Kilograms * balance * (length - balance), "kg m², the most that its mass, length and balance allow,", nameof(TransverseInertia));
        return Stability;
    }

    /// <summary>Asks a question of this arrow, and of the same arrow with vanes of 0.6 and of 1.0 of their free-stream lift.</summary>
    /// <typeparam name="T">Type of the answer.</typeparam>
    /// <param name="question">For example <c>arrow => arrow.Motion.Wavelength</c>.</param>
    /// <returns>The three answers: a bound on the error of the model, not a statistical interval.</returns>
    public VaneBound<T> Over<T>(Func<RigidBody, T> question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return new(question(this), With(VaneBound<T>.LowestShare), With(VaneBound<T>.HighestShare));

        T With(double share) => question(this with { Stability = Stability.With(Ratio.FromDecimalFractions(share)) });
    }

    static MassMomentOfInertia Positive(MassMomentOfInertia value, string name)
    {
        Require.Positive(value.KilogramSquareMeters, "kg m²", name);
        return value;
    }

    internal static Drag Steady(Drag value, string name)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value.FollowsSpeed
            ? throw new ArgumentException($"{name} follows the speed, which this flight does not; give its value at the speed of the flight: Drag.FromConstant(drag.At(speed, air), air).", name)
            : value;
    }

    static T NotNull<T>(T value, string name)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value;
    }
}

/// <summary>Drag above an angle of attack, where the layer of air along the shaft is taken to turn turbulent.</summary>
/// <remarks>
/// Wind-tunnel work on arrows sees the change at an angle near 1°, where the Reynolds number allows both states; no value that
/// holds for a given arrow was found. The change is spread over about a tenth of the square of the angle.
/// </remarks>
public sealed record DragAboveAngle
{
    /// <summary>Angle of attack at the middle of the change; 0.1° to 20°.</summary>
    public required Angle Angle
    {
        get;
        init
        {
            Require.InRange(value.Degrees, 0.1, 20, "degrees", nameof(Angle));
            field = value;
        }
    }

    /// <summary>Drag well above it.</summary>
    public required Drag Drag
    {
        get;
        init => field = RigidBody.Steady(value, nameof(Drag));
    }
}

/// <summary>An answer, and what it would be with the weakest and the strongest vanes thought possible.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
/// <param name="Given">With the effectiveness given.</param>
/// <param name="Weak">With vanes of 0.6 of their free-stream lift.</param>
/// <param name="Full">With vanes of all their free-stream lift.</param>
public readonly record struct VaneBound<T>(T Given, T Weak, T Full)
{
    internal const double LowestShare = 0.6, HighestShare = 1;
}
