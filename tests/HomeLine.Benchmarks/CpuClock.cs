using System.Diagnostics;
using System.Runtime.InteropServices;

namespace HomeLine.Benchmarks;

/// <summary>
/// Seconds of processor time of the calling thread, so that a busy machine does not spoil a measurement. Where the system has no such clock: wall time.
/// </summary>
internal static partial class CpuClock
{
    /// <summary>CLOCK_THREAD_CPUTIME_ID of POSIX clock_gettime, as Linux numbers it.</summary>
    private const int ThreadCpuTime = 3;

    /// <summary>CLOCK_PROCESS_CPUTIME_ID.</summary>
    private const int ProcessCpuTime = 2;

    public static double ThreadSeconds() => Seconds(ThreadCpuTime);

    /// <summary>Of all threads of this process.</summary>
    public static double ProcessSeconds() => Seconds(ProcessCpuTime);

    private static double Seconds(int clock)
    {
        if (!OperatingSystem.IsLinux()) return Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency;
        _ = GetTime(clock, out Timespec time);
        return time.Seconds + (time.Nanoseconds * 1e-9);
    }

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int GetTime(int clock, out Timespec time);

    [StructLayout(LayoutKind.Sequential)]
    private struct Timespec
    {
        public long Seconds;
        public long Nanoseconds;
    }
}
