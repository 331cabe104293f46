namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using Ascham.Tests.ArrowsTests;
using UnitsNet;
using Xunit;

/// <summary>The invented arrow of the stability tests, in flight.</summary>
static class RigidExample
{
    public const double G = 9.80665, Degree = Math.PI / 180, Yard = 0.9144;

    /// <summary>Drag coefficient 1.5.</summary>
    public static double K => 0.5 * ExampleArrow.Density * ExampleArrow.CrossSection * 1.5 / ExampleArrow.Mass;

    /// <summary>All of it: drag, crossflow, gravity, spin.</summary>
    public static RigidBodySi Whole => new(
        (ExampleArrow.Stability with { Fletching = ExampleArrow.Vanes with { Offset = Angle.FromDegrees(2) } }).Si,
        ExampleArrow.Mass, ExampleArrow.Inertia, 2.5e-7, ExampleArrow.Density, new(K, G, 0, 0, 0));

    /// <summary>Neither drag, gravity, crossflow nor spin: what the closed forms describe.</summary>
    public static RigidBodySi Bare => Whole with
    {
        Stability = (ExampleArrow.Stability with { CrossflowConstant = 0 }).Si,
        Axial = 0,
        Point = new(0, 0, 0, 0, 0),
    };

    public static RigidBody TheArrow => new()
    {
        Stability = ExampleArrow.Stability with { Fletching = ExampleArrow.Vanes with { Offset = Angle.FromDegrees(2) } },
        Mass = Mass.FromKilograms(ExampleArrow.Mass),
        TransverseInertia = MassMomentOfInertia.FromKilogramSquareMeters(ExampleArrow.Inertia),
        AxialInertia = MassMomentOfInertia.FromKilogramSquareMeters(2.5e-7),
        Drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(K)),
        Air = Air.StandardAt(Length.Zero),
        Gravity = Gravity.Standard,
        Wind = Wind.Calm,
    };

    public static RigidLaunch LevelShot => new() { Launch = new() { Speed = Speed.FromMetersPerSecond(85), Elevation = Angle.Zero } };

    public static RigidStateSi Fly(RigidBodySi body, RigidLaunchSi launch, double distance, double wavelengths = 0, double line = 0)
    {
        RigidFlight flight = body.Start(launch, line, wavelengths);
        Assert.Equal(RigidOutcome.Met, flight.To(distance));
        return flight.Here;
    }

    /// <summary>Nose above the path through the air, radians.</summary>
    public static double Up(RigidStateSi state) => state.FromPath(state.Axis).Up;

    /// <summary>A distance between two where the nose crosses the path.</summary>
    public static double Crossing(RigidBodySi body, RigidLaunchSi launch, double from, double to)
    {
        double sign = Up(Fly(body, launch, from, 1.0 / 24));
        while (to - from > 1e-9)
        {
            double middle = 0.5 * (from + to);
            (from, to) = Up(Fly(body, launch, middle, 1.0 / 24)) * sign > 0 ? (middle, to) : (from, middle);
        }

        return from;
    }
}
