namespace Ascham.Arrows;

using Ascham.Quantities;

/// <summary>Where along the Reynolds numbers a shaft changes from laminar to turbulent.</summary>
/// <remarks>
/// The share of turbulent drag is 1/(1 + exp(-(Re - centre)/width)), Re by the diameter of the shaft. This blend and its numbers are a modelling
/// choice, not published: tunnels and flights found either state at the same Reynolds number between about 1.0e4 and 2.4e4, decided by point, attitude and vibration.
/// </remarks>
public sealed record Transition
{
    /// <summary>Centre 1.2e4, width 1.5e3: an ordinary point. A modelling choice.</summary>
    public static Transition OrdinaryPoint { get; } = new() { Centre = 1.2e4, Width = 1.5e3 };

    /// <summary>Centre 2.0e4, width 1.5e3: a streamlined point. A modelling choice.</summary>
    public static Transition StreamlinedPoint { get; } = new() { Centre = 2.0e4, Width = 1.5e3 };

    /// <summary>Reynolds number at which both states weigh the same; 1e3 to 1e6.</summary>
    public required double Centre
    {
        get;
        init
        {
            Require.InRange(value, 1e3, 1e6, "", nameof(Centre));
            field = value;
        }
    }

    /// <summary>Over this much in Reynolds number the odds change by a factor e; 100 to 1e5.</summary>
    public required double Width
    {
        get;
        init
        {
            Require.InRange(value, 100, 1e5, "", nameof(Width));
            field = value;
        }
    }
}
