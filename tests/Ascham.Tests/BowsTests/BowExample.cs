namespace Ascham.Tests.BowsTests;

using Ascham.Bows;
using UnitsNet;

/// <summary>The worked compound: 425 gr at 84 m/s from 70 lbf, virtual mass 76.8 gr; and the sketch of its draw curve. Invented.</summary>
static class BowExample
{
    public const double Ninety = 0.9;

    public static readonly DrawCurve Trapezoid = DrawCurve.Compound(Pounds(70), Ratio.FromPercent(80), Inches(6.5), Inches(29), rise: Inches(4), fall: Inches(4.25));

    public static readonly LaunchModel Model = new()
    {
        Known = Load(425, 70, 29),
        KnownSpeed = Speed.FromMetersPerSecond(84),
        KnownSpeedSd = Speed.FromMetersPerSecond(0.3),
        VirtualMass = Mass.FromGrains(76.8),
        VirtualMassSd = Mass.FromGrains(10),
        BraceHeight = Inches(6.5),
        Kind = BowKind.Compound,
        Floor = MassFloor.For(BowKind.Compound),
        HowObtained = "worked example",
    };

    public static Force Pounds(double pounds) => Force.FromPoundsForce(pounds);

    public static Length Inches(double inches) => Length.FromInches(inches);

    public static Loading Load(double grains, double pounds, double? draw = null) =>
        new() { ArrowMass = Mass.FromGrains(grains), PeakWeight = Pounds(pounds), DrawLength = draw is { } d ? Inches(d) : null };

    public static ChronographedArrow Arrow(double grains, double feetPerSecond, double sd = 1.2, int shots = 10) => new()
    {
        Mass = Mass.FromGrains(grains),
        Speed = Speed.FromFeetPerSecond(feetPerSecond),
        ShotSd = Speed.FromFeetPerSecond(sd),
        Shots = shots,
    };

    public static DrawPoint Point(double inches, double pounds, double? sd = 0.5) =>
        new() { Draw = Inches(inches), Force = Pounds(pounds), ForceSd = sd is { } s ? Pounds(s) : null };
}
