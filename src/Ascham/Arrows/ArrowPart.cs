namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What a part of an arrow is; it says where the part may sit and what it may share its place with.</summary>
public enum PartKind
{
    /// <summary>The bare shaft.</summary>
    Shaft,

    /// <summary>Point or broadhead: whatever is ahead of the shaft.</summary>
    Point,

    /// <summary>Inside the front of the shaft.</summary>
    Insert,

    /// <summary>Around the front of the shaft, or ahead of it.</summary>
    Outsert,

    /// <summary>Nock, with its bushing or pin.</summary>
    Nock,

    /// <summary>Foil around the shaft.</summary>
    Wrap,

    /// <summary>All vanes together.</summary>
    Vanes,

    /// <summary>Glue, wherever it is.</summary>
    Adhesive,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>A part of an arrow: its mass and where it lies, counted from the bottom of the nock slot towards the point.</summary>
/// <remarks>The mass is spread evenly over the length of the part; a part without length is a point mass.</remarks>
public sealed record ArrowPart
{
    /// <summary>What it is.</summary>
    public required PartKind Kind
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(Kind), value, "Kind must be one of the named kinds of part.");
    }

    /// <summary>Mass; zero or more, up to 200 g.</summary>
    public required Mass Mass
    {
        get;
        init
        {
            Require.InRange(value.Grams, 0, 200, "g", nameof(Mass));
            field = value;
        }
    }

    /// <summary>Rear end, from the bottom of the nock slot; negative behind it; ±2 m.</summary>
    public required Length From { get; init => field = Within(value, nameof(From)); }

    /// <summary>Length along the arrow; zero for a point mass; up to 2 m.</summary>
    public Length Length
    {
        get;
        init
        {
            Require.InRange(value.Meters, 0, 2, "m", nameof(Length));
            field = value;
        }
    }

    /// <summary>Name for tables and messages; the kind when not given.</summary>
    public string Name
    {
        get => field.Length > 0 ? field : Kind.ToString().ToLowerInvariant();
        init => field = value ?? throw new ArgumentNullException(nameof(Name));
    } = "";

    /// <summary>Front end, from the bottom of the nock slot.</summary>
    public Length To => From + Length;

    /// <summary>Centre of mass, from the bottom of the nock slot.</summary>
    public Length Centre => From + 0.5 * Length;

    /// <summary>A part whose mass is taken at one place.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="mass">Zero or more.</param>
    /// <param name="at">From the bottom of the nock slot.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ArrowPart At(PartKind kind, Mass mass, Length at) => new() { Kind = kind, Mass = mass, From = at };

    /// <summary>A part spread over a length.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="mass">Zero or more.</param>
    /// <param name="from">Its rear end, from the bottom of the nock slot.</param>
    /// <param name="length">Its length; zero or more.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ArrowPart Over(PartKind kind, Mass mass, Length from, Length length) => new() { Kind = kind, Mass = mass, From = from, Length = length };

    /// <summary>A bare shaft from its grains per inch.</summary>
    /// <param name="grainsPerInch">Mass per length as the trade states it; above 0, up to 40.</param>
    /// <param name="from">Its rear end, from the bottom of the nock slot; positive when the nock stands out behind the shaft.</param>
    /// <param name="length">Of the shaft itself; positive.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static ArrowPart Shaft(double grainsPerInch, Length from, Length length)
    {
        Require.InRange(Require.Positive(grainsPerInch, "gr/in"), 0, 40, "gr/in", nameof(grainsPerInch));
        Require.Positive(length.Meters, "m", nameof(length));
        return Over(PartKind.Shaft, Mass.FromGrains(grainsPerInch * length.Inches), from, length);
    }

    internal double MassSi => Mass.Kilograms;

    internal double CentreSi => Centre.Meters;

    /// <summary>About its own centre, kg m²: a thin rod.</summary>
    internal double OwnInertia => MassSi * Length.Meters * Length.Meters / 12;

    internal bool IsLongitudinal => Length.Meters > 0;

    static Length Within(Length value, string name)
    {
        Require.InRange(value.Meters, -2, 2, "m", name);
        return value;
    }
}
