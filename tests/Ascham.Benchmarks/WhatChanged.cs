namespace Ascham.Benchmarks;

using Ascham.Air;
using Ascham.Causes;
using Ascham.Flight;
using Ascham.Sights;
using BenchmarkDotNet.Attributes;
using UnitsNet;

/// <summary>Ranking of one evidence set, and the plan of the next test.</summary>
[MemoryDiagnoser, ShortRunJob]
public class WhatChanged
{
    readonly Evidence evidence = Invented();
    Ranking ranking = null!;

    [GlobalSetup]
    public void Rank() => ranking = Ranking.Of(evidence, CausePriors.Usual);

    [Benchmark]
    public Ranking Ranked() => Ranking.Of(evidence, CausePriors.Usual);

    [Benchmark]
    public TestPlan Planned() => NextTest.Plan(
        ranking, new() { LongestSafeDistance = Length.FromYards(100), Distances = [.. Enumerable.Range(1, 10).Select(i => Length.FromYards(10 * i))] });

    // Five distances then and now, low by what four pounds do, both chronographs read.
    static Evidence Invented()
    {
        var bow = new KnownBow
        {
            Sight = new()
            {
                Geometry = new() { PeepToPin = Length.FromMeters(0.80), PeepHeight = Length.FromMeters(0.11), TapePerPinTravel = 1, Increases = ScaleDirection.Down },
                LaunchSpeed = Speed.FromMetersPerSecond(84),
                Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015)),
                Air = Air.StandardAt(Length.Zero),
                Gravity = Gravity.Standard,
            },
            PeakWeight = Force.FromPoundsForce(60),
            ArrowMass = Mass.FromGrains(415),
            VirtualMass = Mass.FromGrains(90),
            SpeedSd = 0.015,
            DragSd = 0.2,
        };
        StationMean At(double yards, bool now) => new()
        {
            Session = now ? "now" : "then",
            Now = now,
            Distance = Length.FromYards(yards),
            Up = Length.FromMeters(now ? -1.1e-5 * yards * yards : 0),
            Right = Length.Zero,
            Arrows = 6,
            ShotBefore = 2.5,
        };
        double[] distances = [20, 40, 60, 80, 100];
        Speed v = bow.Sight.LaunchSpeed, error = v * 0.003;
        return new()
        {
            Bow = bow,
            Stations = [.. distances.Select(d => At(d, false)), .. distances.Select(d => At(d, true))],
            ScatterThen = new(1, 1, 25),
            ScatterNow = new(1.1, 1, 25),
            Readings = [Reading.LaunchSpeed(v, error, false), Reading.LaunchSpeed(v * 0.97, error, true)],
        };
    }
}
