namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Tests.Checks;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Xunit;

/// <summary>Against MathNet's Runge-Kutta on the six equations in world axes, which shares nothing with the reduced form.</summary>
public class IndependentTests
{
    const double Degree = Math.PI / 180, G = 9.80665;

    static readonly (PointMassSi Mass, LaunchSi Launch, double Distance, double Line)[] Hard =
    [
        (new(0.004, G, 0, 0, 0), new(45, 20 * Degree), 110, 0),
        (new(0.0025, G, -9, 1, 6), new(60, 12 * Degree, 2 * Degree), 115, 0),
        (new(0.003, G, 8, -1, -7), new(50, 55 * Degree, -1 * Degree), 60, 35 * Degree),
        (new(0.003, G, 5, 2, 9), new(55, 10 * Degree, 3 * Degree), 110, -40 * Degree),
    ];

    public static TheoryData<int> HardCases => [0, 1, 2, 3];

    [Fact]
    public void Six_equations_in_any_steady_wind_arrive_at_the_same_place()
    {
        var random = new Random(7);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        for (int i = 0; i < 60; i++)
        {
            var mass = new PointMassSi(Between(0, 0.004), G, Between(-10, 10), Between(-2, 2), Between(-10, 10));
            double line = Between(-60, 60) * Degree, distance = Between(5, 90);
            var launch = new LaunchSi(Between(60, 120), line + Between(0, 8) * Degree, Between(-5, 5) * Degree, Between(-1, 1), Between(-1, 1), Between(-1, 1));
            Assert.Equal(Outcome.Met, mass.Fly(launch, distance, line, out StateSi s, out _));

            StateSi other = SixEquations(mass, launch, s.X);
            Assert.Equal(distance, s.X * Math.Cos(line) + s.Y * Math.Sin(line), 1e-9); // on the face
            Assert.Equal(other.Y, s.Y, 1e-6);
            Assert.Equal(other.Z, s.Z, 1e-6);
            Assert.Equal(other.Time, s.Time, 1e-8);
            Assert.Equal(other.Vx, s.Vx, 1e-5);
            Assert.Equal(other.Vy, s.Vy, 1e-5);
            Assert.Equal(other.Vz, s.Vz, 1e-5);
        }
    }

    [Theory, MemberData(nameof(HardCases))]
    public void Order_of_convergence_is_eight_on_every_path(int i)
    {
        var (mass, launch, distance, line) = Hard[i];
        StateSi At(int steps)
        {
            Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(distance, line), steps, out StateSi s, out _));
            return s;
        }

        StateSi exact = At(256);
        double Error(StateSi s) => Math.Max(Math.Max(Math.Abs(s.X - exact.X), Math.Abs(s.Y - exact.Y)), Math.Abs(s.Z - exact.Z));
        // 2, 4 and 8 steps: with 16 the error is at the rounding of the positions.
        Assert.All(Order.Observed(n => Error(At(n)), 2, 2), o => Assert.InRange(o, 7.4, 8.6));
    }

    [Theory, MemberData(nameof(HardCases))]
    public void The_derivative_by_elevation_is_the_slope_of_nearby_flights(int i)
    {
        var (mass, launch, distance, line) = Hard[i];
        double Above(double change)
        {
            Assert.Equal(Outcome.Met, mass.Fly(launch with { Elevation = launch.Elevation + change }, Face.Square(distance, line), 64, out StateSi s, out _));
            return s.Above(line);
        }

        Assert.Equal(Outcome.Met, mass.FlyWithSlope(launch, distance, line, out StateSi state, out double above, out double slope));
        const double H = 1e-3;
        double difference = (8 * (Above(H) - Above(-H)) - (Above(2 * H) - Above(-2 * H))) / (12 * H); // error of order H^4
        Assert.Equal(difference, slope, 1e-5 * (1 + Math.Abs(difference)));
        Assert.Equal(state.Above(line), above, 1e-9);
        Assert.Equal(Above(0), above, 1e-6);
    }

    /// <summary>dv/dx = (-k |v - w| (v - w) - g)/vx and so on, by MathNet's fourth-order Runge-Kutta with 4000 steps.</summary>
    static StateSi SixEquations(PointMassSi m, LaunchSi l, double x)
    {
        double level = l.Speed * Math.Cos(l.Elevation);
        Vector<double> start = Vector<double>.Build.Dense(
            [0, l.Y, l.Z, level * Math.Cos(l.Azimuth), l.Speed * Math.Sin(l.Elevation), level * Math.Sin(l.Azimuth)]);
        Vector<double> end = RungeKutta.FourthOrder(start, l.X, x, 4001, (_, s) =>
        {
            double ux = s[3] - m.WindX, uy = s[4] - m.WindY, uz = s[5] - m.WindZ, pull = m.K * Math.Sqrt(ux * ux + uy * uy + uz * uz);
            return Vector<double>.Build.Dense(
                [1 / s[3], s[4] / s[3], s[5] / s[3], -pull * ux / s[3], (-pull * uy - m.Gravity) / s[3], -pull * uz / s[3]]);
        })[^1];
        return new(end[0], x, end[1], end[2], end[3], end[4], end[5]);
    }
}
