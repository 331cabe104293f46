namespace Ascham.Tests.SightsTests;

using Ascham.Quantities;
using Ascham.Sights;
using UnitsNet;

/// <summary>What is wrong with a simulated tape: travel to add to the printed mark is slide + scale (t − t₁) + bend 4u(1 − u).</summary>
public sealed record PlantedFault(double SlideMm, double ScalePercent, double BendMm)
{
    public TapeVerdict Truth => this switch
    {
        { BendMm: not 0 } => TapeVerdict.Bent,
        { ScalePercent: not 0 } => TapeVerdict.Scaled,
        { SlideMm: not 0 } => TapeVerdict.Slid,
        _ => TapeVerdict.Agrees,
    };
}

/// <summary>An archer who shoots at a faulty tape: normal scatter, and errors of distance and of setting shared within each station.</summary>
public sealed class SimulatedArcher(int seed)
{
    public const double Confidence = 0.90;
    public static readonly Length Target = 6.Inches;
    static readonly SightModel Bow = SightModelTests.Sight(0.0015);
    static readonly Tape Printed = Bow.MakeTape(Enumerable.Range(2, 9).Select(i => (10 * i).Yards), new Mark(20.Yards, Length.Zero));
    static readonly double Span = Printed.Longest.Position.Meters - Printed.Shortest.Position.Meters;

    /// <summary>The same archer, to be shot under other conditions.</summary>
    public SimulatedArcher(SimulatedArcher other)
        : this(other.Seed)
    {
    }

    readonly Random random = new(seed);

    public int Seed { get; } = seed;

    public double SigmaMrad { get; init; } = 1;
    public double RangingSdYards { get; init; } = 0.3;
    public double SettingSdMm { get; init; } = 0.2;
    public double[] Yards { get; init; } = [20, 40, 60, 80, 100];

    /// <summary>Leaves the sight at the shortest distance instead of setting it at each.</summary>
    public bool FixedSetting { get; init; }

    public TapeCheck Check(PlantedFault fault, int arrows)
    {
        double shared = SettingSdMm * 1e-3 * Normal();
        var heights = Yards.Select(y => Shoot(fault, y, arrows, FixedSetting ? shared : SettingSdMm * 1e-3 * Normal())).ToArray();
        double freedom = Yards.Length * (arrows - 1);
        double sigma = Math.Sqrt(Yards.Select((y, i) => heights[i].Sum(h => Math.Pow((h - heights[i].Average()) / Metres(y), 2))).Sum() / freedom);
        TapeStation[] stations =
        [
            .. Yards.Select((y, i) => new TapeStation
            {
                Distance = y.Yards,
                Setting = Printed.PositionAt((FixedSetting ? Yards[0] : y).Yards),
                MeanUp = heights[i].Average().Metres,
                MeanUpSd = (sigma * Metres(y) / Math.Sqrt(arrows)).Metres,
                ScatterFreedom = freedom,
                DistanceSd = RangingSdYards.Yards,
                SettingSd = SettingSdMm.Millimetres,
                SettingKey = FixedSetting ? "one" : $"{y}",
                Arrows = arrows,
            }),
        ];
        return TapeCheck.Run(Printed, stations, Bow, Target, Confidence);
    }

    double[] Shoot(PlantedFault fault, double yards, int arrows, double settingError)
    {
        var asked = (FixedSetting ? Yards[0] : yards).Yards;
        var stands = (yards + RangingSdYards * Normal()).Yards;
        double short_ = Printed.PositionAt(asked).Meters + settingError - Right(fault, stands);
        var centre = Bow.HeightWithPinAt(Bow.PinBelowPeep(stands) + short_.Metres, stands);
        return [.. Enumerable.Range(0, arrows).Select(_ => centre.Meters + SigmaMrad * 1e-3 * Normal() * stands.Meters)];
    }

    /// <summary>Where the scale must stand to hit at a distance, m.</summary>
    static double Right(PlantedFault fault, Length distance)
    {
        double travel = Bow.ScaleTravel(distance) - Bow.ScaleTravel(Printed.Shortest.Distance), u = travel / Span;
        return travel * (1 + fault.ScalePercent / 100) + 1e-3 * (fault.SlideMm + fault.BendMm * 4 * u * (1 - u));
    }

    static double Metres(double yards) => yards * 0.9144;

    double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
