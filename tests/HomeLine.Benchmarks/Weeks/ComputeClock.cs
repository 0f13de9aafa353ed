using System.Diagnostics;
using System.Runtime.InteropServices;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Milliseconds this thread has computed: other work on a busy machine does not count. Off Linux, the wall clock.</summary>
internal static partial class ComputeClock
{
    private const int ThreadCpuTime = 3;

    public static double Milliseconds() => OperatingSystem.IsLinux() && ClockGetTime(ThreadCpuTime, out Moment now) == 0
        ? (now.Seconds * 1e3) + (now.Nanoseconds / 1e6)
        : Stopwatch.GetTimestamp() * 1e3 / Stopwatch.Frequency;

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int ClockGetTime(int clock, out Moment now);

    [StructLayout(LayoutKind.Sequential)]
    private struct Moment
    {
        public long Seconds;
        public long Nanoseconds;
    }
}
