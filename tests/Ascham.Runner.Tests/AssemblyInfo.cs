// The console, the current directory and the kernel's displays belong to the whole process.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
