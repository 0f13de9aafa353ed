using System.Diagnostics;
using System.Globalization;
using HomeLine.LineCare;

namespace HomeLine.Benchmarks.Clocks;

/// <summary>Several rounds over every line, the fastest and the middle one told: processor time of the one thread, or the wall's when all cores work.</summary>
internal static class ClockTimes
{
    public static void Tell(int count, int histories, int seed, int rounds, string only)
    {
        var patients = InventedLines.Invent(count, histories, seed);
        Console.WriteLine($"{count} lines, {histories} different ledgers of {patients.Take(histories).Average(p => p.Events.Length):0} entries on average, seed {seed}");
        Tell("first reading of the ledger and windows", patients, Without, 1);
        foreach (var (what, measured, byTheWall) in Measurements())
            if (what.Contains(only, StringComparison.OrdinalIgnoreCase)) Tell(what, patients, measured, rounds, byTheWall);
    }

    private static IEnumerable<(string What, Func<ArraySegment<PatientCare>, long> Measured, bool ByTheWall)> Measurements()
    {
        yield return ("windows without reasons, one core", Without, false);
        yield return ("windows with reasons, one core", With, false);
        yield return ("recording one entry and windows", AfterOneEntry, false);
        yield return ("windows without reasons, all cores", slice => OnAllCores(slice, Without), true);
        yield return ("windows with reasons, all cores", slice => OnAllCores(slice, With), true);
    }

    private static void Tell(string what, PatientCare[] patients, Func<ArraySegment<PatientCare>, long> measured, int rounds, bool byTheWall = false)
    {
        var times = new List<double>();
        long bytes = 0, seen = 0;
        for (var i = 0; i < rounds; i++)
        {
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var (wall, own) = (Stopwatch.GetTimestamp(), CpuClock.ThreadSeconds());
            seen = measured(patients);
            var seconds = byTheWall ? Stopwatch.GetElapsedTime(wall).TotalSeconds : CpuClock.ThreadSeconds() - own;
            times.Add(seconds * 1e9 / patients.Length);
            bytes = GC.GetTotalAllocatedBytes(precise: true) - before;
        }

        times.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what,-42} fastest {times[0],9:0} ns, middle {times[times.Count / 2],9:0} ns, {(double)bytes / patients.Length,8:0} bytes per line ({(double)seen / patients.Length:0.0})"));
    }

    public static long Without(ArraySegment<PatientCare> patients)
    {
        long windows = 0;
        foreach (var care in patients) windows += WhatIsDue.For(care, InventedLines.Policy, InventedLines.Now).Windows.Length;
        return windows;
    }

    public static long With(ArraySegment<PatientCare> patients)
    {
        long letters = 0;
        foreach (var care in patients)
            foreach (var window in WhatIsDue.For(care, InventedLines.Policy, InventedLines.Now).Windows)
                letters += window.Because.Sentence.Length;
        return letters;
    }

    public static long AfterOneEntry(ArraySegment<PatientCare> patients)
    {
        long windows = 0;
        foreach (var care in patients)
            windows += WhatIsDue.For(care.Recording(InventedLines.ThisMorning(care)), InventedLines.Policy, InventedLines.Now).Windows.Length;
        return windows;
    }

    public static long OnAllCores(ArraySegment<PatientCare> patients, Func<ArraySegment<PatientCare>, long> measured)
    {
        long sum = 0;
        const int Slice = 2_000;
        Parallel.For(0, (patients.Count + Slice - 1) / Slice, i =>
        {
            var from = i * Slice;
            Interlocked.Add(ref sum, measured(patients.Slice(from, Math.Min(Slice, patients.Count - from))));
        });
        return sum;
    }
}
