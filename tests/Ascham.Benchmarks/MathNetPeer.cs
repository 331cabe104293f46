namespace Ascham.Benchmarks;

using Ascham.Flight;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;

/// <summary>The same work by MathNet: its Runge-Kutta of order 4 on six equations with the distance as the variable (the better of its two forms), its secant solver, its normal sampling.</summary>
static class MathNetPeer
{
    /// <summary>Up, right, time and velocity at a distance; the elevation and everything else as given.</summary>
    public static Vector<double> Fly(in PointMassSi mass, in LaunchSi launch, double distance, int steps, Func<double, double>? law = null)
    {
        var (k, g, wx, wy, wz) = mass;
        double level = launch.Speed * Math.Cos(launch.Elevation);
        var start = Vector<double>.Build.Dense(
            [launch.Y, 0, 0, level * Math.Cos(launch.Azimuth), launch.Speed * Math.Sin(launch.Elevation), level * Math.Sin(launch.Azimuth)]);
        return RungeKutta.FourthOrder(start, 0, distance, steps + 1, (_, s) =>
        {
            double ux = s[3] - wx, uy = s[4] - wy, uz = s[5] - wz, v = Math.Sqrt(ux * ux + uy * uy + uz * uz);
            double pull = (law is null ? k : law(v)) * v, perMetre = 1 / s[3];
            return Vector<double>.Build.Dense(
                [s[4] * perMetre, s[5] * perMetre, perMetre, -pull * ux * perMetre, -(pull * uy + g) * perMetre, -pull * uz * perMetre]);
        })[^1];
    }

    /// <summary>The fewest steps with which the ensemble is met within 1e-6 m.</summary>
    public static int StepsForMicrometre(Func<double, double>? law)
    {
        for (int steps = 2; ; steps++)
        {
            double worst = 0;
            foreach (var (mass, launch, distance) in Cases.Ensemble)
            {
                Vector<double> fine = Fly(mass, launch, distance, 400, law), coarse = Fly(mass, launch, distance, steps, law);
                worst = Math.Max(worst, Math.Max(Math.Abs(fine[0] - coarse[0]), Math.Abs(fine[1] - coarse[1])));
            }

            if (worst <= 1e-6)
            {
                return steps;
            }
        }
    }

    /// <summary>Sight angles for all marks: the secant solver on four steps of Runge-Kutta, each mark starting from the one before.</summary>
    public static double Tape(double[] angles, Func<double, double>? law)
    {
        var mass = new PointMassSi(Cases.K, Cases.Gravity, 0, 0, 0);
        double guess = 0.02;
        for (int i = 0; i < angles.Length; i++)
        {
            double distance = Cases.Marks[i];
            angles[i] = guess = Secant.FindRoot(a => Fly(mass, new(Cases.Speed, a, 0, 0, -Cases.PeepHeight), distance, 4, law)[0], guess, guess + 1e-4, -0.5, 0.7, 1e-9);
        }

        return guess;
    }

    /// <summary>Arrows with six normal inputs, into a histogram, moments and a circle: four steps each, which leaves 4e-6 m over the ensemble.</summary>
    public static double Batch(int arrows)
    {
        var random = new MathNet.Numerics.Random.Xoshiro256StarStar(1);
        int[] histogram = new int[256 * 256];
        double up = 0, upUp = 0, right = 0, rightRight = 0, hits = 0;
        double Draw(double mean, double sd) => Normal.Sample(random, mean, sd);
        for (int i = 0; i < arrows; i++)
        {
            var mass = new PointMassSi(Cases.K * Draw(1, 0.03), Cases.Gravity, Draw(0, 1), 0, Draw(3, 1));
            Vector<double> s = Fly(mass, new(Draw(Cases.Speed, 0.6), Draw(Cases.Elevation, 1e-3), Draw(0, 1e-3)), Cases.Distance, 4);
            (double y, double z) = (s[0], s[1]);
            (up, upUp, right, rightRight) = (up + y, upUp + y * y, right + z, rightRight + z * z);
            hits += y * y + z * z <= 0.04 ? 1 : 0;
            int column = (int)((z + 4) * 32), row = (int)((y + 4) * 32);
            if ((uint)column < 256 && (uint)row < 256)
            {
                histogram[row * 256 + column]++;
            }
        }

        return up / arrows + histogram[0] + hits + right + upUp + rightRight;
    }
}
