using Ascham.Benchmarks;
using BenchmarkDotNet.Running;

// paired [rounds]: ratios to MathNet and C++ in one run, in turns. first: the first million arrows of this process.
// groups: the rows of a million impacts alone. rows: time and memory of ten million impacts.
// Anything else goes to BenchmarkDotNet, for example --filter *.
switch (args)
{
    case ["paired"]:
        Paired.Run(15);
        break;
    case ["paired", var rounds]:
        Paired.Run(int.Parse(rounds, System.Globalization.CultureInfo.InvariantCulture));
        break;
    case ["groups"]:
        Paired.Groups(15);
        break;
    case ["rows"]:
        GroupsPeer.TenMillion();
        break;
    case ["first"]:
        FirstRun.Run();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Paired).Assembly).Run(args);
        break;
}
