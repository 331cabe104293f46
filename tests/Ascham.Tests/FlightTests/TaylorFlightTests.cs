namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Tests.Checks;
using CsCheck;
using Xunit;

public class TaylorFlightTests
{
    const double Degree = Math.PI / 180, G = 9.80665;

    // An ordinary arrow in any ordinary wind: 70 to 95 m/s, -3 to 8 degrees up, 20 to 100 yd.
    static readonly Gen<(PointMassSi Mass, LaunchSi Launch, double Distance)> Shot =
        from k in Gen.Double[0.0012, 0.0024]
        from head in Gen.Double[-8, 8]
        from up in Gen.Double[-1, 1]
        from cross in Gen.Double[-8, 8]
        from speed in Gen.Double[70, 95]
        from elevation in Gen.Double[-3 * Degree, 8 * Degree]
        from azimuth in Gen.Double[-0.5 * Degree, 0.5 * Degree]
        from distance in Gen.Double[18.3, 91.4]
        select (new PointMassSi(k, G, head, up, cross), new LaunchSi(speed, elevation, azimuth), distance);

    [Fact] // independent: the march with sixteen steps, exact to rounding here
    public void A_flight_by_its_series_is_within_a_tenth_of_a_micrometre_of_the_march() => Shot.Sample(s =>
    {
        StateSi series = Fly(s.Mass, s.Launch, s.Distance, 0), march = Fly(s.Mass, s.Launch, s.Distance, 16);
        return Near(series.Y, march.Y, 1e-7) && Near(series.Z, march.Z, 1e-7) && Near(series.X, s.Distance, 1e-9)
            && Near(series.Time, march.Time, 1e-9) && Near(series.Speed, march.Speed, 3e-6);
    }, iter: 2000);

    [Fact]
    public void The_series_serves_nearly_all_ordinary_flights()
    {
        int served = 0;
        const int N = 1000;
        Shot.Sample(s =>
        {
            var (velocity, wind) = Vectors(s.Mass, s.Launch);
            served += TaylorFlight.TryFly(velocity, wind, new(s.Mass.K), new(G), Face.Square(s.Distance, 0), out _) ? 1 : 0;
        }, iter: N, threads: 1);
        Assert.InRange(served, 0.99 * N, N);
    }

    [Fact]
    public void Every_lane_is_the_plain_flight_to_the_last_bit() => Shot.Array[Lanes.Count].Sample(shots =>
    {
        double[] Each(Func<(PointMassSi Mass, LaunchSi Launch, double Distance), double> of) => [.. shots.Select(of)];
        Lanes Of(Func<(Triple<Real> Velocity, Triple<Real> Wind), double> of) => Lanes.From(Each(s => of(Vectors(s.Mass, s.Launch))));
        var together = default(TaylorFlight<Lanes>);
        together.Begin(
            new(Of(v => v.Velocity.X.Value), Of(v => v.Velocity.Y.Value), Of(v => v.Velocity.Z.Value)),
            new(Of(v => v.Wind.X.Value), Of(v => v.Wind.Y.Value), Of(v => v.Wind.Z.Value)),
            Lanes.From(Each(s => s.Mass.K)), Lanes.Of(G), Lanes.From(Each(s => s.Distance)), 0.1, Math.Sqrt(0.99), 1e-8);
        together.Extend(10);
        together.MeetFarthest(out SeriesArrival<Lanes> all);
        together.Meet(Lanes.Of(9), out SeriesArrival<Lanes> near);
        for (int i = 0; i < shots.Length; i++)
        {
            var (velocity, wind) = Vectors(shots[i].Mass, shots[i].Launch);
            var alone = default(TaylorFlight<Real>);
            alone.Begin(velocity, wind, new(shots[i].Mass.K), new(G), new(shots[i].Distance), 0.1, Math.Sqrt(0.99), 1e-8);
            alone.Extend(10);
            alone.MeetFarthest(out SeriesArrival<Real> one);
            alone.Meet(new(9), out SeriesArrival<Real> oneNear);
            Assert.Equal(one.Moved.Y.Value, all.Moved.Y[i]);
            Assert.Equal(one.Moved.Z.Value, all.Moved.Z[i]);
            Assert.Equal(one.Arriving.X.Value, all.Arriving.X[i]);
            Assert.Equal(one.Time.Value, all.Time[i]);
            Assert.Equal(one.Trust.Value, all.Trust[i]);
            Assert.Equal(oneNear.Moved.Y.Value, near.Moved.Y[i]);
            Assert.Equal(oneNear.Trust.Value, near.Trust[i]);
        }
    }, iter: 100);

    [Fact] // the n-th term is the n-th derivative over n!, so the error of a sum falls as the next power of the length
    public void The_error_of_a_sum_to_order_six_falls_as_the_seventh_power_of_the_length()
    {
        // Steep and slow, so that slope, slowness and R all matter.
        double Error(int halves)
        {
            double length = 60.0 / halves;
            PathPoint<Real> six = Path(length, 6), all = Path(length, TaylorPath<Real>.MostTerms);
            return Math.Abs(six.Slope.Value - all.Slope.Value) + Math.Abs(six.Slowness.Value - all.Slowness.Value);
        }

        Assert.All(Order.Observed(Error, 4, 2), o => Assert.InRange(o, 6.8, 7.3));
    }

    [Fact]
    public void Without_drag_the_series_is_the_parabola()
    {
        var path = default(TaylorPath<Real>);
        path.Begin(new(1 / 80.0), new(0.3), new(0), new(G), new(70));
        path.Extend(5);
        Assert.Equal((0, 0), (path.LastTerms.Slowness.Value, path.LastTerms.Slope.Value));
        Assert.Equal(0.3 * 70 - G * 70 * 70 / (2 * 80 * 80), 70 * path.At(new(1)).Rise.Value, 1e-12);
    }

    [Fact]
    public void A_face_behind_or_out_of_reach_is_left_to_the_march()
    {
        var mass = new PointMassSi(0.002, G, 0, 0, 0);
        var (velocity, wind) = Vectors(mass, new(50, 10 * Degree));
        foreach (double distance in new[] { -5, 0, 120, 500, double.NaN })
        {
            Assert.False(TaylorFlight.TryFly(velocity, wind, new(mass.K), new(G), Face.Square(distance, 0), out _));
        }

        Assert.False(TaylorFlight.TryFly(velocity, wind, new(mass.K), new(G), Face.Square(20, -85 * Degree), out _));
        Assert.False(TaylorFlight.TryFly(velocity, wind, new(double.NaN), new(G), Face.Square(20, 0), out _));
        Assert.False(TaylorFlight.TryFly(Triple(-60, 5, 0), wind, new(mass.K), new(G), Face.Square(20, 0), out _));
        Assert.False(TaylorFlight.TryFly(Triple(5, 5, 0), Triple(10, 0, 0), new(mass.K), new(G), Face.Square(20, 0), out _));
    }

    static PathPoint<Real> Path(double length, int order)
    {
        var path = default(TaylorPath<Real>);
        path.Begin(new(1 / 40.0), new(1.2), new(0.004), new(G), new(length));
        path.Extend(order);
        return path.At(new(1));
    }

    static Triple<Real> Triple(double x, double y, double z) => new(new(x), new(y), new(z));

    static (Triple<Real> Velocity, Triple<Real> Wind) Vectors(PointMassSi m, LaunchSi l)
    {
        double level = l.Speed * Math.Cos(l.Elevation);
        return (Triple(level * Math.Cos(l.Azimuth), l.Speed * Math.Sin(l.Elevation), level * Math.Sin(l.Azimuth)), Triple(m.WindX, m.WindY, m.WindZ));
    }

    static StateSi Fly(PointMassSi mass, LaunchSi launch, double distance, int steps)
    {
        Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(distance, 0), steps, out StateSi state, out _));
        return state;
    }

    static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance;
}
