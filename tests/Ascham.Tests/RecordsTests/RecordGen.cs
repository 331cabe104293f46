namespace Ascham.Tests.RecordsTests;

using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Groups;
using Ascham.Records;
using Ascham.Sights;
using CsCheck;
using UnitsNet;
using UnitsNet.Units;

/// <summary>Records as an archer could have entered them, in either unit system, with the nastiest texts.</summary>
static class RecordGen
{
    // Separators, quotes, line ends, comment and formula signs, mark-up, a letter of two chars, a letter of two bytes, the byte-order mark.
    static readonly Gen<string> Piece = Gen.OneOf("a", "9", ",", ";", "\"", "'", "#", " ", "\n", "\r\n", "\r", "\t", "=", "<b>&amp;", "é", "🏹", "\uFEFF", "\\", "/", "//");

    /// <summary>Not empty: files keep no difference between an empty text and none.</summary>
    public static readonly Gen<string> Text = Piece.Array[1, 6].Select(string.Concat);

    static readonly Gen<string?> TextOrNull = Gen.Null(Text);

    // A name that is all space would be blank, so each holds a letter; at the end, so that the first column may begin with any sign.
    static readonly Gen<string> Name = Text.Select(t => t + "s");

    static readonly Gen<LengthUnit> SmallUnit = Gen.OneOf(LengthUnit.Millimeter, LengthUnit.Centimeter, LengthUnit.Inch);
    static readonly Gen<LengthUnit> FarUnit = Gen.OneOf(LengthUnit.Meter, LengthUnit.Yard, LengthUnit.Foot);
    static readonly Gen<LengthUnit> AnyUnit = Gen.OneOf(SmallUnit, FarUnit);

    static Gen<Length> Lengths(double lowMetres, double highMetres, LengthUnit unit) =>
        Gen.Double[Length.FromMeters(lowMetres).As(unit), Length.FromMeters(highMetres).As(unit)].Select(v => Length.From(v, unit));

    static Gen<Length> Lengths(double lowMetres, double highMetres) => AnyUnit.SelectMany(u => Lengths(lowMetres, highMetres, u));

    static readonly Gen<Bow> Bows =
        from weight in Gen.Double[20, 90]
        from weightUnit in Gen.OneOf(ForceUnit.PoundForce, ForceUnit.Newton, ForceUnit.KilogramForce)
        from speed in Gen.Double[50, 100]
        from speedUnit in Gen.OneOf(SpeedUnit.MeterPerSecond, SpeedUnit.FootPerSecond, SpeedUnit.KilometerPerHour)
        from sd in Gen.Nullable(Gen.Double[0, 3])
        from draw in Gen.Nullable(Lengths(0.5, 0.9))
        from hand in Gen.OneOf(Hand.Left, Hand.Right)
        select new Bow
        {
            PeakWeight = Force.From(weight, weightUnit),
            LaunchSpeed = Speed.From(speed, speedUnit),
            LaunchSpeedSd = sd is { } s ? Speed.From(s, speedUnit) : null,
            DrawLength = draw,
            Hand = hand,
        };

    static readonly Gen<Arrow> Arrows =
        from mass in Gen.Double[0.02, 190]
        from massUnit in Gen.OneOf(MassUnit.Gram, MassUnit.Grain)
        from diameter in Gen.Nullable(Lengths(0.004, 0.01))
        from length in Gen.Nullable(Lengths(0.5, 0.9))
        from drag in Gen.Double[0, 0.3]
        from which in Gen.Int[0, 2]
        from dragUnit in Gen.OneOf(ReciprocalLengthUnit.InverseMeter, ReciprocalLengthUnit.InverseFoot, ReciprocalLengthUnit.InverseYard)
        from areaUnit in Gen.OneOf(AreaUnit.SquareMillimeter, AreaUnit.SquareCentimeter, AreaUnit.SquareInch)
        select new Arrow
        {
            Mass = Mass.From(mass, massUnit),
            ShaftDiameter = diameter,
            Length = length,
            DragConstant = which == 1 ? ReciprocalLength.From(drag, dragUnit) : null,
            DragArea = which == 2 ? Area.From(drag, areaUnit) : null,
        };

    public static readonly Gen<SightGeometry> Sights =
        from peep in Lengths(0.5, 1.2)
        from height in Lengths(0.05, 0.2)
        from ratio in Gen.Double[0.01, 20]
        from way in Gen.OneOf(ScaleDirection.Down, ScaleDirection.Up)
        from scale in Gen.Nullable(SmallUnit.SelectMany(u => Lengths(0.0001, 0.002, u)))
        select new SightGeometry { PeepToPin = peep, PeepHeight = height, TapePerPinTravel = ratio, Increases = way, ScaleUnit = scale };

    static readonly Gen<ShootingRange> Ranges =
        from far in FarUnit.SelectMany(u => Lengths(5, 200, u))
        from backstop in Name
        from below in Gen.Nullable(Lengths(0, 2))
        from above in Gen.Nullable(Lengths(0, 2))
        from left in Gen.Nullable(Lengths(0, 2))
        from right in Gen.Nullable(Lengths(0, 2))
        select new ShootingRange { LongestSafeDistance = far, Backstop = backstop, ButtBelow = below, ButtAbove = above, ButtLeft = left, ButtRight = right };

    static readonly Gen<Archer> Archers =
        from name in TextOrNull
        from spread in Gen.Nullable(Gen.Double[0.01, 5])
        from unit in Gen.OneOf(AngleUnit.Milliradian, AngleUnit.Degree)
        select new Archer { Name = name, ExpectedDispersion = spread is { } s ? Angle.From(s, unit) : null };

    static readonly Gen<Temperature> Temperatures = Gen.OneOf(
        Gen.Double[-40, 45].Select(v => Temperature.FromDegreesCelsius(v)), Gen.Double[-40, 113].Select(v => Temperature.FromDegreesFahrenheit(v)));

    static readonly Gen<Pressure> Pressures = Gen.OneOf(
        Gen.Double[600, 1060].Select(v => Pressure.FromHectopascals(v)), Gen.Double[18, 31].Select(v => Pressure.FromInchesOfMercury(v)));

    static readonly Gen<AirConditions> Airs =
        from temperature in Gen.Nullable(Temperatures)
        from pressure in Gen.Nullable(Pressures)
        from humidity in Gen.Nullable(Gen.Double[0, 100].Select(v => Ratio.FromPercent(v)))
        select new AirConditions { Temperature = temperature, Pressure = pressure, RelativeHumidity = humidity };

    public static readonly Gen<Setup> Setups =
        from name in Name
        from bow in Bows
        from arrow in Arrows
        from sight in Sights
        from range in Ranges
        from archer in Gen.Null(Archers)
        from air in Gen.Null(Airs)
        from note in TextOrNull
        select new Setup { Name = name, Bow = bow, Arrow = arrow, Sight = sight, Range = range, Archer = archer, Air = air, Note = note };

    /// <summary>Sessions as one file holds them: one unit a column, each name once.</summary>
    public static readonly Gen<Session[]> Sessions =
        from far in FarUnit
        from small in SmallUnit
        from imperial in Gen.Bool
        from list in Session(far, small, imperial).Array[1, 8]
        select list.Select((s, i) => s with { Name = $"{s.Name}{i}" }).ToArray();

    static Gen<Session> Session(LengthUnit far, LengthUnit small, bool imperial) =>
        from name in Name
        from day in Gen.Int[1, 3_000_000]
        from setup in Name
        from source in Gen.OneOf(DistanceSource.Marked, DistanceSource.Ranged, DistanceSource.Judged)
        from distanceSd in Gen.Nullable(Lengths(0, 5, far))
        from settingSd in Gen.Nullable(Lengths(0, 0.01, small))
        from temperature in Gen.Nullable(Gen.Double[-40, 45])
        from pressure in Gen.Nullable(Gen.Double[18, 31])
        from wind in TextOrNull
        from note in TextOrNull
        select new Session
        {
            Name = name,
            Date = DateOnly.FromDayNumber(day),
            Setup = setup,
            DistanceSource = source,
            DistanceSd = distanceSd,
            SettingSd = settingSd,
            Temperature = temperature is not { } t ? null : imperial ? Temperature.FromDegreesFahrenheit(t) : Temperature.FromDegreesCelsius(t),
            Pressure = pressure is not { } p ? null : imperial ? Pressure.FromInchesOfMercury(p) : Pressure.FromHectopascals(30 * p),
            Wind = wind,
            Note = note,
        };

    /// <summary>Shots as one file holds them: one unit a column, each number once.</summary>
    public static readonly Gen<Shot[]> Shots =
        from far in FarUnit
        from small in SmallUnit
        from up in SmallUnit
        from list in Shot(far, small, up).Array[1, 12]
        select list.Select((s, i) => s with { Number = i + 1 }).ToArray();

    static Gen<Shot> Shot(LengthUnit far, LengthUnit small, LengthUnit upUnit) =>
        from session in Name
        from distance in Lengths(1, 150, far)
        from right in Lengths(-9, 9, small)
        from up in Lengths(-9, 9, upUnit)
        from missed in Gen.Nullable(Gen.OneOf(Miss.Low, Miss.High, Miss.Left, Miss.Right, Miss.Unknown), 0.7)
        from called in Gen.Bool
        from arrow in TextOrNull
        from point in TextOrNull
        from fletched in Gen.Nullable(Gen.Bool)
        from hold in Gen.Nullable(Gen.Double[0, 60].Select(v => Duration.FromSeconds(v)))
        from setting in Gen.Nullable(Lengths(-0.1, 0.1, small))
        from slope in Gen.Nullable(Gen.Double[-60, 60].Select(v => Angle.FromDegrees(v)))
        from rest in Gen.Select(TextOrNull, TextOrNull)
        select new Shot
        {
            Session = session,
            Distance = distance,
            Number = 1,
            Impact = missed is null ? new Impact(right, up) : null,
            Missed = missed,
            Called = called,
            Arrow = arrow,
            PointType = point,
            Fletched = fletched,
            Hold = hold,
            Setting = setting,
            Slope = slope,
            Group = rest.Item1,
            Note = rest.Item2,
        };

    /// <summary>A tape: distances and positions grow, or positions shrink.</summary>
    public static readonly Gen<Marks> Marks =
        from far in FarUnit
        from small in SmallUnit
        from sign in Gen.OneOf(-1, 1)
        from steps in Gen.Select(Gen.Double[0.1, 8], Gen.Double[0.00001, 0.004], Gen.Nullable(Gen.Double[0, 0.001]), Gen.Bool).Array[1, 20]
        select new Marks(steps.Select((_, i) => MarkAt(steps, i, sign, far, small)), far, PositionUnit.Of(small));

    static Mark MarkAt((double Away, double Travel, double? Sd, bool Compensated)[] steps, int i, int sign, LengthUnit far, LengthUnit small)
    {
        var distance = Length.FromMeters(10 + steps.Take(i + 1).Sum(s => s.Away));
        var position = Length.FromMeters(steps.Take(i + 1).Sum(s => s.Travel));
        Length? sd = steps[i].Sd is { } value ? Length.From(value, small) : null;
        return new(Length.From(distance.As(far), far), Length.From(sign * position.As(small), small), sd) { Compensated = steps[i].Compensated };
    }
}
