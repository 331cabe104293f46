namespace Ascham.Groups;

using Ascham.Quantities;
using UnitsNet;

/// <summary>One scoring zone: all within its diameter that is not in a smaller zone.</summary>
/// <param name="Diameter">Outer diameter; positive.</param>
/// <param name="Value">What an arrow in it scores.</param>
public sealed record FaceZone(Length Diameter, int Value);

/// <summary>The scoring zones of a target face, and where their dimensions come from.</summary>
/// <remarks>
/// <para>Zones are round and share one centre. Outside the largest an arrow scores nothing.</para>
/// <para><b>Limits.</b> Dimensions read second-hand or remembered are marked so in <see cref="Source"/>: check the rule book of your body before relying on them.
/// Rules on line cutting, on shaft diameter and on which zones count differ between bodies and years.</para>
/// </remarks>
public sealed record FaceGeometry
{
    // outer diameters, as shares of the face
    static readonly double[] SixZones = [0.1, 0.2, 0.4, 0.6, 0.8, 1.0], ThreeScores = [0.2, 0.6, 1.0];

    /// <summary>Makes a face.</summary>
    /// <param name="name">Its name in a sentence.</param>
    /// <param name="zones">One zone or more, from the smallest diameter to the largest.</param>
    /// <param name="source">Where the dimensions come from, and how sure they are.</param>
    /// <exception cref="ArgumentException">No zone, or diameters that are not positive and growing.</exception>
    public FaceGeometry(string name, IEnumerable<FaceZone> zones, string source)
    {
        ArgumentNullException.ThrowIfNull(zones);
        (Name, Zones, Source) = (name, [.. zones], source);
        for (int i = 0; i < Zones.Count; i++)
        {
            Require.Positive(Zones[i].Diameter.Meters, "m", $"diameter of zone {i + 1}");
            if (i > 0 && Zones[i].Diameter.Meters <= Zones[i - 1].Diameter.Meters)
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"zones must grow outwards; zone {i + 1} has {Zones[i].Diameter}, the one inside it {Zones[i - 1].Diameter}."), nameof(zones));
            }
        }

        if (Zones.Count == 0)
        {
            throw new ArgumentException("zones must hold at least one zone; it was empty.", nameof(zones));
        }
    }

    /// <summary>Its name in a sentence.</summary>
    public string Name { get; }

    /// <summary>The zones, from the smallest outwards.</summary>
    public IReadOnlyList<FaceZone> Zones { get; }

    /// <summary>Where the dimensions come from, and how sure they are.</summary>
    public string Source { get; }

    /// <summary>A target face of ten zones of equal width, 10 at the centre to 1: 122, 80, 60 and 40 cm are the usual diameters.</summary>
    /// <param name="diameter">Diameter of the whole face; positive.</param>
    /// <returns>The face. Its ten has a tenth of the diameter: 12.2 cm on the 122 cm face.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is not positive.</exception>
    public static FaceGeometry TenZones(Length diameter) => new(
        $"ten-zone face of {Text(diameter)}",
        Enumerable.Range(1, 10).Select(i => new FaceZone(Checked(diameter) * (i / 10.0), 11 - i)),
        "World Archery rules, target faces: the 122 cm face and its 12.2 cm ten read second-hand, equal widths and other diameters from memory; confidence high");

    /// <summary>The ten-zone face where only the inner ten, a twentieth of the diameter, scores 10, as for the compound bow indoors.</summary>
    /// <param name="diameter">Diameter of the whole face; positive.</param>
    /// <returns>The face: the rest of the ten scores 9 with the nine.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is not positive.</exception>
    public static FaceGeometry TenZonesSmallTen(Length diameter) => new(
        $"ten-zone face of {Text(diameter)} with the small ten",
        [new FaceZone(Checked(diameter) / 20, 10), .. TenZones(diameter).Zones.Skip(1)],
        "World Archery rules, target faces: the small ten read second-hand, its diameter from memory; confidence high");

    /// <summary>A field face of six zones, 6 at the centre to 1, as used by the international field round: 80, 60, 40 and 20 cm.</summary>
    /// <param name="diameter">Diameter of the whole face; positive.</param>
    /// <returns>The face: five zones of equal width, the innermost parted in two at half its diameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is not positive.</exception>
    public static FaceGeometry FieldSixZones(Length diameter) => new(
        $"six-zone field face of {Text(diameter)}",
        SixZones.Select((share, i) => new FaceZone(Checked(diameter) * share, 6 - i)),
        "World Archery rules, field faces: equal widths and scoring read second-hand (confidence high), the innermost tenth from memory (confidence medium)");

    /// <summary>A field face scored 5, 4 and 3: 65, 50, 35 and 20 cm.</summary>
    /// <param name="diameter">Diameter of the whole face; positive.</param>
    /// <returns>The face: spot of a fifth of the diameter, then two rings of equal width scored alike, then two more.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is not positive.</exception>
    public static FaceGeometry FieldThreeScores(Length diameter) => new(
        $"field face of {Text(diameter)} scored 5, 4 and 3",
        ThreeScores.Select((share, i) => new FaceZone(Checked(diameter) * share, 5 - i)),
        "NFAA and IFAA field rounds: ring diameters and the scores 5, 4, 3 read second-hand (confidence high); which rings share a score from memory");

    /// <summary>Keeps only the innermost zones, as the centre of a face printed alone.</summary>
    /// <param name="zones">How many; from 1 to all.</param>
    /// <returns>The smaller face: five of ten zones leave 10 to 6.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="zones"/> is out of range.</exception>
    public FaceGeometry Innermost(int zones)
    {
        Require.InRange(zones, 1, Zones.Count, "");
        return new($"{Name}, innermost {zones} zones", Zones.Take(zones), Source);
    }

    static Length Checked(Length diameter)
    {
        Require.Positive(diameter.Meters, "m", nameof(diameter));
        return diameter;
    }

    static string Text(Length diameter) => Checked(diameter).ToString("G4", System.Globalization.CultureInfo.InvariantCulture);
}
