namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Flight;
using CsCheck;
using UnitsNet;
using Xunit;

public class RelationTests
{
    const double G = 9.80665;

    // Fast enough, and low enough, that every one arrives.
    static readonly Gen<(double Speed, double Elevation, double K, double Distance)> Shot =
        Gen.Select(Gen.Double[50, 110], Gen.Double[-0.1, 0.3], Gen.Double[0, 0.004], Gen.Double[5, 90]);

    static readonly Gen<(double X, double Y, double Z)> Wind = Gen.Select(Gen.Double[-8, 8], Gen.Double[-2, 2], Gen.Double[-8, 8]);

    [Fact]
    public void Without_drag_the_path_is_the_parabola() => Shot.Sample(s =>
    {
        StateSi end = Fly(new(0, G, 0, 0, 0), s);
        double t = s.Distance / (s.Speed * Math.Cos(s.Elevation));
        return Near(end.Time, t, 1e-8) && Near(end.Y, s.Distance * Math.Tan(s.Elevation) - 0.5 * G * t * t, 1e-6);
    });

    [Fact]
    public void Without_wind_there_is_no_drift() => Shot.Sample(s => Fly(new(s.K, G, 0, 0, 0), s).Z == 0);

    [Fact]
    public void A_mirrored_wind_mirrors_the_drift() => Gen.Select(Shot, Wind).Sample((s, w) =>
    {
        StateSi right = Fly(new(s.K, G, w.X, w.Y, w.Z), s), left = Fly(new(s.K, G, w.X, w.Y, -w.Z), s);
        return right.Z == -left.Z && right.Y == left.Y && right.Time == left.Time;
    });

    [Fact]
    public void Drift_goes_with_the_wind() => Shot.Sample(s =>
        s.K < 1e-5 || Fly(new(s.K, G, 0, 0, 4), s).Z > 0);

    [Fact]
    public void A_wind_without_drag_changes_nothing() => Gen.Select(Shot, Wind).Sample((s, w) =>
    {
        StateSi still = Fly(new(0, G, 0, 0, 0), s), blown = Fly(new(0, G, w.X, w.Y, w.Z), s);
        return Near(still.Y, blown.Y, 1e-6) && Near(blown.Z, 0, 1e-6) && Near(still.Vx, blown.Vx, 1e-6);
    });

    [Fact]
    public void Flying_in_a_moving_frame_is_flying_in_wind() => Shot.Sample(s =>
    {
        // A tail wind W: the same as still air seen by one who moves with it. At time t both must agree.
        const double W = 5;
        StateSi ground = Fly(new(s.K, G, W, 0, 0), s);
        double ux = s.Speed * Math.Cos(s.Elevation) - W, uy = s.Speed * Math.Sin(s.Elevation);
        var asSeen = (Math.Sqrt(ux * ux + uy * uy), Math.Atan2(uy, ux), s.K, s.Distance - W * ground.Time);
        StateSi air = Fly(new(s.K, G, 0, 0, 0), asSeen);
        return Near(air.Time, ground.Time, 1e-8) && Near(air.Y, ground.Y, 1e-6) && Near(air.Vy, ground.Vy, 1e-6);
    });

    [Fact]
    public void More_drag_never_arrives_faster() => Shot.Sample(s =>
    {
        StateSi less = Fly(new(s.K, G, 0, 0, 0), s), more = Fly(new(s.K * 1.1 + 1e-5, G, 0, 0, 0), s);
        return more.Time > less.Time && more.Vx < less.Vx;
    });

    [Fact]
    public void Energy_never_rises_in_still_air() => Shot.Sample(s =>
    {
        double before = 0.5 * s.Speed * s.Speed;
        for (int i = 1; i <= 10; i++)
        {
            StateSi at = Fly(new(s.K, G, 0, 0, 0), s with { Distance = 0.1 * i * s.Distance });
            double now = 0.5 * at.Speed * at.Speed + G * at.Y;
            Assert.True(now <= before + 1e-5, $"{now} after {before}"); // 1e-5 J/kg is 1e-7 m/s at these speeds
            before = now;
        }
    });

    [Fact]
    public void Two_flights_end_to_end_are_one_flight() => Gen.Select(Shot, Wind).Sample((s, w) =>
    {
        var mass = new PointMassSi(s.K, G, w.X, w.Y, w.Z);
        StateSi whole = Fly(mass, s), half = Fly(mass, s with { Distance = 0.5 * s.Distance });
        var onward = new LaunchSi(
            half.Speed, Math.Atan2(half.Vy, Math.Sqrt(half.Vx * half.Vx + half.Vz * half.Vz)), Math.Atan2(half.Vz, half.Vx), half.X, half.Y, half.Z);
        Assert.Equal(Outcome.Met, mass.Fly(onward, s.Distance, 0, out StateSi end, out _));
        return Near(end.Y, whole.Y, 1e-6) && Near(end.Z, whole.Z, 1e-6) && Near(end.Time + half.Time, whole.Time, 1e-7);
    });

    [Fact]
    public void Mass_and_drag_area_doubled_together_leave_the_path_unchanged() => Gen.Select(Gen.Double[1e-5, 2e-4], Gen.Double[0.015, 0.05]).Sample((area, mass) =>
    {
        FlightState once = Flight(Drag.FromArea(Area.FromSquareMeters(area), Mass.FromKilograms(mass))).At(Level, Length.FromYards(60));
        FlightState twice = Flight(Drag.FromArea(Area.FromSquareMeters(2 * area), Mass.FromKilograms(2 * mass))).At(Level, Length.FromYards(60));
        return once == twice;
    });

    [Fact]
    public void Units_changed_everywhere_change_nothing()
    {
        PointMass flight = Flight(Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015)));
        PointMass same = Flight(Drag.FromConstant(ReciprocalLength.FromInverseFeet(0.0015 * 0.3048)));
        FlightState si = flight.At(new Launch { Speed = Speed.FromMetersPerSecond(82.296), Elevation = Angle.FromDegrees(2) }, Length.FromMeters(54.864));
        FlightState imperial = same.At(new Launch { Speed = Speed.FromFeetPerSecond(270), Elevation = Angle.FromMilliradians(2000 * Math.PI / 180) }, Length.FromYards(60));
        Assert.Equal(si.Up.Meters, imperial.Up.Meters, 1e-12);
        Assert.Equal(si.Time.Seconds, imperial.Time.Seconds, 1e-12);
    }

    [Fact]
    public void Drag_carried_to_other_air_goes_with_density()
    {
        Air low = Air.StandardAt(Length.Zero), high = Air.StandardAt(Length.FromMeters(2000));
        Drag drag = Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015), measuredIn: low);
        Assert.Equal(0.0015, drag.ConstantIn(low).InverseMeters, 1e-15);
        Assert.Equal(0.0015 * high.Density / low.Density, drag.ConstantIn(high).InverseMeters, 1e-15);
        Assert.Equal(0.0015, Drag.FromConstant(ReciprocalLength.FromInverseMeters(0.0015)).ConstantIn(high).InverseMeters);
    }

    static Launch Level => new() { Speed = Speed.FromMetersPerSecond(85), Elevation = Angle.Zero };

    static PointMass Flight(Drag drag) => new() { Drag = drag, Air = Air.StandardAt(Length.Zero), Gravity = Gravity.Standard, Wind = Ascham.Air.Wind.Calm };

    static StateSi Fly(PointMassSi mass, (double Speed, double Elevation, double K, double Distance) s)
    {
        Assert.Equal(Outcome.Met, mass.Fly(new(s.Speed, s.Elevation), s.Distance, 0, out StateSi state, out _));
        return state;
    }

    static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance;
}
