namespace Ascham.Bows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>One reading of a draw curve: how far the string was drawn, and how hard it pulled.</summary>
public sealed record DrawPoint
{
    /// <summary>Draw length by the trade standard: nocking point to grip pivot, plus 1.75 in; 0 to 2 m.</summary>
    public required Length Draw
    {
        get;
        init
        {
            Require.InRange(value.Meters, 0, 2, "m", nameof(Draw));
            field = value;
        }
    }

    /// <summary>Force on the string; 0 to 1000 N.</summary>
    public required Force Force
    {
        get;
        init
        {
            Require.InRange(value.Newtons, 0, 1000, "N", nameof(Force));
            field = value;
        }
    }

    /// <summary>Standard deviation of that reading by itself, not of the scale as a whole; 0 to 1000 N; <see langword="null"/> when nobody knows.</summary>
    public Force? ForceSd
    {
        get;
        init
        {
            if (value is { } sd)
            {
                Require.InRange(sd.Newtons, 0, 1000, "N", nameof(ForceSd));
            }

            field = value;
        }
    }
}
