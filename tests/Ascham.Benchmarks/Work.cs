namespace Ascham.Benchmarks;

using Ascham.Flight;
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
        PointMassSi mass = Cases.ChangingDrag with { WindZ = 3 };
        double elevation = Cases.Elevation;
        for (int i = 0; i < times; i++)
        {
            mass.Fly(new LaunchSi(Cases.Speed, elevation), Cases.Distance, 0, out StateSi state, out _);
            elevation = Cases.Elevation + 1e-12 * state.Y;
        }

        return elevation;
    }

    public static void Tape(double[] angles)
        => TapeSolver.SightAngles(new(Cases.K, Cases.Gravity, 0, 0, 0), Cases.Speed, Cases.PeepHeight, Cases.Marks, angles);

    public static void TapeOfAnyLaw(double[] angles) => TapeSolver.SightAngles(Cases.ChangingDrag, Cases.Speed, Cases.PeepHeight, Cases.Marks, angles);

    /// <summary>Worst error over the ensemble, m, against 32 steps of the march.</summary>
    public static double EnsembleError() => Worst(mass => mass);

    /// <summary>The same for the changing drag law.</summary>
    public static double EnsembleErrorOfAnyLaw() => Worst(mass => Cases.ChangingDrag with { WindX = mass.WindX, WindY = mass.WindY, WindZ = mass.WindZ });

    static double Worst(Func<PointMassSi, PointMassSi> of)
    {
        double worst = 0;
        foreach (var (drawn, launch, distance) in Cases.Ensemble)
        {
            PointMassSi mass = of(drawn);
            mass.Fly(launch, distance, 0, out StateSi asIs, out _);
            mass.Fly(launch, Face.Square(distance, 0), 32, out StateSi fine, out _);
            worst = Math.Max(worst, Math.Max(Math.Abs(asIs.Y - fine.Y), Math.Abs(asIs.Z - fine.Z)));
        }

        return worst;
    }
}
