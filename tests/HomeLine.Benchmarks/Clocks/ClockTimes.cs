using System.Diagnostics;
using System.Globalization;
using HomeLine.LineCare;

namespace HomeLine.Benchmarks.Clocks;

/// <summary>A short measurement by the wall clock: five rounds over every line, the fastest and the middle one told.</summary>
internal static class ClockTimes
{
    private const int Rounds = 5;

    public static void Tell(int count, int histories, int seed)
    {
        var patients = InventedLines.Invent(count, histories, seed);
        Console.WriteLine($"{count} lines, {histories} different ledgers of {patients.Take(histories).Average(p => p.Events.Length):0} entries on average, seed {seed}");
        Tell("first reading of the ledger and windows", patients, Without);
        Tell("windows without reasons, one core", patients, Without);
        Tell("windows with reasons, one core", patients, With);
        Tell("windows without reasons, all cores", patients, slice => OnAllCores(slice, Without));
        Tell("windows with reasons, all cores", patients, slice => OnAllCores(slice, With));
    }

    private static void Tell(string what, PatientCare[] patients, Func<ArraySegment<PatientCare>, long> measured)
    {
        var rounds = what.StartsWith("first", StringComparison.Ordinal) ? 1 : Rounds;
        var times = new List<double>();
        long bytes = 0, seen = 0;
        for (var i = 0; i < rounds; i++)
        {
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var start = Stopwatch.GetTimestamp();
            seen = measured(patients);
            times.Add(Stopwatch.GetElapsedTime(start).TotalNanoseconds / patients.Length);
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

    private static long OnAllCores(ArraySegment<PatientCare> patients, Func<ArraySegment<PatientCare>, long> measured)
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
