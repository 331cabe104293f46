namespace Ascham.Arrows;

using UnitsNet;

/// <summary>How a free arrow bends and swings: its lowest bending frequencies, nodes and shapes.</summary>
/// <remarks>
/// <para><b>Model.</b> The shaft is a uniform thin beam with free ends; point, insert, nock, vanes and wrap are masses without stiffness.
/// What lies beyond the ends of the shaft is carried as by a rigid arm. The masses are those of the parts; a weighed total does not enter.</para>
/// <para><b>Left out</b>: stiffness of insert and point in the shaft, shear and turning of the shaft's sections, without which the frequencies come out too high
/// (carbon: about 0.3 % in the first mode, up to 2 % in the third; material values from memory), damping, the pull of string and rest. No measured table could be read; theory and measurement agree in published work on free arrows
/// (M. Rieckmann, J. L. Park and others, Proc. IMechE P 226, 2012, abstract). The frequency goes with the root of the stiffness: 2 % of spine is 1 % of it.</para>
/// <para>Checks: docs/models/arrows.md.</para>
/// </remarks>
public sealed class ArrowFlexure
{
    const int Elements = 48; // three modes to 1e-5 of their frequency
    const int Known = 3;

    ArrowFlexure(IReadOnlyList<FlexuralMode> modes) => Modes = modes;

    /// <summary>The three lowest bending modes.</summary>
    public IReadOnlyList<FlexuralMode> Modes { get; }

    /// <summary>Works out the modes of a build.</summary>
    /// <param name="build">The arrow.</param>
    /// <param name="spine">Of its shaft.</param>
    /// <returns>The three lowest modes.</returns>
    public static ArrowFlexure Of(ArrowBuild build, StaticSpine spine)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(spine);
        ArrowPart shaft = build.Shaft;
        double rear = shaft.From.Meters, length = shaft.Length.Meters, unit = shaft.MassSi;
        double Place(double metres) => (metres - rear) / length;

        List<BeamMass> masses = [];
        List<BeamLoad> loads = [];
        foreach (ArrowPart part in build.Parts.Where(p => p.Kind != PartKind.Shaft && p.MassSi > 0))
        {
            double from = Place(part.From.Meters), to = Place(part.To.Meters);
            if (part.IsLongitudinal && from >= 0 && to <= 1)
            {
                loads.Add(new(from, to, part.MassSi / unit));
            }
            else
            {
                masses.Add(new(Place(part.CentreSi), part.MassSi / unit, part.OwnInertia / (unit * length * length)));
            }
        }

        double perSecond = Math.Sqrt(spine.BendingStiffness / (unit * length * length * length)) / (2 * Math.PI);
        return new([.. new FlexureBeam(masses, loads, Elements).Modes(Known).Select((m, i) => new FlexuralMode(i + 1, perSecond * Math.Sqrt(m.Square), m.Shape, rear, length))]);
    }
}

/// <summary>One way in which a free arrow swings while it bends.</summary>
public sealed class FlexuralMode
{
    readonly BeamShape shape;
    readonly double rear, length, scale;

    internal FlexuralMode(int number, double hertz, BeamShape shape, double rear, double length)
    {
        (Number, Frequency, this.shape, this.rear, this.length) = (number, Frequency.FromHertz(hertz), shape, rear, length);
        double largest = Enumerable.Range(0, 401).Max(i => Math.Abs(shape.At(i / 400.0)));
        scale = Math.Sign(shape.At(0)) / largest;
        Nodes = [.. shape.Zeros().Select(z => Length.FromMeters(rear + z * length))];
    }

    /// <summary>1 for the lowest.</summary>
    public int Number { get; }

    /// <summary>Frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>Places on the shaft that stay on the line of flight, from the bottom of the nock slot, from the rear.</summary>
    public IReadOnlyList<Length> Nodes { get; }

    /// <summary>Sideways displacement at a place, the largest on the shaft being 1 and the rear end of the shaft positive.</summary>
    /// <param name="place">From the bottom of the nock slot; beyond the shaft straight on.</param>
    /// <returns>A pure number.</returns>
    public double DisplacementAt(Length place) => scale * shape.At((place.Meters - rear) / length);
}
