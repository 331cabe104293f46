namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Quantities;
using Ascham.Tests.Checks;
using UnitsNet;
using Xunit;

public class LaunchReadingTests
{
    static readonly Air Sea = Air.StandardAt(Length.Zero);

    [Fact] // Independent: v exp(k x)
    public void One_constant_gives_the_exponential()
    {
        var launch = LaunchReading.AtLaunch(Reading(83, 0.2), Length.FromMeters(18.288), Length.Zero, Same(0.0015), Sea);
        Assert.Equal(83 * Math.Exp(0.0015 * 18.288), launch.Value.MetersPerSecond, 1e-10);
        Assert.Equal(0.2 * Math.Exp(0.0015 * 18.288), launch.StandardError.MetersPerSecond, 1e-10);
    }

    [Fact] // Independent: flown by the integrator with a drag that follows the speed, read at 30 m, carried back
    public void Any_drag_comes_back_to_the_speed_it_was_launched_at()
    {
        Drag drag = Drag.FromTable(DragTable.Of([(5e3, 2.6), (2e4, 2.0), (4e4, 1.5)]), Length.FromMillimeters(5.2), Mass.FromGrams(26));
        PointMass flight = new() { Drag = drag, Air = Sea, Gravity = Gravity.Standard, Wind = Wind.Calm };
        var launch = new Launch { Speed = Speed.FromMetersPerSecond(84), Elevation = Angle.FromDegrees(1.21) };
        Speed there = flight.At(launch, Length.FromMeters(30)).Speed;
        var back = LaunchReading.AtLaunch(Reading(there.MetersPerSecond, 0.1), Length.FromMeters(30), Length.Zero, new(drag, drag, drag, "table"), Sea);
        Assert.Equal(84, back.Value.MetersPerSecond, 0.005); // it comes back to its height, or gravity would have its part
    }

    [Fact] // Independent: error of drag and of place by hand
    public void Unknown_drag_and_place_widen_the_interval()
    {
        var bound = new DragBound(Constant(0.0007), Constant(0.0015), Constant(0.0023), "");
        var launch = LaunchReading.AtLaunch(Reading(83, 0), Length.FromMeters(20), Length.FromMeters(0.5), bound, Sea);
        double v = launch.Value.MetersPerSecond, byDrag = (83 * Math.Exp(0.046) - 83 * Math.Exp(0.014)) / Math.Sqrt(12);
        Assert.Equal(Math.Sqrt(byDrag * byDrag + Math.Pow(0.0015 * v * 0.5, 2)), launch.StandardError.MetersPerSecond, 1e-9);
        new Printed("1.6449", "normal quantile of 0.95").Matches((launch.High - launch.Value) / launch.StandardError);
    }

    [Fact]
    public void A_reading_at_the_launch_stays_as_it_is_and_bad_places_are_refused()
    {
        var reading = Reading(83, 0.2);
        Assert.Equal(83, LaunchReading.AtLaunch(reading, Length.Zero, Length.Zero, Same(0.0015), Sea).Value.MetersPerSecond, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => LaunchReading.AtLaunch(reading, Length.FromMeters(-1), Length.Zero, Same(0.0015), Sea));
        Assert.Throws<ArgumentOutOfRangeException>(() => LaunchReading.AtLaunch(reading, Length.FromMeters(1), Length.FromMeters(-1), Same(0.0015), Sea));
    }

    static Drag Constant(double k) => Drag.FromConstant(ReciprocalLength.FromInverseMeters(k));

    static DragBound Same(double k) => new(Constant(k), Constant(k), Constant(k), "constant");

    static Estimate<Speed> Reading(double v, double sd) =>
        new Estimate<double>(v, sd, v - 1.6448536 * sd, v + 1.6448536 * sd, 0.9, 5, "mean").Map(x => Speed.FromMetersPerSecond(x));
}
