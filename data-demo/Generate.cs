#:project ../src/Ascham/Ascham.csproj
#:property PublishAot=false

// Makes every file of the invented scenario under data-demo. Run from the repository: dotnet run data-demo/Generate.cs
// Same seed, same files: the check in .ci/run runs it again and expects no difference.

using System.Globalization;
using System.Runtime.CompilerServices;
using Ascham.Air;
using Ascham.Arrows;
using Ascham.Bows;
using Ascham.Flight;
using Ascham.Groups;
using Ascham.Quantities;
using Ascham.Records;
using Ascham.Sights;
using UnitsNet;
using UnitsNet.Units;

string folder = Folder();
new TapeCheckScenario(seed: 4107).Write(Path.Combine(folder, "tape-check"), Path.Combine(folder, "tape-check-metric"));
new FixedSettingScenario(seed: 4108).Write(Path.Combine(folder, "tape-check-fixed"));
new ReadingScenario(seed: 4601).Write(Path.Combine(folder, "reading-a-group"), 8, 5, 30.Yards);
new ReadingScenario(seed: 4602).Write(Path.Combine(folder, "reading-a-group-metric"), 6, 3, 25.Metres);
new HowFarScenario(seed: 4610).Write(Path.Combine(folder, "how-far"));
new TiringScenario(seed: 4611).Write(Path.Combine(folder, "how-far-metric"));
new SameHoleScenario(seed: 4608).Write(Path.Combine(folder, "same-hole"), [(20.Yards, 6), (30.Yards, 8), (40.Yards, 12)], 2.0.Milliradians, -2.2.Milliradians);
new SameHoleScenario(seed: 4609).Write(Path.Combine(folder, "same-hole-earned"), [(40.Yards, 30)], Angle.Zero, Angle.Zero);
new SameHoleScenario(seed: 4607).Write(Path.Combine(folder, "same-hole-metric"), [(35.Metres, 5)], Angle.Zero, Angle.Zero);
new OddArrowScenario(seed: 4613).Write(Path.Combine(folder, "odd-arrow"), 6, 8, 40.Yards, "4");
new LostWeightScenario(seed: 4621).Write(Path.Combine(folder, "what-changed"));
new TouchingVaneScenario(seed: 4620).Write(Path.Combine(folder, "what-changed-metric"));
new OddArrowScenario(seed: 4615).Write(Path.Combine(folder, "odd-arrow-metric"), 5, 4, 50.Metres, null);
BenchScenario.Write(Path.Combine(folder, "front-of-centre"), BenchScenario.Compound);
BenchScenario.Write(Path.Combine(folder, "front-of-centre-recurve"), BenchScenario.Recurve);
new FarScenario(seed: 4623, InventedBow.Setup with { Range = InventedBow.Setup.Range with { LongestSafeDistance = 100.Yards } }, InventedBow.Today).Write(Path.Combine(folder, "why-shoot-far"), [20.Yards, 40.Yards, 60.Yards, 80.Yards, 100.Yards], 12, 1.0, 3.FeetPerSecond);
new FarScenario(seed: 4621, InventedRecurve.Setup, InventedRecurve.Today).Write(Path.Combine(folder, "why-shoot-far-metric"), [30.Metres, 50.Metres, 70.Metres], 4, 2.5, 0.5.MetresPerSecond);
BenchScenario.Write(Path.Combine(folder, "draw-weight"), BowBench.Compound);
BenchScenario.Write(Path.Combine(folder, "draw-weight-recurve"), BowBench.Recurve);

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

/// <summary>The invented bow. Planted truth: it shoots 266 ft/s, and its tape was cut for 275 ft/s.</summary>
static class InventedBow
{
    internal static readonly Length FirstMark = 0.4.Inches;

    internal static readonly Setup Setup = new()
    {
        Name = "alder",
        Note = "Invented for demonstration; see data-demo/README.md.",
        Bow = new() { PeakWeight = 57.PoundsForce, DrawLength = 28.5.Inches, LaunchSpeed = 266.FeetPerSecond, LaunchSpeedSd = 2.FeetPerSecond, Hand = Hand.Right },
        Arrow = new() { Mass = 418.Grains, ShaftDiameter = 5.9.Millimetres, Length = 28.25.Inches, DragConstant = 0.0017.PerMetre },
        Sight = new() { PeepToPin = 31.Inches, PeepHeight = 4.2.Inches, TapePerPinTravel = 1, Increases = ScaleDirection.Down },
        Archer = new() { Name = "Wyn (invented)", ExpectedDispersion = 1.1.Milliradians },
        Air = new() { Temperature = 17.Celsius, Pressure = 1009.Hectopascals, RelativeHumidity = 60.Percent },
        Range = new() { LongestSafeDistance = 80.Yards, Backstop = "earth bank 3 m high behind the butt (invented range, Thornmere Hollow)", ButtBelow = 23.Inches, ButtAbove = 25.Inches, ButtLeft = 24.Inches, ButtRight = 24.Inches },
    };

    internal static readonly SightModel Today = Model(266.FeetPerSecond);

    static readonly SightModel Cut = Model(275.FeetPerSecond);

    internal static readonly Mark[] Printed = [.. Enumerable.Range(4, 13).Select(i => (5 * i).Yards).Select(d => new Mark(d, Rounded(FirstMark + Cut.PinBelowPeep(d) - Cut.PinBelowPeep(20.Yards), 0.001)))];

    /// <summary>Where the pin is when the scale reads a position; the tape was slid so that its 20 yd mark is right.</summary>
    internal static Length PinAt(Length position) => Today.PinBelowPeep(20.Yards) + (position - FirstMark);

    internal static Length Rounded(Length length, double inches) => Math.Round(Math.Round(length.Inches / inches) * inches, 3).Inches;

    static SightModel Model(Speed speed) => new()
    {
        Geometry = Setup.Sight,
        LaunchSpeed = speed,
        Drag = Drag.FromConstant(Setup.Arrow.DragConstant!.Value),
        Air = Air.Moist(17.Celsius, 1009.Hectopascals, 60.Percent),
        Gravity = Gravity.Standard,
    };
}

/// <summary>A recurve shot with fingers and without a peep: the eye stands for it, 110 mm above the arrow.</summary>
static class InventedRecurve
{
    internal static readonly Setup Setup = InventedBow.Setup with
    {
        Name = "rowan",
        Bow = new() { PeakWeight = 169.0.Newtons, LaunchSpeed = 57.MetresPerSecond, LaunchSpeedSd = 0.5.MetresPerSecond, Hand = Hand.Right },
        Arrow = new() { Mass = 21.5.Grams, ShaftDiameter = 5.6.Millimetres, Length = 730.Millimetres, DragConstant = 0.0021.PerMetre },
        Sight = new() { PeepToPin = 850.Millimetres, PeepHeight = 110.Millimetres, TapePerPinTravel = 1, Increases = ScaleDirection.Down },
        Archer = new() { Name = "Sedge (invented)", ExpectedDispersion = 2.5.Milliradians },
        Range = new() { LongestSafeDistance = 70.Metres, Backstop = "earth bank 3 m high behind the butt (invented range, Thornmere Hollow)", ButtBelow = 650.Millimetres, ButtAbove = 650.Millimetres, ButtLeft = 650.Millimetres, ButtRight = 650.Millimetres },
    };

    internal static readonly SightModel Today = InventedBow.Today with { Geometry = Setup.Sight, LaunchSpeed = Setup.Bow.LaunchSpeed, Drag = Drag.FromConstant(Setup.Arrow.DragConstant!.Value) };
}

/// <summary>Scatter of 1.1 mrad a side, centre 0.3 mrad right; ranging error 0.3 yd and setting error 0.008 in shared within a station.</summary>
class Archer(int seed)
{
    readonly Random random = new(seed);

    protected int Seed { get; } = seed;

    protected Length SettingError() => (0.008 * Normal()).Inches;

    /// <summary>An arrow that struck so many milliradians from the aim, read to a twentieth of an inch or a millimetre.</summary>
    protected static Shot Struck(string session, int number, Length distance, double right, double up)
    {
        Length Read(double milliradians) => distance.Unit == LengthUnit.Meter
            ? Math.Round(distance.Meters * milliradians).Millimetres
            : InventedBow.Rounded(distance * (1e-3 * milliradians), 0.05);
        return new() { Session = session, Distance = distance, Number = number, Impact = new Impact(Read(right), Read(up)), PointType = "field" };
    }

    protected static Session Evening(string name, int day, DistanceSource source) =>
        new() { Name = name, Date = new(2026, 9, day), Setup = "alder", DistanceSource = source, Temperature = 17.Celsius, Pressure = 1009.Hectopascals, Wind = "calm", Note = "invented" };

    protected IEnumerable<Shot> Station(string session, Length distance, Length position, Length settingError, bool recordSetting, int firstNumber)
    {
        var stands = distance + (0.3 * Normal()).Yards;
        var centre = InventedBow.Today.HeightWithPinAt(InventedBow.PinAt(position + settingError), stands);
        for (int i = 0; i < 6; i++)
        {
            var up = InventedBow.Rounded(centre + stands * (1.1e-3 * Normal()), 0.05);
            var right = InventedBow.Rounded(stands * (0.3e-3 + 1.1e-3 * Normal()), 0.05);
            bool under = up < -InventedBow.Setup.Range.ButtBelow!.Value;
            yield return new()
            {
                Session = session,
                Distance = distance,
                Number = firstNumber + i,
                Arrow = $"{i + 1}",
                Impact = under ? null : new Impact(right, up),
                Missed = under ? Miss.Low : null,
                Setting = recordSetting ? position : null,
                PointType = "field",
            };
        }
    }

    protected double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}

/// <summary>The sight set to each distance's mark; one flyer called at 60 yd. Written twice: yards and inches, metres and millimetres.</summary>
sealed class TapeCheckScenario(int seed) : Archer(seed)
{
    internal void Write(string imperial, string metric)
    {
        Shot[] shots = [.. Shots()];
        Session[] sessions = [new() { Name = "thornmere-1", Date = new(2026, 8, 15), Setup = "alder", DistanceSource = DistanceSource.Ranged, DistanceSd = 0.3.Yards, SettingSd = 0.008.Inches, Temperature = 17.Celsius, Pressure = 1009.Hectopascals, Wind = "calm", Note = "invented" }];
        new Scenario(InventedBow.Setup, sessions, shots, InventedBow.Printed).Write(imperial, Seed, semicolons: false);
        new Scenario(InventedBow.Setup, sessions, shots, InventedBow.Printed).Metric().Write(metric, Seed, semicolons: true);
    }

    IEnumerable<Shot> Shots()
    {
        int number = 1;
        foreach (int yards in new[] { 20, 30, 40, 50, 60, 70, 80 })
        {
            var mark = InventedBow.Printed.Single(m => Math.Abs(m.Distance.Yards - yards) < 1e-9);
            foreach (var shot in Station("thornmere-1", mark.Distance, mark.Position, SettingError(), recordSetting: false, number))
            {
                yield return yards == 60 && shot.Arrow == "4"
                    ? shot with { Called = true, Note = "plucked", Impact = new Impact(InventedBow.Rounded(shot.Impact!.Value.Right + 5.Inches, 0.05), InventedBow.Rounded(shot.Impact.Value.Up - 3.Inches, 0.05)) }
                    : shot;
            }

            number += 6;
        }
    }
}

/// <summary>The sight left at the 20 yd mark, the drops measured; arrows under the butt recorded as missed.</summary>
sealed class FixedSettingScenario(int seed) : Archer(seed)
{
    internal void Write(string folder)
    {
        var error = SettingError();
        int[] yards = [20, 26, 32, 38, 43];
        Shot[] shots = [.. yards.SelectMany((y, i) => Station("thornmere-2", y.Yards, InventedBow.FirstMark, error, recordSetting: true, 6 * i + 1))];
        Session[] sessions = [new() { Name = "thornmere-2", Date = new(2026, 8, 22), Setup = "alder", DistanceSource = DistanceSource.Marked, DistanceSd = 0.1.Yards, SettingSd = 0.008.Inches, Temperature = 17.Celsius, Wind = "calm", Note = "invented; sight left at the 20 yd mark" }];
        new Scenario(InventedBow.Setup, sessions, shots, InventedBow.Printed).Write(folder, Seed, semicolons: false);
    }
}

/// <summary>Groups in one evening for reading: scatter 1.6 mrad a side, round; the sight 0.8 mrad right and 0.5 mrad low. In the fourth group one arrow is a called flyer.</summary>
sealed class ReadingScenario(int seed) : Archer(seed)
{
    internal void Write(string folder, int groups, int arrows, Length distance) =>
        new Scenario(InventedBow.Setup, [Evening("thornmere-school", 3, DistanceSource.Marked)], [.. Shots(groups, arrows, distance)], []).In(distance).Write(folder, Seed);

    IEnumerable<Shot> Shots(int groups, int arrows, Length distance) =>
        from i in Enumerable.Range(0, groups * arrows)
        let flyer = i / arrows == 3 && i % arrows == 1
        select Struck("thornmere-school", i + 1, distance, 0.8 + (1.6 * Normal()) + (flyer ? 6 : 0), -0.5 + (1.6 * Normal()) - (flyer ? 4 : 0)) with
        {
            Group = $"{1 + (i / arrows)}",
            Arrow = $"{1 + (i % arrows)}",
            Called = flyer,
            Note = flyer ? "plucked" : null,
        };
}

/// <summary>Five days at five distances; scatter 1.1 mrad a side about a centre that wanders 0.25 mrad from day to day. The first arrow of a day is shot cold at 30 yd: 2.4 mrad, and 1.5 mrad low.</summary>
sealed class HowFarScenario(int seed) : Archer(seed)
{
    internal void Write(string folder)
    {
        Session[] days = [.. Enumerable.Range(1, 5).Select(day => Evening($"thornmere-day-{day}", 5 + (2 * day), DistanceSource.Marked))];
        new Scenario(InventedBow.Setup, days, [.. days.SelectMany(Shots)], []).Write(folder, Seed);
    }

    IEnumerable<Shot> Shots(Session day)
    {
        var (right, up) = (0.25 * Normal(), 0.25 * Normal());
        yield return Struck(day.Name, 1, 30.Yards, right + (2.4 * Normal()), up - 1.5 + (2.4 * Normal())) with { Note = "first arrow of the day" };
        for (int i = 0; i < 20; i++)
        {
            yield return Struck(day.Name, i + 2, (20 + (10 * (i / 4))).Yards, right + (1.1 * Normal()), up + (1.1 * Normal()));
        }
    }
}

/// <summary>One evening in metres; the angle grows from 0.6 mrad at 18 m to 3.2 mrad at 55 m, as with tiring arms or a worse view. No first arrow of a day.</summary>
sealed class TiringScenario(int seed) : Archer(seed)
{
    internal void Write(string folder)
    {
        int[] distances = [18, 30, 42, 55];
        var shots = distances.SelectMany((metres, station) => Enumerable.Range(0, 6).Select(i =>
        {
            double sigma = 0.6 + (2.6 * (metres - 18) / 37.0);
            return Struck("thornmere-9", (6 * station) + i + 2, metres.Metres, sigma * Normal(), sigma * Normal());
        }));
        new Scenario(InventedBow.Setup, [Evening("thornmere-9", 26, DistanceSource.Marked)], [.. shots], []).In(1.Metres).Write(folder, Seed);
    }
}

/// <summary>Field points and broadheads in turn, in pairs whose order is drawn by lot; scatter 1.1 mrad a side for both, broadheads moved by a fixed angle.</summary>
sealed class SameHoleScenario(int seed) : Archer(seed)
{
    internal void Write(string folder, (Length Distance, int Pairs)[] stations, Angle right, Angle up) =>
        new Scenario(InventedBow.Setup, [Evening("thornmere-heads", 20, DistanceSource.Marked)], [.. Shots(stations, right.Milliradians, up.Milliradians)], []).In(stations[0].Distance).Write(folder, Seed);

    IEnumerable<Shot> Shots((Length Distance, int Pairs)[] stations, double right, double up)
    {
        int number = 0;
        foreach (var (distance, pairs) in stations)
        {
            for (int i = 0; i < 2 * pairs; i++)
            {
                bool second = i % 2 == 0 ? Normal() > 0 : !Heads;   // the second of a pair is the other kind
                Heads = second;
                yield return Struck("thornmere-heads", ++number, distance, 0.2 + (second ? right : 0) + (1.1 * Normal()), (second ? up : 0) + (1.1 * Normal())) with { PointType = second ? "broadhead" : "field" };
            }
        }
    }

    bool Heads { get; set; }
}

/// <summary>Numbered arrows, each once an end in an order drawn by lot.</summary>
sealed class OddArrowScenario(int seed) : Archer(seed)
{
    internal void Write(string folder, int arrows, int ends, Length distance, string? odd) =>
        new Scenario(InventedBow.Setup, [Evening("thornmere-numbers", 20, DistanceSource.Marked)], [.. Shots(arrows, ends, distance, odd)], []).In(distance).Write(folder, Seed);

    IEnumerable<Shot> Shots(int arrows, int ends, Length distance, string? odd)
    {
        var own = Enumerable.Range(1, arrows).Select(i => (Name: $"{i}", Right: 0.1 * Normal(), Up: 0.1 * Normal())).ToArray();
        for (int end = 1, number = 0; end <= ends; end++)
        {
            (double right, double up) = (0.3 * Normal(), 0.3 * Normal());
            foreach (var arrow in own.Select(a => (Arrow: a, Lot: Normal())).OrderBy(a => a.Lot).Select(a => a.Arrow).ToArray())
            {
                double off = arrow.Name == odd ? 1 : 0;
                yield return Struck("thornmere-numbers", ++number, distance, right + arrow.Right + (1.6 * off) + (1.1 * Normal()), up + arrow.Up - (1.2 * off) + (1.1 * Normal()))
                    with { Arrow = arrow.Name, Group = $"{end}", PointType = "field" };
            }
        }
    }
}

/// <summary>Two arrows on the bench, setups only: what they weigh and where they balance is a little off what the parts add up to.</summary>
static class BenchScenario
{
    internal static readonly Setup Compound = InventedBow.Setup with
    {
        Bow = InventedBow.Setup.Bow with { Kind = BowKind.Compound },
        ArrowBench = new()
        {
            BalancePoint = 18.35.Inches,
            SpineSag = 0.4.Inches,
            Vanes = new() { Count = 3, Height = 0.5.Inches, TipLength = 1.1.Inches, Sweep = 0.9.Inches, Offset = 2.Degrees },
            Parts =
            [
                ArrowPart.Over(PartKind.Shaft, 222.Grains, 0.5.Inches, 27.75.Inches),
                ArrowPart.Over(PartKind.Nock, 9.Grains, (-0.25).Inches, 0.75.Inches),
                ArrowPart.Over(PartKind.Wrap, 5.Grains, 0.75.Inches, 4.Inches),
                ArrowPart.Over(PartKind.Vanes, 21.Grains, 1.25.Inches, 2.25.Inches),
                ArrowPart.At(PartKind.Adhesive, 2.Grains, 2.4.Inches) with { Name = "vane glue" },
                ArrowPart.Over(PartKind.Insert, 25.Grains, 27.25.Inches, 1.Inches),
                ArrowPart.At(PartKind.Adhesive, 3.Grains, 27.7.Inches) with { Name = "insert glue" },
                ArrowPart.Over(PartKind.Point, 125.Grains, 28.25.Inches, 1.25.Inches),
            ],
        },
    };

    internal static readonly Setup Recurve = new()
    {
        Name = "rowan",
        Note = "Invented for demonstration; see data-demo/README.md. Finger release; no peep: the eye stands for it.",
        Bow = new() { Kind = BowKind.Recurve, PeakWeight = 169.0.Newtons, DrawLength = 711.Millimetres, LaunchSpeed = 57.5.MetresPerSecond, LaunchSpeedSd = 0.6.MetresPerSecond, Hand = Hand.Right },
        Arrow = new() { Mass = 20.1.Grams, ShaftDiameter = 5.5.Millimetres, Length = 723.Millimetres, DragConstant = 0.0014.PerMetre },
        ArrowBench = new()
        {
            BalancePoint = 474.Millimetres,
            SpineSag = 15.2.Millimetres,
            Vanes = new() { Count = 3, Height = 8.Millimetres, TipLength = 18.Millimetres, Sweep = 14.Millimetres, Offset = 1.5.Degrees },
            Parts =
            [
                ArrowPart.Over(PartKind.Shaft, 11.6.Grams, 8.Millimetres, 715.Millimetres),
                ArrowPart.Over(PartKind.Nock, 0.6.Grams, (-5).Millimetres, 13.Millimetres),
                ArrowPart.Over(PartKind.Vanes, 0.5.Grams, 28.Millimetres, 45.Millimetres),
                ArrowPart.Over(PartKind.Point, 7.1.Grams, 723.Millimetres, 22.Millimetres),
            ],
        },
        Sight = new() { PeepToPin = 860.Millimetres, PeepHeight = 112.Millimetres, TapePerPinTravel = 1, Increases = ScaleDirection.Down },
        Archer = new() { Name = "Wyn (invented)", ExpectedDispersion = 2.2.Milliradians },
        Air = new() { Temperature = 17.Celsius, Pressure = 1009.Hectopascals, RelativeHumidity = 60.Percent },
        Range = new() { LongestSafeDistance = 70.Metres, Backstop = "earth bank 3 m high behind the butt (invented range, Thornmere Hollow)" },
    };

    internal static void Write(string folder, Setup setup)
    {
        Directory.CreateDirectory(folder);
        SetupFile.Write(Path.Combine(folder, "setup.json"), setup);
    }
}

/// <summary>Two days on either side of a change, the sight set to each distance's mark; scatter 1.1 mrad a side, days 0.25 mrad, marks 0.1 mrad, ranging and setting errors shared within a station.</summary>
abstract class ChangeScenario(int seed) : Archer(seed)
{
    protected const string Then = "thornmere-before", Now = "thornmere-after";

    readonly Dictionary<double, (double Right, double Up)> marks = [];

    protected static Session Day(string name, int day, string setup, Length distanceSd, Length settingSd) => new()
    {
        Name = name, Date = new(2026, day > 31 ? 9 : 8, day > 31 ? day - 31 : day), Setup = setup, DistanceSource = DistanceSource.Ranged, DistanceSd = distanceSd, SettingSd = settingSd,
        Temperature = 17.Celsius, Pressure = 1009.Hectopascals, Wind = "calm", Note = "invented",
    };

    /// <summary>Arrows of one day: the sight stands where the first bow needs it, the second bow shoots.</summary>
    protected IEnumerable<Shot> Shots(string session, SightModel sight, SightModel shooting, IReadOnlyList<Length> distances, int each, double scatter, double rangingYards)
    {
        var (right, up) = (0.25 * Normal(), 0.25 * Normal());
        int number = 0;
        foreach (Length distance in distances)
        {
            if (!marks.TryGetValue(distance.Meters, out var mark))
            {
                marks.Add(distance.Meters, mark = (0, 0.1 * Normal()));
            }

            Length stands = distance + (rangingYards * Normal()).Yards;
            double centre = 1e3 * (shooting.HeightWithPinAt(sight.PinBelowPeep(distance), stands) / stands) + mark.Up + up + (0.25 * Normal());
            for (int i = 0; i < each; i++)
            {
                yield return Struck(session, ++number, distance, right + (scatter * Normal()), centre + (scatter * Normal())) with { Arrow = $"{1 + i}" };
            }
        }
    }

    /// <summary>A reading about its true value, as it would be written down.</summary>
    protected string Read(double truth, double sd, int decimals) => (truth + (sd * Normal())).ToString("F" + decimals, CultureInfo.InvariantCulture);
}

/// <summary>A limb bolt backed out: 3.5 lb less than the 57 lbf of the setup.</summary>
sealed class LostWeightScenario(int seed) : ChangeScenario(seed)
{
    internal void Write(string folder)
    {
        const double Weight = 57, Lost = 3.5, Speed = 266;
        double slower = Speed * Math.Sqrt((Weight - Lost) / Weight); // stored energy follows the peak
        SightModel after = InventedBow.Today with { LaunchSpeed = slower.FeetPerSecond };
        Length[] distances = [20.Yards, 40.Yards, 60.Yards];
        Shot[] before = [.. Shots(Then, InventedBow.Today, InventedBow.Today, distances, 6, 1.1, 0.2)], now = [.. Shots(Now, InventedBow.Today, after, distances, 6, 1.1, 0.2)];
        Session[] sessions = [Day(Then, 29, "alder", 0.2.Yards, 0.008.Inches), Day(Now, 44, "alder", 0.2.Yards, 0.008.Inches)];
        string[] log =
        [
            "date,session,quantity,value,unit,sd,note",
            $"2026-08-29,{Then},peak_weight,{Read(Weight, 0.3, 1)},lbf,0.3,bow scale",
            $"2026-08-29,{Then},speed,{Read(Speed, 0.8, 1)},ft/s,0.8,mean of 5",
            $"2026-08-29,{Then},arrow_mass,{Read(418, 0.4, 1)},gr,0.5,mean of 6",
            $"2026-08-29,{Then},brace_height,6.25,in,0.06,",
            $"2026-09-13,{Now},wind_felt,no,,,",
            $"2026-09-13,{Now},witness_moved,no,,,sight and rest and nocking point",
            $"2026-09-13,{Now},contact_marks,no,,,powdered",
            $"2026-09-13,{Now},distances_wrong,no,,,",
            $"2026-09-14,{Now},peak_weight,{Read(Weight - Lost, 0.3, 1)},lbf,0.3,the same bow scale",
            $"2026-09-14,{Now},speed,{Read(slower, 0.8, 1)},ft/s,0.8,mean of 5",
            $"2026-09-14,{Now},arrow_mass,{Read(418, 0.4, 1)},gr,0.5,mean of 6",
            $"2026-09-14,{Now},brace_height,6.25,in,0.06,",
        ];
        new Scenario(InventedBow.Setup, sessions, now, []) { Baseline = before, Log = log }.Write(folder, Seed);
    }
}

/// <summary>A vane that touches the rest in passing: drag up by six tenths, scatter up by a quarter. Another bow, in metres.</summary>
sealed class TouchingVaneScenario(int seed) : ChangeScenario(seed)
{
    static readonly Setup Rowan = InventedBow.Setup with
    {
        Name = "rowan",
        Bow = new() { PeakWeight = 250.0.Newtons, DrawLength = 710.Millimetres, LaunchSpeed = 83.0.MetresPerSecond, LaunchSpeedSd = 0.6.MetresPerSecond, Hand = Hand.Right },
        Arrow = new() { Mass = 26.Grams, ShaftDiameter = 5.6.Millimetres, Length = 715.Millimetres, DragConstant = 0.0017.PerMetre },
        Sight = new() { PeepToPin = 800.Millimetres, PeepHeight = 108.Millimetres, TapePerPinTravel = 1, Increases = ScaleDirection.Down },
        Range = InventedBow.Setup.Range with { LongestSafeDistance = 70.Metres, ButtBelow = 600.Millimetres, ButtAbove = 600.Millimetres, ButtLeft = 600.Millimetres, ButtRight = 600.Millimetres },
    };

    internal void Write(string folder)
    {
        SightModel before = InventedBow.Today with { Geometry = Rowan.Sight, LaunchSpeed = Rowan.Bow.LaunchSpeed, Drag = Drag.FromConstant(Rowan.Arrow.DragConstant!.Value) };
        SightModel after = before with { Drag = Drag.FromConstant(1.6 * Rowan.Arrow.DragConstant!.Value) };
        double at30 = 83 * Math.Exp(-0.0017 * 30), then30 = 83 * Math.Exp(-1.6 * 0.0017 * 30); // speed falls by its k-th part every metre
        Length[] distances = [18.Metres, 30.Metres, 40.Metres, 50.Metres, 60.Metres, 70.Metres];
        Shot[] shots = [.. Shots(Then, before, before, distances, 6, 1.0, 0.2)], now = [.. Shots(Now, before, after, distances, 6, 1.25, 0.2)];
        Session[] sessions = [Day(Then, 30, "rowan", 0.2.Metres, 0.2.Millimetres), Day(Now, 37, "rowan", 0.2.Metres, 0.2.Millimetres)];
        string[] log =
        [
            "date,session,quantity,value,unit,sd,distance_m,note",
            $"2026-08-30,{Then},peak_weight,{Read(250, 1.5, 0)},N,1.5,,",
            $"2026-08-30,{Then},speed,{Read(83, 0.25, 1)},m/s,0.25,,mean of 5",
            $"2026-08-30,{Then},speed_downrange,{Read(at30, 0.3, 1)},m/s,0.3,30,mean of 6",
            $"2026-09-06,{Now},wind_felt,no,,,,",
            $"2026-09-06,{Now},contact_marks,yes,,,,powder gone from one vane",
            $"2026-09-06,{Now},peak_weight,{Read(250, 1.5, 0)},N,1.5,,",
            $"2026-09-06,{Now},speed,{Read(83, 0.25, 1)},m/s,0.25,,mean of 5",
            $"2026-09-06,{Now},speed_downrange,{Read(then30, 0.3, 1)},m/s,0.3,30,mean of 6",
        ];
        new Scenario(Rowan, sessions, now, []) { Baseline = shots, Log = log }.Write(folder, Seed, semicolons: true);
    }
}

/// <summary>One evening at several distances: the same angle of scatter a side everywhere, and arrows that leave with speeds of their own, through the flight of the bow. The sight 0.2 mrad right.</summary>
sealed class FarScenario(int seed, Setup setup, SightModel today) : Archer(seed)
{
    internal void Write(string folder, Length[] distances, int arrows, double milliradians, Speed speedSd) =>
        new Scenario(setup, [Evening("thornmere-far", 24, DistanceSource.Marked) with { Setup = setup.Name }], [.. Shots(distances, arrows, milliradians, speedSd)], []).Write(folder, Seed);

    IEnumerable<Shot> Shots(Length[] distances, int arrows, double milliradians, Speed speedSd) =>
        from i in Enumerable.Range(0, distances.Length * arrows)
        let there = distances[i / arrows]
        let shot = today with { LaunchSpeed = today.LaunchSpeed + (speedSd * Normal()) }
        let high = 1000 * (shot.HeightWithPinAt(today.PinBelowPeep(there), there) / there)
        select Struck("thornmere-far", i + 1, there, 0.2 + (milliradians * Normal()), high + (milliradians * Normal()));
}

/// <summary>Bows measured on the bench, to be tried at other weights. Nothing random: readings as an archer would note them.</summary>
static class BowBench
{
    internal static readonly Setup Compound = BenchScenario.Compound with
    {
        Name = "hazel",
        Bow = new()
        {
            PeakWeight = 62.PoundsForce,
            DrawLength = 29.Inches,
            LaunchSpeed = 270.5.FeetPerSecond,
            LaunchSpeedSd = 1.5.FeetPerSecond,
            Hand = Hand.Right,
            Kind = BowKind.Compound,
            BraceHeight = 6.5.Inches,
            DrawCurve = Curve([(8.25, 0), (9, 14), (10, 31), (11, 46), (12, 57), (13, 61.5), (14, 62), (16, 62), (18, 61.5), (20, 61), (22, 60.5), (24, 59.5), (25, 56), (26, 47), (27, 33), (28, 19), (28.5, 13.5), (29, 12.5)]),
            LetDown = Curve([(8.25, 0), (9, 12.5), (10, 28.5), (11, 43), (12, 53.5), (13, 58), (14, 59), (16, 59), (18, 58.5), (20, 58), (22, 57), (24, 55.5), (25, 51.5), (26, 42), (27, 28.5), (28, 16.5), (28.5, 12.5), (29, 12)]),
            // Planted: 70 gr of virtual mass and 79.1 ft lbf at the launch, each mean moved a little as ten shots would.
            ArrowSpeeds = ArrowSpeeds.Of([Shot(365, 286.4, 1.1), Shot(420, 269.5, 1.2), Shot(475, 255.8, 1.0), Shot(540, 241.5, 1.2)]),
            LimbBolts = new() { TurnsOut = 1, MostTurnsOut = 4, WeightPerTurn = 3.1.PoundsForce },
        },
        ArrowBench = BenchScenario.Compound.ArrowBench! with { SpineSag = 0.35.Inches },
        Range = BenchScenario.Compound.Range with { LongestSafeDistance = 100.Yards },
    };

    internal static readonly Setup Recurve = BenchScenario.Recurve with
    {
        Name = "birch",
        Bow = new()
        {
            PeakWeight = 172.0.Newtons,
            DrawLength = 711.Millimetres,
            LaunchSpeed = 54.0.MetresPerSecond,
            LaunchSpeedSd = 0.6.MetresPerSecond,
            Hand = Hand.Right,
            Kind = BowKind.Recurve,
            BraceHeight = 222.0.Millimetres,
            DrawCurve = DrawCurve.FromPoints(new (double, double)[] { (300, 27), (350, 58), (400, 80), (450, 97), (500, 113), (550, 127), (600, 141), (650, 155), (700, 169), (711, 172) }
                .Select(p => new DrawPoint { Draw = p.Item1.Millimetres, Force = p.Item2.Newtons, ForceSd = 1.5.Newtons }), 222.0.Millimetres),
            LimbBolts = new() { TurnsOut = 2, MostTurnsOut = 4, WeightPerTurn = 7.5.Newtons },
        },
    };

    static DrawCurve Curve((double Inches, double Pounds)[] points) =>
        DrawCurve.FromPoints(points.Select(p => new DrawPoint { Draw = p.Inches.Inches, Force = p.Pounds.PoundsForce, ForceSd = p.Pounds > 0 ? 0.5.PoundsForce : null }));

    static ChronographedArrow Shot(double grains, double speed, double sd) => new() { Mass = grains.Grains, Speed = speed.FeetPerSecond, ShotSd = sd.FeetPerSecond, Shots = 10 };
}

/// <summary>The files of one folder; marks, a baseline and a log only where the scenario has any.</summary>
sealed record Scenario(Setup Setup, IReadOnlyList<Session> Sessions, IReadOnlyList<Shot> Shots, IReadOnlyList<Mark> Marks)
{
    internal IReadOnlyList<Shot> Baseline { get; init; } = [];

    /// <summary>Lines of the log, head first.</summary>
    internal IReadOnlyList<string> Log { get; init; } = [];

    /// <summary>Itself, or the setup in metric units where distances are in metres.</summary>
    internal Scenario In(Length distance) => distance.Unit == LengthUnit.Meter ? this with { Setup = Metric().Setup } : this;

    internal Scenario Metric() => new(
        Setup with
        {
            Bow = Setup.Bow with { PeakWeight = In(Setup.Bow.PeakWeight, ForceUnit.Newton), DrawLength = In(Setup.Bow.DrawLength!.Value, LengthUnit.Millimeter), LaunchSpeed = In(Setup.Bow.LaunchSpeed, SpeedUnit.MeterPerSecond), LaunchSpeedSd = In(Setup.Bow.LaunchSpeedSd!.Value, SpeedUnit.MeterPerSecond) },
            Arrow = Setup.Arrow with { Mass = In(Setup.Arrow.Mass, MassUnit.Gram), Length = In(Setup.Arrow.Length!.Value, LengthUnit.Millimeter) },
            Sight = Setup.Sight with { PeepToPin = In(Setup.Sight.PeepToPin, LengthUnit.Millimeter), PeepHeight = In(Setup.Sight.PeepHeight, LengthUnit.Millimeter) },
            Range = Setup.Range with { LongestSafeDistance = In(Setup.Range.LongestSafeDistance, LengthUnit.Meter), ButtBelow = 584.2.Millimetres, ButtAbove = 635.Millimetres, ButtLeft = 609.6.Millimetres, ButtRight = 609.6.Millimetres },
        },
        [.. Sessions.Select(s => s with { DistanceSd = s.DistanceSd is { } d ? In(d, LengthUnit.Meter) : null, SettingSd = s.SettingSd is { } t ? In(t, LengthUnit.Millimeter) : null })],
        [.. Shots.Select(s => s with { Distance = In(s.Distance, LengthUnit.Meter), Impact = s.Impact is { } i ? new Impact(In(i.Right, LengthUnit.Millimeter), In(i.Up, LengthUnit.Millimeter)) : null })],
        [.. Marks.Select(m => new Mark(In(m.Distance, LengthUnit.Meter), In(m.Position, LengthUnit.Millimeter)))]);

    internal void Write(string folder, int seed, bool semicolons = false)
    {
        Directory.CreateDirectory(folder);
        SetupFile.Write(Path.Combine(folder, "setup.json"), Setup);
        SessionsFile.Write(Path.Combine(folder, "sessions.csv"), Sessions);
        ShotsFile.Write(Path.Combine(folder, "shots.csv"), Shots);
        if (Marks.Count > 0)
        {
            MarksFile.Write(Path.Combine(folder, "marks.csv"), new Marks(Marks, Marks[0].Distance.Unit, PositionUnit.Of(Marks[0].Position.Unit)));
        }

        if (Baseline.Count > 0)
        {
            ShotsFile.Write(Path.Combine(folder, "baseline.csv"), Baseline);
        }

        if (Log.Count > 0)
        {
            File.WriteAllText(Path.Combine(folder, "log.csv"), string.Join("\n", Log) + "\n");
        }

        string[] files = ["baseline.csv", "log.csv", "marks.csv", "sessions.csv", "shots.csv"];
        foreach (string name in files.Where(n => File.Exists(Path.Combine(folder, n))))
        {
            string path = Path.Combine(folder, name), text = $"# invented by data-demo/Generate.cs, seed {seed.ToString(CultureInfo.InvariantCulture)}\n" + File.ReadAllText(path);
            File.WriteAllText(path, semicolons ? text.Replace(',', ';').Replace("Generate.cs;", "Generate.cs,").ReplaceLineEndings("\r\n") : text);
        }
    }

    // Twelve significant digits: the exact conversion of values given to a twentieth of an inch, without the tail of binary arithmetic.
    static T In<T>(T quantity, Enum unit)
        where T : IQuantity => (T)Quantity.From(double.Parse(quantity.As(unit).ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), unit);
}
