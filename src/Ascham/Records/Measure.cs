namespace Ascham.Records;

using UnitsNet;

/// <summary>A kind of quantity in a file: what it is called, which units and which values are accepted.</summary>
/// <param name="Noun">Its name with an article, for messages.</param>
/// <param name="Example">A good value, for messages.</param>
/// <param name="Low">Smallest value accepted.</param>
/// <param name="High">Largest value accepted.</param>
/// <param name="Units">Units accepted; the first is written for a quantity in none of them.</param>
sealed record Measure<T>(string Noun, string Example, T Low, T High, Unit<T>[] Units)
    where T : struct
{
    /// <summary>Whether the value must be above the lowest, not at it.</summary>
    internal bool Above { get; init; }

    /// <summary>Says what is accepted in a unit, such as <c>inches from -394 to 394</c>.</summary>
    internal string Allowed(Unit<T> unit)
    {
        string low = NumberText.Write(LowIn(unit)), high = NumberText.Write(HighIn(unit));
        return Above ? $"{unit.Plural} above {low}, up to {high}" : $"{unit.Plural} from {low} to {high}";
    }

    /// <summary>Reads a number whose unit is known from elsewhere, as in a CSV column.</summary>
    internal T Read(Cell cell, Unit<T> unit) => InRange(cell, NumberText.Read(cell, cell.Text, Allowed(unit)), unit);

    /// <summary>Reads number, space, unit.</summary>
    internal T Read(Cell cell)
    {
        string expected = $"{Noun} such as \"{Example}\" (units: {string.Join(", ", Units.Select(u => u.Text))})";
        int space = cell.Text.IndexOf(' ', StringComparison.Ordinal);
        if (space < 0)
        {
            throw cell.Wrong(cell.Text.Any(char.IsAsciiDigit) ? "is not a number, a space and a unit" : "has no number", expected);
        }

        string text = cell.Text[(space + 1)..];
        var unit = Units.FirstOrDefault(u => u.Text == text) ?? throw cell.Wrong("has no unit known here", expected);
        return InRange(cell, NumberText.Read(cell, cell.Text[..space], expected), unit);
    }

    /// <summary>The unit a quantity was given in, or the first of the list when that is not one of them.</summary>
    internal Unit<T> UnitOf(T quantity) => Units.FirstOrDefault(u => u.Holds(quantity)) ?? Units[0];

    /// <summary>Writes number, space, unit.</summary>
    internal string Write(T quantity)
    {
        var unit = UnitOf(quantity);
        return $"{NumberText.Write(unit.To(quantity))} {unit.Text}";
    }

    T InRange(Cell cell, double value, Unit<T> unit)
    {
        double low = LowIn(unit);
        return value >= low && value <= HighIn(unit) && !(Above && value == low)
            ? unit.From(value)
            : throw cell.Wrong("is out of range", Allowed(unit));
    }

    double LowIn(Unit<T> unit) => 0 - Outward(-unit.To(Low)); // 0 - x, not -x: a lowest value of zero must not become -0

    double HighIn(Unit<T> unit) => Outward(unit.To(High));

    // Bounds are rounded outwards to three digits or to a whole number, so that the bound told is the bound held.
    static double Outward(double value)
    {
        double scale = Math.Pow(10, Math.Max(0, 2 - Math.Floor(Math.Log10(Math.Abs(value)))));
        return value == 0 ? 0 : Math.Ceiling(value * scale - 1e-9 * Math.Abs(value * scale)) / scale;
    }
}

/// <summary>The quantities of the files and their ranges: wide enough for any bow, narrow enough to catch a wrong unit or a slipped digit.</summary>
static class Measures
{
    internal static readonly Measure<Length> Distance =
        new("a distance", "40 yd", Length.Zero, Length.FromMeters(1000), Units.Distances) { Above = true };

    internal static readonly Measure<Length> DistanceSd =
        new("a distance", "0.5 yd", Length.Zero, Length.FromMeters(100), Units.Distances);

    internal static readonly Measure<Length> Offset =
        new("an offset", "2.5 in", Length.FromMeters(-10), Length.FromMeters(10), Units.SmallLengths);

    internal static readonly Measure<Length> Position =
        new("a position", "31.5 mm", Length.FromMeters(-1), Length.FromMeters(1), Units.SmallLengths);

    internal static readonly Measure<Length> PositionSd =
        new("a standard deviation", "0.2 mm", Length.Zero, Length.FromMeters(1), Units.SmallLengths);

    internal static readonly Measure<Temperature> Temperature =
        new("a temperature", "15 C", UnitsNet.Temperature.FromDegreesCelsius(-60), UnitsNet.Temperature.FromDegreesCelsius(60), Units.Temperatures);

    internal static readonly Measure<Pressure> Pressure =
        new("a pressure", "1013 hPa", UnitsNet.Pressure.FromHectopascals(300), UnitsNet.Pressure.FromHectopascals(1100), Units.Pressures);

    internal static readonly Measure<Ratio> Humidity =
        new("a relative humidity", "50 %", Ratio.FromPercent(0), Ratio.FromPercent(100), Units.Percents);

    internal static readonly Measure<Duration> Hold =
        new("a time", "5 s", Duration.Zero, Duration.FromSeconds(60), [Units.Second]);

    internal static readonly Measure<Angle> Slope =
        new("a slope", "12 deg", Angle.FromDegrees(-80), Angle.FromDegrees(80), [Units.Degree]);

    internal static readonly Measure<Angle> Dispersion =
        new("an angle", "1.2 mrad", Angle.Zero, Angle.FromMilliradians(100), Units.Angles) { Above = true };

    internal static readonly Measure<Force> Weight =
        new("a force", "62 lbf", Force.Zero, Force.FromNewtons(1000), Units.Forces) { Above = true };

    internal static readonly Measure<Speed> LaunchSpeed =
        new("a speed", "278 ft/s", Speed.Zero, Speed.FromMetersPerSecond(200), Units.Speeds) { Above = true };

    internal static readonly Measure<Speed> LaunchSpeedSd =
        new("a speed", "1.5 ft/s", Speed.Zero, Speed.FromMetersPerSecond(50), Units.Speeds);

    internal static readonly Measure<Length> Reach =
        new("a length", "28.5 in", Length.Zero, Length.FromMeters(2), Units.Lengths) { Above = true };

    internal static readonly Measure<Length> Diameter =
        new("a length", "5.2 mm", Length.Zero, Length.FromMillimeters(25), Units.Lengths) { Above = true };

    internal static readonly Measure<Length> PeepHeight =
        new("a length", "4.1 in", Length.Zero, Length.FromMeters(0.5), Units.Lengths) { Above = true };

    internal static readonly Measure<Length> ScaleUnit =
        new("a length", "0.5 mm", Length.Zero, Length.FromMillimeters(100), Units.SmallLengths) { Above = true };

    internal static readonly Measure<Length> ButtEdge =
        new("a length", "0.6 m", Length.Zero, Length.FromMeters(20), Units.Lengths);

    internal static readonly Measure<Mass> Mass =
        new("a mass", "412 gr", UnitsNet.Mass.Zero, UnitsNet.Mass.FromGrams(200), Units.Masses) { Above = true };

    internal static readonly Measure<ReciprocalLength> DragConstant =
        new("a drag constant", "0.0015 1/m", ReciprocalLength.Zero, ReciprocalLength.FromInverseMeters(1), Units.ReciprocalLengths);

    internal static readonly Measure<Area> DragArea =
        new("an area", "60 mm2", Area.Zero, Area.FromSquareMillimeters(10_000), Units.Areas);
}
