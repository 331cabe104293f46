namespace Ascham.Tests.CausesTests;

using Ascham.Air;
using Ascham.Causes;
using Ascham.Flight;
using Ascham.Sights;
using UnitsNet;

/// <summary>The bow of the tests, and noiseless or noisy stations of it.</summary>
static class Bench
{
    /// <summary>Invented, in the middle of what compounds do.</summary>
    internal static KnownBow Bow { get; } = new()
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

    /// <summary>Stations of one session with given shifts, mrad of angle in height and to the right.</summary>
    internal static IEnumerable<StationMean> Session(string name, bool now, double arrows, IEnumerable<(double Yards, double Up, double Right)> centres) =>
        centres.Select(c => new StationMean
        {
            Session = name,
            Now = now,
            Distance = Length.FromYards(c.Yards),
            Up = Length.FromMeters(c.Up),
            Right = Length.FromMeters(c.Right),
            Arrows = arrows,
            ShotBefore = (arrows - 1) / 2,
        });

    /// <summary>What sizes of causes do at a station of the known bow, m.</summary>
    internal static (double Up, double Right) Shift(double yards, params (CauseSize Size, double Value)[] sizes)
    {
        double[] all = new double[CauseText.Sizes];
        foreach (var (size, value) in sizes)
        {
            all[(int)size] = value;
        }

        var forward = new Forward(Bow);
        var station = new AimedStation(0.9144 * yards, Bow.Sight.SightAngle(Length.FromYards(yards)).Radians, 2.5, false);
        StationFlight flight = forward.Fly(station, all), known = forward.Fly(station, new double[CauseText.Sizes]);
        return (flight.Flight.Above.Value - known.Flight.Above.Value, flight.Flight.Right.Value - known.Flight.Right.Value);
    }

    /// <summary>A baseline and a session now at the same distances.</summary>
    internal static Evidence Case(double[] yards, double arrows, double sigma, params (CauseSize Size, double Value)[] sizes) => new()
    {
        Bow = Bow,
        Stations =
        [
            .. Session("then", false, arrows, yards.Select(y => (y, 0.0, 0.0))),
            .. Session("now", true, arrows, yards.Select(y => (y, Shift(y, sizes).Up, Shift(y, sizes).Right))),
        ],
        ScatterThen = new(sigma, sigma, yards.Length * (arrows - 1)),
        ScatterNow = new(sigma, sigma, yards.Length * (arrows - 1)),
    };
}
