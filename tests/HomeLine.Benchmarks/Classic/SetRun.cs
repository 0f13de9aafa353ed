using System.Globalization;
using System.Text.RegularExpressions;

namespace HomeLine.Benchmarks.Classic;

/// <summary>All instances of a folder, each with every seed, one after another on this thread.</summary>
internal sealed class SetRun(string folder, string? format, Distance? distance, Regex only, int seeds, double? peerSeconds, Wanted wanted)
{
    private readonly BestKnown _known = BestKnown.Of(folder);

    public IReadOnlyList<RunRow> Rows(TextWriter progress)
    {
        var rows = new List<RunRow>();
        foreach (string path in InstanceFiles.Of(folder).Where(path => only.IsMatch(Path.GetFileNameWithoutExtension(path))))
        {
            Instance instance = AnyFile.Open(path, format, distance);
            for (int i = 0; i < seeds; i++)
            {
                ulong seed = wanted.Seed + (ulong)i;
                rows.Add(Timed(instance, "HomeLine", wanted.Again(seed), instance.Solve, progress));
                if (peerSeconds is { } most && i == 0 && instance.Peer is { } other)
                    rows.Add(Timed(instance, "OR-Tools routing", (wanted with { Seconds = most }).Again(seed), other, progress));
            }
        }

        return rows;
    }

    private RunRow Timed(Instance instance, string solver, Wanted now, Func<Wanted, Solved> solve, TextWriter progress)
    {
        double begin = CpuClock.ThreadSeconds();
        Solved solved = solve(now);
        double seconds = CpuClock.ThreadSeconds() - begin;
        double?[] known = [.. instance.Conventions.Select(words => _known.Value(instance.Name, words))];
        var row = new RunRow(instance.Name, instance.Class, solver, now.Seed, seconds, solved.Verdict.Cost, instance.Conventions[0], known[0], known.Length > 1 ? known[1] : null, solved.Verdict.Faults.Count == 0, solved.Iterations, solved.LeftOut.Count);
        progress.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{row.Instance,-12} seed {row.Seed} {solver}: {row.Cost:0.00} known {row.Known} gap {row.Gap:0.000} %{(row.Bar is null ? "" : $" second {row.GapToBar:0.000} %")} in {row.Seconds:0.00} s, {row.Iterations} iterations{(row.LeftOut > 0 ? $", {row.LeftOut} left out" : "")}{(row.Valid ? "" : " NOT VALID: " + solved.Verdict.Faults[0])}"));
        return row;
    }
}
