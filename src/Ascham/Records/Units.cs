namespace Ascham.Records;

using UnitsNet;
using UnitsNet.Units;

/// <summary>A unit as files write it.</summary>
/// <param name="Text">How it is written, in a header or behind a number.</param>
/// <param name="Plural">Its name in messages.</param>
/// <param name="From">Makes the quantity of a number of these.</param>
/// <param name="To">Says how many of these a quantity is.</param>
/// <param name="Holds">Whether a quantity was given in this unit.</param>
sealed record Unit<T>(string Text, string Plural, Func<double, T> From, Func<T, double> To, Func<T, bool> Holds);

/// <summary>The units files may use; conversion is UnitsNet's. The first of each list is the one written for a quantity in a unit not listed.</summary>
static class Units
{
    internal static readonly Unit<Length> Millimetre = Of("mm", "millimetres", LengthUnit.Millimeter);
    internal static readonly Unit<Length> Centimetre = Of("cm", "centimetres", LengthUnit.Centimeter);
    internal static readonly Unit<Length> Metre = Of("m", "metres", LengthUnit.Meter);
    internal static readonly Unit<Length> Inch = Of("in", "inches", LengthUnit.Inch);
    internal static readonly Unit<Length> Foot = Of("ft", "feet", LengthUnit.Foot);
    internal static readonly Unit<Length> Yard = Of("yd", "yards", LengthUnit.Yard);

    internal static readonly Unit<Temperature> Celsius = Of("C", "degrees Celsius", TemperatureUnit.DegreeCelsius);
    internal static readonly Unit<Temperature> Fahrenheit = Of("F", "degrees Fahrenheit", TemperatureUnit.DegreeFahrenheit);
    internal static readonly Unit<Pressure> Hectopascal = Of("hPa", "hectopascals", PressureUnit.Hectopascal);
    internal static readonly Unit<Pressure> InchOfMercury = Of("inHg", "inches of mercury", PressureUnit.InchOfMercury);
    internal static readonly Unit<Duration> Second = new("s", "seconds", v => Duration.FromSeconds(v), d => d.Seconds, d => d.Unit == DurationUnit.Second);
    internal static readonly Unit<Angle> Degree = Of("deg", "degrees", AngleUnit.Degree);

    internal static readonly Unit<Length>[] Lengths = [Metre, Millimetre, Centimetre, Inch, Foot, Yard];
    internal static readonly Unit<Length>[] SmallLengths = [Millimetre, Centimetre, Inch];
    internal static readonly Unit<Length>[] Distances = [Metre, Yard, Foot];
    internal static readonly Unit<Temperature>[] Temperatures = [Celsius, Fahrenheit];
    internal static readonly Unit<Pressure>[] Pressures = [Hectopascal, InchOfMercury];

    internal static readonly Unit<Mass>[] Masses =
        [Of("g", "grams", MassUnit.Gram), Of("gr", "grains", MassUnit.Grain), Of("kg", "kilograms", MassUnit.Kilogram)];

    // Archers write the pull of a bow in "lb"; as a force it can only be the pound-force, so it is read as that.
    internal static readonly Unit<Force>[] Forces =
        [Of("N", "newtons", ForceUnit.Newton), Of("lbf", "pounds-force", ForceUnit.PoundForce),
         Of("lb", "pounds-force", ForceUnit.PoundForce), Of("kgf", "kilograms-force", ForceUnit.KilogramForce)];

    internal static readonly Unit<Speed>[] Speeds =
        [Of("m/s", "metres per second", SpeedUnit.MeterPerSecond), Of("ft/s", "feet per second", SpeedUnit.FootPerSecond),
         Of("fps", "feet per second", SpeedUnit.FootPerSecond), Of("km/h", "kilometres per hour", SpeedUnit.KilometerPerHour)];

    internal static readonly Unit<ReciprocalLength>[] ReciprocalLengths =
        [Of("1/m", "per metre", ReciprocalLengthUnit.InverseMeter), Of("1/ft", "per foot", ReciprocalLengthUnit.InverseFoot),
         Of("1/yd", "per yard", ReciprocalLengthUnit.InverseYard)];

    internal static readonly Unit<Area>[] Areas =
        [Of("mm2", "square millimetres", AreaUnit.SquareMillimeter), Of("cm2", "square centimetres", AreaUnit.SquareCentimeter),
         Of("m2", "square metres", AreaUnit.SquareMeter), Of("in2", "square inches", AreaUnit.SquareInch)];

    internal static readonly Unit<Angle>[] Angles =
        [Of("mrad", "milliradians", AngleUnit.Milliradian), Degree, Of("rad", "radians", AngleUnit.Radian)];

    internal static readonly Unit<Ratio>[] Percents =
        [new("%", "percent", v => Ratio.FromPercent(v), r => r.Percent, r => r.Unit == RatioUnit.Percent)];

    static Unit<Length> Of(string text, string plural, LengthUnit u) => new(text, plural, v => Length.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Temperature> Of(string text, string plural, TemperatureUnit u) => new(text, plural, v => Temperature.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Pressure> Of(string text, string plural, PressureUnit u) => new(text, plural, v => Pressure.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Angle> Of(string text, string plural, AngleUnit u) => new(text, plural, v => Angle.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Mass> Of(string text, string plural, MassUnit u) => new(text, plural, v => Mass.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Force> Of(string text, string plural, ForceUnit u) => new(text, plural, v => Force.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Speed> Of(string text, string plural, SpeedUnit u) => new(text, plural, v => Speed.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<ReciprocalLength> Of(string text, string plural, ReciprocalLengthUnit u) => new(text, plural, v => ReciprocalLength.From(v, u), q => q.As(u), q => q.Unit == u);

    static Unit<Area> Of(string text, string plural, AreaUnit u) => new(text, plural, v => Area.From(v, u), q => q.As(u), q => q.Unit == u);
}
