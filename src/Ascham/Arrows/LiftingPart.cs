namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>A part of an arrow that pushes sideways when the air meets it at an angle: how strongly, and where.</summary>
/// <remarks>
/// Small angles, slender shapes, far below the speed of sound. Formulas: J. S. and J. A. Barrowman, "The Theoretical
/// Prediction of the Center of Pressure", NARAM-8 (1966), which is slender-body theory for bodies of revolution.
/// </remarks>
public sealed record LiftingPart
{
    internal LiftingPart(string name, double lift, double position) => (Name, LiftSi, PositionSi) = (name, lift, position);

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>Side force per dynamic pressure and per radian of angle of attack; negative where a body narrows.</summary>
    public Area LiftPerRadian => Area.FromSquareMeters(LiftSi);

    /// <summary>Where the force acts, from the tip of the point.</summary>
    public Length Position => Length.FromMeters(PositionSi);

    internal double LiftSi { get; }

    internal double PositionSi { get; }

    /// <summary>Normal-force slope C_Na per radian, referred to the cross-section of this diameter.</summary>
    /// <param name="reference">Usually the diameter of the shaft; positive.</param>
    /// <returns>Per radian; 2 for any point that ends at this diameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not positive.</exception>
    public double Slope(Length reference) => LiftSi / Circle(Require.Positive(reference.Meters, "m", nameof(reference)));

    /// <summary>A part with known lift, from a measurement or another theory.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="liftPerRadian">Side force per dynamic pressure and per radian; finite.</param>
    /// <param name="position">From the tip of the point; zero or more.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not a number or outside its range.</exception>
    public static LiftingPart Of(string name, Area liftPerRadian, Length position)
    {
        ArgumentNullException.ThrowIfNull(name);
        return new(
            name,
            Require.Finite(liftPerRadian.SquareMeters, "m²", nameof(liftPerRadian)),
            Require.NotNegative(position.Meters, "m", nameof(position)));
    }

    /// <summary>A conical point, from its tip to a full diameter.</summary>
    /// <param name="length">Of the cone; positive.</param>
    /// <param name="diameter">Where it ends; positive.</param>
    /// <returns>The part; its force acts at 2/3 of the length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not positive.</exception>
    public static LiftingPart ConePoint(Length length, Length diameter)
        => Taper(Length.Zero, length, Length.Zero, diameter);

    /// <summary>A pointed round (ogive) point that runs smoothly into a full diameter.</summary>
    /// <param name="length">Of the ogive; at least half the diameter.</param>
    /// <param name="diameter">Where it ends; positive.</param>
    /// <returns>The part; its force acts near 0.466 of the length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static LiftingPart OgivePoint(Length length, Length diameter)
    {
        double d = Require.Positive(diameter.Meters, "m", nameof(diameter)), r = 0.5 * d;
        double l = Require.InRange(length.Meters, r, double.MaxValue, "m", nameof(length));
        double arc = (r * r + l * l) / (2 * r); // radius of the arc that touches the shaft
        double volume = Math.PI * (l * arc * arc - l * l * l / 3 - (arc - r) * arc * arc * Math.Asin(l / arc));
        return Body("point", 0, l, 0, d, volume);
    }

    /// <summary>A length over which the diameter changes in a straight line: a collar, a step in the shaft, a tapered tail.</summary>
    /// <param name="fromTip">Where it begins, from the tip of the point; zero or more.</param>
    /// <param name="length">Positive.</param>
    /// <param name="front">Diameter where it begins; zero or more.</param>
    /// <param name="back">Diameter where it ends; zero or more, and not the same.</param>
    /// <returns>The part; it pushes the other way when it narrows.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static LiftingPart Taper(Length fromTip, Length length, Length front, Length back)
    {
        double from = Require.NotNegative(fromTip.Meters, "m", nameof(fromTip)), l = Require.Positive(length.Meters, "m", nameof(length));
        double a = Require.NotNegative(front.Meters, "m", nameof(front)), b = Require.NotNegative(back.Meters, "m", nameof(back));
        if (a == b)
        {
            throw new ArgumentOutOfRangeException(nameof(back), b, $"back must differ from front: a shaft of one diameter, {a:G4} m, has no lift of its own in this theory.");
        }

        return Body(a == 0 ? "point" : "taper", from, l, a, b, Math.PI * l * (a * a + a * b + b * b) / 12);
    }

    // Slender body: lift 2 (back area - front area), acting at (l back - volume)/(back - front) behind the front.
    static LiftingPart Body(string name, double from, double length, double front, double back, double volume)
    {
        double gain = Circle(back) - Circle(front);
        return new(name, 2 * gain, from + (length * Circle(back) - volume) / gain);
    }

    static double Circle(double diameter) => 0.25 * Math.PI * diameter * diameter;
}
