namespace Ascham.Benchmarks;

/// <summary>The first million arrows of a fresh process, with everything still to be compiled, and how soon it is up to speed.</summary>
static class FirstRun
{
    public static void Run()
    {
        for (int i = 0; i < 6; i++)
        {
            double start = Clock.OnTheWall(), busy = Clock.All();
            Cases.Batch.Summarise(Cases.Options(Environment.ProcessorCount));
            Console.WriteLine(FormattableString.Invariant($"run {i + 1}: {1e3 * (Clock.OnTheWall() - start):F0} ms on the wall, {1e3 * (Clock.All() - busy):F0} ms of processor time"));
        }
    }
}
