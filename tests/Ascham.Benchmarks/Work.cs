namespace Ascham.Benchmarks;

using Ascham.Flight;
using Ascham.Numerics;
using Ascham.Sights;

/// <summary>The library's side. Flights depend on one another, so that none can be begun before the last is done.</summary>
static class Work
{
    public static double Flights(int times)
    {
        var mass = new PointMassSi(Cases.K, Cases.Gravity, 0, 0, 3);
        double elevation = Cases.Elevation;
        for (int i = 0; i < times; i++)
        {
            mass.Fly(new LaunchSi(Cases.Speed, elevation), Cases.Distance, 0, out StateSi state, out _);
            elevation = Cases.Elevation + 1e-12 * state.Y;
        }

        return elevation;
    }

    public static double FlightsOfAnyLaw(int times)
    {
        var face = Face.Square(Cases.Distance, 0);
        double elevation = Cases.Elevation;
        for (int i = 0; i < times; i++)
        {
            var (sin, cos) = Math.SinCos(elevation);
            March.Fly(
                new Triple<Real>(new(Cases.Speed * cos), new(Cases.Speed * sin), new(0)), new Triple<Real>(new(0), new(0), new(3)), new Real(Cases.Gravity), new Changing<Real>(), face, 0,
                out _, out Triple<Real> moved, out _, out _);
            elevation = Cases.Elevation + 1e-12 * moved.Y.Value;
        }

        return elevation;
    }

    public static void Tape(double[] angles)
        => TapeSolver.SightAngles(Cases.Speed, Cases.Gravity, new ConstantDrag<Lanes>(Lanes.Of(Cases.K)), Cases.PeepHeight, Cases.Marks, angles);

    public static void TapeOfAnyLaw(double[] angles)
        => TapeSolver.SightAngles(Cases.Speed, Cases.Gravity, new Changing<Lanes>(), Cases.PeepHeight, Cases.Marks, angles);

    /// <summary>Worst error over the ensemble, m, against sixteen steps of the march or more.</summary>
    public static double EnsembleError()
    {
        double worst = 0;
        foreach (var (mass, launch, distance) in Cases.Ensemble)
        {
            mass.Fly(launch, distance, 0, out StateSi asIs, out _);
            mass.Fly(launch, Face.Square(distance, 0), 16, out StateSi fine, out _);
            worst = Math.Max(worst, Math.Max(Math.Abs(asIs.Y - fine.Y), Math.Abs(asIs.Z - fine.Z)));
        }

        return worst;
    }

    /// <summary>The same for the changing drag law at the default step.</summary>
    public static double EnsembleErrorOfAnyLaw()
    {
        double worst = 0;
        foreach (var (mass, launch, distance) in Cases.Ensemble)
        {
            double level = launch.Speed * Math.Cos(launch.Elevation);
            var velocity = new Triple<Real>(new(level * Math.Cos(launch.Azimuth)), new(launch.Speed * Math.Sin(launch.Elevation)), new(level * Math.Sin(launch.Azimuth)));
            var wind = new Triple<Real>(new(mass.WindX), new(mass.WindY), new(mass.WindZ));
            Triple<Real> Moved(int steps)
            {
                March.Fly(velocity, wind, new Real(Cases.Gravity), new Changing<Real>(), Face.Square(distance, 0), steps, out _, out Triple<Real> moved, out _, out _);
                return moved;
            }

            Triple<Real> off = Moved(0) - Moved(32);
            worst = Math.Max(worst, Math.Max(Math.Abs(off.Y.Value), Math.Abs(off.Z.Value)));
        }

        return worst;
    }
}
