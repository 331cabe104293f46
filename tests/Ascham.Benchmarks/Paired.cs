namespace Ascham.Benchmarks;

using System.Globalization;
using Ascham.Flight;

/// <summary>Each pair in one run, in turns: A B A B. A ratio is that of two neighbours, so that a machine that slows for a while slows both; medians of the rounds.</summary>
static class Paired
{
    public static void Run(int rounds)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        int steps = MathNetPeer.StepsForMicrometre(null), anyLaw = MathNetPeer.StepsForMicrometre(Law);
        Console.WriteLine($"MathNet meets 1e-6 m over the ensemble with {steps} steps (constant drag), {anyLaw} (changing drag); the library leaves {Work.EnsembleError():E1} and {Work.EnsembleErrorOfAnyLaw():E1} m");
        Console.WriteLine("| work | other | other, us | here, us | ratio, median [least - most] | goal |");
        Console.WriteLine("|---|---|---|---|---|---|");

        var mass = new PointMassSi(Cases.K, Cases.Gravity, 0, 0, 3);
        var launch = new LaunchSi(Cases.Speed, Cases.Elevation);
        double[] angles = new double[Cases.Marks.Length];
        Row("one flight, constant drag", $"MathNet, {steps} steps", 60, rounds, Clock.Each, Times(500, () => MathNetPeer.Fly(mass, launch, Cases.Distance, steps)), 500, () => Work.Flights(50_000), 50_000);
        Row("one flight, any drag law", $"MathNet, {anyLaw} steps", 15, rounds, Clock.Each, Times(500, () => MathNetPeer.Fly(mass, launch, Cases.Distance, anyLaw, Law)), 500, () => Work.FlightsOfAnyLaw(20_000), 20_000);
        Row("tape of 81 marks, constant drag", "MathNet, secant on 4 steps", 150, rounds, Clock.Each, () => MathNetPeer.Tape(angles, null), 1, Times(1000, () => Work.Tape(angles)), 1000);
        Row("tape of 81 marks, any drag law", "MathNet, secant on 4 steps", 60, rounds, Clock.Each, () => MathNetPeer.Tape(angles, Law), 1, Times(500, () => Work.TapeOfAnyLaw(angles)), 500);
        (double error, int rigidSteps) = RigidPeer.Accuracy();
        Row($"angle of attack (leaves {error:E0} m)", $"MathNet, {rigidSteps} steps (1e-6 m)", 10, rounds, Clock.Each, () => RigidPeer.MathNet(8, rigidSteps), 8, RigidPeer.One, RigidPeer.Arrows);
        Row("the same, many on all cores (wall)", $"MathNet, {rigidSteps} steps, one thread", 50, rounds, Clock.OnTheWall, () => RigidPeer.MathNet(8, rigidSteps), 8, RigidPeer.All, RigidPeer.Arrows);

        GroupRows(rounds);
        const int Arrows = 1 << 20;
        Row("a million arrows, one thread", "MathNet, sampling and 4 steps", 120, rounds, Clock.All, () => MathNetPeer.Batch(4096), 4096.0 / Arrows, () => Cases.Batch.Summarise(Cases.Options(1)), 1);
        Row("a million arrows, two threads (wall)", "one thread here", 1.8, rounds, Clock.OnTheWall, () => Cases.Batch.Summarise(Cases.Options(1)), 1, () => Cases.Batch.Summarise(Cases.Options(2)), 1);
        if (NativePeer.Load(out string? why) is { } native)
        {
            Row("a million arrows, one thread", "C++ -O3 -march=native", 1 / 1.6, rounds, Clock.All, () => native(1, Arrows, Cases.Batch.Plan().Order), 1, () => Cases.Batch.Summarise(Cases.Options(1)), 1);
        }
        else
        {
            Console.WriteLine($"C++ is left out: {why}");
        }
    }

    /// <summary>The rows of a million impacts alone.</summary>
    public static void Groups(int rounds)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        GroupRows(rounds);
    }

    static void GroupRows(int rounds)
    {
        Row("a million impacts, columns of metres: centre, spread, intervals", "MathNet running statistics of the two columns", 0.5, rounds, Clock.Each, () => GroupsPeer.MathNet(), 1, () => GroupsPeer.Columns(), 1);
        Row("a million impacts with units: centre, spread, intervals", "MathNet running statistics of the two columns", 0.5, rounds, Clock.Each, () => GroupsPeer.MathNet(), 1, () => GroupsPeer.Here(), 1);
    }

    static double Law(double v)
    {
        double u = 0.2 * (v - 51);
        return 0.0021 + 0.0004 * u / Math.Sqrt(1 + u * u);
    }

    static Action Times<T>(int times, Func<T> work) => Times(times, () => { work(); });

    static Action Times(int times, Action work) => () =>
    {
        for (int i = 0; i < times; i++)
        {
            work();
        }
    };

    static void Row(string name, string otherName, double goal, int rounds, Func<double> clock, Action other, double otherTimes, Action here, double hereTimes)
    {
        double Time(Action work, double times)
        {
            double start = clock();
            work();
            return 1e6 * (clock() - start) / times;
        }

        for (int i = 0; i < 6; i++)
        {
            Time(other, 1);
            Time(here, 1);
            Thread.Sleep(50); // lets the compiler's second tier catch up
        }

        var pairs = Enumerable.Range(0, rounds).Select(_ => (Other: Time(other, otherTimes), Here: Time(here, hereTimes))).ToArray();
        double[] ratios = [.. pairs.Select(p => p.Other / p.Here).Order()];
        static double Middle(IEnumerable<double> x) => x.Order().ElementAt(x.Count() / 2);
        Console.WriteLine($"| {name} | {otherName} | {Middle(pairs.Select(p => p.Other)):G4} | {Middle(pairs.Select(p => p.Here)):G4} | {Middle(ratios):G4} [{ratios[0]:G4} - {ratios[^1]:G4}] | {goal:G3} |");
    }
}
