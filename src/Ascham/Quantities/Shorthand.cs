namespace Ascham.Quantities;

using UnitsNet;

/// <summary>Lets a number carry its unit in a notebook: <c>80.Yards</c>, <c>412.Grains</c>, <c>278.FeetPerSecond</c>.</summary>
/// <remarks>Each member only names a UnitsNet factory; conversion factors are UnitsNet's.</remarks>
public static class Shorthand
{
    extension(double value)
    {
        /// <summary>Reads the number as a length in metres.</summary>
        public Length Metres => Length.FromMeters(value);

        /// <summary>Reads the number as a length in centimetres.</summary>
        public Length Centimetres => Length.FromCentimeters(value);

        /// <summary>Reads the number as a length in millimetres.</summary>
        public Length Millimetres => Length.FromMillimeters(value);

        /// <summary>Reads the number as a length in international yards, 0.9144 m each.</summary>
        public Length Yards => Length.FromYards(value);

        /// <summary>Reads the number as a length in international feet, 0.3048 m each.</summary>
        public Length Feet => Length.FromFeet(value);

        /// <summary>Reads the number as a length in inches, 25.4 mm each.</summary>
        public Length Inches => Length.FromInches(value);

        /// <summary>Reads the number as a speed in metres per second.</summary>
        public Speed MetresPerSecond => Speed.FromMetersPerSecond(value);

        /// <summary>Reads the number as a speed in feet per second.</summary>
        public Speed FeetPerSecond => Speed.FromFeetPerSecond(value);

        /// <summary>Reads the number as a mass in grams.</summary>
        public Mass Grams => Mass.FromGrams(value);

        /// <summary>Reads the number as a mass in grains, 64.79891 mg each.</summary>
        public Mass Grains => Mass.FromGrains(value);

        /// <summary>Reads the number as a force in pounds-force.</summary>
        public Force PoundsForce => Force.FromPoundsForce(value);

        /// <summary>Reads the number as a force in newtons.</summary>
        public Force Newtons => Force.FromNewtons(value);

        /// <summary>Reads the number as an angle in degrees.</summary>
        public Angle Degrees => Angle.FromDegrees(value);

        /// <summary>Reads the number as an angle in milliradians.</summary>
        public Angle Milliradians => Angle.FromMilliradians(value);

        /// <summary>Reads the number as a temperature in degrees Celsius.</summary>
        public Temperature Celsius => Temperature.FromDegreesCelsius(value);

        /// <summary>Reads the number as a temperature in degrees Fahrenheit.</summary>
        public Temperature Fahrenheit => Temperature.FromDegreesFahrenheit(value);

        /// <summary>Reads the number as a pressure in hectopascals.</summary>
        public Pressure Hectopascals => Pressure.FromHectopascals(value);

        /// <summary>Reads the number as a pressure in inches of mercury.</summary>
        public Pressure InchesOfMercury => Pressure.FromInchesOfMercury(value);

        /// <summary>Reads the number as a ratio in percent.</summary>
        public Ratio Percent => Ratio.FromPercent(value);

        /// <summary>Reads the number as a drag constant k in 1/m: the relative loss of speed per metre flown.</summary>
        public ReciprocalLength PerMetre => ReciprocalLength.FromInverseMeters(value);
    }

    extension(int value)
    {
        /// <summary>Reads the number as a length in metres.</summary>
        public Length Metres => ((double)value).Metres;

        /// <summary>Reads the number as a length in centimetres.</summary>
        public Length Centimetres => ((double)value).Centimetres;

        /// <summary>Reads the number as a length in millimetres.</summary>
        public Length Millimetres => ((double)value).Millimetres;

        /// <summary>Reads the number as a length in international yards, 0.9144 m each.</summary>
        public Length Yards => ((double)value).Yards;

        /// <summary>Reads the number as a length in international feet, 0.3048 m each.</summary>
        public Length Feet => ((double)value).Feet;

        /// <summary>Reads the number as a length in inches, 25.4 mm each.</summary>
        public Length Inches => ((double)value).Inches;

        /// <summary>Reads the number as a speed in metres per second.</summary>
        public Speed MetresPerSecond => ((double)value).MetresPerSecond;

        /// <summary>Reads the number as a speed in feet per second.</summary>
        public Speed FeetPerSecond => ((double)value).FeetPerSecond;

        /// <summary>Reads the number as a mass in grams.</summary>
        public Mass Grams => ((double)value).Grams;

        /// <summary>Reads the number as a mass in grains, 64.79891 mg each.</summary>
        public Mass Grains => ((double)value).Grains;

        /// <summary>Reads the number as a force in pounds-force.</summary>
        public Force PoundsForce => ((double)value).PoundsForce;

        /// <summary>Reads the number as an angle in degrees.</summary>
        public Angle Degrees => ((double)value).Degrees;

        /// <summary>Reads the number as an angle in milliradians.</summary>
        public Angle Milliradians => ((double)value).Milliradians;

        /// <summary>Reads the number as a temperature in degrees Celsius.</summary>
        public Temperature Celsius => ((double)value).Celsius;

        /// <summary>Reads the number as a pressure in hectopascals.</summary>
        public Pressure Hectopascals => ((double)value).Hectopascals;

        /// <summary>Reads the number as a ratio in percent.</summary>
        public Ratio Percent => ((double)value).Percent;
    }
}
