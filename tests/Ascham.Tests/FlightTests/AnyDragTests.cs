namespace Ascham.Tests.FlightTests;

using Ascham.Air;
using Ascham.Arrows;
using Ascham.Flight;
using Ascham.Tests.AirTests;
using Ascham.Tests.Checks;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using UnitsNet;
using Xunit;

/// <summary>Flight with drag that follows the speed.</summary>
public class AnyDragTests
{
    const double Degree = Math.PI / 180;

    static readonly AuthorityFile Cases = new("flight-cases-derived.csv");

    public static TheoryData<int> CaseRows => AuthorityFile.Rows("flight-cases-derived.csv");

    public static TheoryData<string> Laws => ["laminar", "turbulent", "ordinary point", "streamlined point", "sharp", "table", "tanh"];

    public static TheoryData<string> SmoothLaws => ["laminar", "turbulent", "streamlined point", "tanh"];

    [Theory, MemberData(nameof(CaseRows))]
    public void Cases_solved_elsewhere_to_28_digits_are_met(int row)
    {
        // Case A has one coefficient; its constant is that of the same arrow in the same air.
        const double Area = 0.25 * Math.PI * 5.9e-3 * 5.9e-3;
        PointMassSi mass = row == 0 ? new(1.2 * Area * 1.8 / (2 * 0.0259), 9.80665, 0, 0, 0) : AnyDrag.Flight("tanh");
        mass = mass with { WindZ = 3 };
        var launch = new LaunchSi(Cases.Value(row, "speed_m_s"), 2 * Degree);

        Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(91.44, 0), 64, out StateSi fine, out _));
        Cases.Cell(row, "y_m")!.Matches(fine.Y, 20); // rounding of the sums over 64 steps, 1e-11 m
        Cases.Cell(row, "z_m")!.Matches(fine.Z, 20); // the same
        Cases.Cell(row, "time_s")!.Matches(fine.Time, 20); // the same
        Cases.Cell(row, "impact_m_s")!.Matches(fine.Speed, 200); // the same, at 60 m/s

        Assert.Equal(Outcome.Met, mass.Fly(launch, 91.44, 0, out StateSi asIs, out _));
        Assert.Equal(Cases.Value(row, "y_m"), asIs.Y, 1e-7);
        Assert.Equal(Cases.Value(row, "z_m"), asIs.Z, 1e-7);
        Assert.Equal(Cases.Value(row, "time_s"), asIs.Time, 1e-8);
        Assert.Equal(Cases.Value(row, "impact_m_s"), asIs.Speed, 1e-6);
    }

    [Theory, MemberData(nameof(Laws))]
    public void The_default_step_is_within_a_micrometre_of_fine_steps(string law)
    {
        var random = new Random(11);
        double worst = 0;
        PointMassSi still = AnyDrag.Flight(law);
        for (int counted = 0; counted < 300;)
        {
            double Pick(double low, double high) => random.Next(4) switch { 0 => low, 1 => high, _ => low + (high - low) * random.NextDouble() };
            double line = Pick(-60, 60) * Degree, distance = Pick(5, 120);
            var launch = new LaunchSi(Pick(40, 120), line + (88 * random.NextDouble() * random.NextDouble() - 3) * Degree);
            PointMassSi mass = counted % 2 == 0 ? still : still with { WindX = Pick(-10, 10), WindY = Pick(-2, 2), WindZ = Pick(-10, 10) };
            if (Math.Abs(launch.Elevation) > 89 * Degree || mass.Fly(launch, distance, line, out StateSi s, out _) != Outcome.Met
                || Math.Abs(Math.Atan2(s.Vy, s.Vx) - line) > 70 * Degree
                || mass.Fly(launch, Face.Square(distance, line), law == "table" ? 1000 : 100, out StateSi fine, out _) != Outcome.Met)
            {
                continue;
            }

            counted++;
            double error = Math.Max(Math.Abs(s.Above(line) - fine.Above(line)), Math.Abs(s.Z - fine.Z));
            Assert.True(error < 1e-6, FormattableString.Invariant($"off by {error:E2} m: {launch}, wind {mass.WindX} {mass.WindY} {mass.WindZ}, line {line / Degree}°, {distance} m"));
            worst = Math.Max(worst, error);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{law}: worst of 300: {worst:E1} m"));
    }

    [Theory, MemberData(nameof(Laws))]
    public void Six_equations_solved_by_a_general_library_arrive_at_the_same_place(string law)
    {
        PointMassSi mass = AnyDrag.Flight(law) with { WindX = -4, WindY = 1, WindZ = 6 };
        var launch = new LaunchSi(62, 3 * Degree, 0.5 * Degree, 0.4, -0.1, 0.05);
        Assert.Equal(Outcome.Met, mass.Fly(launch, 75, 0, out StateSi s, out _));

        double level = launch.Speed * Math.Cos(launch.Elevation);
        Vector<double> start = Vector<double>.Build.Dense(
            [0, launch.Y, launch.Z, level * Math.Cos(launch.Azimuth), launch.Speed * Math.Sin(launch.Elevation), level * Math.Sin(launch.Azimuth)]);
        Vector<double> end = RungeKutta.FourthOrder(start, launch.X, 75, 4001, (_, v) =>
        {
            double ux = v[3] - mass.WindX, uy = v[4] - mass.WindY, uz = v[5] - mass.WindZ, air = Math.Sqrt(ux * ux + uy * uy + uz * uz);
            double pull = mass.Curve!.At(air, mass.Air!) * air;
            return Vector<double>.Build.Dense([1 / v[3], v[4] / v[3], v[5] / v[3], -pull * ux / v[3], (-pull * uy - mass.Gravity) / v[3], -pull * uz / v[3]]);
        })[^1];
        Assert.Equal(end[1], s.Y, 1e-6);
        Assert.Equal(end[2], s.Z, 1e-6);
        Assert.Equal(end[0], s.Time, 1e-8);
        Assert.Equal(end[3], s.Vx, 1e-5);
    }

    [Theory, MemberData(nameof(SmoothLaws))]
    public void Order_of_convergence_is_eight_with_any_smooth_law(string law)
    {
        PointMassSi mass = AnyDrag.Flight(law) with { WindX = -5, WindZ = 6 };
        var launch = new LaunchSi(60, 12 * Degree, 2 * Degree);
        StateSi At(int steps)
        {
            Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(110, 0), steps, out StateSi s, out _));
            return s;
        }

        StateSi exact = At(512);
        double Error(StateSi s) => Math.Max(Math.Abs(s.Y - exact.Y), Math.Abs(s.Z - exact.Z));
        // 1, 2 and 4 steps: with 8 the error is at the rounding of the positions.
        Assert.All(Order.Observed(n => Error(At(n)), 1, 2), o => Assert.InRange(o, 7, 10));
    }

    [Fact]
    public void A_flat_table_is_the_constant()
    {
        Drag table = Drag.FromTable(DragTable.Of([(1e3, 1.8), (2e4, 1.8), (1e5, 1.8)]), AnyDrag.Diameter, AnyDrag.Mass);
        Drag constant = Drag.FromArea(1.8 * 0.25 * Math.PI * AnyDrag.Diameter * AnyDrag.Diameter, AnyDrag.Mass);
        Assert.Equal(constant.ConstantIn(AnyDrag.Standard).InverseMeters, table.At(Speed.FromMetersPerSecond(70), AnyDrag.Standard).InverseMeters, 1e-15);
        Assert.Equal(Level(constant).At(Launch, Length.FromYards(80)).Up.Meters, Level(table).At(Launch, Length.FromYards(80)).Up.Meters, 1e-7);
    }

    [Theory, MemberData(nameof(Laws))]
    public void More_drag_never_arrives_faster(string law) => Gen.Select(Gen.Double[45, 110], Gen.Double[-0.1, 0.2], Gen.Double[10, 80]).Sample((speed, elevation, distance) =>
    {
        PointMassSi less = AnyDrag.Flight(law), more = PointMassSi.Of(AnyDrag.Named(law).Times(1.05), less.Air!, 9.80665);
        Assert.Equal(Outcome.Met, less.Fly(new(speed, elevation), distance, 0, out StateSi a, out _));
        Assert.Equal(Outcome.Met, more.Fly(new(speed, elevation), distance, 0, out StateSi b, out _));
        return b.Time > a.Time && b.Vx < a.Vx;
    });

    [Fact]
    public void A_flight_that_leaves_the_table_is_refused_and_told_where()
    {
        // 20 m/s slowest: the arrow gets there after some tens of metres.
        Drag drag = Drag.FromTable(DragTable.Of([(20 * 6.2e-3 / 1.5e-5, 200), (5e4, 200)]), AnyDrag.Diameter, AnyDrag.Mass);
        PointMass flight = Level(drag);
        var e = Assert.Throws<DragUnknownException>(() => flight.At(Launch, Length.FromMeters(60)));
        Assert.InRange(e.Slowest.MetersPerSecond, 18, 21);
        Assert.InRange(e.Distance.Meters, 1, 60);
        Assert.Contains("is known for speeds", e.Message);
        Assert.False(flight.TryAt(Launch, Length.FromMeters(60), out _));
        Assert.Throws<DragUnknownException>(() => flight.SensitivitiesAt(Launch, Length.FromMeters(60), Angle.Zero));
        Assert.Throws<DragUnknownException>(() => flight.At(Launch with { Speed = Speed.FromMetersPerSecond(250) }, Length.FromMeters(10)));
    }

    [Fact]
    public void Drag_that_follows_the_speed_has_no_one_constant()
    {
        Drag drag = AnyDrag.Named("turbulent");
        Assert.True(drag.FollowsSpeed);
        Assert.Contains("speed", Assert.Throws<InvalidOperationException>(() => drag.ConstantIn(AnyDrag.Standard)).Message);
        Assert.True(drag.At(Speed.FromMetersPerSecond(60), AnyDrag.Standard) > drag.At(Speed.FromMetersPerSecond(90), AnyDrag.Standard));
        Assert.Throws<ArgumentOutOfRangeException>(() => drag.At(Speed.FromMetersPerSecond(1), AnyDrag.Standard));
        Assert.Throws<ArgumentOutOfRangeException>(() => drag.Times(-1));
        Assert.Equal("mass", Assert.Throws<ArgumentOutOfRangeException>(() => Drag.FromTable(AnyDrag.Wild, AnyDrag.Diameter, Mass.FromGrams(-1))).ParamName);
        Assert.Equal("shaftDiameter", Assert.Throws<ArgumentOutOfRangeException>(() => Drag.FromTable(AnyDrag.Wild, Length.Zero, AnyDrag.Mass)).ParamName);
    }

    [Fact]
    public void Thin_air_counts_twice()
    {
        // In air of half the density the force halves and the Reynolds number halves, which raises the coefficient.
        Air low = AnyDrag.Standard, high = Air.StandardAt(Length.FromMeters(5000));
        Drag drag = AnyDrag.Named("turbulent");
        Speed speed = Speed.FromMetersPerSecond(80);
        double ratio = drag.At(speed, high).InverseMeters / drag.At(speed, low).InverseMeters, density = high.DensitySi / low.DensitySi;
        Assert.InRange(ratio, density * 1.01, density * 1.15);
    }

    [Fact]
    public void The_si_door_allocates_nothing_with_any_law_and_any_wind()
    {
        PointMassSi[] masses = [
            .. Laws.Select(l => AnyDrag.Flight(l.Data)),
            AnyDrag.Flight("constant").In(VaryingWindTests.Stretches),
            AnyDrag.Flight("table").In(VaryingWindTests.Profile)];
        double sum = Run(3); // compiled and warm
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Run(50);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sum));

        double Run(int times)
        {
            double total = 0;
            for (int i = 0; i < times; i++)
            {
                foreach (ref readonly PointMassSi mass in masses.AsSpan())
                {
                    mass.Fly(new(85, 0.03), 20 + i, 0, out StateSi state, out _);
                    mass.FlyWithSlope(new(85, 0.03), 20 + i, 0, out _, out double above, out double slope);
                    total += state.Y + above + slope;
                }
            }

            return total;
        }
    }

    static Launch Launch => new() { Speed = Speed.FromMetersPerSecond(85), Elevation = Angle.FromDegrees(2) };

    static PointMass Level(Drag drag) => new() { Drag = drag, Air = AnyDrag.Standard, Gravity = Gravity.Standard, Wind = Wind.Calm };
}
