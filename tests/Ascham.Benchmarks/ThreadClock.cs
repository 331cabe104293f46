namespace Ascham.Benchmarks;

using System.Diagnostics;
using System.Runtime.InteropServices;

/// <summary>Time this thread has spent on a processor, so that what other programs take does not count; wall time where the system does not tell.</summary>
static partial class ThreadClock
{
    const int ThreadTime = 3; // CLOCK_THREAD_CPUTIME_ID on Linux

    public static double Nanoseconds =>
        OperatingSystem.IsLinux() && clock_gettime(ThreadTime, out Moment now) == 0
            ? now.Seconds * 1e9 + now.Nanoseconds
            : Stopwatch.GetTimestamp() * (1e9 / Stopwatch.Frequency);

    [LibraryImport("libc")]
    private static partial int clock_gettime(int clock, out Moment now);

    [StructLayout(LayoutKind.Sequential)]
    struct Moment
    {
        public long Seconds, Nanoseconds;
    }
}
