namespace Ascham.Flight;

using Ascham.Quantities;
using UnitsNet;

/// <summary>Many flights of one setup whose inputs differ a little from arrow to arrow: where do the arrows land?</summary>
/// <remarks>
/// <para><b>Model.</b> Each arrow is a <see cref="PointMass"/> with drag and wind of its own; a wind that varies along the way is carried off
/// as a whole. The inputs are independent.
/// Impacts are measured on faces square to the line of sight, from the point the line meets.</para>
/// <para><b>Accuracy.</b> Each impact within 1e-6 m of the exact flight; arrows for which the fast series does not serve are flown step by step,
/// which takes ten times as long: all of them where drag follows the speed or the wind varies along the way.</para>
/// <para><b>Chance.</b> The same seed gives the same numbers, to the last bit, on any number of threads.
/// An arrow's draw depends on the seed and on its own number alone.</para>
/// <para><b>Cost.</b> Nothing is allocated per arrow; see docs/performance.md.</para>
/// </remarks>
public sealed partial record FlightBatch
{
    /// <summary>Drag, air, gravity and wind about which the arrows differ.</summary>
    public required PointMass Flight { get; init; }

    /// <summary>The launch about which the arrows differ. Its origin is the archer's eye (or the peep), from which distances and the line of sight run.</summary>
    public required Launch Launch { get; init; }

    /// <summary>Distances of the faces along the line of sight, in any order; at least one.</summary>
    public required IReadOnlyList<Length> Faces { get; init; }

    /// <summary>Of the line of sight; positive uphill; -80° to +80°. Level when not given.</summary>
    public Angle Inclination { get; init; }

    /// <summary>Speed of the launch; size up to 11 % of it (88 % when even).</summary>
    public Deviation<Speed> LaunchSpeed { get; init; }

    /// <summary>Drag area, as a part of itself; size up to 11 % (88 % when even, a factor of 2 when log-normal).</summary>
    public Deviation<Ratio> DragArea { get; init; }

    /// <summary>Aim up and down: the direction moves by the tangent, 1 mrad being 1 mm per metre. Size up to 10° (80° when even).</summary>
    public Deviation<Angle> AimUp { get; init; }

    /// <summary>Aim right and left, as <see cref="AimUp"/>.</summary>
    public Deviation<Angle> AimRight { get; init; }

    /// <summary>Cant: the bow turns about the line of sight, its top to the right when positive, and takes the launch along. Size up to 5° (40° when even).</summary>
    public Deviation<Angle> Cant { get; init; }

    /// <summary>Distance of all faces from what it was taken for: positive is farther; size up to 11 % of the nearest face (88 % when even).</summary>
    public Deviation<Length> Range { get; init; }

    /// <summary>Wind along the range; size up to 20 m/s.</summary>
    public Deviation<Speed> TailWind { get; init; }

    /// <summary>Wind across the range; size up to 20 m/s.</summary>
    public Deviation<Speed> WindFromLeft { get; init; }

    /// <summary>Updraught; size up to 20 m/s.</summary>
    public Deviation<Speed> Updraught { get; init; }

    /// <summary>Mass of the arrow, as a part of itself. A heavier arrow keeps its speed better, k going with one over mass, and leaves slower: see <see cref="SpeedPerMass"/>.</summary>
    public Deviation<Ratio> Mass { get; init; }

    /// <summary>
    /// Relative change of launch speed per relative change of mass, -1 to 0; needed when <see cref="Mass"/> differs. With a virtual mass mv of the bow it is
    /// -m/(2 (m + mv)): -0.5 for a bow without one.
    /// </summary>
    public double? SpeedPerMass { get; init; }

    internal BatchPlan Plan()
    {
        ArgumentNullException.ThrowIfNull(Flight);
        ArgumentNullException.ThrowIfNull(Launch);
        ArgumentNullException.ThrowIfNull(Faces);
        if (Faces.Count == 0)
        {
            throw new ArgumentException("A batch needs at least one face; Faces is empty.", nameof(Faces));
        }

        foreach (Length face in Faces)
        {
            Require.Positive(face.Meters, "m", nameof(Faces));
        }

        Require.InRange(Inclination.Degrees, -80, 80, "degrees", nameof(Inclination));
        if (Mass.Shape != DeviationShape.None && SpeedPerMass is null)
        {
            throw new ArgumentException("Mass differs from arrow to arrow, so say how the launch speed follows it: SpeedPerMass, -0.5 for a bow without virtual mass.", nameof(SpeedPerMass));
        }

        if (SpeedPerMass is { } follows)
        {
            Require.InRange(follows, -1, 0, "", nameof(SpeedPerMass));
        }

        return new(this);
    }

    /// <summary>Shape and size of every input in SI units, in the order of <see cref="Input"/>.</summary>
    internal BatchInput[] Inputs =>
    [
        Si(LaunchSpeed, q => q.MetersPerSecond, 0.11 * Launch.Speed.MetersPerSecond, "m/s", nameof(LaunchSpeed)),
        Si(AimUp, q => q.Radians, 10 * Math.PI / 180, "rad", nameof(AimUp)),
        Si(AimRight, q => q.Radians, 10 * Math.PI / 180, "rad", nameof(AimRight)),
        Si(DragArea, q => q.DecimalFractions, 0.11, "", nameof(DragArea)),
        Si(TailWind, q => q.MetersPerSecond, 20, "m/s", nameof(TailWind)),
        Si(WindFromLeft, q => q.MetersPerSecond, 20, "m/s", nameof(WindFromLeft)),
        Si(Range, q => q.Meters, 0.11 * Faces.Min(f => f.Meters), "m", nameof(Range)),
        Si(Cant, q => q.Radians, 5 * Math.PI / 180, "rad", nameof(Cant)),
        Si(Mass, q => q.DecimalFractions, 0.11, "", nameof(Mass)), // log-normal up to ln 1.08, so that it at most doubles and the speed that follows it stays positive
        Si(Updraught, q => q.MetersPerSecond, 20, "m/s", nameof(Updraught)),
    ];

    // A normal draw ends at 8.6 sizes, an even one at 1; neither may turn an input round.
    const double EvenPerNormal = 8;

    static BatchInput Si<TQuantity>(Deviation<TQuantity> scatter, Func<TQuantity, double> size, double most, string unit, string name)
        where TQuantity : struct, IQuantity
    {
        if (scatter.Shape == DeviationShape.None)
        {
            return default;
        }

        double si = size(scatter.Size), allowed = scatter.Shape switch
        {
            DeviationShape.Normal => most,
            DeviationShape.Uniform => EvenPerNormal * most,
            _ => name == nameof(Mass) ? Math.Log(1.08) : Math.Log(2),
        };
        return si <= allowed ? new(scatter.Shape, si) : throw new ArgumentOutOfRangeException(name, si, TooWide(name, scatter.Shape, si, allowed, unit));
    }

    static string TooWide(string name, DeviationShape shape, double size, double allowed, string unit)
    {
        string suffix = unit.Length == 0 ? "" : " " + unit, limit = shape switch
        {
            DeviationShape.Normal => FormattableString.Invariant(
                $"a normal draw reaches 8.6 standard deviations and must not turn the input round. Deviation.Uniform may be {EvenPerNormal * allowed:G4}{suffix} wide to each side")
                + (name is nameof(DragArea) ? "; for drag known to a factor take Deviation.LogNormal." : "."),
            DeviationShape.Uniform => "a wider one would turn the input round.",
            _ => "the logarithm of the factor; a draw reaches 8.6 of it.",
        };
        return FormattableString.Invariant($"{name} must have a size from 0 to {allowed:G4}{suffix}; it was {size:G4}{suffix}: {limit}");
    }
}
