namespace Ascham.Tests.FlightTests;

using Ascham.Flight;
using Xunit;

public class ExactTests
{
    [Fact]
    public void The_default_step_meets_the_exact_solution_within_a_micrometre()
    {
        var random = new Random(20240501);
        double worst = 0;
        int counted = 0;
        while (counted < 2000)
        {
            double speed = 40 + 80 * random.NextDouble(), k = 0.004 * random.NextDouble();
            double line = (random.NextDouble() * 120 - 60) * Math.PI / 180, distance = 5 + 115 * random.NextDouble();
            double launch = line + (60 * random.NextDouble() * random.NextDouble() - 3) * Math.PI / 180;
            if (Math.Abs(launch) > 1.55)
            {
                continue;
            }

            var mass = new PointMassSi(k, 9.80665, 0, 0, 0);
            if (mass.Fly(new LaunchSi(speed, launch), distance, line, out StateSi state, out _) != Outcome.Met
                || Math.Abs(Math.Atan2(state.Vy, state.Vx) - line) > 70 * Math.PI / 180)
            {
                continue;
            }

            var exact = new Hodograph(speed, launch, k).OnFace(distance, line);
            double error = Math.Abs(state.Above(line) - (exact.Y * Math.Cos(line) - exact.X * Math.Sin(line)));
            worst = Math.Max(worst, error);
            counted++;
            Assert.True(error < 1e-6, FormattableString.Invariant($"{error:E2} m at {speed} m/s, k {k}, line {line}, launch {launch}, {distance} m"));
        }
        TestContext.Current.TestOutputHelper!.WriteLine(FormattableString.Invariant($"worst {worst:E2} of {counted}"));
    }
}
