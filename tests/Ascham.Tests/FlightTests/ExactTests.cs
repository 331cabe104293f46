namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Ascham.Tests.AirTests;
using MathNet.Numerics.RootFinding;
using Xunit;

/// <summary>Against the exact solution in still air: its tables computed elsewhere, and its integrals computed here.</summary>
public class ExactTests
{
    const double Degree = Math.PI / 180, G = 9.80665;
    const int Fine = 64;

    static readonly AuthorityFile Level = new("flight-level-exact.csv");
    static readonly AuthorityFile Return = new("flight-return-exact.csv");
    static readonly AuthorityFile Scaled = new("flight-return-dimensionless.csv");
    static readonly PointMassSi Arrow = new(0.0012, G, 0, 0, 0);

    public static TheoryData<int> LevelRows => AuthorityFile.Rows("flight-level-exact.csv");

    public static TheoryData<int> ReturnRows => AuthorityFile.Rows("flight-return-exact.csv");

    public static TheoryData<int> ScaledRows => AuthorityFile.Rows("flight-return-dimensionless.csv");

    [Theory, MemberData(nameof(LevelRows))]
    public void A_level_launch_matches_every_digit_of_the_table(int row)
    {
        StateSi s = At(Arrow, new(85, 0), Level.Value(row, "x_m"), Fine);
        Level.Cell(row, "time_s")!.Matches(s.Time);
        Level.Cell(row, "y_m")!.Matches(s.Y);
        Level.Cell(row, "vx_m_s")!.Matches(s.Vx);
        Level.Cell(row, "vy_m_s")!.Matches(s.Vy);
        Level.Cell(row, "speed_m_s")!.Matches(s.Speed);
        Level.Cell(row, "vacuum_y_m")!.Matches(At(Arrow with { K = 0 }, new(85, 0), s.X, Fine).Y);
    }

    [Theory, MemberData(nameof(LevelRows))]
    public void A_level_launch_meets_the_table_within_a_micrometre_at_the_default_step(int row) =>
        Assert.Equal(Level.Value(row, "y_m"), At(Arrow, new(85, 0), Level.Value(row, "x_m"), 0).Y, 1e-6);

    [Theory, MemberData(nameof(ReturnRows))]
    public void The_return_to_launch_level_matches_every_digit_of_the_table(int row)
    {
        var launch = new LaunchSi(85, Return.Value(row, "elevation_deg") * Degree);
        StateSi end = Where(Arrow, launch, s => s.Y, 0.5 * Return.Value(row, "range_m"), 1.2 * Return.Value(row, "range_m"));
        Return.Cell(row, "range_m")!.Matches(end.X);
        Return.Cell(row, "time_s")!.Matches(end.Time);
        Return.Cell(row, "speed_m_s")!.Matches(end.Speed);
        Return.Cell(row, "angle_deg")!.Matches(Math.Atan2(end.Vy, end.Vx) / Degree);

        StateSi apex = Where(Arrow, launch, s => s.Vy, 1e-3, Return.Value(row, "range_m"));
        Return.Cell(row, "apex_x_m")!.Matches(apex.X);
        Return.Cell(row, "apex_y_m")!.Matches(apex.Y);
        Return.Cell(row, "apex_time_s")!.Matches(apex.Time);
    }

    [Theory, MemberData(nameof(ReturnRows))]
    public void The_return_to_launch_level_is_within_a_micrometre_at_the_default_step(int row)
    {
        StateSi fine = At(Arrow, Rising(row), Return.Value(row, "range_m"), Fine);
        StateSi asIs = At(Arrow, Rising(row), Return.Value(row, "range_m"), 0);
        Assert.Equal(fine.Y, asIs.Y, 1e-6);
    }

    [Theory, MemberData(nameof(ScaledRows))]
    public void The_dimensionless_flight_matches_every_digit_of_the_table(int row)
    {
        var unit = new PointMassSi(1, 1, 0, 0, 0);
        var launch = new LaunchSi(1, Scaled.Value(row, "elevation_deg") * Degree);
        double range = Scaled.Value(row, "range");
        StateSi end = Where(unit, launch, s => s.Y, 0.6 * range, 1.05 * range);
        Scaled.Cell(row, "range")!.Matches(end.X);
        Scaled.Cell(row, "time")!.Matches(end.Time);
        Scaled.Cell(row, "speed")!.Matches(end.Speed);
        Scaled.Cell(row, "angle_deg")!.Matches(Math.Atan2(end.Vy, end.Vx) / Degree);
        Scaled.Cell(row, "apex_y")!.Matches(Where(unit, launch, s => s.Vy, 1e-6, range).Y);
    }

    [Fact]
    public void The_default_step_meets_the_exact_solution_within_a_micrometre()
    {
        var random = new Random(20240501);
        double worst = 0;
        for (int counted = 0; counted < 2000;)
        {
            // Half of the cases sit on a corner of the claimed range.
            double Pick(double low, double high) => random.Next(4) switch { 0 => low, 1 => high, _ => low + (high - low) * random.NextDouble() };
            double speed = Pick(40, 120), k = Pick(0, 0.004), line = Pick(-60, 60) * Degree, distance = Pick(5, 120);
            var launch = new LaunchSi(speed, line + (88 * random.NextDouble() * random.NextDouble() - 3) * Degree);
            var mass = new PointMassSi(k, G, 0, 0, 0);
            if (Math.Abs(launch.Elevation) > 89 * Degree || mass.Fly(launch, distance, line, out StateSi s, out _) != Outcome.Met
                || Math.Abs(Math.Atan2(s.Vy, s.Vx) - line) > 70 * Degree)
            {
                continue;
            }

            counted++;
            var exact = new Hodograph(speed, launch.Elevation, k).OnFace(distance, line);
            double error = Math.Abs(s.Above(line) - (exact.Y * Math.Cos(line) - exact.X * Math.Sin(line)));
            Assert.True(error < 1e-6, FormattableString.Invariant($"off by {error:E2} m: {launch}, {mass}, line {line / Degree}°, {distance} m"));
            Assert.Equal(exact.T, s.Time, 1e-7);
            Assert.Equal(exact.Vx, s.Vx, 1e-5);
            Assert.Equal(exact.Vy, s.Vy, 1e-5);
            worst = Math.Max(worst, error);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"worst of 2000: {worst:E1} m"));
    }

    static LaunchSi Rising(int row) => new(85, Return.Value(row, "elevation_deg") * Degree);

    static StateSi At(PointMassSi mass, LaunchSi launch, double x, int steps)
    {
        Assert.Equal(Outcome.Met, mass.Fly(launch, Face.Square(x, 0), steps, out StateSi state, out _));
        return state;
    }

    static StateSi Where(PointMassSi mass, LaunchSi launch, Func<StateSi, double> zero, double low, double high)
        => At(mass, launch, Brent.FindRoot(x => zero(At(mass, launch, x, Fine)), low, high, 1e-13, 200), Fine);
}
