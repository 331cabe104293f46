namespace Ascham.Causes;

using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Units in which sentences tell sizes.</summary>
/// <param name="Pull">Of draw weight.</param>
/// <param name="Arrow">Of arrow mass.</param>
/// <param name="Wind">Of wind.</param>
/// <param name="Far">Of distances.</param>
/// <param name="Near">Of offsets on the face.</param>
public sealed record CauseUnits(ForceUnit Pull, MassUnit Arrow, SpeedUnit Wind, LengthUnit Far, LengthUnit Near)
{
    /// <summary>Pounds, grains, miles an hour, yards and inches.</summary>
    public static CauseUnits Imperial { get; } = new(ForceUnit.PoundForce, MassUnit.Grain, SpeedUnit.MilePerHour, LengthUnit.Yard, LengthUnit.Inch);

    /// <summary>Newtons, grams, metres per second, metres and centimetres.</summary>
    public static CauseUnits Metric { get; } = new(ForceUnit.Newton, MassUnit.Gram, SpeedUnit.MeterPerSecond, LengthUnit.Meter, LengthUnit.Centimeter);

    /// <summary>A size as it is said: number and unit by themselves, the words for less and for more.</summary>
    internal (Func<double, double> Number, string Unit, string Less, string More) Said(CauseSize size) => size switch
    {
        CauseSize.PeakWeight => (x => Force.FromPoundsForce(x).As(Pull), Pull == ForceUnit.PoundForce ? " lb" : Of(Force.GetAbbreviation(Pull, CultureInfo.InvariantCulture)), "less", "more"),
        CauseSize.ArrowMass => (x => Mass.FromGrains(x).As(Arrow), Of(Mass.GetAbbreviation(Arrow, CultureInfo.InvariantCulture)), "less", "more"),
        CauseSize.Drag => (Percent, " %", "less", "more"),
        CauseSize.Air => (Percent, " %", "thinner", "denser"),
        CauseSize.Distance => (x => 100 * x, " %", "nearer", "farther"),
        CauseSize.Elevation or CauseSize.DayUp => (x => x, " mrad", "lower", "higher"),
        CauseSize.Lateral or CauseSize.DayRight => (x => x, " mrad", "to the left", "to the right"),
        CauseSize.Cant or CauseSize.SightAxis => (x => x, "°", "to the left", "to the right"),
        CauseSize.TailWind => (WindSpeed, Of(Speed.GetAbbreviation(Wind, CultureInfo.InvariantCulture)), "against you", "from behind"),
        CauseSize.CrossWind => (WindSpeed, Of(Speed.GetAbbreviation(Wind, CultureInfo.InvariantCulture)), "from the right", "from the left"),
        CauseSize.Fatigue => (x => x, " mrad", "lower", "higher"),
        _ => throw new ArgumentOutOfRangeException(nameof(size), size, "There is no such size."),
    };

    double WindSpeed(double metresPerSecond) => Speed.FromMetersPerSecond(metresPerSecond).As(Wind);

    static double Percent(double logarithm) => 100 * (Math.Exp(logarithm) - 1);

    static string Of(string abbreviation) => " " + abbreviation;
}
