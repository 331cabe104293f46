namespace Ascham.Benchmarks;

using System.Diagnostics;
using System.Runtime.InteropServices;

/// <summary>Time spent on processors, so that what other programs take does not count; wall time where the system does not tell.</summary>
static partial class Clock
{
    /// <summary>Of this thread, s.</summary>
    public static double Each() => Read(3); // CLOCK_THREAD_CPUTIME_ID on Linux

    /// <summary>Of all threads of this process, s.</summary>
    public static double All() => Read(2); // CLOCK_PROCESS_CPUTIME_ID on Linux

    /// <summary>On the wall, s.</summary>
    public static double OnTheWall() => Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency;

    static double Read(int clock) => OperatingSystem.IsLinux() && clock_gettime(clock, out Moment now) == 0 ? now.Seconds + 1e-9 * now.Nanoseconds : OnTheWall();

    [LibraryImport("libc")]
    private static partial int clock_gettime(int clock, out Moment now);

    [StructLayout(LayoutKind.Sequential)]
    struct Moment
    {
        public long Seconds, Nanoseconds;
    }
}
