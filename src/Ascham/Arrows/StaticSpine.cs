namespace Ascham.Arrows;

using Ascham.Quantities;
using UnitsNet;

/// <summary>How stiff a shaft is against bending, as the trade reads it: the sag of a shaft on two supports under a weight.</summary>
/// <remarks>
/// <para><b>Model.</b> Thin beam, EI = F L³/(48 δ); its own weight zeroed away, δ far below the span. Two conventions: 1.94 lbf on
/// 28 in (ASTM F2031, read in excerpts; E. L. Fish et al., arXiv:1909.08186, 2019), and for wood 2 lbf on 26 in, where the "spine weight" is 26/δ.</para>
/// <para>A lower number is a stiffer shaft. "340" means 0.340 in.</para>
/// </remarks>
public sealed record StaticSpine
{
    const double Load = 1.94, Span = 28;         // lbf, in: ASTM F2031
    const double WoodLoad = 2, WoodSpan = 26;    // lbf, in: the older convention for wood
    const double PoundForce = 4.4482216152605;   // N, exact
    const double Inch = 0.0254;                  // m, exact

    StaticSpine(double stiffness) => BendingStiffness = stiffness;

    /// <summary>Bending stiffness EI, N m²; positive.</summary>
    public double BendingStiffness { get; }

    /// <summary>Sag under 1.94 lbf on a span of 28 in.</summary>
    public Length Deflection => Length.FromMeters(SagOf(Load, Span));

    /// <summary>Sag under 2 lbf on a span of 26 in.</summary>
    public Length WoodDeflection => Length.FromMeters(SagOf(WoodLoad, WoodSpan));

    /// <summary>The older "spine weight" for wood, in pounds: 26 over the sag in inches under 2 lbf on 26 in.</summary>
    public double WoodPounds => 26 / WoodDeflection.Inches;

    /// <summary>From a reading under 1.94 lbf (880 g) on a span of 28 in.</summary>
    /// <param name="deflection">The sag; 0.05 to 3 in.</param>
    /// <returns>The spine.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sag is not that of an arrow shaft.</exception>
    public static StaticSpine FromDeflection(Length deflection) => new(StiffnessOf(Load, Span, deflection, nameof(deflection)));

    /// <summary>From the number printed on a shaft: 340 for 0.340 in.</summary>
    /// <param name="number">Thousandths of an inch; 50 to 3000.</param>
    /// <returns>The spine.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is not that of an arrow shaft.</exception>
    public static StaticSpine FromNumber(double number) =>
        FromDeflection(Length.FromInches(Require.InRange(number, 50, 3000, "thousandths of an inch") / 1000));

    /// <summary>From a reading of a wooden shaft under 2 lbf on a span of 26 in.</summary>
    /// <param name="deflection">The sag; 0.05 to 3 in.</param>
    /// <returns>The spine.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The sag is not that of an arrow shaft.</exception>
    public static StaticSpine FromWoodDeflection(Length deflection) => new(StiffnessOf(WoodLoad, WoodSpan, deflection, nameof(deflection)));

    /// <summary>From any bench: a load in the middle between two supports.</summary>
    /// <param name="load">Positive.</param>
    /// <param name="span">Between the supports; positive.</param>
    /// <param name="deflection">What the load adds to the sag in the middle; positive, at most a tenth of the span.</param>
    /// <returns>The spine.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static StaticSpine FromBench(Force load, Length span, Length deflection)
    {
        double f = Require.Positive(load.Newtons, "N", nameof(load)), l = Require.Positive(span.Meters, "m", nameof(span));
        double sag = Require.InRange(Require.Positive(deflection.Meters, "m", nameof(deflection)), 0, 0.1 * l, "m", nameof(deflection));
        return new(f * l * l * l / (48 * sag));
    }

    static double StiffnessOf(double pounds, double inches, Length sag, string name)
    {
        double span = inches * Inch;
        return pounds * PoundForce * span * span * span / (48 * Inch * Require.InRange(sag.Inches, 0.05, 3, "in", name));
    }

    double SagOf(double pounds, double inches)
    {
        double span = inches * Inch;
        return pounds * PoundForce * span * span * span / (48 * BendingStiffness);
    }
}
