namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>What a bow is asked to do: which arrow, at which peak weight, from which draw length.</summary>
public sealed record Loading
{
    /// <summary>Mass of the complete arrow; positive, up to 200 g.</summary>
    public required Mass ArrowMass
    {
        get;
        init
        {
            Require.InRange(value.Grams, double.Epsilon, 200, "g", nameof(ArrowMass));
            field = value;
        }
    }

    /// <summary>Largest force on the draw curve; positive, up to 1000 N.</summary>
    public required Force PeakWeight
    {
        get;
        init
        {
            Require.InRange(value.Newtons, double.Epsilon, 1000, "N", nameof(PeakWeight));
            field = value;
        }
    }

    /// <summary>Draw length by the trade standard; needed only where it changes. Positive, up to 2 m.</summary>
    public Length? DrawLength
    {
        get;
        init
        {
            if (value is { } length)
            {
                Require.InRange(length.Meters, double.Epsilon, 2, "m", nameof(DrawLength));
            }

            field = value;
        }
    }

    /// <summary>Mass on the string at the nocking point (loop, silencers there); only its change against the known loading counts. Mass elsewhere on the string slows less.</summary>
    public Mass StringMass
    {
        get;
        init
        {
            Require.InRange(value.Grams, 0, 50, "g", nameof(StringMass));
            field = value;
        }
    }

    /// <summary>Arrow mass per peak weight, in grains per pound-force as the trade states it.</summary>
    public double GrainsPerPound => ArrowMass.Grains / PeakWeight.PoundsForce;

    /// <summary>Rating of compounds today: 350 gr, 70 lbf, 30 in (ASTM F1544; read in excerpts).</summary>
    public static Loading Rating { get; } = new() { ArrowMass = Mass.FromGrains(350), PeakWeight = Force.FromPoundsForce(70), DrawLength = Length.FromInches(30) };

    /// <summary>The older rating of the trade: 540 gr, 60 lbf, 30 in. (second-hand)</summary>
    public static Loading OlderRating { get; } = new() { ArrowMass = Mass.FromGrains(540), PeakWeight = Force.FromPoundsForce(60), DrawLength = Length.FromInches(30) };
}
