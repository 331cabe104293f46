namespace Ascham.Benchmarks;

using Ascham.Flight;
using BenchmarkDotNet.Attributes;

/// <summary>One flight to 1e-6 m.</summary>
[MemoryDiagnoser, ShortRunJob]
public class OneFlight
{
    const int Together = 1000;

    [Benchmark(Baseline = true)]
    public object MathNet() => MathNetPeer.Fly(new(Cases.K, Cases.Gravity, 0, 0, 3), new(Cases.Speed, Cases.Elevation), Cases.Distance, 8);

    [Benchmark(OperationsPerInvoke = Together)]
    public double ConstantDrag() => Work.Flights(Together);

    [Benchmark(OperationsPerInvoke = Together)]
    public double AnyDragLaw() => Work.FlightsOfAnyLaw(Together);
}

/// <summary>A tape of 81 marks.</summary>
[MemoryDiagnoser, ShortRunJob]
public class TapeOf81Marks
{
    readonly double[] angles = new double[Cases.Marks.Length];

    [Benchmark(Baseline = true)]
    public double MathNet() => MathNetPeer.Tape(angles, null);

    [Benchmark]
    public void ConstantDrag() => Work.Tape(angles);

    [Benchmark]
    public void AnyDragLaw() => Work.TapeOfAnyLaw(angles);
}

/// <summary>A million arrows with six random inputs, and a histogram; a 256th of them by MathNet.</summary>
[MemoryDiagnoser, ShortRunJob]
public class MillionArrows
{
    const int Part = 1 << 12;

    [Params(1, 2)]
    public int Threads { get; set; }

    [Benchmark]
    public double MathNetOn4096() => MathNetPeer.Batch(Part);

    [Benchmark]
    public BatchResult Million() => Cases.Batch.Summarise(Cases.Options(Threads));
}
